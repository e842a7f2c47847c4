"""The sheet as JSON, its dictionary and its edition."""

from __future__ import annotations

import json
from datetime import date
from typing import Any

import jsonschema
import pytest

from recordgen.hoof.export.sheet_csv import COLUMNS
from recordgen.hoof.export.sheet_json import DICTIONARY_COLUMNS, PARTS, dictionary, edition_of, sheet_json
from recordgen.hoof.export.summary_json import as_json
from recordgen.records.models.visit import Visit
from tests.support.full_visits import EARLIER, FULL, sheet
from tests.support.horse_records import REFERENCE, WAYS, visit

STEP = {
    "type": ["object", "null"],
    "required": ["day", "then", "now", "change"],
    "properties": {"day": {"format": "date"}, "change": {"type": "number"}},
}
MEASURE = {
    "required": ["foot", "measure", "unit", "day", "method", "sd", "error", "source", "smallest_real_change"],
    "properties": {
        "day": {"type": "string", "format": "date"},
        "sd": {"type": "number", "exclusiveMinimum": 0},
        "error": {"enum": ["assumed", "own", "published"]},
        "since_last": STEP,
        "since_half_year": STEP,
        "since_first": STEP,
    },
}
SCHEMA = {
    "type": "object",
    "required": list(PARTS),
    "additionalProperties": False,
    "properties": {part: {} for part in PARTS} | {"measures": {"type": "array", "minItems": 1, "items": MEASURE}},
}


def plain(*visits: Visit, **values: Any) -> dict[str, Any]:
    """The plain values of a sheet, through JSON and back."""
    found = sheet_json(sheet(*visits, **values), WAYS)
    again: dict[str, Any] = json.loads(json.dumps(found, allow_nan=False))
    assert again == found
    return again


def test_the_parts_are_those_that_are_promised() -> None:
    """Checked by a schema written here. Source: JSON Schema 2020-12."""
    checker = jsonschema.Draft202012Validator(SCHEMA, format_checker=jsonschema.FormatChecker())

    assert list(checker.iter_errors(plain(EARLIER, FULL))) == []


def test_the_summary_is_the_one_that_is_told_elsewhere() -> None:
    """To the last figure."""
    found = sheet(EARLIER, FULL)

    assert plain(EARLIER, FULL)["summary"] == as_json(found.summary)


def test_a_change_stands_with_both_readings() -> None:
    """Then, now, and their difference."""
    toe = plain(EARLIER, FULL)["measures"][0]

    assert toe["since_last"] == {
        "day": "2026-09-02",
        "then": 78,
        "now": 79,
        "change": 1,
    }


def test_the_dictionary_explains_every_part_column_and_measure() -> None:
    """Each once, and each with a meaning."""
    found = list(dictionary(WAYS))
    names = {kind: [one["name"] for one in found if one["kind"] == kind] for kind in ("part", "column", "measure")}

    assert names == {"part": list(PARTS), "column": list(COLUMNS), "measure": list(REFERENCE.measures)}
    assert all(tuple(one) == DICTIONARY_COLUMNS and one["meaning"] for one in found)


def test_the_dictionary_has_unit_and_landmarks_of_a_measure() -> None:
    """As the table of measures has them."""
    toe = next(one for one in dictionary(WAYS) if one["name"] == "toe_length")

    assert (toe["unit"], toe["landmarks"]) == ("mm", REFERENCE.measures["toe_length"].landmarks)
    assert toe["meaning"] == "toe length: how long the front of the hoof is"


def test_the_dictionary_tells_of_the_apostrophe() -> None:
    """Whoever reads the CSV finds why it is there."""
    name = next(one for one in dictionary(WAYS) if (one["kind"], one["name"]) == ("column", "name"))

    assert "apostrophe" in str(name["meaning"])


def test_text_stands_in_json_as_typed() -> None:
    """The apostrophe is for spreadsheets alone."""
    assert plain(FULL, name="=1+1")["readings"][0]["name"] == "=1+1"


def test_the_same_record_has_the_same_edition() -> None:
    """Ten signs, the same each time."""
    assert edition_of(sheet(EARLIER, FULL)) == edition_of(sheet(EARLIER, FULL))
    assert len(edition_of(sheet(FULL))) == 10


@pytest.mark.parametrize(
    ("visits", "values"),
    [
        pytest.param((FULL,), {}, id="a visit less"),
        pytest.param((EARLIER, FULL), {"note": "x", "sex": "mare"}, id="a mare"),
        pytest.param((EARLIER, FULL), {"today": date(2026, 12, 2)}, id="a day later"),
        pytest.param((EARLIER, FULL), {"amendments": []}, id="amendments looked up"),
        pytest.param((EARLIER, FULL, visit("2026-10-15", lameness={"scale": "AAEP", "grade": 2})), {}, id="a grade"),
    ],
)
def test_what_says_something_else_has_another_edition(visits: tuple[Visit, ...], values: dict[str, Any]) -> None:
    """Whatever changed on the sheet."""
    assert edition_of(sheet(*visits, **values)) != edition_of(sheet(EARLIER, FULL))


def test_no_private_note_is_told() -> None:
    """Neither the horse's nor a visit's."""
    found = json.dumps(plain(visit("2026-10-14", private_note="the gate"), FULL, private_note="the gate"))

    assert "the gate" not in found
    assert "Bramble" in found


def test_a_horse_without_a_visit_is_still_json() -> None:
    """Empty parts are empty, unknown ones null."""
    found = plain()

    assert (found["measures"], found["readings"], found["visits"], found["intervals"]) == ([], [], [], None)
