"""Nutmeg: new, with one visit."""

from __future__ import annotations

from datetime import date

from tests.demo.plans import HorsePlan, four_feet, on

PLAN = HorsePlan(
    stable="tithe-barn",
    slug="nutmeg",
    file={"name": "Nutmeg", "sex": "mare", "born": 2019, "height": "15 hh"},
    days=(date(2026, 11, 13),),
    feet=four_feet(84, 36, 49),
    rate=0.25,
    looks=1,
    told=(
        on(
            "2026-11-13",
            since_last="New here. Shoes came off in August; lived out since.",
            keeping={"ground": "soft grass", "turnout": "day and night"},
            lameness={"scale": "AAEP", "grade": 1, "note": "short on stones only"},
            condition={"henneke": 5, "girth": 181, "length": 158},
            left_fore={
                "landing": "toe first",
                "frog": {"infection": "surface", "central_groove_depth": 9, "length": 76, "width": 41},
                "wall": {"lateral toe quarter": {"chip": 14}},
            },
            right_fore={
                "landing": "flat",
                "frog": {"infection": "surface", "central_groove_depth": 8, "length": 76, "width": 42},
            },
            care=["daily-grooves", "pick-out-daily", "soft-ground-for-now", "chip-that-catches"],
            next={"weeks": 4, "reason": "A first trim is followed up sooner"},
            note="A good start. Old nail holes are two thirds down; they will be gone by spring.",
        ),
    ),
)
