"""All records as tables: nothing is left out, and what the tables carry comes back as the same visits."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings

from recordgen.csv_text import PlainRow, csv_of
from recordgen.records.load.everything import read_whole
from recordgen.records.load.practice import read_practice
from recordgen.records.models.horse import Horse
from recordgen.records.models.practice import HorseRecord, Practice, StableRecord
from recordgen.records.models.settings import PracticeFile
from recordgen.records.models.stable import Stable
from recordgen.records.models.visit import Visit
from recordgen.records.receive.visits import as_texts
from recordgen.records.sheets.dictionary import dictionary_rows
from recordgen.records.sheets.tables import PlainTable, tables_of
from tests.conftest import RECORDS, TODAY
from tests.support.any_visit import Values, visits
from tests.support.own_sheets import incoming

DAY = "2026-10-14"


def practice_of(*records: Values) -> Practice:
    """A practice of one horse with these visits."""
    found = tuple(Visit.model_validate(as_texts(one)) for one in records)
    horse = HorseRecord("bramble", "willowmere", Horse(name="Bramble"), found)
    stable = StableRecord("willowmere", Stable(name="Willowmere"), (horse,))
    return Practice(Path(), PracticeFile(name="Hazel Hoof Care", trimmer="Wren Ashdown"), (stable,))


def table(practice: Practice, name: str) -> PlainTable:
    """One table of a practice; an empty one where there is none."""
    return next((one for one in tables_of(practice, {}) if one.name == name), PlainTable(name, ()))


def told(found: PlainTable) -> list[PlainRow]:
    """Its rows, less what is empty, and less those that hold keys alone."""
    keys = {column.name for column in found.columns if column.is_key}
    rows: list[PlainRow] = [{name: value for name, value in row.items() if value is not None} for row in found.rows]
    return [row for row in rows if row.keys() - keys]


def back(found: PlainTable) -> list[Values]:
    """The visits that a table gives when it is taken in as a sheet."""
    text = csv_of([column.name for column in found.filled_columns], found.rows)
    read = incoming(text, f"{found.name}.csv")
    assert [problem.as_line() for problem in read.problems if problem.level == "error"] == []
    return [{**one.record, "date": one.day.isoformat()} for one in read.visits]


def _is_carried(value: Any) -> bool:
    """Whether a cell can carry all texts in a record: a dash alone says nothing there, a semicolon parts words."""
    if isinstance(value, dict):
        return all(_is_carried(inner) for inner in value.values())
    if isinstance(value, list):
        return all(_is_carried(inner) and not (isinstance(inner, str) and ";" in inner) for inner in value)
    return not isinstance(value, str) or (" ".join(value.split()).lower() not in ("-", "–", "—", "n/a", "."))


@settings(max_examples=20, deadline=None, suppress_health_check=list(HealthCheck))
@given(visits())
def test_any_visit_comes_back_as_far_as_its_table_carries_it(record: Values) -> None:
    """Written as tables, taken in as a sheet, written again: the same tables, of the visit and of its feet."""
    if not _is_carried(record):
        return
    practice = practice_of({**record, "date": DAY})
    for name in ("visits", "feet"):
        before = told(table(practice, name))
        if before:
            assert told(table(practice_of(*back(table(practice, name))), name)) == before


def test_two_visits_of_one_day_stay_two() -> None:
    """Their number tells them apart."""
    practice = practice_of(
        {"date": DAY, "feet": {"left_fore": {"before": {"toe_length": "88"}}}},
        {"date": DAY, "feet": {"left_fore": {"before": {"toe_length": "86"}}}},
    )

    assert [one["feet"]["left_fore"]["before"] for one in back(table(practice, "feet"))] == [
        {"toe_length": "88"},
        {"toe_length": "86"},
    ]


@pytest.fixture(scope="module")
def demo() -> list[PlainTable]:
    """The tables of the demo practice."""
    whole = read_whole(RECORDS, TODAY)
    return tables_of(whole.practice, whole.reference.care)


def test_every_value_of_a_record_stands_in_a_table(demo: list[PlainTable]) -> None:
    """Of each kind of file in the demo practice, all keys that were typed anywhere are columns, tables or rows."""
    practice, _ = read_practice(RECORDS, TODAY)
    assert practice is not None
    names = {
        part
        for one in demo
        for part in (*one.name.split("_", 1), *(x for c in one.filled_columns for x in c.name.split(".")))
    }
    typed: set[str] = set()
    for horse in practice.horses:
        for visit in horse.visits:
            _gather(
                visit.model_dump(mode="json", by_alias=True, exclude_unset=True, exclude={"feet", "methods"}),
                typed,
            )
            for foot in visit.feet.values():
                _gather(foot.model_dump(mode="json", by_alias=True, exclude_unset=True), typed)

    missing = {name for name in typed if not any(name == part or part.endswith(name) for part in names)}
    assert missing == set()


def _gather(value: Any, into: set[str]) -> None:
    if isinstance(value, dict):
        for key, inner in value.items():
            if inner not in (None, [], {}):
                into.add(key)
                _gather(inner, into)
    elif isinstance(value, list):
        for inner in value:
            _gather(inner, into)


def test_the_dictionary_explains_every_column_once(demo: list[PlainTable]) -> None:
    """Each with a meaning and a form; a quantity with its unit and what is possible, a choice with its words."""
    rows = list(dictionary_rows(demo))
    of_toe = next(row for row in rows if (row["table"], row["column"]) == ("feet", "before.toe_length"))
    of_landing = next(row for row in rows if (row["table"], row["column"]) == ("feet", "landing"))

    assert [(row["table"], row["column"]) for row in rows] == [
        (one.name, c.name) for one in demo for c in one.filled_columns
    ]
    assert [row for row in rows if not row["meaning"] or not row["form"]] == []
    assert (of_toe["form"], of_toe["unit"], of_toe["lowest"], of_toe["highest"]) == ("number", "mm", 20, 250)
    assert of_landing["codes"] == "heel first; flat; toe first; lateral first; medial first"


def test_a_row_is_known_by_its_keys_alone(demo: list[PlainTable]) -> None:
    """No two rows of a table have the same keys, so that tables can be joined."""
    for one in demo:
        keys = [column.name for column in one.filled_columns if column.is_key]
        if one.name not in ("practice", "photographs"):
            assert len({tuple(row[key] for key in keys) for row in one.rows}) == len(one.rows), one.name


def test_a_list_keeps_what_bears_the_name_of_a_key() -> None:
    """A vet's own day and the day from which a caution is over stand beside the day of the visit."""
    practice = practice_of(
        {
            "date": DAY,
            "vet": [{"date": "2026-10-02", "by": "Dr Sage", "kind": "seen"}],
            "resolved": [{"caution": "wound", "date": "2026-10-09", "by": "Wren Ashdown"}],
        }
    )

    assert [(row["date"], row["vet.date"]) for row in table(practice, "visits_vet").rows] == [(DAY, "2026-10-02")]
    assert [row["resolved.date"] for row in table(practice, "visits_resolved").rows] == ["2026-10-09"]


def test_a_list_within_a_list_tells_whose_it_is() -> None:
    """The place of the vet's entry stands beside it, so that two vets are told apart."""
    ends = ({"date": DAY, "by": by, "kind": "seen", "ends": [one]} for by, one in (("A", "wound"), ("B", "heat")))
    found = table(practice_of({"date": DAY, "vet": list(ends)}), "visits_vet_ends")

    assert [(row["vet.position"], row["position"], row["caution"]) for row in found.rows] == [
        (1, 1, "wound"),
        (2, 1, "heat"),
    ]
    assert [column.name for column in found.filled_columns if column.is_key][-2:] == ["vet.position", "position"]


def test_a_care_note_that_was_named_brings_its_words(demo: list[PlainTable]) -> None:
    """A visit names a note; its words stand in the library, without which the name tells little."""
    named = {row["what"] for one in demo if one.name == "visits_care" for row in one.rows}
    words = {row["name"]: row["what"] for one in demo if one.name == "care_notes" for row in one.rows}

    assert "dry-bed" in words
    assert words.keys() <= named
    assert all(words.values())


def test_no_sign_is_told_from_not_looked() -> None:
    """A horse that showed none, and one that nobody looked at."""
    rows = table(practice_of({"date": DAY, "signs": "none"}, {"date": "2026-11-20"}), "visits").rows

    assert [row["signs"] for row in rows] == ["none", None]


def test_a_finding_without_a_size_is_seen() -> None:
    """A gap at the white line that nobody measured."""
    feet: Values = {"left_fore": {"wall": {"toe": {"separation": {}}}}}
    found = table(practice_of({"date": DAY, "feet": feet}), "feet")

    assert found.rows[0]["wall.toe.separation"] == "seen"
    assert back(found)[0]["feet"] == feet
