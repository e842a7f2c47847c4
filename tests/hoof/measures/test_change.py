"""A measure through the visits: latest values, their error, and how they differ from earlier ones."""

import math
from datetime import date
from typing import Any

import pytest

from recordgen.hoof.measures.change import Step
from recordgen.hoof.measures.measures import smallest_real_change
from recordgen.records.models.visit import Visit
from tests.support.horse_records import measured, summary, toes, visit, ways

THEN, NOW, LATER = "2026-03-01", "2026-04-12", "2026-05-24"
ROUNDED = 1 / 12**0.5
# Of a rule whose figures are typed to the whole millimetre.
RULE = smallest_real_change(math.hypot(1, ROUNDED), math.hypot(1, ROUNDED))


def angles(*taken: tuple[str, float, str]) -> list[Visit]:
    """Visits with a toe angle after the trim: day, angle, and the way it was taken."""
    return [
        visit(day, left_fore={"after": {"toe_angle": angle}}, methods={"toe_angle": by}) for day, angle, by in taken
    ]


def test_after_is_compared_with_after() -> None:
    """The trimmer's last result with the one of now."""
    found = measured("toe_length", *toes((THEN, 90, 80), (NOW, 92, 84)))

    assert (found.before, found.after, found.moment, found.latest) == (92, 84, "after", 84)
    assert found.last == found.first == Step(date(2026, 3, 1), 80, 84)


@pytest.mark.parametrize(
    ("taken", "moment", "change"),
    [
        ([(THEN, 90, None), (NOW, 92, None)], "before", 2),
        ([(THEN, 90, 80), (NOW, 93, None)], "before", 3),
        ([(THEN, 90, None), (NOW, 94, 85)], "before", 4),
        ([(THEN, 90, 80), (NOW, 88, None), (LATER, 95, 85)], "after", 5),
    ],
)
def test_before_is_compared_with_before_where_there_is_no_other(taken: Any, moment: str, change: float) -> None:
    """Readings of one moment are compared, never one of each."""
    found = measured("toe_length", *toes(*taken))

    assert found.moment == moment
    assert found.last is not None
    assert found.last.change == change


def test_before_alone_and_after_alone_are_not_compared() -> None:
    """The trim lies between them."""
    found = measured("toe_length", *toes((THEN, 90, None), (NOW, None, 82)))

    assert (found.moment, found.latest) == ("after", 82)
    assert (found.last, found.first) == (None, None)


def test_one_visit_is_compared_with_nothing() -> None:
    """It has a value, its error, and no step."""
    found = measured("toe_length", *toes((NOW, 90, 80)))

    assert (found.latest, found.last, found.first) == (80, None, None)
    assert found.smallest_real_change == pytest.approx(RULE)


def test_since_the_visit_before_and_since_the_first() -> None:
    """Visits at which it was not measured lie between without harm."""
    visits = [*toes((THEN, 90, 80), (NOW, 90, 83)), visit("2026-05-01", left_fore={}), *toes((LATER, 90, 85))]
    found = measured("toe_length", *visits)

    assert found.last == Step(date(2026, 4, 12), 83, 85)
    assert found.first == Step(date(2026, 3, 1), 80, 85)
    assert [reading.after for reading in found.readings] == [80, 83, 85]


def test_the_day_is_that_of_the_latest_reading() -> None:
    """Not that of the last visit, which left it out."""
    found = measured("toe_length", *toes((THEN, 90, 80)), visit(NOW, left_fore={"landing": "flat"}))

    assert found.day == date(2026, 3, 1)


def test_what_was_never_measured_has_no_summary() -> None:
    """The table is long; a foot has what was taken."""
    assert set(summary(*toes((NOW, 90, 80))).feet["left_fore"].measures) == {"toe_length"}


@pytest.mark.parametrize(("way", "sd"), [("gauge", 0.133), ("photograph", 1)])
def test_a_reading_has_the_error_of_its_own_way(way: str, sd: float) -> None:
    """That of the latest, with the rounding of what was typed."""
    found = measured("toe_angle", *angles((THEN, 50, "protractor"), (NOW, 51, way)))

    assert found.smallest_real_change == pytest.approx(1.96 * 2**0.5 * math.hypot(sd, ROUNDED))
    assert found.smallest_real_size == pytest.approx(1.96 * math.hypot(sd, ROUNDED))


def test_the_error_of_a_ratio_is_that_of_its_own_readings() -> None:
    """A small frog's ratio repeats worse than a large one's."""
    found = measured("frog_ratio", visit(NOW, left_fore={"frog": {"width": 30, "length": 50}}))
    sd = math.hypot(1, ROUNDED) * (1 + 0.6**2) ** 0.5 / 50

    assert found.smallest_real_size == pytest.approx(1.96 * sd)


def test_a_visit_s_way_wins_over_the_practice_s() -> None:
    """The practice names its usual way; a visit may differ."""
    by = ways(methods={"toe_angle": "gauge"})
    plain = visit(THEN, left_fore={"after": {"toe_angle": 50}})
    other = visit(NOW, left_fore={"after": {"toe_angle": 50}}, methods={"toe_angle": "photograph"})

    assert measured("toe_angle", plain, by=by).smallest_real_size == pytest.approx(1.96 * math.hypot(0.133, ROUNDED))
    assert measured("toe_angle", plain, other, by=by).smallest_real_size == pytest.approx(1.96 * math.hypot(1, ROUNDED))


def test_two_readings_taken_in_two_ways_are_told_so() -> None:
    """A rule and a photograph may differ by that alone."""
    same = measured("toe_angle", *angles((THEN, 50, "protractor"), (NOW, 51, "protractor"))).last
    other = measured("toe_angle", *angles((THEN, 50, "protractor"), (NOW, 51, "photograph"))).last

    assert (same and same.other_way, other and other.other_way) == (False, True)
