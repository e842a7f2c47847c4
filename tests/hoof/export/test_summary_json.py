"""A summary as plain values: what other programs read."""

from __future__ import annotations

import json
from typing import Any

import pytest

from recordgen.hoof.export.summary_json import as_json
from recordgen.records.models.visit import Visit
from tests.support.full_visits import EARLIER, FULL
from tests.support.horse_records import summary, toes, visit


def plain(*visits: Visit, **values: Any) -> dict[str, Any]:
    """The plain values of a horse, through JSON and back."""
    found = as_json(summary(*visits, **values))
    again: dict[str, Any] = json.loads(json.dumps(found, allow_nan=False))
    assert again == found
    return again


def test_what_is_promised_is_there() -> None:
    """Stable, horse, day, due, cautions, and for each foot its growth and measures."""
    found = plain(EARLIER, FULL)
    foot = found["feet"]["left_fore"]

    assert (found["stable"], found["horse"], found["as_of"]) == ("willowmere", "bramble", "2026-12-01")
    assert {"earliest", "best", "latest", "reason"} <= set(found["due"])
    assert all({"level", "text", "source"} <= set(caution) for caution in found["cautions"])
    assert {"mm_per_day", "low", "high", "cycles"} <= set(foot["growth"]["net"])
    assert {"together", "season", "apart"} <= set(found["growth"])
    assert {"before", "after", "change", "smallest_real_change", "real"} <= set(foot["measures"]["toe_length"])


def test_the_due_window() -> None:
    """Days as ISO 8601, with the reason in words."""
    assert plain(FULL)["due"] == {
        "earliest": "2026-11-18",
        "best": "2026-11-25",
        "holiday": None,
        "latest": "2026-12-02",
        "whose": "trimmer",
        "reason": "6 weeks after the last visit, as Wren Ashdown set it that day",
        "earliest_reason": "7 days from the best day, which does as well",
        "latest_reason": "7 days from the best day, which does as well",
        "overdue_days": 0,
    }


def test_a_caution() -> None:
    """Its rule and level, the foot and day, its words and their source."""
    (found,) = plain(visit("2026-10-14", left_fore={"bears_weight": "not"}))["cautions"]

    assert (found["rule"], found["level"], found["foot"]) == ("bears-no-weight", "call now", "left_fore")
    assert (found["day"], found["since"], found["days_open"], found["seen_again"]) == (
        "2026-10-14",
        "2026-10-14",
        48,
        0,
    )
    assert found["text"].startswith("The left fore took no weight on 14 October 2026.")


def test_a_measure_with_its_change() -> None:
    """Lengths in mm, rounded to a hundredth."""
    found = plain(*toes(("2026-09-02", 86, 78), ("2026-10-14", 90, 80)))["feet"]["left_fore"]["measures"]

    assert found["toe_length"] == {
        "unit": "mm",
        "day": "2026-10-14",
        "before": 90,
        "after": 80,
        "compared": "after",
        "change": 2,
        "smallest_real_change": 2.89,
        "real": False,
        "since": {"day": "2026-09-02", "change": 2},
        "since_half_year": None,
        "since_first": {"day": "2026-09-02", "change": 2},
    }


def test_a_measure_taken_once() -> None:
    """A value without another to compare with is null, and so is one not taken."""
    found = plain(visit("2026-10-14", left_fore={"before": {"toe_length": 86}}))["feet"]["left_fore"]

    assert found["growth"]["net"]["cycles"] == 0
    assert (found["growth"]["by_mark"], found["growth"]["wear"], found["growing_out"]) == (None, None, [])
    assert found["measures"]["toe_length"] | {"unit": "mm"} == {
        "unit": "mm",
        "day": "2026-10-14",
        "before": 86,
        "after": None,
        "compared": "before",
        "change": None,
        "smallest_real_change": 2.89,
        "real": None,
        "since": None,
        "since_half_year": None,
        "since_first": None,
    }


def test_growth() -> None:
    """Rates are mm a day to a ten-thousandth, with its interval and how many cycles it rests on; slips are named."""
    visits = toes(("2026-07-22", 90, 80), ("2026-09-02", 90, 80), ("2026-10-14", 130, 80))
    found = plain(*visits)
    growth = found["feet"]["left_fore"]["growth"]

    assert growth["net"]["low"] < growth["net"]["mm_per_day"] == round(growth["net"]["mm_per_day"], 4)
    assert (growth["net"]["cycles"], found["growth"]["together"]["cycles"]) == (1, 1)
    assert growth["left_out"] == [{"start": "2026-09-02", "end": "2026-10-14", "why": "too fast"}]


def test_a_mark_on_its_way_down() -> None:
    """Where it was last seen, and the days between which it reaches the ground."""
    ring = {"marks": [{"kind": "event ring", "below_hairline": 20}], "after": {"toe_length": 80}}
    (found,) = plain(visit("2026-10-14", left_fore=ring))["feet"]["left_fore"]["growing_out"]

    assert (found["kind"], found["zone"], found["below_hairline_mm"]) == ("event ring", "toe", 20)
    assert found["earliest"] < found["about"] < found["latest"]
    assert found["as_expected"] is None


def test_forecasts_and_what_came() -> None:
    """One for each visit but the last."""
    (found,) = plain(*toes(("2026-09-02", 90, 80), ("2026-10-14", 91, 80)))["forecasts"]

    assert found == {
        "made": "2026-09-02",
        "about": "2026-10-14",
        "came": "2026-10-14",
        "expected_mm": 10.92,
        "grown_mm": 11,
    }


@pytest.mark.parametrize("visits", [(), (visit("2026-10-14"),)])
def test_a_horse_of_which_nothing_is_known_yet(visits: tuple[Visit, ...]) -> None:
    """No visit, or one without feet: still valid JSON, with no foot in it."""
    found = plain(*visits)

    assert found["feet"] == {}
    assert (found["last_visit"], found["due"] is None) == (("2026-10-14", False) if visits else (None, True))


def test_findings_and_jobs() -> None:
    """Findings by place, and what is to be done since when."""
    found = plain(FULL)

    assert found["feet"]["left_fore"]["findings"][0] == {
        "place": "medial toe quarter",
        "kind": "flare",
        "text": "flare, 6 mm",
    }
    assert [(job["key"], job["since"]) for job in found["care"]] == [("daily-grooves", "2026-10-14")]


def test_a_job_that_waits_and_whom_a_caution_asks_to_ring() -> None:
    """It is not among the care in force; the caution because of which it waits is named."""
    sore = {"frog": {"infection": "deep groove", "painful": True}}
    found = plain(visit("2026-10-14", left_hind=sore, care=["daily-grooves", "dry-bed"]))
    (waits,) = found["care_withheld"]
    (caution,) = [one for one in found["cautions"] if one["rule"] == "painful-groove"]

    assert [job["key"] for job in found["care"]] == ["dry-bed"]
    assert (waits["key"], waits["since"]) == ("daily-grooves", "2026-10-14")
    assert {"rule": "painful-groove", "foot": "left_hind"} in waits["because"]
    assert caution["ring"] == ["vet"]
