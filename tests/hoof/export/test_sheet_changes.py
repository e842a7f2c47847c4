"""The changes, as the first page of the vet's sheet tells them."""

from __future__ import annotations

from datetime import date

import pytest

from recordgen.hoof.export.sheet_changes import same_since
from recordgen.hoof.scales import Grade
from tests.support.full_visits import sheet
from tests.support.horse_records import visit
from tests.support.sheets import demo_sheet, demo_summary


def test_every_real_change_stands_once() -> None:
    """Feet that changed on the same days share a line, findings before form and trim."""
    found = demo_sheet("pippin").changed
    told = [(foot, one.first.of.measure.key) for one in found for foot in one.feet]
    real = {(one.of.foot, one.of.measure.key) for one in demo_summary("pippin").changes.real}

    assert len(told) == len(set(told))
    assert set(told) == real
    assert found[0].feet == ("left_fore", "right_fore")
    assert found[0].first.of.measure.name.startswith("separation")


@pytest.mark.parametrize("slug", ["pippin", "bramble", "otter"])
def test_a_real_change_never_reads_as_none(slug: str) -> None:
    """As rounded as it is told its interval lies on one side of nothing, and the change within it."""
    for one in demo_sheet(slug).changed:
        low, high = (round(end, one.digits) for end in one.within)

        assert low * high > 0
        assert all(min(abs(low), abs(high)) <= size <= max(abs(low), abs(high)) for size in one.sizes)


@pytest.mark.parametrize(
    ("grades", "since"),
    [([2, 0, 0], 2), ([0, 0, 0], 1), ([0, 1, 0], None), ([1], None)],
)
def test_a_grade_that_lasts_is_told_with_its_first_day(grades: list[float], since: int | None) -> None:
    """From the first of the last run of one grade on; not from a single look."""
    looks = [Grade(date(2026, month, 1), grade) for month, grade in enumerate(grades, start=1)]

    assert same_since(looks) == (date(2026, since, 1) if since else None)


def test_a_reading_taken_in_another_way_is_known() -> None:
    """The days on which a measure was taken in another way than last."""
    days = {"2026-08-14": {"toe_angle": "gauge"}, "2026-09-14": {}, "2026-10-14": {}}
    visits = [visit(day, left_fore={"before": {"toe_angle": 50}}, methods=ways) for day, ways in days.items()]
    (row,) = sheet(*visits).rows

    assert row.otherwise == {"left_fore": frozenset({date(2026, 8, 14)})}
