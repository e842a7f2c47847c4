"""Linnet: a quiet broodmare, Otter's dam; ordinary feet, seven weeks."""

from __future__ import annotations

from datetime import date

from tests.demo.days import counted_back
from tests.demo.plans import UNMEASURED, HorsePlan, four_feet, frogs, on

PLAN = HorsePlan(
    stable="fallow-end",
    slug="linnet",
    file={
        "name": "Linnet",
        "sex": "mare",
        "born": 2013,
        "height": "15.2 hh",
        "microchip": "999000000205412",
        "ueln": "826ZZZ000205412",
        "usual_weeks": 7,
    },
    days=counted_back(date(2026, 11, 5), 7),
    feet=four_feet(84, 37, 49),
    rate=0.25,
    weeks=7,
    ridden=False,
    looks=0.35,
    henneke=5.5,
    work=("Hacked by Nell.", "Out with the mares.", "Ambling about.", "Three light rides a week.", "Lives out."),
    notes=("Linnet slept through it.",),
    told=(
        on("2026-04-23", since_last="Heavy in foal, no work.", condition={"henneke": 6.5}),
        on(
            "2026-06-11",
            since_last="Foaled on 3 May, a colt. Out with him by day.",
            left_hind=UNMEASURED,
            right_hind=UNMEASURED,
            note="Hinds trimmed but not measured: the foal was restless.",
        ),
        frogs("2025-10-09", "none"),
        frogs("2026-11-05", "surface", 9),
        on(
            "2026-11-05",
            care=["daily-grooves"],
            next={"date": date(2026, 12, 22), "reason": "Seven weeks, and before Christmas"},
        ),
    ),
)
