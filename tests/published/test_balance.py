"""Heels, frog, angles and lengths against published rules and worked tables."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from recordgen.hoof.measures.change import Step
from recordgen.hoof.measures.measures import readings_at
from tests.support.horse_records import MEASURES, WAYS, foot, measured, summary, visit

DAY = date(2026, 10, 14)


def after(key: str, **values: Any) -> float:
    """A measure after the trim of a foot with these measures."""
    value = readings_at(WAYS.measures, foot(after=values), DAY)[key].after
    assert value is not None
    return value


def frog_ratio(width: Any, length: Any) -> float:
    """Width over length of a frog."""
    value = readings_at(WAYS.measures, foot(frog={"width": width, "length": length}), DAY)["frog_ratio"].before
    assert value is not None
    return value


@pytest.mark.parametrize(
    ("medial", "lateral", "expected", "sheared"),
    [("3.5 cm", "4.0 cm", 5, True), ("4.0 cm", "3.5 cm", -5, True), ("3.5 cm", "3.9 cm", 4, False)],
)
def test_heels_that_differ_by_half_a_centimetre(medial: str, lateral: str, expected: float, sheared: bool) -> None:
    """0.5 cm or more between the heels has been called sheared; 5 mm exactly counts.

    Source: Turner 2010, Proc. 16th Congress of SIVE; O'Grady, Proc. AAEP 2005.
    """
    found = after("heel_difference", heel_height={"medial": medial, "lateral": lateral})

    assert found == pytest.approx(expected)
    assert (abs(found) >= 5) is sheared


@pytest.mark.parametrize(("width", "contracted"), [(66.9, True), (67, False), (70, False)])
def test_frogs_narrower_than_67_of_100(width: float, contracted: bool) -> None:
    """Below 0.67 of its length a frog has been called contracted; 0.67 itself is not below.

    Source: Turner, Objective Assessment of Hoof Balance; Turner 2010, Proc. 16th Congress of SIVE.
    """
    assert (frog_ratio(width, 100) < 0.67) is contracted


@pytest.mark.parametrize(("count", "of", "printed"), [(32, 50, 64.0), (44, 44, 100.0), (31, 44, 70.5)])
def test_share_of_feet_that_the_frog_rule_flags(count: int, of: int, printed: float) -> None:
    """Most of them: front feet of two surveys 64 % and 100 %, right hind feet 70.5 %.

    Source: Biometria e alteracoes do equilibrio podal em equinos utilizados em vaquejada (n = 50); Schade,
    Baldissera, Paolini & Fonteque 2013, Ciencia Rural 43(3):456-461 (n = 44). Derived from: counts.
    """
    frogs = [frog_ratio(60, 100)] * count + [frog_ratio(70, 100)] * (of - count)

    assert round(100 * sum(ratio < 0.67 for ratio in frogs) / of, 1) == printed


@pytest.mark.parametrize(("toe", "heel", "expected"), [(51.8, 40.1, 11.7), (50.9, 36.4, 14.5)], ids=["fore", "hind"])
def test_toe_less_heel_of_the_average_horse(toe: float, heel: float, expected: float) -> None:
    """More than twice the 5 degrees from which heels have been called underrun.

    Source: An investigation of the shape of the lateral aspect of the hoof capsule, n = 225 (abstract); Turner,
    Objective Assessment of Hoof Balance. Derived from: the printed means.
    """
    found = after("toe_heel_difference", toe_angle=toe, heel_angle=heel)

    assert found == pytest.approx(expected)
    assert found > 2 * 5


@pytest.mark.parametrize(
    ("toe", "pastern", "sign", "words"),
    [(50, 54, -1, "below zero the line is broken back"), (54, 50, 1, "above zero broken forward")],
)
def test_sign_of_the_hoof_pastern_axis(toe: float, pastern: float, sign: int, words: str) -> None:
    """A pastern steeper than the toe is broken back, a toe steeper than the pastern broken forward.

    Source: USDA, Special Report on Diseases of the Horse, chapter on shoeing, Fig. 6.
    """
    assert after("axis_difference", toe_angle=toe, pastern_angle=pastern) == sign * 4
    assert words in MEASURES["axis_difference"].words.plain


@pytest.mark.parametrize(
    ("key", "before", "now", "change", "percent"),
    [
        ("toe_length", "8.83 cm", "8.53 cm", -3.0, -3.40),
        ("sole_length", "13.69 cm", "13.01 cm", -6.8, -4.97),
        ("toe_angle", "50.05", "51.40", 1.35, None),
    ],
)
def test_before_and_after_one_trim(key: str, before: str, now: str, change: float, percent: float | None) -> None:
    """Dorsal wall, sole and hoof axis of ten horses, as a record of centimetres and degrees tells them.

    Source: Iranian Journal of Veterinary Surgery, article 79374, lateromedial radiographs. Derived from: its means.
    """
    first = visit("2026-10-14", left_fore={"before": {key: before}})
    second = visit("2026-10-15", left_fore={"before": {key: now}})
    step = measured(key, first, second).last

    assert step is not None
    assert step.change == pytest.approx(change)
    if percent is not None:
        assert 100 * step.change / step.then == pytest.approx(percent, abs=0.005)


@pytest.mark.parametrize(("then", "now", "change"), [(50.05, 51.40, 1.35), (48.65, 50.60, 1.95), (45.65, 47.90, 2.25)])
def test_axes_of_hoof_and_bones_over_one_trim(then: float, now: float, change: float) -> None:
    """S, T and U rise; the printed H and R do not follow from these means and are left out.

    Source: Iranian Journal of Veterinary Surgery, article 79374, lateromedial radiographs. Derived from: its means.
    """
    assert Step(DAY, then, now).change == pytest.approx(change)


@pytest.mark.parametrize(("side", "difference"), [("left_fore", 1.1), ("right_fore", -1.2)])
def test_outer_less_inner_wall_keeps_its_sign(side: str, difference: float) -> None:
    """0.11 cm on the left and -0.12 cm on the right of 38 untrimmed mules: the sign flips.

    Source: Phannithi et al. 2024, Animals 14(8):1197.
    """
    left = {"before": {"wall_height": {"medial": "5 cm", "lateral": "5.11 cm"}}}
    right = {"before": {"wall_height": {"medial": "5 cm", "lateral": "4.88 cm"}}}
    feet = summary(visit("2026-10-14", left_fore=left, right_fore=right)).feet

    found = {name: one.measures["wall_difference"].latest for name, one in feet.items()}

    assert found[side] == pytest.approx(difference)  # type: ignore[index]


def test_toe_and_heels_of_roping_horses() -> None:
    """A toe of 9.21 cm over heels of 4.94 and 4.95 cm is 1.86 to 1; the heels differ by 0.01 cm.

    Source: Brazilian Journal of Veterinary Medicine, article 421, n = 58. Derived from: its means.
    """
    heels = {"lateral": "4.94 cm", "medial": "4.95 cm"}
    mean = (after("heel_height_lateral", heel_height=heels) + after("heel_height_medial", heel_height=heels)) / 2

    assert after("toe_length", toe_length="9.21 cm") / mean == pytest.approx(1.863, abs=0.001)
    assert after("heel_difference", heel_height=heels) == pytest.approx(-0.1)


def test_heels_are_judged_horse_by_horse_and_never_on_means() -> None:
    """Mean heels are level although 9 of 58 horses, 15.5 %, are not.

    Source: Brazilian Journal of Veterinary Medicine, article 421, n = 58. Derived from: its share; the split is made.
    """
    lateral = [54.5] * 4 + [44.5] * 4 + [55.0] + [49.5] * 48 + [44.0]
    found = [after("heel_difference", heel_height={"lateral": mm, "medial": 49.5}) for mm in lateral]
    uneven = [difference for difference in found[:9] if abs(difference) >= 5]

    assert sum(found) / len(found) == pytest.approx(0)
    assert round(100 * len(uneven) / 58, 1) == 15.5


@pytest.mark.parametrize(("width", "length", "expected"), [(130, 120, 1.08), (120, 120, 1.0)], ids=["fore", "hind"])
def test_width_over_length_of_never_trimmed_feet(width: float, length: float, expected: float) -> None:
    """Front feet of yearlings 13 by 12 cm, hind feet 12 by 12.

    Source: Pares i Casanova & Oosterlinck 2012, J. Equine Vet. Sci. 32:231-234, as reported in AFJ 394.
    """
    assert after("sole_ratio", sole_width=width, sole_length=length) == pytest.approx(expected, abs=0.005)
