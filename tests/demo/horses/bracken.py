"""Bracken: an ordinary horse that was sold in March 2026."""

from __future__ import annotations

from datetime import date

from tests.demo.days import counted_back
from tests.demo.plans import HorsePlan, four_feet, on

PLAN = HorsePlan(
    stable="tithe-barn",
    slug="bracken",
    file={
        "name": "Bracken",
        "sex": "gelding",
        "born": 2017,
        "height": "16.1 hh",
        "left": {"date": date(2026, 3, 14), "why": "Sold to a family two counties away."},
        "note": "Copies of the record went with him.",
    },
    days=counted_back(date(2026, 3, 6), 6, 7),
    feet=four_feet(86, 38, 50),
    rate=0.28,
    weeks=6,
    looks=0.4,
    work=("Riding school lessons.", "Sand school most days.", "Lessons and a show.", "Two weeks off."),
    told=(
        on("2025-03-07", left_fore={"sole": {"shedding": True, "depth": 11}}),
        on("2026-03-06", next=None, note="His last trim here. All the best, big man."),
    ),
)
