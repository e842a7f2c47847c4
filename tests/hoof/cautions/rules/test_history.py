"""Rules over several visits: at the edge, just under it, and when it ends."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from recordgen.records.models.names import FEET
from recordgen.records.models.visit import Visit
from tests.support.caution_cases import DRAINED, JUST_AFTER, cautions, rules, the, wall
from tests.support.horse_records import summary as summed
from tests.support.horse_records import visit, ways

DAYS = ("2026-01-07", "2026-02-18", "2026-04-01", "2026-05-13", "2026-06-24", "2026-08-05", "2026-09-16", "2026-10-28")


def gaps(*depths: float | None, key: str = "depth") -> list[Visit]:
    """Visits at which a gap at the toe of the left fore was measured; not at those of None."""
    return [
        visit(day, left_fore=wall(separation={key: depth})) for day, depth in zip(DAYS, depths, strict=False) if depth
    ]


def soles(*depths: float) -> list[Visit]:
    """Visits at which the hollow of the left fore's sole was measured."""
    return [visit(day, left_fore={"sole": {"depth": depth}}) for day, depth in zip(DAYS, depths, strict=False)]


def angles(*pairs: tuple[float | None, float | None], **values: Any) -> list[Visit]:
    """Visits at which the toe angle of the left fore was taken, before and after the trim."""
    made = []
    for day, (before, after) in zip(DAYS, pairs, strict=False):
        made.append(visit(day, left_fore={"before": {"toe_angle": before}, "after": {"toe_angle": after}}, **values))
    return made


def open_of(rule: str, visits: list[Visit]) -> bool:
    """Whether a rule is open after these visits."""
    return rule in rules(*visits, today=visits[-1].date)


@pytest.mark.parametrize(("now", "expected"), [(4.7, False), (4.8, True), (6, True), (2, False), (1, False)])
def test_a_gap_that_grows_deeper(now: float, expected: bool) -> None:
    """A probe is out by 1 mm (SD), so that 2.77 mm more are real and less is not.

    Derived from: Bland & Altman 1999, Statistical Methods in Medical Research 8:135-160, 1.96 x sqrt 2 x 1 mm.
    """
    assert open_of("separation-grows", gaps(2, now)) is expected


@pytest.mark.parametrize(("now", "expected"), [(15.5, False), (15.6, True)])
def test_a_gap_that_grows_longer(now: float, expected: bool) -> None:
    """The ends of a gap are out by 2 mm (SD), so that 5.54 mm more are real.

    Derived from: Bland & Altman 1999, 1.96 x sqrt 2 x 2 mm.
    """
    assert open_of("separation-grows", gaps(10, now, key="length")) is expected


def test_a_gap_that_grows_slowly_is_seen_over_half_a_year() -> None:
    """A millimetre from visit to visit is within error, and four in half a year are not."""
    slow = gaps(2, 3, 4, 4.5, 4.5, 6)

    assert [open_of("separation-grows", slow[:count]) for count in range(1, 7)] == [False] * 5 + [True]
    assert the("separation-grows", cautions(*slow, today=slow[-1].date)).seen == (
        "The gap at the white line of the left fore, toe, was 6 mm deep on 5 August 2026; "
        "it was 2 mm on 7 January 2026."
    )


@pytest.mark.parametrize(("day", "expected"), [("2026-07-01", False), ("2026-07-02", True), ("2026-07-03", True)])
def test_half_a_year_is_182_days(day: str, expected: bool) -> None:
    """A reading of 182 days ago is compared with, and none that is younger but the last."""
    depths = {"2026-01-01": 2, "2026-04-01": 3.5, day: 5}
    made = [visit(when, left_fore=wall(separation={"depth": depth})) for when, depth in depths.items()]

    assert open_of("separation-grows", made) is expected


def test_a_gap_that_grew_stays_open_until_it_is_back() -> None:
    """It is compared with what it was before it grew: no more is not less, and what shrank back ends it."""
    grown = gaps(2, 6, 6, 5, 4)

    assert [open_of("separation-grows", grown[:count]) for count in range(1, 6)] == [False, True, True, True, False]


def test_a_gap_of_another_zone_is_another_gap() -> None:
    """Neither compared with it nor ended by it."""
    deep = {"wall": {"medial heel": {"separation": {"depth": 8}}}}

    assert not open_of("separation-grows", [*gaps(2), visit(DAYS[1], left_fore=deep)])
    assert open_of("separation-grows", [*gaps(2, 6), visit(DAYS[2], left_fore=deep)])


def test_a_depth_is_not_compared_with_a_length() -> None:
    """Where one was taken first and the other later, nothing is said; and the other one ends nothing."""
    first, later = gaps(3)[0], visit(DAYS[2], left_fore=wall(separation={"length": 20}))

    assert not open_of("separation-grows", [first, later])
    assert open_of("separation-grows", [*gaps(3, 8), later])


@pytest.mark.parametrize(("now", "expected"), [(9.3, False), (9.2, True), (5, True), (12, False), (20, False)])
def test_a_sole_less_hollow(now: float, expected: bool) -> None:
    """2.77 mm less by a probe that is out by 1 mm (SD); more is no caution.

    Derived from: Bland & Altman 1999, 1.96 x sqrt 2 x 1 mm.
    """
    assert open_of("sole-thinner", soles(12, now)) is expected


def test_a_sole_less_hollow_in_words() -> None:
    """Both figures with their days, and no more said than was measured."""
    found = the("sole-thinner", cautions(*soles(14, 10), today=JUST_AFTER))

    assert found.seen == (
        "The hollow of the sole of the left fore was 10 mm deep on 18 February 2026; it was 14 mm on 7 January 2026. "
        "The sole may be thinner."
    )


@pytest.mark.parametrize(
    ("now", "expected"), [(46.1, False), (46, True), (45.9, True), (55.9, False), (56, True), (51, False)]
)
def test_a_sudden_change_of_the_toe_angle(now: float, expected: bool) -> None:
    """Five degrees flatter or steeper from one visit to the next.

    Derived from: 1.35 degrees by a trim (Iran. J. Vet. Surg., article 79374), none found in five weeks (University of
    Guelph thesis), 3.9 degrees between horses (SD, n = 225).
    """
    assert open_of("angle-sudden", angles((51, None), (now, None))) is expected


def test_a_change_by_the_trim_of_the_day_is_not_sudden() -> None:
    """As found with as found: what was trimmed at the visit does not count, where both were taken."""
    assert not open_of("angle-sudden", angles((46, 51), (47, 53)))
    assert open_of("angle-sudden", angles((None, 51), (None, 57)))
    assert not open_of("angle-sudden", angles((None, 51), (45, None)))


def test_a_change_over_more_than_half_a_year_is_not_sudden() -> None:
    """182 days are; 183 are not."""
    first = visit("2026-01-01", left_fore={"before": {"toe_angle": 51}})
    late = {day: visit(day, left_fore={"before": {"toe_angle": 45}}) for day in ("2026-07-02", "2026-07-03")}

    assert [open_of("angle-sudden", [first, one]) for one in late.values()] == [True, False]


def test_a_change_within_a_large_error_is_not_real() -> None:
    """Where a practice's way of reading is out by 2 degrees, 5 degrees are within its error.

    Derived from: Bland & Altman 1999, 1.96 x sqrt 2 x 2 = 5.54 degrees.
    """
    table = ways().reference
    rough = table.measures["toe_angle"].model_copy(
        update={
            "methods": {"protractor": table.measures["toe_angle"].methods["protractor"].model_copy(update={"sd": 2})}
        }
    )
    by = ways().of(ways().practice, table.model_copy(update={"measures": {**table.measures, "toe_angle": rough}}))
    found = [summed(*angles((51, None), (now, None)), by=by, today=JUST_AFTER) for now in (45.5, 45.4)]

    assert [[one.rule for one in horse.cautions if one.rule == "angle-sudden"] for horse in found] == [
        [],
        ["angle-sudden"],
    ]


def test_an_angle_that_comes_back_ends_it() -> None:
    """It is compared with what it was before the change; back there, the way back is no new caution."""
    there = angles((51, None), (45, None), (45, None), (51, None), (51, None))

    assert [open_of("angle-sudden", there[:count]) for count in range(1, 6)] == [False, True, True, False, False]


@pytest.mark.parametrize(
    ("days", "expected"),
    [
        (("2025-10-14", "2026-10-14"), True),
        (("2025-10-14", "2026-11-14"), True),
        (("2025-10-14", "2026-11-15"), False),
        (("2026-10-14",), False),
    ],
)
def test_a_second_abscess_at_one_place(days: tuple[str, ...], expected: bool) -> None:
    """Within 13 months, before the wall of the first has grown out: 396 days are, 397 are not.

    Derived from: the toe wall is renewed in 11 to 13 months, Lungwitz & Adams, section F; 13 x 30.44 days.
    """
    assert open_of("abscess-again", [visit(day, left_fore=DRAINED) for day in days]) is expected


@pytest.mark.parametrize(
    ("states", "expected"),
    [
        (("suspected", "draining", "drained"), False),
        (("suspected", "suspected"), False),
        (("drained", "suspected"), True),
        (("suspected", None, "suspected"), True),
        (("draining", "drained", "drained"), True),
    ],
)
def test_one_abscess_through_several_visits_is_one(states: tuple[str | None, ...], expected: bool) -> None:
    """Until it drained, or until the foot was looked at and it was not there."""
    made = []
    for day, state in zip(DAYS, states, strict=False):
        found = {"abscess": {"where": "sole", "state": state}} if state else {"landing": "flat"}
        made.append(visit(day, left_fore=found))

    assert open_of("abscess-again", made) is expected


@pytest.mark.parametrize("elsewhere", [{"right_fore": DRAINED}, {"left_fore": {"abscess": {"where": "coronet"}}}])
def test_an_abscess_elsewhere_is_another(elsewhere: dict[str, Any]) -> None:
    """Of another foot, or at another place of the same one."""
    assert not open_of("abscess-again", [visit(DAYS[0], left_fore=DRAINED), visit(DAYS[1], **elsewhere)])


def test_abscesses_are_counted_with_their_days() -> None:
    """How many, where, and since when, for the vet."""
    found = the("abscess-again", cautions(*[visit(day, left_fore=DRAINED) for day in DAYS[:3]]))

    assert found.seen == "3 abscesses at the sole of the left fore were recorded from 7 January 2026 to 1 April 2026."
    assert found.level == "arrange soon"


def test_soles_that_do_not_change_are_seldom_called_thinner() -> None:
    """Of horses whose soles and grooves stay, read to the millimetre with its error, few have the caution open.

    Each figure at 95 % by itself had it open on 15 to 25 of 100 such pages. Bound: 5 of 100, and three of its errors.
    """
    rng = np.random.default_rng(2)
    horses = [[_sound(day, rng) for day in DAYS[:8]] for _ in range(60)]

    assert np.mean([open_of("sole-thinner", visits) for visits in horses]) <= 0.05 + 3 * 0.03


def _sound(day: str, rng: np.random.Generator) -> Visit:
    """A visit to four feet with soles 12 mm and middle grooves 6 mm deep, as they are read."""
    depths = {foot: (round(12.4 + rng.normal()), round(6.3 + rng.normal())) for foot in FEET}
    feet = {
        foot: {"sole": {"depth": sole}, "frog": {"central_groove_depth": max(groove, 0)}}
        for foot, (sole, groove) in depths.items()
    }
    return visit(day, **feet)
