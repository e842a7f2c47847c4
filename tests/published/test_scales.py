"""The scales of lameness and condition against what is published about them."""

import pytest
from pydantic import ValidationError

from recordgen.hoof.caution_rules import CREST_FROM, HENNEKE_FROM, MARKED_LAMENESS
from recordgen.records.visit import LAMENESS_SCALES, Condition, Lameness


def takes(scale: str, grade: float) -> bool:
    """Whether a record takes a grade on a scale."""
    try:
        Lameness.model_validate({"scale": scale, "grade": grade})
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
    assert LAMENESS_SCALES[scale] == (lowest, highest)
    assert [takes(scale, grade) for grade in (lowest - 1, lowest, highest, highest + 1)] == [False, True, True, False]


def test_no_scale_is_without_its_range() -> None:
    """Five scales are known, and each says from which grade on it is marked, inside its range.

    Derived from: the ranges above.
    """
    assert len(LAMENESS_SCALES) == 5
    assert set(MARKED_LAMENESS) == set(LAMENESS_SCALES)
    assert all(low < MARKED_LAMENESS[scale] <= high for scale, (low, high) in LAMENESS_SCALES.items())


@pytest.mark.parametrize(("scale", "grade"), [("AAEP", 3), ("0-10", 4), ("Obel", 1)])
def test_lameness_is_marked_from_a_published_grade_on(scale: str, grade: int) -> None:
    """Consistent at every trot; moderate, 4 to 6 of 10; anything but sound.

    Source: AAEP scale as reproduced in teaching texts; Vet Times, 7 December 2015; Meier et al. 2021, BMC Vet Res
    17:16, Table 1.
    """
    assert MARKED_LAMENESS[scale] == grade


def test_condition_is_told_from_a_published_score_on() -> None:
    """A crest of 3 is called cresty, a score of 7 fleshy.

    Source: Giles et al. 2015, BMC Vet Res 11; Henneke et al. 1983, Equine Vet J 15:371-372.
    """
    assert (CREST_FROM, HENNEKE_FROM) == (3, 7)


@pytest.mark.parametrize(("name", "lowest", "highest"), [pytest.param("henneke", 1, 9), pytest.param("crest", 0, 5)])
def test_condition_scores_run_from_their_lowest_to_their_highest(name: str, lowest: int, highest: int) -> None:
    """Nine scores of condition, and a crest from 0 to 5.

    Source: Henneke et al. 1983, Equine Vet J 15:371-372; Carter et al. 2009, Vet J 179(2):204-210.
    """
    assert Condition.model_validate({name: lowest})
    assert Condition.model_validate({name: highest})
    for beyond in (lowest - 1, highest + 1):
        with pytest.raises(ValidationError):
            Condition.model_validate({name: beyond})
