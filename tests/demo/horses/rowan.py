"""Rowan: an ordinary horse, overdue since October; typed with LF, RF, LH and RH."""

from __future__ import annotations

from datetime import date

from tests.demo.days import counted_back
from tests.demo.plans import HorsePlan, four_feet, on

PLAN = HorsePlan(
    stable="tithe-barn",
    slug="rowan",
    file={
        "name": "Rowan",
        "sex": "gelding",
        "born": 2013,
        "height": "16.2 hh",
        "microchip": "999000000306218",
        "ueln": "826ZZZ000306218",
    },
    days=counted_back(date(2026, 9, 11), 6),
    feet=four_feet(88, 39, 50, more={"circumference": 388}),
    rate=0.275,
    looks=0.5,
    spelling={"left_fore": "LF", "right_fore": "RF", "left_hind": "LH", "right_hind": "RH"},
    work=(
        "Schooling and lanes.",
        "Dressage lesson each week.",
        "Ridden by Leo's sister.",
        "Hill work.",
        "Rested a week.",
    ),
    notes=("Big feet, evenly loaded.", "Rowan is best done after his breakfast."),
    told=(
        on(
            "2025-10-10",
            right_fore={"object": {"what": "a flint", "where": "white line", "still_in": False}},
            note="A flint was wedged in the white line, right fore. It came out whole; the vet knows.",
        ),
        on(
            "2025-11-21",
            care=["pick-out-daily"],
            resolved=[{"caution": "object-taken-out", "date": date(2025, 11, 21), "by": "Wren Ashdown"}],
        ),
        on("2026-03-27", care_ends=True),
        on(
            "2026-09-11",
            next={"weeks": 6},
            private_note="Leo has not answered about the October date; ring the yard.",
        ),
    ),
)
