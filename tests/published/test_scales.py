"""The scales of lameness and condition against what is published about them."""

from typing import Any

import pytest
from pydantic import ValidationError

from recordgen.hoof.cautions.rules.horse import CREST_FROM, HEAVY_FROM, THIN_TO
from recordgen.hoof.cautions.rules.lameness import MARKED_LAMENESS, OBEL_HIGH, SEVERE_LAMENESS
from recordgen.records.models.visit import LAMENESS_SCALES, Condition, Lameness
from tests.support.horse_records import REFERENCE

TABLE = REFERENCE.scales


def takes(model: type[Lameness] | type[Condition], **values: Any) -> bool:
    """Whether a record takes these values."""
    try:
        model.model_validate(values)
    except ValidationError:
        return False
    return True


@pytest.mark.parametrize(
    ("scale", "lowest", "highest"),
    [
        pytest.param("AAEP", 0, 5, id="AAEP"),
        pytest.param("0-10", 0, 10, id="0-10"),
        pytest.param("Obel", 0, 4, id="Obel"),
        pytest.param("modified Obel", 0, 12, id="modified Obel"),
        pytest.param("Horse Grimace", 0, 12, id="Horse Grimace"),
    ],
)
def test_scales_run_from_their_lowest_to_their_highest_grade(scale: str, lowest: int, highest: int) -> None:
    """Both ends are taken, and nothing beyond them.

    Source: AAEP scale as reproduced in teaching texts; Vet Times, 7 December 2015 (0-10); Meier et al. 2021, BMC Vet
    Res 17:16, Table 1 (Obel); Meier et al. 2019, PeerJ 7:e7084 (modified Obel). Derived from: Dalla Costa et al. 2014,
    PLoS ONE 9(3):e92281, six items of 0 to 2.
    """
    taken = [takes(Lameness, scale=scale, grade=grade) for grade in (lowest - 1, lowest, highest, highest + 1)]

    assert LAMENESS_SCALES[scale] == (lowest, highest)
    assert taken == [False, True, True, False]


def test_no_scale_is_without_its_range() -> None:
    """Five scales are known.

    Derived from: the ranges above.
    """
    assert len(LAMENESS_SCALES) == 5


@pytest.mark.parametrize(("scale", "grade"), [("AAEP", 3), ("0-10", 4)])
def test_lameness_is_marked_from_a_published_grade_on(scale: str, grade: int) -> None:
    """Consistent at every trot; moderate, 4 to 6 of 10.

    Source: AAEP scale as reproduced in teaching texts; Vet Times, 7 December 2015.
    """
    assert MARKED_LAMENESS[scale] == grade


@pytest.mark.parametrize(("scale", "grade"), [("AAEP", 5), ("0-10", 7), ("Obel", 3)])
def test_lameness_is_severe_from_a_published_grade_on(scale: str, grade: int) -> None:
    """Barely takes weight; severe, 7 to 10 of 10; reluctant to walk.

    Source: AAEP scale as reproduced in teaching texts; Vet Times, 7 December 2015; Meier et al. 2021, BMC Vet Res
    17:16, Table 1.
    """
    assert {**SEVERE_LAMENESS, **OBEL_HIGH}[scale] == grade


def test_condition_is_told_from_a_published_score_on() -> None:
    """A crest of 3 is called cresty, a score of 7 fleshy, one of 3 thin.

    Source: Giles et al. 2015, BMC Vet Res 11; Henneke et al. 1983, Equine Vet J 15:371-372.
    """
    assert (CREST_FROM, HEAVY_FROM, THIN_TO) == (3, 7, 3)


@pytest.mark.parametrize(("name", "lowest", "highest"), [pytest.param("henneke", 1, 9), pytest.param("crest", 0, 5)])
def test_condition_scores_run_from_their_lowest_to_their_highest(name: str, lowest: int, highest: int) -> None:
    """Nine scores of condition, and a crest from 0 to 5.

    Source: Henneke et al. 1983, Equine Vet J 15:371-372; Carter et al. 2009, Vet J 179(2):204-210.
    """
    taken = [takes(Condition, **{name: score}) for score in (lowest - 1, lowest, highest, highest + 1)]

    assert taken == [False, True, True, False]


@pytest.mark.parametrize(
    ("scale", "grade", "said"),
    [
        ("AAEP", 0, "no lameness"),
        ("AAEP", 1, "not each time"),
        ("AAEP", 2, "hard to see at a walk or a straight trot"),
        ("AAEP", 3, "every trot"),
        ("AAEP", 4, "at a walk"),
        ("AAEP", 5, "hardly any weight"),
        ("Obel", 0, "sound"),
        ("Obel", 1, "stilted at a trot and on turns"),
        ("Obel", 2, "a front foot can be lifted"),
        ("Obel", 3, "lifted only with great trouble"),
        ("Obel", 4, "only when forced"),
    ],
)
def test_what_sets_a_grade_of_lameness_apart(scale: str, grade: int, said: str) -> None:
    """The sign that the published table names for it, in our own words.

    Source: AAEP scale as reproduced in teaching texts; Meier et al. 2021, BMC Vet Res 17:16, Table 1.
    """
    assert said in TABLE[scale].grades[grade]


def test_a_scale_of_ten_in_three_steps() -> None:
    """1 to 3 mild, 4 to 6 moderate, 7 to 10 severe.

    Source: Vet Times, 7 December 2015.
    """
    told = [TABLE["0-10"].grades[grade] for grade in range(1, 11)]

    assert told == ["mild"] * 3 + ["moderate"] * 3 + ["severe"] * 4


@pytest.mark.parametrize(
    ("score", "said"),
    [
        (1, "no fat is felt"),
        (2, "trace of cover"),
        (3, "ribs easily seen"),
        (4, "ribs faintly seen"),
        (5, "ribs are felt and not seen"),
        (6, "spongy fat over the ribs"),
        (7, "ribs felt with fat between them"),
        (8, "ribs hard to feel"),
        (9, "patches of fat over the ribs"),
    ],
)
def test_what_the_ribs_tell_of_condition(score: int, said: str) -> None:
    """Each score by what is seen or felt of the ribs, and of the cover.

    Source: Henneke et al. 1983, Equine Vet J 15:371-372, as reproduced in charts.
    """
    assert said in TABLE["body condition"].grades[score]


@pytest.mark.parametrize(
    ("score", "said"),
    [
        (0, "no crest"),
        (1, "slight filling felt"),
        (2, "one hand can cup it"),
        (3, "middle of the neck"),
        (5, "to one side"),
    ],
)
def test_what_sets_a_crest_apart(score: int, said: str) -> None:
    """Seen, felt, cupped, hanging.

    Source: Carter et al. 2009, Vet J 179(2):204-210, as reproduced in a feed maker's chart (0 to 3 and 5).
    """
    assert said in TABLE["crest"].grades[score]


def test_a_total_of_six_parts_of_a_face() -> None:
    """Six of 0 to 2 are 12 at the most.

    Derived from: Dalla Costa et al. 2014, PLoS ONE 9(3):e92281.
    """
    assert TABLE["Horse Grimace"].high == 6 * 2
    assert "six parts of the face" in TABLE["Horse Grimace"].meaning


def test_a_total_of_five_signs() -> None:
    """12 at the most; how the points are shared out was not found.

    Source: Meier et al. 2019, PeerJ 7:e7084.
    """
    assert TABLE["modified Obel"].high == 12
    assert "five signs" in TABLE["modified Obel"].meaning
