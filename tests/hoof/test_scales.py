"""Grades in words, each on its own scale, and the grades of one scale through the visits."""

from __future__ import annotations

import ast
from datetime import date
from pathlib import Path
from typing import Any, get_args

import pytest

from recordgen.hoof import scales
from recordgen.hoof.cautions.rules import horse as caution_horse
from recordgen.hoof.cautions.rules import lameness as caution_lameness
from recordgen.hoof.cautions.rules.lameness import MARKED_LAMENESS, OBEL_HIGH, PAIN_SCALE, SEVERE_LAMENESS
from recordgen.hoof.scales import CONDITION_SCALES, Grade, grade_words, grades_by_scale
from recordgen.records.models.annotations import extra, field_at
from recordgen.records.models.visit import IN_HALVES, LAMENESS_SCALES, Condition, Lameness
from tests.support.horse_records import NAMING, REFERENCE, visit
from tests.support.words import NEVER_SAID, texts

TABLE = REFERENCE.scales
WORDED = [scale for scale, words in TABLE.items() if words.grades]


def words(scale: str, grade: float) -> str:
    """A grade in the words of our table."""
    return grade_words(scale, grade, TABLE, NAMING)


def test_the_table_and_the_records_know_the_same_scales() -> None:
    """Those of lameness and those of condition, and no other."""
    named = get_args(Lameness.model_fields["scale"].annotation)

    assert set(named) == set(LAMENESS_SCALES)
    assert set(TABLE) == {*LAMENESS_SCALES, *CONDITION_SCALES.values()}


@pytest.mark.parametrize("scale", LAMENESS_SCALES)
def test_the_table_and_the_records_agree_about_grades_of_lameness(scale: str) -> None:
    """Lowest, highest, and from one to the next."""
    assert (TABLE[scale].low, TABLE[scale].high) == LAMENESS_SCALES[scale]
    assert TABLE[scale].step == (0.5 if scale in IN_HALVES else 1)


@pytest.mark.parametrize(("field", "scale"), CONDITION_SCALES.items())
def test_the_table_and_the_records_agree_about_condition(field: str, scale: str) -> None:
    """The possible grades of a record are what the scale holds, in halves."""
    assert extra(field_at(Condition, [field]))["possible"] == [TABLE[scale].low, TABLE[scale].high]
    assert (TABLE[scale].step, scale in IN_HALVES) == (0.5, True)


@pytest.mark.parametrize("scale", WORDED)
def test_every_whole_grade_has_its_words(scale: str) -> None:
    """From the lowest to the highest."""
    assert list(TABLE[scale].grades) == list(range(int(TABLE[scale].low), int(TABLE[scale].high) + 1))


@pytest.mark.parametrize("scale", ["modified Obel", "Horse Grimace"])
def test_a_total_is_told_as_a_total(scale: str) -> None:
    """The points of each sign are not published here, and none are made up."""
    assert TABLE[scale].grades == {}
    assert words(scale, 8) == f"total 8 of 12 ({scale}): {TABLE[scale].meaning}"


@pytest.mark.parametrize(
    ("scale", "grade", "expected"),
    [
        ("AAEP", 3, "grade 3 of 5 (AAEP): seen at every trot"),
        ("AAEP", 2.5, f"grade 2.5 of 5 (AAEP): between '{TABLE['AAEP'].grades[2]}' and 'seen at every trot'"),
        ("0-10", 5, "grade 5 of 10 (0 to 10): moderate"),
        ("0-10", 4.5, "grade 4.5 of 10 (0 to 10): moderate"),
        ("0-10", 3.5, "grade 3.5 of 10 (0 to 10): between 'mild' and 'moderate'"),
        ("Obel", 4, "grade 4 of 4 (Obel): moves only when forced"),
        ("body condition", 3, f"score 3 of 9 (Henneke): {TABLE['body condition'].grades[3]}"),
        ("crest", 0, "score 0 of 5 (crest): no crest seen or felt"),
    ],
)
def test_a_grade_in_words(scale: str, grade: float, expected: str) -> None:
    """With the top of its scale and its name; a half lies between its neighbours."""
    assert words(scale, grade) == expected


def test_a_grade_without_words_tells_what_the_scale_does() -> None:
    """A practice that words some grades alone, and a half between one with words and one without."""
    some = {"crest": TABLE["crest"].model_copy(update={"grades": {1.0: "soft"}})}
    told = [grade_words("crest", grade, some, NAMING).split("): ")[1] for grade in (1, 1.5, 0.5, 2)]

    assert told == ["soft"] + [TABLE["crest"].meaning] * 3


@pytest.mark.parametrize(("scale", "grade"), [("AAEP", 5.5), ("AAEP", -1), ("AAEP", 2.3), ("Obel", 1.5), ("crest", 6)])
def test_a_grade_that_is_not_on_its_scale(scale: str, grade: float) -> None:
    """No words are made up for it."""
    with pytest.raises(ValueError, match="is not on the scale"):
        words(scale, grade)


def test_no_grade_is_told_without_a_scale() -> None:
    """A name that is not in the table is no scale."""
    with pytest.raises(KeyError):
        words("", 2)


def test_every_scale_says_where_it_comes_from() -> None:
    """A source; what was not read is marked; no text says what only a vet may say."""
    assert all(scale.source.strip() for scale in TABLE.values())
    assert "Grade 4: From memory, not read" in TABLE["crest"].source
    assert [text for text in texts(TABLE) if NEVER_SAID.search(text)] == []


def test_grades_through_the_visits_are_apart_by_scale() -> None:
    """Each with its day; a scale that was not used is not there, and no row holds two."""
    visits = [
        visit("2026-06-01", lameness={"scale": "AAEP", "grade": 2}, condition={"henneke": 5}),
        visit("2026-07-01", lameness={"scale": "0-10", "grade": 3, "note": "left fore"}, condition={"girth": 180}),
        visit("2026-08-01", lameness={"scale": "AAEP", "grade": 0}, condition={"henneke": 6, "crest": 2}),
    ]

    assert grades_by_scale(visits) == {
        "AAEP": (Grade(date(2026, 6, 1), 2), Grade(date(2026, 8, 1), 0)),
        "body condition": (Grade(date(2026, 6, 1), 5), Grade(date(2026, 8, 1), 6)),
        "0-10": (Grade(date(2026, 7, 1), 3, "left fore"),),
        "crest": (Grade(date(2026, 8, 1), 2),),
    }
    assert grades_by_scale([]) == {}


def test_every_scale_of_lameness_has_its_own_edges() -> None:
    """Inside its own range; that of a pain face is none of them."""
    for edges in (MARKED_LAMENESS, SEVERE_LAMENESS, OBEL_HIGH):
        assert all(LAMENESS_SCALES[scale][0] < grade <= LAMENESS_SCALES[scale][1] for scale, grade in edges.items())
    assert {*MARKED_LAMENESS, *OBEL_HIGH, PAIN_SCALE} == set(LAMENESS_SCALES)
    assert set(SEVERE_LAMENESS) == set(MARKED_LAMENESS)


@pytest.mark.parametrize("module", [scales, caution_horse, caution_lameness])
def test_no_grade_is_reckoned_into_another(module: Any) -> None:
    """Where grades are read, none is multiplied, divided, added or taken away: they are only compared with an edge."""
    tree = ast.parse(Path(module.__file__).read_text("utf-8"))
    sums = [node for node in ast.walk(tree) if isinstance(node, ast.BinOp) and not isinstance(node.op, ast.BitOr)]
    allowed = ["grade - words.low", "(grade - words.low) % words.step"]

    assert [text for text in map(ast.unparse, sums) if "grade" in text and text not in allowed] == []
