"""How many horses of a stable have a finding, of how many that were looked at for it."""

from __future__ import annotations

from datetime import timedelta
from typing import Any

import pytest

from recordgen.hoof.stable.prevalence import WINDOW, Share, pool_shares
from tests.support.horse_records import TODAY, summary, visit
from tests.support.stables import CLEAN, INFECTED, NOW, YEAR_AGO, share


@pytest.mark.parametrize(
    ("counts", "expected"),
    [
        pytest.param([(5, 60)], None, id="one other stable, however large"),
        pytest.param([(1, 3), (1, 4)], None, id="seven horses"),
        pytest.param([(1, 4), (1, 4)], Share(2, 8, 8), id="two stables and eight horses"),
        pytest.param([(5, 60), (0, 0)], None, id="the other one was not looked at"),
        pytest.param([], None, id="no other stable"),
    ],
)
def test_other_stables_that_could_be_told_apart_are_not_told(
    counts: list[tuple[int, int]], expected: Share | None
) -> None:
    """Two or more stables and eight or more horses, or nothing."""
    assert pool_shares([Share(count, of, of) for count, of in counts]) == expected


@pytest.mark.parametrize(("days", "expected"), [(0, (1, 1, 1)), (91, (1, 1, 1)), (92, (0, 0, 0)), (-1, (0, 0, 0))])
def test_a_look_may_lie_thirteen_weeks_back(days: int, expected: tuple[int, int, int]) -> None:
    """Counted from the day asked about; a later visit does not count for it."""
    seen = summary(visit((TODAY - timedelta(days=days)).isoformat(), left_fore=INFECTED))

    assert WINDOW.days == 91
    assert share("infection", seen) == expected


def test_a_horse_that_left_counts_until_then() -> None:
    """On the day it left it is gone; a year before it was there."""
    gone = summary(visit(YEAR_AGO, left_fore=INFECTED), visit(NOW, left_fore=INFECTED), left={"date": "2026-12-01"})

    assert share("infection", gone) == (0, 0, 0)
    assert share("infection", gone, day=TODAY - timedelta(days=1)) == (1, 1, 1)
    assert share("infection", gone, day=TODAY - timedelta(days=365)) == (1, 1, 1)


WALL: dict[str, Any] = {"wall": {"toe": {"flare": 3}}}


@pytest.mark.parametrize(
    ("finding", "foot", "expected"),
    [
        pytest.param("infection", INFECTED, (1, 1, 1), id="infected"),
        pytest.param("infection", CLEAN, (0, 1, 1), id="none was written"),
        pytest.param("infection", {"frog": {"width": 50}}, (0, 0, 1), id="the frog measured, nothing of infection"),
        pytest.param("crack", {"wall": {"toe": {"crack": {"length": 20}}}}, (1, 1, 1), id="cracked"),
        pytest.param("crack", WALL, (0, 1, 1), id="something else of the wall"),
        pytest.param("crack", {"after": {"toe_length": 80}}, (0, 1, 1), id="measured"),
        pytest.param("crack", {"done": ["edge rounded"]}, (0, 1, 1), id="trimmed"),
        pytest.param("crack", {"landing": "flat"}, (0, 0, 1), id="only watched"),
        pytest.param("crack", {"abscess": {"where": "sole"}}, (0, 0, 1), id="called for an abscess"),
        pytest.param("crack", {}, (0, 0, 1), id="nothing told"),
        pytest.param("separation", {"wall": {"toe": {"separation": {"depth": 0}}}}, (0, 1, 1), id="a closed gap"),
        pytest.param("separation", {"wall": {"toe": {"separation": {"depth": 4}}}}, (1, 1, 1), id="a gap"),
        pytest.param("chip", {"wall": {"toe": {"chip": 9}}}, (1, 1, 1), id="a broken edge"),
        pytest.param("bruise", {"sole": {"bruise": True}}, (1, 1, 1), id="bruised sole"),
        pytest.param("bruise", {"wall": {"toe": {"bruise": True}}}, (1, 1, 1), id="bruised wall"),
        pytest.param("sensitive", {"sole": {"sensitive": True}}, (1, 1, 1), id="sole hurts"),
        pytest.param("sensitive", {"sole": {"gives": True}}, (0, 1, 1), id="sole gives, no pain recorded"),
        pytest.param("sensitive", {"sole": {"depth": 12}}, (0, 1, 1), id="something else of the sole"),
        pytest.param("sensitive", {"after": {"toe_length": 80}}, (0, 0, 1), id="nothing of the sole"),
        pytest.param("ring", {"marks": [{"kind": "event ring", "below_hairline": 9}]}, (1, 1, 1), id="ring"),
        pytest.param("ring", {"marks": [{"kind": "growth mark", "below_hairline": 9}]}, (0, 1, 1), id="made by hand"),
    ],
)
def test_who_was_looked_at(finding: str, foot: dict[str, Any], expected: tuple[int, int, int]) -> None:
    """A sign not recorded is not absent: with the finding, looked at for it, and seen."""
    assert share(finding, summary(visit(NOW, left_fore=foot))) == expected


def test_a_visit_without_a_trim_tells_only_what_it_found() -> None:
    """A crack seen then counts; silence about cracks does not."""
    cracked: dict[str, Any] = {"wall": {"toe": {"crack": {}}}}

    assert share("crack", summary(visit(NOW, trimmed=False, left_fore=WALL))) == (0, 0, 1)
    assert share("crack", summary(visit(NOW, trimmed=False, left_fore=cracked))) == (1, 1, 1)


@pytest.mark.parametrize(
    ("later", "expected"),
    [
        pytest.param({"left_fore": {"pulse": "usual"}}, 1, id="silent about it"),
        pytest.param({"right_fore": CLEAN}, 1, id="another foot"),
        pytest.param({"left_fore": CLEAN}, 0, id="gone since"),
        pytest.param({}, 1, id="no foot"),
    ],
)
def test_each_foot_counts_as_the_record_last_told_of_it(later: dict[str, Any], expected: int) -> None:
    """A check of something else does not wipe out what was found two weeks before."""
    seen = summary(visit("2026-10-19", left_fore=INFECTED), visit(NOW, **later))

    assert share("infection", seen) == (expected, 1, 1)


def test_a_finding_on_one_foot_is_a_finding_of_the_horse() -> None:
    """Three clean frogs and one that is not."""
    assert share("infection", summary(visit(NOW, left_fore=CLEAN, right_fore=CLEAN, left_hind=INFECTED))) == (1, 1, 1)
