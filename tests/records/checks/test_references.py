"""Names that must stand in the reference tables."""

from collections.abc import Mapping
from pathlib import Path

import pytest

from recordgen.records.load.practice import read_practice
from recordgen.records.load.tables import read_reference
from recordgen.records.models.reference import Reference
from tests.support.practice_folders import FILES, TODAY, VISIT, VISIT_FILE, build, line_of

MEASURE = {"name": "x", "plain": "x", "landmarks": "x", "view": "side"}
REFERENCE = Reference.model_validate(
    {
        "measures": {
            "toe_angle": {
                **MEASURE,
                "methods": {"gauge": {"sd": "1", "source": "x"}, "photograph": {"sd": "2", "source": "x"}},
            },
            "flare": {**MEASURE, "methods": {"rule": {"sd": "1", "source": "x"}}},
            "medial_less_lateral": MEASURE,
        },
        "care": {
            name: {"what": "x", "why": "x", "how_often": "x", "source": "x"} for name in ("daily-grooves", "dry-bed")
        },
        "cautions": {"hot-foot": {"level": "call today", "seen": "x", "meanwhile": "x", "source": "x"}},
    }
)


def told(folder: Path, files: Mapping[str, str | None] | None = None) -> list[tuple[int, str]]:
    """Line and sentence of each problem."""
    _, problems = read_practice(build(folder, files), TODAY, None, REFERENCE)
    return [(problem.place.line, f"{problem.message}. {problem.way_out}") for problem in problems]


def test_names_of_the_tables_are_fine(tmp_path: Path) -> None:
    """Methods, also of one zone of the wall, care notes by name and in words, cautions."""
    more = "methods: {toe_angle: gauge, flare_lateral_quarter: rule}\n"
    more += "resolved: [{caution: hot-foot, date: 2026-10-14, by: A vet}]\n"
    text = VISIT.replace("[daily-grooves, dry-bed]", "[daily-grooves, Rest, pick out daily]") + more

    assert told(tmp_path, {VISIT_FILE: text}) == []


@pytest.mark.parametrize(
    ("more", "expected"),
    [
        ("methods: {toe_angel: gauge}\n", (17, "no measure is named 'toe_angel'. Did you mean toe_angle?")),
        ("methods: {toe_angle: eye}\n", (17, "toe_angle is not taken by 'eye'. Choose from gauge, photograph")),
        (
            "methods: {medial_less_lateral: rule}\n",
            (17, "no measure is named 'medial_less_lateral'. Known are flare, toe_angle"),
        ),
        (
            "resolved: [{caution: hot-feet, date: 2026-10-14, by: A vet}]\n",
            (17, "no caution is named 'hot-feet'. Did you mean hot-foot?"),
        ),
    ],
)
def test_a_name_that_no_table_knows_is_told_in_a_visit(tmp_path: Path, more: str, expected: tuple[int, str]) -> None:
    """At its line, with the nearest one."""
    assert told(tmp_path, {VISIT_FILE: VISIT + more}) == [expected]


def test_a_care_note_that_no_table_knows_is_told(tmp_path: Path) -> None:
    """A slip in its name would show the owner the bare name."""
    text = VISIT.replace("dry-bed", "dry-beds")

    assert told(tmp_path, {VISIT_FILE: text}) == [(15, "no care note is named 'dry-beds'. Did you mean dry-bed?")]


def test_a_method_that_no_table_knows_is_told_in_the_practice(tmp_path: Path) -> None:
    """The practice's own way is checked alike."""
    text = FILES["practice.yaml"] + "methods: {toe_angle: ruler}\n"

    assert told(tmp_path, {"practice.yaml": text}) == [
        (3, "toe_angle is not taken by 'ruler'. Choose from gauge, photograph")
    ]


EARLIER_FILE = "willowmere/bramble/2026-09-01.yaml"
EARLIER = "date: 2026-09-01\nfeet: {LF: {landing: flat}}\ncare: [dry-bed, Walk in hand]\n"
LATER = "date: 2026-10-14\nfeet: {LF: {landing: flat}}\n"


@pytest.mark.parametrize(
    "ends", ["yes", "no", "all", "dry-bed", "[dry-bed, Walk in hand]", "[walk in  hand]", "", "[]"]
)
def test_care_notes_in_force_may_end(tmp_path: Path, ends: str) -> None:
    """All, or by their names, or by their words."""
    assert told(tmp_path, {EARLIER_FILE: EARLIER, VISIT_FILE: f"{LATER}care_ends: {ends}\n"}) == []


@pytest.mark.parametrize(
    ("earlier", "way_out"),
    [
        (EARLIER, "Did you mean dry-bed?"),
        (EARLIER.replace("dry-bed", "boots"), "In force then: boots, Walk in hand"),
        (EARLIER.replace("care: [dry-bed, Walk in hand]", "note: x"), "None is in force then; take it out"),
        (None, "None is in force then; take it out"),
    ],
)
def test_a_care_note_that_is_not_in_force_cannot_end(tmp_path: Path, earlier: str | None, way_out: str) -> None:
    """It is a warning at its line, with the nearest one or those that are."""
    files = {EARLIER_FILE: earlier, VISIT_FILE: f"{LATER}care_ends: [dry-beds]\n"}

    assert told(tmp_path, files) == [(3, f"no care note named 'dry-beds' is in force. {way_out}")]


def test_what_a_visit_ends_is_not_in_force_at_the_next(tmp_path: Path) -> None:
    """Nor what it replaces; a second visit of the day comes after the first."""
    first, second = f"{LATER}care_ends: [dry-bed]\n", f"{LATER}note: x\ncare_ends: [dry-bed]\n"
    files = {EARLIER_FILE: EARLIER, VISIT_FILE: first, VISIT_FILE.replace(".yaml", "-b.yaml"): second}

    assert told(tmp_path, files) == [(4, "no care note named 'dry-bed' is in force. In force then: Walk in hand")]


def test_nothing_is_told_of_care_after_a_visit_that_could_not_be_read(tmp_path: Path) -> None:
    """Its care notes may be what is missing."""
    files = {EARLIER_FILE: EARLIER + "wrong: x\n", VISIT_FILE: f"{LATER}care_ends: [boots-fit]\n"}

    assert [line for line, _ in told(tmp_path, files)] == [4]


@pytest.mark.parametrize(
    ("months", "expected"),
    [
        ("{wet_months: [13]}", "seasons, wet_months, number 1: 13 is no month. "),
        ("{wet_months: [oct]}", "'oct' does not read as a number"),
        ("{wet: [1]}", "'wet' is not a known key here"),
    ],
)
def test_months_of_a_practice_that_are_none_are_told(tmp_path: Path, months: str, expected: str) -> None:
    """With the way to write them."""
    text = FILES["practice.yaml"] + f"seasons: {months}\n"
    (found,) = told(tmp_path, {"practice.yaml": text})

    assert (found[0], expected in found[1]) == (3, True), found


@pytest.mark.parametrize("file", ["care/stable.yaml", "willowmere/care/horse.yaml"])
def test_a_stable_or_horse_where_care_notes_belong_is_told(tmp_path: Path, file: str) -> None:
    """It would be lost without a word."""
    (found,) = told(tmp_path, {file: "name: Care\n"})

    assert "a folder named care is read for something else" in found[1]


def test_care_notes_are_no_stable(tmp_path: Path) -> None:
    """Their folder lies among the stables."""
    assert told(tmp_path, {"care/over-the-bridge.yaml": "what: x\n"}) == []


STABLES = {"old-mill/stable.yaml": "name: Old Mill\n", "tithe-barn/stable.yaml": "name: Tithe Barn\n"}


@pytest.mark.parametrize(
    ("near", "expected"),
    [
        ("[old-mill, tithe-barn]", []),
        ("[old-mill, tithe-bran]", [(2, "no stable is named 'tithe-bran'. Did you mean tithe-barn?")]),
        ("[Old Mill]", [(2, "no stable is named 'Old Mill'. Did you mean old-mill?")]),
        ("[x]", [(2, "no stable is named 'x'. Known are old-mill, tithe-barn, willowmere")]),
    ],
)
def test_a_stable_near_another_must_be_one_of_the_practice(
    tmp_path: Path, near: str, expected: list[tuple[int, str]]
) -> None:
    """Named by its folder."""
    text = f"name: Willowmere\nnear: {near}\n"

    assert told(tmp_path, {**STABLES, "willowmere/stable.yaml": text}) == expected


def test_a_neighbour_is_known_where_one_stable_is_read_alone(tmp_path: Path) -> None:
    """The others are there, though they are not read."""
    files = {**STABLES, "willowmere/stable.yaml": "name: Willowmere\nnear: [old-mill, hill]\n"}
    _, problems = read_practice(build(tmp_path, files), TODAY, "willowmere", REFERENCE)

    assert [problem.message for problem in problems] == ["no stable is named 'hill'"]


@pytest.mark.parametrize(
    ("aim", "told"),
    [
        ("{measure: flair, zone: toe, under: 2}", "no measure is named 'flair'. Did you mean flare?"),
        ("{measure: flare, under: 2}", "flare is of a zone of the wall. Add zone:"),
        ("{measure: toe_length, zone: toe, under: 80}", "toe_length is of the whole foot. Take out zone:"),
        ("{measure: toe_length}", "an aim has either under or over"),
        ("{measure: toe_length, under: 80, over: 70}", "an aim has either under or over"),
    ],
)
def test_an_aim_names_a_measure_and_one_value(tmp_path: Path, aim: str, told: str) -> None:
    """With its file and line, and the way out."""
    folder = build(tmp_path, {"willowmere/bramble/horse.yaml": f"name: Bramble\naims:\n  - {aim}\n"})
    _, problems = read_practice(folder, TODAY, reference=read_reference(None)[0])

    (line,) = [line_of(problem) for problem in problems]
    assert "horse.yaml:3:" in line
    assert told in line
