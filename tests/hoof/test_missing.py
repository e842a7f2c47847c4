"""Gaps of the records, told to the trimmer."""

from dataclasses import replace
from datetime import date
from typing import Any

import pytest

from recordgen.hoof.missing import Gap, gaps_of
from recordgen.records.models.names import FEET
from recordgen.records.models.visit import Visit
from tests.support.horse_records import REFERENCE, record, visit

KNOWN: dict[str, Any] = {"microchip": "968000004531234"}
SEEN: dict[str, Any] = {foot: {} for foot in FEET}


def gaps(*visits: Visit, **values: Any) -> tuple[Gap, ...]:
    """The gaps of a horse whose own file lacks nothing."""
    return gaps_of(record(*visits, **{**KNOWN, **values}), REFERENCE.classes)


def test_a_full_record_has_no_gap() -> None:
    """Four feet seen, and the next visit set."""
    assert gaps(visit("2026-10-14", **SEEN, next={"weeks": 6})) == ()


def test_gaps_of_the_horse_itself() -> None:
    """No birthday, and neither of the two numbers; one of them is enough."""
    full = visit("2026-10-14", **SEEN, next={"weeks": 6})

    assert gaps(full, born=None, microchip=None) == (Gap("born"), Gap("identity"))
    assert gaps(full, microchip=None, ueln="372414001234567") == ()


def test_no_visit_yet() -> None:
    """That is the one gap of its visits."""
    assert gaps() == (Gap("no_visit"),)


def test_feet_that_the_last_visit_left_out() -> None:
    """They are named in the order of the feet; an earlier visit does not matter."""
    earlier = visit("2026-09-02", **SEEN)
    last = visit("2026-10-14", right_hind={}, left_fore={}, next={"weeks": 6})

    assert gaps(earlier, last) == (Gap("feet_unseen", date(2026, 10, 14), ("right_fore", "left_hind")),)


@pytest.mark.parametrize(("trimmed", "expected"), [(True, 1), (False, 0)])
def test_feet_measured_before_the_trim_alone(trimmed: bool, expected: int) -> None:
    """After a trim the measures are wanted again; where nothing was trimmed they are not."""
    feet = {**SEEN, "left_hind": {"before": {"toe_length": 80}}}
    found = gaps(visit("2026-10-14", **feet, trimmed=trimmed, next={"weeks": 6}))

    assert found == (Gap("no_after", date(2026, 10, 14), ("left_hind",)),) * expected


def test_a_next_visit_need_not_be_set() -> None:
    """It is computed where the trimmer gave no word."""
    assert gaps(visit("2026-10-14", **SEEN)) == ()


def test_of_a_horse_that_left_nothing_is_wanted() -> None:
    """Nothing is wanted of its last visit any more."""
    assert gaps(visit("2026-10-14"), left={"date": "2026-11-01"}) == ()


@pytest.mark.parametrize(("days", "kind", "expected"), [(118, "horse", 0), (119, "horse", 1), (119, "donkey", 0)])
def test_a_long_break(days: int, kind: str, expected: int) -> None:
    """More than twice the longest usual interval, in whole weeks: 17 for a horse."""
    then = date(2026, 10, 14)
    earlier = visit(date.fromordinal(then.toordinal() - days).isoformat(), **SEEN)
    found = gaps(earlier, visit("2026-10-14", **SEEN, next={"weeks": 6}), kind=kind)

    assert found == (Gap("long_break", earlier.date, weeks=17),) * expected


def test_every_kind_of_gap_has_its_words() -> None:
    """Each kind is a key of the phrases, and no phrase of a gap is left over."""
    broken = gaps(visit("2025-01-01"), visit("2026-10-14", left_fore={"before": {}}), born=None, microchip=None)
    moved = gaps_of(replace(record(), earlier=("fallow-end/otter",)), REFERENCE.classes)
    kinds = {gap.kind for gap in (*gaps(), *broken, *moved)}

    assert moved[-1] == Gap("moved", where="fallow-end/otter")
    assert {f"gap_{kind}" for kind in kinds} == {key for key in REFERENCE.phrases if key.startswith("gap_")}
