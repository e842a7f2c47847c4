"""Names that must stand in the reference tables."""

import pytest

from recordgen.records.archive import read_practice
from recordgen.records.reference import Reference
from tests.records.building import FILES, TODAY, VISIT, VISIT_FILE, build

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


def told(folder, files=None):
    """Line and sentence of each problem."""
    _, problems = read_practice(build(folder, files), TODAY, None, REFERENCE)
    return [(problem.place.line, f"{problem.message}. {problem.way_out}") for problem in problems]


def test_names_of_the_tables_are_fine(tmp_path):
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
def test_a_name_that_no_table_knows_is_told_in_a_visit(tmp_path, more, expected):
    """At its line, with the nearest one."""
    assert told(tmp_path, {VISIT_FILE: VISIT + more}) == [expected]


def test_a_care_note_that_no_table_knows_is_told(tmp_path):
    """A slip in its name would show the owner the bare name."""
    text = VISIT.replace("dry-bed", "dry-beds")

    assert told(tmp_path, {VISIT_FILE: text}) == [(15, "no care note is named 'dry-beds'. Did you mean dry-bed?")]


def test_a_method_that_no_table_knows_is_told_in_the_practice(tmp_path):
    """The practice's own way is checked alike."""
    text = FILES["practice.yaml"] + "methods: {toe_angle: ruler}\n"

    assert told(tmp_path, {"practice.yaml": text}) == [
        (3, "toe_angle is not taken by 'ruler'. Choose from gauge, photograph")
    ]
