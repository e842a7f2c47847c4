"""Dunlin: a surface crack of the medial quarter of the right fore, at its longest in May 2026, then growing out.

The left fore turns out and is wider on its outer side: traced from below, it stays as it is from visit to visit.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

from tests.demo.days import counted_back, grown_down
from tests.demo.plans import FootPlan, HorsePlan, four_feet, marked, on
from tests.demo.tracings import SoleFoot, drawn

DAYS = counted_back(date(2026, 11, 6), 6)
# mm of wall at the quarter before a trim.
WALL = 72
# mm from the hairline to the upper end of the crack; below it the crack runs to the ground.
ENDS = grown_down([day for day in DAYS if day >= date(2026, 5, 22)], 22, 0.26)

_feet = four_feet(85, 37, 50.5)
_feet["right_fore"] = FootPlan(85.5, (37, 37.5), 50, walls=(63, 64))
_TURNED = SoleFoot(length=126, width=126, heels=82, turn=5.5, lopsided=0.05)
_LONGER = replace(_TURNED, length=129, width=128)


def _crack(length: int) -> dict[str, Any]:
    crack = {"length": max(3, length), "depth": "surface", "direction": "vertical", "reaches": "ground"}
    return {"right_fore": {"wall": {"medial quarter": {"crack": crack | {"blood": False, "moisture": False}}}}}


PLAN = HorsePlan(
    stable="tithe-barn",
    slug="dunlin",
    file={
        "name": "Dunlin",
        "sex": "gelding",
        "born": 2010,
        "height": "15.3 hh",
        "microchip": "999000000306117",
        "conformation": ["stands base narrow in front", "left fore turns out a little"],
        "note": "Driven on roads; the inner edges take the wear.",
    },
    days=DAYS,
    feet=_feet,
    rate=0.245,
    weeks=None,
    work=("Driving, roads.", "Light driving.", "Trotting on the road, half an hour.", "Walks with the cart."),
    told=(
        marked("right_fore", "crack end", "medial quarter", ENDS),
        {day: {"feet": _crack(WALL - end)} for day, end in ENDS.items()},
        on(
            "2026-04-10",
            feet=_crack(30),
            since_last="A stone split the edge on the road; the crack has run up since.",
            note="A crack in the surface of the inner wall, right fore. It is dry and he is sound.",
            care=["watch-the-edge", "watch-a-crack"],
            lameness={"scale": "AAEP", "grade": 0},
        ),
        on("2026-05-22", note="It ran up further, then stopped. From here it should grow out, about 8 mm a month."),
        on("2026-07-03", care=["watch-the-edge", "watch-a-crack", "pick-out-daily"]),
        on(
            "2026-11-06",
            note="Nearly out. Roads on the crown, not on the slope, until the next visit.",
            care=["watch-the-edge", "watch-a-crack"],
        ),
    ),
    drawn=(
        *drawn("2025-10-24", "left_fore", before=_LONGER, kept=True),
        *drawn("2026-01-16", "left_fore", before=_LONGER),
        *drawn("2026-04-10", "left_fore", before=_LONGER, after=_TURNED),
        *drawn("2026-07-03", "left_fore", before=_LONGER),
        *drawn("2026-09-25", "left_fore", before=_LONGER),
        *drawn("2026-11-06", "left_fore", before=_LONGER, kept=True, times=2),
        *drawn("2026-11-06", "left_fore", after=_TURNED, kept=True),
    ),
)
