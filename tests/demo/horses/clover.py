"""Clover: a donkey with upright feet, slower growth and eight weeks between visits."""

from __future__ import annotations

from datetime import date

from tests.demo.days import counted_back
from tests.demo.plans import FootPlan, HorsePlan, frogs, on

_FORE = FootPlan(58, (36, 36.5), 62.5, slip=1.5)
_HIND = FootPlan(56, (35, 35), 63.5, slip=1.5)

PLAN = HorsePlan(
    stable="fallow-end",
    slug="clover",
    file={
        "name": "Clover",
        "kind": "donkey",
        "sex": "jenny",
        "born": 2004,
        "height": "104 cm",
        "microchip": "999000000205311",
        "note": "Donkey feet are steeper than a pony's and should stay so. Lives with the old Shetland next door.",
        "private_note": "Ginger biscuit first, feet second. Not the other way round.",
    },
    days=counted_back(date(2026, 11, 19), 8),
    feet={
        "left_fore": _FORE,
        "right_fore": _FORE.with_(angle=62, toe=58.5),
        "left_hind": _HIND,
        "right_hind": _HIND.with_(toe=55.5),
    },
    rate=0.2,
    weeks=None,
    ridden=False,
    looks=0.3,
    half_degrees=False,
    henneke=5.5,
    work=("Out with the sheep.", "Straw to nibble, no hay.", "Carries a pannier on open days.", "Shed open all day."),
    notes=(
        "Good as gold.",
        "Took one foot at a time with a rest in between.",
        "Clover needs a dry shed more than grass.",
    ),
    told=(
        on(
            "2025-01-16",
            left_hind={"wall": {"toe": {"separation": {"length": 12, "depth": 6}}}},
            care=["dry-bed", "pick-out-daily"],
            note="A little pocket at the toe behind, packed with mud. Opened so that air gets in.",
        ),
        on("2025-03-13", left_hind={"wall": {"toe": {"separation": {"length": 7, "depth": 3}}}}),
        on("2025-05-08", care_ends=True),
        on("2025-10-23", care=["dry-bed", "pick-out-daily"]),
        on("2026-04-09", care_ends=True),
        frogs("2025-10-23", "none"),
        frogs("2026-11-19", "surface", 9),
        on("2026-11-19", care=["daily-grooves", "dry-bed", "pick-out-daily"]),
    ),
)
