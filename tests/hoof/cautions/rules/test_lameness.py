"""The scales of sore feet: every grade of them, at, under and over the edge of a high one."""

from __future__ import annotations

import pytest

from recordgen.hoof.cautions.rules.lameness import OBEL_HIGH
from recordgen.records.models.visit import LAMENESS_SCALES
from tests.support.caution_cases import DAY, LATER, cautions, obel, raised_by, rules
from tests.support.horse_records import visit


@pytest.mark.parametrize("scale", OBEL_HIGH)
def test_every_grade_of_sore_feet_is_told_and_a_high_one_now(scale: str) -> None:
    """From 1 on; nothing is not.

    Source: Meier et al. 2021, BMC Vet Res 17:16, Table 1 (any Obel grade; 3: reluctant to walk). The total: Judgement.
    """
    low, high = LAMENESS_SCALES[scale]
    for grade in range(low, high + 1):
        expected = [] if not grade else ["obel-high"] if grade >= {"Obel": 3, "modified Obel": 8}[scale] else ["obel"]

        assert raised_by(lameness={"scale": scale, "grade": grade}) == expected


@pytest.mark.parametrize(("grade", "level"), [(1, "call today"), (2, "call today"), (3, "call now"), (4, "call now")])
def test_sore_feet_come_off_the_grass_unwalked_and_untrimmed(grade: float, level: str) -> None:
    """A deep bed, and no trimming until the vet agrees.

    Source: EQUUS 2015 and 2017 (least walking, a deep bed).
    """
    (found,) = cautions(visit(DAY, lameness=obel(grade)))

    assert (found.level, found.no_trim) == (level, True)
    assert "Off the grass with as few steps as can be, on a deep soft bed." in found.meanwhile
    assert found.do_not == "Do not walk the horse. No trimming until the vet agrees."


def test_a_grade_of_one_scale_of_sore_feet_clears_none_of_the_other() -> None:
    """Each is told with its name."""
    first, modified = visit(DAY, lameness=obel(2)), {"scale": "modified Obel", "grade": 0}

    assert rules(first, visit(LATER, lameness=modified)) == ["obel"]
    assert rules(first, visit(LATER, lameness=obel(0))) == []
    assert rules(visit(DAY, lameness=obel(3)), visit(LATER, lameness=obel(2))) == ["obel"]
