"""recordgen list."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from recordgen.cli.columns import columns, cut
from recordgen.cli.language import in_our_words
from recordgen.cli.options import (
    csv_option,
    exit_on_trouble,
    json_option,
    print_csv,
    print_json,
    records_option,
    today_option,
)
from recordgen.cli.places import stable_option
from recordgen.cli.since import Since, SinceType, day_of
from recordgen.cli.terminal import echo, width
from recordgen.sentences import NOTHING, Said, counted, listed, say, say_counted

if TYPE_CHECKING:
    from recordgen.hoof.export.overview import RecordedThing
    from recordgen.hoof.naming import Naming
    from recordgen.hoof.summary import HorseSummary

# Levels of cautions and classes of animals by their names in the records, as they stand in the list.
_LEVELS = {
    "call now": say("call now"),
    "call today": say("call today"),
    "arrange soon": say("arrange soon"),
    "keep an eye on": say("keep an eye on"),
}
_CLASSES = {
    "foal": say("foal"),
    "yearling": say("yearling"),
    "adult": say("adult"),
    "aged": say("aged"),
    "donkey": say("donkey"),
}
HorsesFound = list[tuple["HorseSummary", "list[RecordedThing]"]]


@click.command("list")
@records_option
@today_option
@stable_option("List this stable alone.")
@click.option("--with", "words", metavar="WORDS", help="Horses alone of which this was recorded, with what and when.")
@click.option("--since", type=SinceType(), help="With --with: from this day on, such as 2026-06-01 or June.")
@click.option("--ended", is_flag=True, help="Those too whose records ended.")
@json_option
@csv_option
def command(
    records: Path,
    today: dt.date,
    stable: str | None,
    words: str | None,
    since: Since | None,
    ended: bool,
    as_json: bool,
    as_csv: bool,
) -> None:
    """List all horses by stable: age, class, last visit, when they are due, and open cautions.

    \b
        recordgen list
        recordgen list --with "gap at the white line" --since June
        recordgen list --csv > horses.csv

    What --with finds was recorded at the feet, with lameness, feed, boots and the vet; recordgen find searches all that
    was typed.
    """
    if since and not words:
        raise click.UsageError(say("--since goes with --with."))
    with exit_on_trouble():
        from recordgen.hoof.export.overview import find_recorded

        horses, naming = _horses(records, today, stable, ended)
        first = day_of(since, today) if since else dt.date.min
        found = [(horse, find_recorded(horse, words.split(), first, naming) if words else []) for horse in horses]
    if words:
        found = [(horse, seen) for horse, seen in found if seen]
    if as_json or as_csv:
        _print_plain(found, bool(words), as_json)
    else:
        _print(found, naming, bool(words))


def _horses(records: Path, today: dt.date, stable: str | None, ended: bool) -> tuple[list[HorseSummary], Naming]:
    from recordgen.hoof.summary import summarise_stable
    from recordgen.records.load.everything import read_whole
    from recordgen.site.context import ways_of

    whole = read_whole(records, today, stable)
    ways = ways_of(whole)
    stables = [summarise_stable(one, ways, today) for one in whole.practice.stables]
    return [horse for one in stables for horse in (one.horses if ended else one.present)], ways.naming


def _print_plain(found: HorsesFound, with_words: bool, as_json: bool) -> None:
    from recordgen.hoof.export.overview import FOUND_COLUMNS, OVERVIEW_COLUMNS, overview_row, recorded_row

    if with_words:
        rows = [recorded_row(horse, one) for horse, seen in found for one in seen]
    else:
        rows = [overview_row(horse) for horse, _ in found]
    if as_json:
        print_json(rows)
    else:
        print_csv(FOUND_COLUMNS if with_words else OVERVIEW_COLUMNS, rows)


def _print(found: HorsesFound, naming: Naming, with_words: bool) -> None:
    from recordgen.hoof.export.overview import overview_row

    wide = width()
    rows = [_cells(overview_row(horse)) for horse, _ in found]
    lines = list(columns(rows, wide)) if rows else []
    stable = None
    for (horse, seen), line in zip(found, lines, strict=True):
        if horse.stable != stable:
            stable = horse.stable
            echo(stable)
        echo(cut(f"  {line}", wide), colour=_colour(horse))
        for told in columns(_recorded_rows(seen, naming), wide, "      ") if seen else ():
            echo(told)
    echo(_heading(found, with_words))


def _colour(horse: HorseSummary) -> str | None:
    """Red for a horse whose vet is to be called."""
    return "red" if any(caution.level in ("call now", "call today") for caution in horse.cautions) else None


def _heading(found: HorsesFound, with_words: bool) -> Said:
    stables = counted(len({horse.stable for horse, _ in found}), "stable")
    if not found:
        return (
            say("No horse has that.")
            if with_words
            else say("No horse is here. Begin one: recordgen begin; or see those that left: recordgen list --ended")
        )
    return say("{horses} at {stables}.", horses=counted(len(found), "horse"), stables=stables)


def _cells(row: dict[str, str | float | int | None]) -> Sequence[str]:
    class_, urgent = str(row["class"]), row["most_urgent"]
    cautions: Said = counted(int(row["cautions"] or 0), "caution") if row["cautions"] else NOTHING
    if urgent:
        cautions = listed((cautions, _LEVELS[str(urgent)]), ", ")
    seen = say("seen {day}", day=row["last_visit"]) if row["last_visit"] else say("not seen yet")
    told = (_age(row["age_years"]), _CLASSES[class_], seen, _due(row), cautions)
    return str(row["horse"]), str(row["name"]), *map(in_our_words, told)


def _age(years: str | float | None) -> Said:
    if years is None:
        return say("age not told")
    return counted(int(years), "year") if years else say("under a year")


def _due(row: dict[str, str | float | int | None]) -> Said:
    if row["ended"]:
        ended = say("ended {day}", day=row["ended"])
        return listed((ended, str(row["why_ended"])), ", ") if row["why_ended"] else ended
    due = say("due {day}", day=row["due"]) if row["due"] else say("no date yet")
    late = int(row["overdue_days"] or 0)
    return say_counted("{due}, {count} day late", "{due}, {count} days late", late, due=due) if late else due


def _recorded_rows(seen: Iterable[RecordedThing], naming: Naming) -> list[Sequence[str]]:
    return [(str(one.day), ", ".join(_where(one, naming)), one.text) for one in seen]


def _where(one: RecordedThing, naming: Naming) -> Iterator[str]:
    if one.foot:
        yield naming.foot(one.foot)
    yield one.place or one.kind
