"""Fennel: an infection of the hind frogs that comes back every wet season; deep and painful at the last visit."""

from __future__ import annotations

from datetime import date
from typing import Any

from tests.demo.days import counted_back
from tests.demo.plans import HorsePlan, four_feet, on

# By day: infection and depth of the central groove, left hind, then right hind.
GROOVES = {
    "2024-12-04": ("surface", 9, "surface", 8),
    "2025-01-15": ("deep groove", 13, "surface", 10),
    "2025-02-26": ("surface", 11, "surface", 9),
    "2025-04-09": ("none", 8, "none", 7),
    "2025-05-21": ("none", 6, "none", 6),
    "2025-07-02": ("none", 5, "none", 5),
    "2025-08-13": ("none", 5, "none", 6),
    "2025-09-24": ("none", 6, "none", 5),
    "2025-11-05": ("surface", 9, "none", 7),
    "2025-12-17": ("deep groove", 12, "surface", 9),
    "2026-01-28": ("deep groove", 14, "surface", 11),
    "2026-03-11": ("surface", 10, "surface", 9),
    "2026-04-22": ("none", 8, "none", 7),
    "2026-06-03": ("none", 6, "none", 6),
    "2026-07-15": ("none", 5, "none", 5),
    "2026-08-26": ("none", 5, "none", 5),
    "2026-10-07": ("surface", 8, "none", 7),
    "2026-11-18": ("deep groove", 15, "surface", 10),
}
WET = ["daily-grooves", "wet-season-frog", "dry-bed"]


def _hinds(left: str, left_depth: int, right: str, right_depth: int) -> dict[str, Any]:
    return {
        "left_hind": {"frog": {"infection": left, "central_groove_depth": left_depth}},
        "right_hind": {"frog": {"infection": right, "central_groove_depth": right_depth}},
    }


_feet = four_feet(83, 36, 49.5)
for _hind in ("left_hind", "right_hind"):
    _feet[_hind] = _feet[_hind].with_(frog=0.44)

PLAN = HorsePlan(
    stable="willowmere",
    slug="fennel",
    file={
        "name": "Fennel",
        "sex": "gelding",
        "born": 2009,
        "height": "15.3 hh",
        "microchip": "999000000104318",
        "conformation": ["narrow frogs behind", "camped under a little behind"],
        "note": "Narrow hind frogs that hold the wet. Dry feet for part of each day matter more than anything I do.",
        "private_note": "Snatches the right hind. Hold it low and wait.",
    },
    days=counted_back(date(2026, 11, 18), 6),
    feet=_feet,
    rate=0.24,
    work=(
        "Hacks at the weekend.",
        "Semi-retired, walks out with Moss.",
        "Lanes once a week.",
        "A quiet spell, stood in more than he likes.",
        "Out with the others by day.",
    ),
    told=(
        *(on(day, **_hinds(*found)) for day, found in GROOVES.items()),
        on("2024-12-04", care=WET, note="Both hind frogs smell again. Brush, dry, look: daily until spring."),
        on(
            "2025-01-15",
            care=["daily-grooves", "wet-season-frog", "dry-bed", "pick-out-daily"],
            left_hind={"done": ["frog opened", "loose horn taken off"], "note": "The groove goes deep, no pain yet."},
            next={"weeks": 5.5, "reason": "To look at the left hind frog sooner"},
        ),
        on("2025-04-09", care=["pick-out-daily"], note="Dry and clean: well done. Daily picking out will do now."),
        on("2025-11-05", care=WET, note="Here we are again, but caught early. Start the winter care today."),
        on("2025-12-17", left_hind={"done": ["frog opened"]}, care=[*WET, "pick-out-daily"]),
        on("2026-01-28", left_hind={"done": ["frog opened"], "frog": {"painful": False}}, lameness=None, care=WET),
        on("2026-03-11", care=WET, note="Groove < 12 mm again and no smell. Keep going another month."),
        on("2026-04-22", care=["pick-out-daily"]),
        on("2026-10-07", care=["daily-grooves", "wet-season-frog", "pick-out-daily"]),
        on(
            "2026-11-18",
            since_last="Rain, fields closed at the weekend. Stood in more than he likes.",
            keeping={"turnout": "a few hours by day", "bedding": "straw, wet by morning"},
            lameness={"scale": "AAEP", "grade": 0, "note": "careful on the stones by the gate, even on concrete"},
            left_hind={
                "landing": "toe first",
                "frog": {"painful": True},
                "done": ["frog opened a little, then left alone"],
                "note": "Flinched when the groove was opened, so I stopped there.",
            },
            care=[
                "dry-bed",
                {
                    "what": "Let the vet look at the left hind frog",
                    "how_often": "once, this week",
                    "until": "the vet has seen it",
                    "why": "The groove is deep and it hurts",
                },
            ],
            next={"weeks": 4, "reason": "The left hind frog needs looking at before Christmas"},
            note="Please have the vet look at the left hind frog. Until then clean and dry, nothing strong on it.",
        ),
    ),
)
