"""The course of a length as small as a word."""

from __future__ import annotations

from datetime import date

import pytest

from recordgen.hoof.measures.readings import Reading
from recordgen.pictures.charts.course import HEIGHT, WIDTH, course_line
from recordgen.records.models.names import FEET, Foot
from tests.support.svg import root_of, strokes_of, words_in

SPAN, SCALE = (date(2026, 1, 1), date(2026, 12, 31)), (70.0, 100.0)
VISITS = [Reading(date(2026, 1, 1), 88, 80), Reading(date(2026, 6, 1), 90, 81), Reading(date(2026, 12, 31), 100, 70)]


def course(foot: Foot = "left_fore", readings: list[Reading] = VISITS) -> str:
    """A course on fixed axes."""
    return course_line(foot, readings, SPAN, SCALE, "from 80 to 70 mm")


def test_it_is_a_line_without_words_that_tells_its_ends() -> None:
    """Figures stand beside it as text; who does not see it hears its title."""
    assert words_in(course()) == []
    assert root_of(course())[0].text == "from 80 to 70 mm"
    assert root_of(course()).attrib["class"] == "picture course"


@pytest.mark.parametrize("foot", FEET)
def test_it_ends_in_the_foots_own_point_and_stays_on_the_sheet(foot: Foot) -> None:
    """The point stands at the last value, lower right here, hollow for a hind foot; right feet are dashed."""
    (point, _), *holes = strokes_of(course(foot), stroke_linecap="round")
    points = [one for stroke in strokes_of(course(foot)) for one in stroke]

    assert point == (max(x for x, _ in points), max(y for _, y in points))
    assert all(2 <= x <= WIDTH - 2 and 2 <= y <= HEIGHT - 2 for x, y in points)
    assert len(holes) == foot.endswith("hind")
    assert bool(strokes_of(course(foot), stroke_dasharray="3.4,1.8")) == foot.startswith("right")


def test_nothing_measured_is_no_course() -> None:
    """It is refused, not drawn empty."""
    with pytest.raises(ValueError, match="no reading"):
        course(readings=[])
