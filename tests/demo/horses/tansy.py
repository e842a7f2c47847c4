"""Tansy: an ordinary pony in boots, with a change of feed in between."""

from __future__ import annotations

from datetime import date

from tests.demo.days import counted_back
from tests.demo.plans import HorsePlan, four_feet, on

PLAN = HorsePlan(
    stable="willowmere",
    slug="tansy",
    file={
        "name": "Tansy",
        "kind": "pony",
        "sex": "mare",
        "born": 2016,
        "height": "13.2 hh",
        "note": "Boots on the fores for stony rides. Size them anew twice a year.",
    },
    days=counted_back(date(2026, 11, 4), 6, 6, 5),
    feet=four_feet(71, 32, 51.5, more={"sole_length": 108, "sole_width": 104, "circumference": 318}),
    rate=0.27,
    weeks=None,
    looks=0.45,
    work=(
        "Pony rally and lanes.",
        "Rides three times a week.",
        "Stony track up to the woods.",
        "Off for half-term, back in work.",
        "A 15 km ride, not footsore.",
    ),
    told=(
        on(
            "2025-03-19",
            left_fore={"sole": {"gives": False, "depth": 8}, "note": "Short on the stones outside."},
            since_last="Careful on the stony track since the ground dried.",
            care=["hardening-off", "after-a-trim-on-stones"],
        ),
        on(
            "2025-04-23",
            since_last="Much happier on the track.",
            keeping={"boots": "Hoof boots on both fores for stony rides, off again at home.", "work": "3 rides a week"},
            care=["boots-fit", "hardening-off"],
            note="Jo & Sam's labels read 'L_F | R_F', so the boots go back on the right feet. Good idea.",
        ),
        on(
            "2025-08-20",
            keeping={"boots": "New pair, one size wider, after the old ones rubbed the bulbs."},
            left_fore={"wound": {"where": "heel bulbs", "note": "a rub the size of a coin, inner bulb, dry"}},
            care=["boots-fit"],
        ),
        on(
            "2025-10-01",
            left_fore={"wound": {"where": "heel bulbs", "healed": True}},
            note="The rub on the heel bulb has healed and the hair is back.",
        ),
        on(
            "2026-01-28",
            keeping={"feed_change": "Hay from another farm, and a mineral lick.", "turnout": "out by day"},
            care=["boots-fit", "feed-questions-to-the-vet"],
        ),
        on("2026-04-15", left_fore={"before": {"toe_length": "8.3 cm"}}, care=["boots-fit"]),
        on(
            "2026-11-04",
            keeping={"boots": "Boots twice a week still; insoles worn through, new ones ordered."},
            care=["boots-fit", "pick-out-daily"],
            note="Toe walls a touch thicker than in spring. She hardly needs the boots on the lane now.",
        ),
    ),
)
