"""Stables and horses as words of a command: told by folder or by name, and offered while they are typed."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import click
from click.shell_completion import CompletionItem

from recordgen.problems import quoted
from recordgen.sentences import Said, say, sentences


class _NamedPlace(click.ParamType):  # type: ignore[type-arg]
    """A stable or a horse of the records."""

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> str:
        """The folder that is meant; what fits nothing goes through as typed, to be told by who reads it."""
        found = self.meant(records_of(ctx), str(value))
        if len(found) > 1:
            self.fail(
                say(
                    "{value} can be any of {found}. Name one of them.", value=quoted(str(value)), found=", ".join(found)
                ),
                param,
                ctx,
            )
        return found[0] if found else str(value)

    def shell_complete(self, ctx: click.Context, param: click.Parameter, incomplete: str) -> list[CompletionItem]:
        """The folders that begin as typed, or whose names do, each with its name."""
        begun = incomplete.casefold()
        return [
            CompletionItem(slug, help=name)
            for slug, name in self.all(records_of(ctx))
            if any(one.casefold().startswith(begun) for one in (slug, name, slug.rpartition("/")[2]))
        ]

    def meant(self, records: Path, typed: str) -> list[str]:
        """The folders that somebody may mean."""
        raise NotImplementedError

    def all(self, records: Path) -> Iterator[tuple[str, str]]:
        """Every folder with its name."""
        raise NotImplementedError


class StableName(_NamedPlace):
    """A stable by its folder, or by its name in any case."""

    name = "stable"

    def meant(self, records: Path, typed: str) -> list[str]:
        """The stables that somebody may mean."""
        from recordgen.records.load.named import stables_meant

        return stables_meant(records, typed)

    def all(self, records: Path) -> Iterator[tuple[str, str]]:
        """Every stable's folder with its name."""
        from recordgen.records.load.named import all_stables

        return all_stables(records)


class HorseName(_NamedPlace):
    """A horse as stable/horse, by folders or names; by the horse's name alone where one horse bears it."""

    name = "horse"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> str:
        """The horse as stable/horse."""
        found = super().convert(value, param, ctx)
        if "/" in found:
            return found
        return self.fail(self.explain_unknown(found, records_of(ctx)), param, ctx)

    def one(self, records: Path, typed: str) -> str:
        """The one horse that is meant; what was typed where it is not clear."""
        found = self.meant(records, typed)
        return found[0] if len(found) == 1 else typed

    def near(self, typed: str, records: Path) -> str | None:
        """The horse nearest to what was typed, by its own name or its folder's; None where none is near."""
        from recordgen.nearest import nearest

        names: dict[str, str] = {}
        for which, name in self.all(records):
            names |= {name: which, which.partition("/")[2]: which}
        found = nearest(typed, names)
        return names[found] if found else None

    def explain_unknown(self, typed: str, records: Path) -> Said:
        """The sentences about a horse that is not there."""
        example = say("Name the stable and the horse, such as willowmere/bramble")
        if StableName().meant(records, typed):
            return sentences(say("{name} is a stable", name=quoted(typed)), example)
        near = self.near(typed, records)
        way_out = say("Did you mean {name}?", name=near) if near else example
        return sentences(say("There is no horse {horse} in these records", horse=quoted(typed)), way_out)

    def meant(self, records: Path, typed: str) -> list[str]:
        """The horses that somebody may mean."""
        from recordgen.records.load.named import horses_meant

        return horses_meant(records, typed)

    def all(self, records: Path) -> Iterator[tuple[str, str]]:
        """Every horse as stable/horse with its name."""
        from recordgen.records.load.named import all_horses

        return all_horses(records)


class HorseOrStable(_NamedPlace):
    """A stable, or a horse: a stable of that name goes first."""

    name = "stable or horse"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> str:
        """The folder that is meant; one that is no stable's and near to a horse's is told with that."""
        found = super().convert(value, param, ctx)
        records = records_of(ctx)
        if "/" in found or StableName().meant(records, found) or not HorseName().near(found, records):
            return found
        return self.fail(HorseName().explain_unknown(found, records), param, ctx)

    def meant(self, records: Path, typed: str) -> list[str]:
        """The stables that somebody may mean, else the horses."""
        return StableName().meant(records, typed) or HorseName().meant(records, typed)

    def all(self, records: Path) -> Iterator[tuple[str, str]]:
        """Every stable's and every horse's folder with its name."""
        yield from StableName().all(records)
        yield from HorseName().all(records)


def records_of(ctx: click.Context | None) -> Path:
    """The folder of the records that the command was given, or found."""
    from recordgen.records.home import found_records

    given = ctx.params.get("records") if ctx else None
    return Path(given) if given else found_records()


def horse_argument(function: Callable[..., Any]) -> Callable[..., Any]:
    """The word of a command that names one horse."""
    return click.argument("which", metavar="STABLE/HORSE", type=HorseName())(function)


def stable_option(help_: str) -> Callable[[Callable[..., Any]], Callable[..., Any]]:
    """--stable: the one stable that is looked at. help_: what is done with it alone."""
    return click.option("--stable", type=StableName(), help=help_)
