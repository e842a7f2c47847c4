"""Findings along the days."""

from __future__ import annotations

from datetime import date
from typing import Any, get_args

from recordgen.records.models.names import FindingKind
from recordgen.records.models.visit import Visit
from recordgen.site.horse.glance import Glance, GlanceRow, days_seen, kinds_found
from tests.support.horse_records import NAMING, summary, visit

TODAY = date(2026, 12, 1)
GAP = {"wall": {"toe": {"separation": {"length": 20, "depth": 4}}}}


def glance(*visits: Visit, **values: Any) -> Glance:
    """The glance at a horse with these visits."""
    seen = days_seen(summary(*visits, today=TODAY, **values), NAMING)
    assert seen is not None
    found = seen.by(TODAY)
    assert found is not None
    return found


def row(found: Glance, name: str) -> GlanceRow:
    """One line of it."""
    (one,) = [one for one in found.rows if one.name == name]
    return one


def gaps(*there: bool) -> list[Visit]:
    """Visits a month apart that looked at the left fore and found a gap, or none."""
    return [visit(f"2026-{month:02}-10", left_fore=GAP if seen else {}) for month, seen in enumerate(there, 1)]


def test_two_visits_are_no_line() -> None:
    """They are told by the feet and the history."""
    assert days_seen(summary(*gaps(True, True)), NAMING) is None


def test_a_finding_goes_from_the_visit_that_saw_it_to_the_one_that_did_not() -> None:
    """Twice, where it came again; the second is still there today."""
    found = row(glance(*gaps(False, True, True, False, True)), "White line gap")

    assert found.days == ((date(2026, 2, 10), date(2026, 4, 10)), (date(2026, 5, 10), TODAY))
    assert found.stretches[-1][0] + found.stretches[-1][1] == 100


def test_a_visit_that_did_not_look_at_the_foot_ends_nothing() -> None:
    """The gap may be there as before."""
    first, *rest = gaps(True, False, False)
    unseen = [one.model_copy(update={"feet": {}}) for one in rest]

    assert row(glance(first, *unseen), "White line gap").days == ((date(2026, 1, 10), TODAY),)


def test_the_line_of_a_horse_that_left_ends_with_its_last_visit() -> None:
    """Nobody knows what came after."""
    found = glance(*gaps(True, True, True), left={"date": "2026-04-01"})

    assert (found.last, found.until_today) == (date(2026, 3, 10), False)
    assert row(found, "White line gap").days == ((date(2026, 1, 10), date(2026, 3, 10)),)


def test_lameness_is_a_line_until_it_was_graded_none() -> None:
    """A visit without a grade tells nothing."""
    graded = [{"lameness": {"scale": "AAEP", "grade": grade}} for grade in (2, 0)]
    visits = [
        visit("2026-01-10"),
        visit("2026-02-10", **graded[0]),
        visit("2026-03-10"),
        visit("2026-04-10", **graded[1]),
    ]

    assert row(glance(*visits), "Lame").days == ((date(2026, 2, 10), date(2026, 4, 10)),)


def test_every_kind_of_finding_has_a_short_name() -> None:
    """A noun or two, so that it fits beside its line."""
    names = [NAMING.phrases[f"glance_{kind}"] for kind in get_args(FindingKind)]

    assert max(len(name) for name in names) <= 16


def test_a_visit_is_told_by_what_it_found() -> None:
    """Each kind once, the lameness before; nothing for a visit that found nothing."""
    lame = visit("2026-01-10", left_fore=GAP, right_fore=GAP, lameness={"scale": "AAEP", "grade": 1})
    first, second = summary(lame, visit("2026-02-10", left_fore={})).history[::-1]

    assert kinds_found(first, NAMING) == ["lame", "white line gap"]
    assert kinds_found(second, NAMING) == []
