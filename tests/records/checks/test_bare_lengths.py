"""Lengths without their unit in a practice that measures in inches."""

from pathlib import Path

import pytest

from recordgen.problems import Problem
from recordgen.records.load.practice import read_practice
from recordgen.records.load.tables import read_reference
from tests.support.practice_folders import TODAY, VISIT_FILE, build

INCHES = "name: Hazel Hoof Care\ntrimmer: Wren Ashdown\nunits: inches\n"
REFERENCE = read_reference(None)[0]


def found(folder: Path, feet: str, practice: str = INCHES, **files: str) -> list[Problem]:
    """Everything that is told of a practice with one visit, whose feet are these."""
    visit = f"date: 2026-10-14\nfeet: {{left_fore: {{{feet}}}}}\nnext: {{weeks: 5}}\n"
    horse = {"willowmere/bramble/horse.yaml": files["horse"]} if files else {}
    records = build(folder, {"practice.yaml": practice, VISIT_FILE: visit, **horse})
    return list(read_practice(records, TODAY, None, REFERENCE)[1])


@pytest.mark.parametrize(
    ("feet", "way_out"),
    [
        ("before: {heel_height: {medial: 1.5, lateral: 1 in}}", "Write medial: 1.5 in"),
        ("wall: {toe: {separation: {depth: 4}}}", "Write depth: 4 mm"),
        ("wall: {toe: {flare: 1/4}}", "Write flare: 1/4 in"),
        ("wall: {toe: {flare: ½}}", "Write flare: ½ in"),
        ("wall: {toe: {separation: {length: 5}}}", "Write length: 5 mm or length: 5 in"),
        ("before: 3.2in h1.25/1.5in", "Write medial: 1.25 in"),
    ],
)
def test_what_could_be_either_is_asked_for(tmp_path: Path, feet: str, way_out: str) -> None:
    """A bare number that a foot could have in inches is refused, with the line to write; a fraction always is."""
    problems = found(tmp_path, feet)

    assert [(one.code, one.way_out) for one in problems if one.level == "error"] == [("unit-missing", way_out)]


@pytest.mark.parametrize(
    "feet",
    [
        "before: {toe_length: 3 3/16 in, heel_height: {medial: 33, lateral: 1 1/4 in}, toe_angle: 1.5e1}",
        "before: {toe_length: 81}",
        "before: 81 h33/34 a50",
        "before: 3-3/16in h1-1/4in/1-5/16in a50",
        'before: {toe_length: 3.2", heel_height: {medial: 4 cm, lateral: 41 mm}}',
        "wall: {toe: {flare: 3}}",
    ],
)
def test_what_can_be_one_alone_stands(tmp_path: Path, feet: str) -> None:
    """A length with its unit stands, and so does a bare one that no foot could have in inches: it is millimetres."""
    assert "unit-missing" not in {one.code for one in found(tmp_path, feet)}


@pytest.mark.parametrize("since", ["", "inches_since: 2026-10-14\n"])
def test_older_visits_keep_their_bare_millimetres(tmp_path: Path, since: str) -> None:
    """Visits before the day from which inches are typed are not asked about; without one, and in metric, none is."""
    feet = "wall: {toe: {flare: 1}}"
    older = "inches_since: 2026-10-15\n"

    assert [one.code for one in found(tmp_path / "asked", feet, INCHES + since)] == ["unit-missing"]
    assert found(tmp_path / "older", feet, INCHES + older) == []
    assert found(tmp_path / "metric", feet, INCHES.replace("inches", "metric")) == []


@pytest.mark.parametrize(
    ("line", "way_out"),
    [
        ("height: 60", "Write height: 60 in"),
        ("aims: [{measure: flare, zone: toe, under: 2}]", "Write under: 2 mm or under: 2 in"),
        ("aims: [{measure: flare_change, under: 1/8}]", None),
        ("aims: [{measure: toe_angle, over: 50}]", None),
        ("height: 14.2 hh", None),
        ("height: 148", None),
    ],
)
def test_a_horse_is_asked_about_too(tmp_path: Path, line: str, way_out: str | None) -> None:
    """A height and the aims at lengths follow the same rule; hands and angles have no doubt."""
    problems = found(tmp_path, "landing: flat", horse=f"name: Bramble\n{line}\n")

    assert [one.way_out for one in problems if one.code == "unit-missing"] == ([way_out] if way_out else [])


def test_a_range_is_told_in_the_unit_that_was_typed(tmp_path: Path) -> None:
    """Possible and likely lengths are told in inches where inches were typed, and so is a length that a trim added."""
    impossible = found(tmp_path / "one", "before: {toe_length: 11 in}")[0]
    unlikely = found(tmp_path / "two", "wall: {toe: {flare: 1 1/2 in}}")[0]
    added = found(tmp_path / "three", "before: {toe_length: 3 in}, after: {toe_length: 3 1/16 in}")[0]

    assert "11 in is not possible; 13/16 to 9 13/16 in is" in impossible.message
    assert "1 1/2 in is outside 0 to 13/16, so look again" in unlikely.message
    assert "3 1/16 in after, 3 in before; a trim cannot add" in added.message
    assert added.way_out.endswith("two readings can differ by 0.15 in")
