"""Remarks for the trimmer: each named with its place, never averaged in."""

from __future__ import annotations

import math

import pytest

from recordgen.hoof.export.summary_json import as_json
from recordgen.hoof.summary import HorseSummary
from recordgen.records.models.visit import Visit
from tests.support.horse_records import summary, toes, visit

EVEN = [("2026-03-01", 90, 80), ("2026-04-12", 91, 80), ("2026-05-24", 91, 80), ("2026-07-05", 91, 80)]


def remarks(*visits: Visit) -> list[tuple[int, tuple[str | int, ...], str]]:
    """The visit, the place and the first words of each remark."""
    return [(one.visit, one.steps, one.text) for one in summary(*visits).remarks]


def test_even_growth_is_not_remarked_on() -> None:
    """Nothing to look at."""
    assert remarks(*toes(*EVEN)) == []


def test_a_slip_points_at_the_visit_that_tells_it() -> None:
    """108 for 80: the third visit, the left fore."""
    ((number, steps, text),) = remarks(*toes(*EVEN[:2], ("2026-05-24", 108, 80), EVEN[3]))

    assert (number, steps) == (2, ("feet", "left_fore"))
    assert text.startswith("the left fore grew 28 mm in 42 days, far more than its other cycles")


def test_swapped_days_show_as_growth_below_nought() -> None:
    """The wall cannot have become 22 mm shorter by itself."""
    ((_, _, text),) = remarks(*toes(*EVEN[:2], ("2026-05-24", 58, 50), ("2026-07-05", 61, 50)))

    assert "grew -22 mm in 42 days, far less" in text


def test_a_break_of_months_is_a_gap_and_no_slip() -> None:
    """It is told among the gaps, and its growth is not used."""
    found = summary(*toes(*EVEN[:2], ("2027-04-12", 150, 80)))

    assert found.remarks == ()
    assert [gap.kind for gap in found.gaps if gap.kind == "long_break"] == ["long_break"]
    assert found.growth.together.cycles == 1


ODD: dict[str, list[Visit]] = {
    "no visit": [],
    "one visit": toes(EVEN[0]),
    "no trim": toes(*((day, before, None) for day, before, _ in EVEN), trimmed=False),
    "one foot missing": [*toes(*EVEN), visit("2026-08-16", right_hind={"before": {"toe_length": 80}})],
    "two in a week": toes(*EVEN, ("2026-07-08", 82, 80)),
    "two in a day": toes(*EVEN, ("2026-07-05", 81, 80)),
    "shrinking": toes(("2026-03-01", 90, 80), ("2026-04-12", 75, 70), ("2026-05-24", 65, 60)),
    "no growth at all": toes(*((day, 80, 80) for day, _, _ in EVEN)),
    "gap of years": toes(("2022-03-01", 90, 80), *EVEN),
    "no lengths": [visit(day) for day, _, _ in EVEN],
}


@pytest.mark.parametrize("visits", ODD.values(), ids=list(ODD))
def test_odd_records_give_a_whole_summary(visits: list[Visit]) -> None:
    """Never a value that is no number, never a crash; the window is in order."""
    found = summary(*visits)

    _whole(as_json(found))
    if found.due:
        assert found.due.earliest <= found.due.best <= found.due.latest
    assert _rates_in_order(found)


def _whole(value: object) -> None:
    """Fails where a number in some plain values is none."""
    if isinstance(value, float):
        assert math.isfinite(value)
    elif isinstance(value, dict):
        [_whole(inner) for inner in value.values()]
    elif isinstance(value, list):
        [_whole(inner) for inner in value]


def _rates_in_order(found: HorseSummary) -> bool:
    rates = [found.growth.together, *(foot.net for foot in found.growth.feet.values())]
    return all(rate.low < rate.mean < rate.high for rate in rates)


@pytest.mark.parametrize(
    ("wanted", "expected"),
    [
        ({"weeks": 8}, False),
        ({"weeks": 8.5}, True),
        ({"weeks": 20}, True),
        ({"date": "2026-12-09"}, False),
        ({"date": "2026-12-10"}, True),
    ],
)
def test_a_next_visit_later_than_its_class_needs_is_told(wanted: dict[str, float | str], expected: bool) -> None:
    """Eight weeks for a grown horse, to the day; at the visit that set it, and no more once a later one sets another.

    Source: UK welfare code, hoofcare, 2008 consultation (4 to 8 weeks).
    """
    late = visit("2026-10-14", next=wanted)

    assert [(number, steps) for number, steps, _ in remarks(late)] == ([(0, ("next",))] if expected else [])
    assert remarks(late, visit("2026-11-25", next={"weeks": 6})) == []
