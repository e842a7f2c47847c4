"""The contents of the sheet for the vet, and how its figures were taken."""

from __future__ import annotations

import math
from datetime import date

import pytest

from recordgen.hoof.context import Context
from recordgen.hoof.export.sheet import Intervals, may_be_shared
from recordgen.hoof.export.sheet_errors import own_source_pattern
from tests.support.full_visits import EARLIER, FULL, sheet
from tests.support.horse_records import PRACTICE, REFERENCE, WAYS, horse, visit


def test_each_measure_has_a_row_with_its_feet() -> None:
    """In the order of the table, with the summary of each foot as it is."""
    found = sheet(EARLIER, FULL)
    toe = found.rows[0]

    assert (toe.measure.key, list(toe.by_foot)) == ("toe_length", ["left_fore", "right_fore"])
    assert toe.by_foot["left_fore"] is found.summary.feet["left_fore"].measures["toe_length"]
    keys = {key for one in found.summary.feet.values() for key in one.measures}
    assert {row.measure.key for row in found.rows} == keys


def test_errors_agree_with_the_smallest_real_change() -> None:
    """The sd of a row is the one its changes are held against, computed measures and shares included.

    Source: Bland & Altman 1999, Statistical Methods in Medical Research 8:135-160.
    """
    for row in sheet(EARLIER, FULL).rows:
        for foot, one in row.by_foot.items():
            sd = row.taken[foot].sd
            assert one.smallest_real_change == pytest.approx(1.96 * math.hypot(sd, sd)), row.measure.key


def test_the_way_of_a_visit_goes_before_the_usual_one() -> None:
    """An angle by gauge has the gauge's published error, and what typing whole degrees adds."""
    angle = {"before": {"toe_angle": 49}}
    (row,) = sheet(visit("2026-10-14", left_fore=angle, methods={"toe_angle": "gauge"})).rows
    sd = math.hypot(0.133, 1 / 12**0.5)

    assert (row.ways, row.errors, row.sd) == (("gauge",), ("published",), pytest.approx((sd, sd)))


def test_a_computed_measure_is_taken_as_its_parts_are() -> None:
    """Its ways are named once, and its error is the weakest of both."""
    heels = {"before": {"heel_height": {"medial": 38, "lateral": 34}}}
    found = {row.measure.key: row for row in sheet(visit("2026-10-14", left_fore=heels)).rows}["heel_difference"]

    assert (found.ways, found.errors) == (("rule",), ("assumed",))
    assert found.sd == pytest.approx((math.sqrt(2 + 2 / 12),) * 2)


def test_a_practice_s_own_error_is_told_as_its_own() -> None:
    """Neither assumed nor published."""
    again = {"before": {"toe_length": 90}, "repeat": {"before": [{"toe_length": 91}]}}
    visits = [visit(f"2026-{month:02}-14", left_fore=again) for month in range(1, 12)]
    by = Context.of(PRACTICE, REFERENCE, visits)
    (row,) = sheet(*visits, by=by).rows

    assert row.errors == ("own",)
    assert row.sd[0] == pytest.approx(math.sqrt(0.5))


def test_words_of_own_errors_are_known_whatever_the_numbers() -> None:
    """The pattern comes from the phrase of the table."""
    assert own_source_pattern(WAYS) == "This\\ practice's\\ own:\\ \\d+\\ readings\\ in\\ \\d+\\ sets"


def test_visits_and_intervals() -> None:
    """Newest first, with number, days since the one before, whether it trimmed and who recorded it."""
    visits = (visit("2026-09-02"), visit("2026-10-14", trimmed=False, by="Ash Fenn"), visit("2026-11-18"))
    found = sheet(*visits)
    lines = [(one.number, str(one.day), one.days, one.trimmed, one.by) for one in found.visits]

    assert lines == [
        (3, "2026-11-18", 35, True, "Wren Ashdown"),
        (2, "2026-10-14", 42, False, "Ash Fenn"),
        (1, "2026-09-02", None, True, "Wren Ashdown"),
    ]
    assert found.intervals == Intervals(38.5, 35, 42)


def test_feet_that_were_not_looked_at_are_named() -> None:
    """Those of the last visit, and those measured before the trim alone."""
    seen = {"before": {"toe_length": 86}}
    found = sheet(visit("2026-10-14", left_fore=seen, right_fore={**seen, "after": {"toe_length": 80}})).not_measured

    assert (found.feet, found.not_after) == (("left_hind", "right_hind"), ("left_fore",))


def test_measures_that_were_not_taken_are_named() -> None:
    """Those taken before but not at the last visit, and those never taken; computed ones go by their parts."""
    found = sheet(FULL, visit("2026-11-18", left_fore={"before": {"toe_length": 86}})).not_measured
    last_time = {measure.key: feet for measure, feet in found.last_time}

    assert last_time["toe_angle"] == last_time["flare_medial_toe_quarter"] == ("left_fore",)
    assert not {"toe_length", "heel_difference", "frog_ratio"} & set(last_time)
    assert {"pastern_angle", "crack_length"} <= set(found.never)
    assert not {"flare", "toe_angle", "heel_difference"} & set(found.never)


def test_keeping_is_told_as_last_told() -> None:
    """Each respect with its own day."""
    first = visit("2026-09-02", keeping={"ground": "clay", "bedding": "straw"})
    found = sheet(first, visit("2026-10-14", keeping={"bedding": "shavings"}), visit("2026-11-18"))

    assert [(one.what, one.words, str(one.day)) for one in found.keeping] == [
        ("ground", "clay", "2026-09-02"),
        ("bedding", "shavings", "2026-10-14"),
    ]


def test_vet_entries_newest_first() -> None:
    """By the vet's day, whichever visit tells of them."""
    entries = [{"date": f"2026-10-{day:02}", "by": "Imogen Sayle", "kind": "seen"} for day in (3, 9)]
    found = sheet(visit("2026-10-14", vet=entries))

    assert [entry.date for entry in found.vet] == [date(2026, 10, 9), date(2026, 10, 3)]


def test_amendments_that_nobody_looked_for_are_not_none() -> None:
    """Not looked up is told apart from none found."""
    amended = [(date(2026, 10, 14), "toe length of the left fore 81, before 80")]

    assert (sheet(FULL).amendments, sheet(FULL, amendments=[]).amendments) == (None, ())
    assert sheet(FULL, amendments=amended).amendments == tuple(amended)


@pytest.mark.parametrize(("agreed", "may"), [("yes", True), ("no", False), (None, False)])
def test_what_may_be_shared(agreed: str | None, may: bool) -> None:
    """Only what somebody agreed to."""
    consent = {"vet": agreed, "by": "Jonah Peake", "date": "2026-03-05"} if agreed else None

    assert may_be_shared(horse(consent=consent)) is may


def test_a_horse_without_a_visit_has_a_sheet() -> None:
    """With nothing on it but who it is."""
    found = sheet()

    assert (found.rows, found.visits, found.intervals, found.vet, found.keeping) == ((), (), None, (), ())
