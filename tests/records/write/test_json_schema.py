"""The schemas an editor completes and checks with."""

import datetime as dt
import json
from pathlib import Path
from typing import get_args

import jsonschema
import pytest

from recordgen.records.models.visit import Visit
from recordgen.records.write.json_schema import FileKind, schema
from recordgen.records.write.visit import skeleton
from recordgen.records.yaml.read import read_record
from tests.support.practice_folders import VISIT, practice
from tests.support.schema import complaints

KINDS = get_args(FileKind)


@pytest.mark.parametrize("kind", KINDS)
def test_a_schema_is_a_schema(kind: FileKind) -> None:
    """It holds to JSON Schema 2020-12, and is the same on every run."""
    jsonschema.Draft202012Validator.check_schema(schema(kind))

    assert json.dumps(schema(kind)) == json.dumps(schema(kind))
    assert schema(kind)["$schema"] == "https://json-schema.org/draft/2020-12/schema"


def test_the_example_visit_has_nothing_underlined() -> None:
    """A visit as it is typed."""
    assert complaints(VISIT) == []


def test_a_new_visits_file_has_nothing_underlined(tmp_path: Path) -> None:
    """Its empty lines stand until somebody fills them in."""
    text = skeleton(practice(tmp_path).horses[0], dt.date(2026, 11, 25))

    assert complaints(text) == []


@pytest.mark.parametrize("name", ["near_fore", "LF", "Left fore", "off-hind"])
def test_other_spellings_of_a_foot_are_allowed_and_one_is_offered(name: str) -> None:
    """The editor completes left_fore and takes the others."""
    assert complaints(VISIT.replace("left_fore", name)) == []
    assert next(iter(schema("visit")["properties"]["feet"]["properties"])) == "left_fore"


@pytest.mark.parametrize(
    ("right", "wrong", "place"),
    [
        ("since_last:", "since_lst:", ""),
        ("toe_length: 86", "toe_lenght: 86", "feet/left_fore/before"),
        ("left_fore:", "left_four:", "feet"),
        ("medial toe quarter:", "medial toe quarters:", "feet/left_fore/wall"),
        ("toe_length: 86", "toe_length: 860", "feet/left_fore/before/toe_length"),
        ("toe_length: 86", "toe_length: long", "feet/left_fore/before/toe_length"),
        ("toe_length: 86", "toe_length: [86]", "feet/left_fore/before/toe_length"),
        ("infection: surface", "infection: surfase", "feet/left_fore/frog/infection"),
        ("date: 2026-10-14", "by: somebody", ""),
    ],
)
def test_a_slip_is_underlined(right: str, wrong: str, place: str) -> None:
    """Keys, names, ranges, words to choose from, and what must be there."""
    assert complaints(VISIT.replace(right, wrong, 1)) == [place]


@pytest.mark.parametrize(
    ("right", "other"),
    [
        ("toe_length: 86", "toe_length: 3 1/4 in"),
        ("toe_length: 86", "toe_length: 8.2 cm"),
        ("toe_length: 86", "toe_length: 3½ in"),
        ("toe_length: 86", "toe_length: "),
        ("frog: {infection: surface, central_groove_depth: 7}", "frog:"),
        ("shedding: true", "shedding: yes"),
        ("medial toe quarter:", "medial_toe_quarter:"),
        ("care: [daily-grooves, dry-bed]", "care: [{what: Dry bed, until: June}, daily-grooves]"),
        ("care: [daily-grooves, dry-bed]", "resolved: [{caution: x, foot: near_fore, date: 2026-10-01, by: y}]"),
        ("since_last: Out on the hill with the herd, dry and windy.", "since_last: no"),
    ],
)
def test_what_reading_allows_is_not_underlined(right: str, other: str) -> None:
    """Units, empty values, yes and no, other spellings, care notes written out."""
    assert complaints(VISIT.replace(right, other, 1)) == []


def test_a_measure_carries_unit_range_and_what_most_have() -> None:
    """Descriptions name the unit; numbers have a least and a most."""
    toe = schema("visit")["$defs"]["Measures"]["properties"]["toe_length"]

    assert toe["description"].endswith("(mm)")
    assert (toe["minimum"], toe["maximum"], toe["x-unit"], toe["x-likely"]) == (20, 250, "mm", [45, 120])


@pytest.mark.parametrize("kind", KINDS)
def test_every_range_says_where_it_comes_from(kind: FileKind) -> None:
    """A source, common practice or a judgement; what follows from the thing itself says so."""
    marks = ("Derived from: ", "As for the toe angle", "Judgement", "Common practice, no source", "By definition")
    parts = [schema(kind), *schema(kind).get("$defs", {}).values()]
    ranges = [field for part in parts for field in part["properties"].values() if "x-likely" in field]

    assert all(field["x-basis"].startswith(marks) for field in ranges)
    assert ranges or kind in ("stable", "shared")


@pytest.mark.parametrize(
    ("signs", "wrong"),
    [("none", False), ("no", False), ("[]", False), ("[leans back]", False), ("[dances]", True), ("dances", True)],
)
def test_no_sign_may_be_said_in_a_word(tmp_path: Path, signs: str, wrong: bool) -> None:
    """The schema and reading take the same."""
    file = tmp_path / "2026-10-14.yaml"
    file.write_text(f"date: 2026-10-14\nsigns: {signs}\n")

    assert bool(complaints(file.read_text())) is wrong
    assert bool(read_record(file, file.name, Visit)[1]) is wrong


@pytest.mark.parametrize("kind", KINDS)
def test_no_key_of_the_program_is_left_in_a_schema(kind: FileKind) -> None:
    """Only words of JSON Schema, our own marked by x-, and a description for each field."""
    text = json.dumps(schema(kind))

    assert not [key for key in ("ge", "le", "unit", "likely", "possible", "basis") if f'"{key}":' in text]
    for part in [schema(kind), *schema(kind).get("$defs", {}).values()]:
        assert all(field.get("description") for field in part["properties"].values())


@pytest.mark.parametrize(
    ("kind", "text"),
    [
        ("practice", "name: Hazel Hoof Care\ntrimmer: Wren Ashdown\ncountry: GB\nworking_days: [mon, sat]\n"),
        ("stable", "name: Willowmere\nvet: {name: Somebody, phone: 01234}\n"),
        ("horse", "name: Bramble\nborn: 2015\nheight: 14.2 hh\nmicrochip: 968000004531234\nusual_weeks: 6\n"),
        ("shared", "shared:\n- {date: 2026-11-02, to: Three Larches, edition: 0123abcd, what: [html, pdf]}\n"),
    ],
)
def test_the_other_files_have_nothing_underlined(kind: FileKind, text: str) -> None:
    """Practice, stable, horse, and whom it was shared with."""
    assert complaints(text, kind) == []
