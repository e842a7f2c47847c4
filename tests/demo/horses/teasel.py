"""Teasel: an uneven pair of fores, the right one upright, the left one lower; both traced from the side in October."""

from __future__ import annotations

from datetime import date

from tests.demo.days import counted_back
from tests.demo.plans import FootPlan, HorsePlan, four_feet, frogs, on
from tests.demo.tracings import drawn
from tests.support.side_shapes import SideFoot

_feet = four_feet(83, 34, 50)
_feet["left_fore"] = FootPlan(85, (31.5, 32), 48, slip=2.5, more={"sole_width": 128, "circumference": 371})
_feet["right_fore"] = FootPlan(81, (38.5, 39), 52.5, slip=1.5, more={"sole_width": 121, "circumference": 362})

PLAN = HorsePlan(
    stable="fallow-end",
    slug="teasel",
    file={
        "name": "Teasel",
        "sex": "mare",
        "born": 2018,
        "height": "15.2 hh",
        "microchip": "999000000205614",
        "conformation": ["right fore upright, left fore lower: an uneven pair", "grazes with the left fore forward"],
        "note": "Her fores differ and always have. The aim is that each is comfortable, not that both look alike.",
    },
    days=counted_back(date(2026, 10, 29), 6),
    feet=_feet,
    rate=0.27,
    weeks=None,
    looks=0.6,
    follows_angle=True,
    work=("Schooling, both reins.", "Hacks and pole work.", "Lanes and a little trotting.", "Young and busy."),
    notes=(
        "Left lower, right upright, both sound.",
        "Left toe runs forward quicker, so six weeks, not eight.",
        "Feed from two heaps, so she changes the foot she puts forward.",
    ),
    told=(
        on("2024-12-23", care=["pick-out-daily"]),
        on(
            "2025-07-24",
            care=[
                {
                    "what": "Offer hay in two heaps a step apart",
                    "how_often": "daily",
                    "why": "She stands with the left fore forward at one heap",
                }
            ],
        ),
        on("2026-04-02", lameness={"scale": "AAEP", "grade": 0}),
        frogs("2025-10-16", "none"),
        frogs("2026-10-29", "surface", 8),
        on("2026-10-29", care=["daily-grooves"], left_fore={"landing": "flat"}, right_fore={"landing": "heel first"}),
    ),
    drawn=(
        *drawn("2026-10-29", "left_fore", after=SideFoot(heel_angle=38, pastern_angle=49.5, hairline=108), kept=True),
        *drawn("2026-10-29", "right_fore", after=SideFoot(heel_angle=47, pastern_angle=54, breakover=10), kept=True),
    ),
)
