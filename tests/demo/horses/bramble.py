"""Bramble: a flare of the lateral quarter of the left fore, grown out over the last five visits.

Its sole is traced before the trim from November 2025 on, where there is no flare yet: the ring tells the same story.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

from tests.demo.days import counted_back
from tests.demo.plans import HorsePlan, four_feet, on
from tests.demo.tracings import SoleFoot, drawn
from tests.support.side_shapes import FrontFoot
from tests.support.sole_shapes import Bulge

DAYS = counted_back(date(2026, 10, 14), 6)
# mm the outer heel was longer than the inner one before the trim; it drifts out in the winter before.
LEAN = {9: 1, 10: 2, 11: 4, 12: 5, 13: 4, 14: 3, 15: 1.5, 16: 0.5}


_SOLE = SoleFoot(length=120, width=121, heels=78, wall=(11.5, 8.5, 7.5), turn=1.5)
_FRONT = FrontFoot(hairline=100)


def _sole(bulge: float, longer: float = 0) -> SoleFoot:
    """The left fore from below: as high as the bulge is, so wide the flare is typed."""
    return replace(_SOLE, length=_SOLE.length + longer, bulges=(Bulge(92, bulge, 80),))


def _front(flare: float) -> FrontFoot:
    return replace(_FRONT, angles=(78, 77 - flare / 2), flares=(0, flare))


def _flare(size: float, landing: str, gap: tuple[int, int] | None, *done: str, **more: Any) -> dict[str, Any]:
    zone: dict[str, Any] = {"flare": size}
    if gap:
        zone["separation"] = {"length": gap[0], "depth": gap[1]}
    return {"landing": landing, "wall": {"lateral quarter": zone}, "done": list(done), **more}


_feet = four_feet(80, 35, 50.5, more={"circumference": 352})
_feet["left_fore"] = _feet["left_fore"].with_(lean=LEAN, walls=(58, 59))

PLAN = HorsePlan(
    stable="willowmere",
    slug="bramble",
    file={
        "name": "Bramble",
        "sex": "mare",
        "born": 2015,
        "height": "15.1 hh",
        "microchip": "999000000104217",
        "ueln": "826ZZZ000104217",
        "conformation": ["left fore turns out a little from the knee"],
        "aims": [
            {"measure": "flare", "zone": "lateral quarter", "foot": "left_fore", "under": 2},
            {"measure": "ring_flare", "zone": "lateral quarter", "foot": "left_fore", "under": 2},
            {"measure": "heel_difference", "under": 2, "note": "Level heels are what lets the flare grow out"},
        ],
        "usual_weeks": 6,
        "consent": {"vet": True, "by": "Jonah Peake", "date": date(2025, 3, 5)},
        "note": "Turns out on the left fore, so that side wears unevenly. Six weeks suits her well.",
    },
    days=DAYS,
    feet=_feet,
    rate=0.27,
    follows_angle=True,
    work=(
        "Lanes twice a week.",
        "Schooling and one hack.",
        "Light work, Jonah was away.",
        "A fun ride on grass, no trouble.",
        "Hacked most days.",
        "Lunged a lot on the left rein.",
    ),
    notes=("Bramble stood well, as ever.", "Keep the hacks on both verges, so she isn't always on the same slope."),
    told=(
        on("2026-02-04", left_fore={"landing": "flat", "wall": {"lateral quarter": {"flare": 3}}}),
        on(
            "2026-03-18",
            left_fore={"landing": "lateral first", "wall": {"lateral quarter": {"flare": 5}}},
            note="The outer wall of the left fore is drifting out after the wet winter. I'll dress it each time now.",
        ),
        on(
            "2026-04-29",
            left_fore=_flare(7, "lateral first", (30, 6), "lateral heel lowered", "lateral flare dressed"),
            since_last="Warm and showery, grass shooting. Lanes twice a week.",
            care=["watch-the-edge"],
            note="The flare is at its widest; it will take about five visits to grow out. Nothing hurts.",
        ),
        on(
            "2026-06-10",
            left_fore=_flare(5.5, "lateral first", (28, 5), "lateral heel lowered", "lateral flare dressed"),
        ),
        on(
            "2026-07-22",
            left_fore=_flare(4, "lateral first", (22, 4), "lateral flare dressed", "edge rounded"),
            lameness={"scale": "AAEP", "grade": 0},
            note="New wall grows down straight from the hairline: look at the upper third.",
        ),
        on(
            "2026-09-02",
            left_fore=_flare(2.5, "flat", (12, 3), "lateral flare dressed", "bars levelled"),
            care=["watch-the-edge", "pick-out-daily"],
        ),
        on(
            "2026-10-14",
            left_fore=_flare(
                1.5, "flat", None, "edge rounded", "frog tidied", frog={"infection": "none", "central_groove_depth": 6}
            ),
            since_last="Lanes twice a week, a wet fortnight.",
            note="The flare is all but gone and she lands flat. Well done for keeping to the six weeks.",
            right_fore={"frog": None},
            next={"weeks": 6},
        ),
    ),
    drawn=(
        *drawn("2025-11-12", "left_fore", before=_sole(0.5, 2), kept=True),
        *drawn("2026-02-04", "left_fore", before=_sole(3, 2)),
        *drawn("2026-03-18", "left_fore", before=_sole(5, 2)),
        *drawn("2026-04-29", "left_fore", before=_sole(7, 3), after=_sole(5), kept=True),
        *drawn("2026-04-29", "left_fore", before=_front(9), kept=True),
        *drawn("2026-04-29", "right_fore", before=replace(_SOLE, turn=0, length=122)),
        *drawn("2026-06-10", "left_fore", before=_sole(5.5, 2)),
        *drawn("2026-07-22", "left_fore", before=_sole(4, 2), after=_sole(2.8)),
        *drawn("2026-09-02", "left_fore", before=_sole(2.5, 2)),
        *drawn("2026-10-14", "left_fore", before=_sole(1.5, 2), after=_sole(0.8), kept=True),
        *drawn("2026-10-14", "left_fore", before=_front(2), kept=True),
        *drawn("2026-10-14", "right_fore", after=replace(_SOLE, turn=0), kept=True),
    ),
)
