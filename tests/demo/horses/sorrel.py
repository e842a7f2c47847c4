"""Sorrel: an abscess of the right fore in January 2026; its line grows down the wall until it reaches the ground."""

from __future__ import annotations

from datetime import date

from tests.demo.days import counted_back, grown_down
from tests.demo.plans import FootPlan, HorsePlan, four_feet, frogs, marked, on

# Seen six weeks apart, but for two visits around the abscess.
DAYS = (
    *counted_back(date(2025, 12, 18), 6),
    *(date(2026, 1, 22), date(2026, 2, 5)),
    *counted_back(date(2026, 10, 15), 6, since=date(2026, 3, 1)),
)
LINE = grown_down([day for day in DAYS if date(2026, 2, 5) <= day < date(2026, 10, 1)], 3, 0.28)
VET = "Imogen Sayle, Three Larches"

_feet = four_feet(82, 36, 50)
_feet["right_fore"] = FootPlan(82.5, (36, 36), 49.5, walls=(61, 62))

PLAN = HorsePlan(
    stable="fallow-end",
    slug="sorrel",
    file={
        "name": "Sorrel",
        "sex": "gelding",
        "born": 2014,
        "height": "16 hh",
        "microchip": "999000000205513",
        "consent": {"vet": True, "by": "Ruth Venner", "date": date(2026, 1, 22)},
        "note": "Ruth's riding horse.",
    },
    days=DAYS,
    feet=_feet,
    rate=0.26,
    work=(
        "Ridden four times a week.",
        "Woods and lanes.",
        "Jumping lessons on sand.",
        "A week off.",
        "Hunter trial, no marks on him.",
    ),
    told=(
        marked("right_fore", "abscess line", "lateral quarter", LINE),
        on(
            "2026-01-22",
            since_last="Sound on Tuesday, hopping lame this morning.",
            lameness={"scale": "AAEP", "grade": 4, "note": "right fore, at a walk"},
            trimmed=False,
            left_fore=None,
            left_hind=None,
            right_hind=None,
            right_fore={
                "before": {"heel_height": None, "wall_height": None, "toe_angle": None},
                "abscess": {"where": "lateral quarter", "state": "suspected"},
                "heat": True,
                "pulse": "strong",
                "testers": {"reaction": True, "where": "sole at the lateral quarter"},
                "bears_weight": "less",
                "landing": None,
                "done": None,
            },
            vet=[{"date": date(2026, 1, 22), "by": VET, "kind": "advised", "words": "Keep him in; there by four."}],
            care=["dry-bed", "soft-ground-for-now"],
            next={"weeks": 2},
            note="Nothing trimmed. The vet is on her way; please leave the foot as it is until she has seen it.",
        ),
        on(
            "2026-02-05",
            since_last="In for a week, then the small paddock.",
            lameness={"scale": "AAEP", "grade": 0},
            right_fore={
                "abscess": {"where": "coronet", "state": "drained"},
                "heat": False,
                "pulse": "usual",
                "testers": {"reaction": False},
                "bears_weight": "fully",
                "landing": "flat",
                "done": ["edge rounded"],
                "note": "A slit at the hairline above the lateral quarter, dry.",
            },
            vet=[
                {
                    "date": date(2026, 1, 22),
                    "by": VET,
                    "kind": "seen",
                    "words": "Abscess, right fore, opened at the sole; broke out at the coronet on the 25th.",
                },
                {"date": date(2026, 2, 2), "by": VET, "kind": "seen", "words": "Dry. Back to work in a week."},
            ],
            care=["dry-bed", "pick-out-daily"],
        ),
        on("2026-03-19", care=["watch-the-edge", "pick-out-daily"]),
        on(
            "2026-06-11",
            note="The old line is half way down. It needs nothing, but don't be startled when that bit breaks away.",
        ),
        on(
            "2026-09-03",
            right_fore={"wall": {"lateral quarter": {"crack": {"length": 12, "direction": "horizontal"}}}},
            care=["watch-the-edge"],
        ),
        frogs("2025-11-06", "none"),
        frogs("2026-10-15", "surface", 9),
        on(
            "2026-10-15",
            right_fore={"note": "The line has reached the ground; the last of it went with the trim."},
            since_last="Mild and wet. Ridden four times a week.",
            care=["daily-grooves", "pick-out-daily"],
            note="Nine months on, the wall is whole again.",
            next={"weeks": 6},
        ),
    ),
)
