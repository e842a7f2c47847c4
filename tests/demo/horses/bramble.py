"""Bramble: a pony whose right hind ran out at the inner toe quarter in ten weeks of a flood, and grew in again.

Every seven weeks before, every five from then on. The sole is traced before the trim from December 2025 on, where
there is no flare yet: the ring tells the same story.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

from tests.demo.days import counted_back
from tests.demo.plans import HorsePlan, four_feet, on
from tests.demo.tracings import SoleFoot, drawn
from tests.support.side_shapes import FrontFoot
from tests.support.sole_shapes import HIND, Bulge

DAYS = (
    *counted_back(date(2025, 12, 10), 7, since=date(2025, 1, 10)),
    *counted_back(date(2026, 10, 21), 5, since=date(2026, 2, 18)),
)
ZONE = "medial toe quarter"

_SOLE = SoleFoot(
    length=121,
    width=112,
    widest=HIND.widest,
    roundness=HIND.roundness,
    heels=72,
    wall=(9.5, 9, 8),
    turn=2,
)
_FRONT = FrontFoot(hairline=88, angles=(79, 79))


def _sole(bulge: float, longer: float = 0) -> SoleFoot:
    """The right hind from below: as high as the bulge is, so wide the flare is typed."""
    return replace(_SOLE, length=_SOLE.length + longer, bulges=(Bulge(-48, bulge, 80),))


def _front(flare: float) -> FrontFoot:
    return replace(_FRONT, angles=(79 - flare / 2, 79), flares=(flare, 0))


def _flare(size: float, gap: tuple[int, int] | None, *done: str, **more: Any) -> dict[str, Any]:
    zone: dict[str, Any] = {"flare": size}
    if gap:
        zone["separation"] = {"length": gap[0], "depth": gap[1]}
    return {"wall": {ZONE: zone}, "done": list(done), **more}


_FROG = {"infection": "none", "central_groove_depth": 5}

_feet = four_feet(76, 31, 51, more={"circumference": 331})
_feet["right_hind"] = _feet["right_hind"].with_(walls=(56, 55), frog=0.58)

PLAN = HorsePlan(
    stable="willowmere",
    slug="bramble",
    file={
        "name": "Bramble",
        "kind": "pony",
        "sex": "gelding",
        "born": 2011,
        "height": "13.3 hh",
        "microchip": "999000000104217",
        "ueln": "826ZZZ000104217",
        "conformation": ["cow-hocked; both hinds turn out a little and roll over the inner toe"],
        "aims": [
            {"measure": "flare", "zone": ZONE, "foot": "right_hind", "under": 2},
            {"measure": "ring_flare", "zone": ZONE, "foot": "right_hind", "under": 2},
            {
                "measure": "toe_length",
                "under": 78,
                "note": "A short toe levers less, so new wall can come down straight",
            },
        ],
        "usual_weeks": 5,
        "consent": {"vet": True, "by": "Jonah Peake", "date": date(2025, 3, 5)},
        "note": "Rolls over the inner toe behind, so a wall that is too long is pushed out just there.",
    },
    days=DAYS,
    feet=_feet,
    rate=0.26,
    weeks=7,
    follows_angle=True,
    work=(
        "Long reins in the woods.",
        "The children ride at weekends.",
        "Off work, Jonah was away.",
        "A day at the pony club.",
        "Led out behind Fennel.",
        "Pulled the harrow round the paddock.",
    ),
    notes=("Bramble dozed through it.", "Keep him off the stony track by the pond until the edge has grown."),
    told=(
        on(
            "2025-12-10",
            right_hind={"landing": "heel first", "wall": {ZONE: {"chip": 10}}},
            note="Feet soft, edges fine. I'll be back before the end of January.",
        ),
        on(
            "2026-02-18",
            right_hind=_flare(8, (34, 7), "toe taken back", "medial flare dressed", landing="flat"),
            since_last="Ten weeks: the lane stood under water on the day we had planned.",
            care=["watch-the-edge"],
            next={"weeks": 5},
            note="Ten weeks were too many: the inner wall of the right hind has run out. Every five weeks from here.",
        ),
        on(
            "2026-03-25",
            right_hind=_flare(7, (30, 6), "toe taken back", "medial flare dressed", landing="flat"),
            next={"weeks": 5},
            note="The edge is dressed each time; most of it has to grow down, which takes until autumn. Nothing hurts.",
        ),
        on("2026-04-29", right_hind=_flare(6, (24, 5), "medial flare dressed", landing="flat"), next={"weeks": 5}),
        on(
            "2026-06-03",
            right_hind=_flare(4.5, (20, 4), "medial flare dressed", "edge rounded", landing="flat"),
            lameness={"scale": "AAEP", "grade": 0},
            next={"weeks": 5},
            note="New wall comes down straight from the hairline: look at the upper half.",
        ),
        on("2026-07-08", right_hind=_flare(3.5, (15, 3), "medial flare dressed", landing="flat"), next={"weeks": 5}),
        on("2026-08-12", right_hind=_flare(2.5, (8, 2), "edge rounded", landing="heel first"), next={"weeks": 5}),
        on(
            "2026-09-16",
            right_hind=_flare(2, None, "edge rounded", "toe taken back", landing="heel first"),
            care=["watch-the-edge", "pick-out-daily"],
            next={"weeks": 5},
        ),
        on(
            "2026-10-21",
            right_hind=_flare(1, None, "edge rounded", landing="heel first", frog=_FROG),
            since_last="Long reins in the woods, tracks soft.",
            left_fore={"frog": None},
            next={"weeks": 5},
            note="The flare is all but gone. Five weeks suit him; we'll keep to them over winter.",
        ),
    ),
    drawn=(
        *drawn("2025-12-10", "right_hind", before=_sole(0.5, 2), kept=True),
        *drawn("2026-02-18", "right_hind", before=_sole(8, 4), after=_sole(6.2), kept=True),
        *drawn("2026-02-18", "right_hind", before=_front(10), kept=True),
        *drawn("2026-02-18", "left_hind", before=replace(_SOLE, length=124)),
        *drawn("2026-03-25", "right_hind", before=_sole(7, 2)),
        *drawn("2026-04-29", "right_hind", before=_sole(6, 2)),
        *drawn("2026-06-03", "right_hind", before=_sole(4.5, 2), after=_sole(3.3)),
        *drawn("2026-07-08", "right_hind", before=_sole(3.5, 2)),
        *drawn("2026-08-12", "right_hind", before=_sole(2.5, 2)),
        *drawn("2026-09-16", "right_hind", before=_sole(2, 2)),
        *drawn("2026-10-21", "right_hind", before=_sole(1, 2), after=_sole(0.4), kept=True),
        *drawn("2026-10-21", "right_hind", before=_front(1.5), kept=True),
        *drawn("2026-10-21", "left_hind", after=_SOLE, kept=True),
    ),
)
