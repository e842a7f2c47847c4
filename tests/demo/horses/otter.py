"""Otter: a foal with fast growth and a bend in one fore limb that straightens."""

from __future__ import annotations

from datetime import date

from tests.demo.days import counted_back
from tests.demo.plans import FootPlan, HorsePlan, frogs, on

BORN = date(2026, 5, 3)
_FORE = FootPlan((46, 48, 51, 54, 56, 58), ((23, 24, 25, 26, 27, 28), (23, 24, 25, 26, 27, 28)), 56, slip=2)
_HIND = FootPlan((45, 47, 50, 53, 55, 57), ((22, 23, 24, 25, 26, 27), (22, 23, 24, 25, 26, 27)), 57, slip=2)

PLAN = HorsePlan(
    stable="fallow-end",
    slug="otter",
    file={
        "name": "Otter",
        "sex": "colt",
        "born": BORN,
        "conformation": ["right fore bends out at the fetlock"],
        "note": "Linnet's first foal. Short visits, often, and always with her beside him.",
    },
    days=counted_back(date(2026, 11, 12), 4, since=date(2026, 6, 20)),
    feet={
        "left_fore": _FORE,
        "right_fore": _FORE.with_(lean={0: 2, 1: 2, 2: 1.5, 3: 1, 4: 0.5}),
        "left_hind": _HIND,
        "right_hind": _HIND,
    },
    rate=0.4,
    first_days=25,
    weeks=4,
    ridden=False,
    looks=0.2,
    work=("Races about the field.", "Halter and feet handled daily.", "Out day and night with Linnet."),
    told=(
        on(
            "2026-06-25",
            since_last="Seven weeks old; led in hand by Nell.",
            left_hind=None,
            right_hind=None,
            right_fore={
                "landing": "lateral first",
                "deviation": "fetlock bends out, about 5 degrees by eye",
                "done": ["outer edge rounded"],
            },
            lameness=None,
            care=["foal-handling"],
            vet=[
                {
                    "date": date(2026, 6, 18),
                    "by": "Imogen Sayle, Three Larches",
                    "kind": "seen",
                    "words": "Right fore turns out at the fetlock. Little and often at the foot, look again in autumn.",
                }
            ],
            note="First time: both fores only, five minutes. He was brave.",
        ),
        on(
            "2026-07-23",
            right_fore={"landing": "lateral first", "deviation": "fetlock bends out, about 4 degrees by eye"},
            care=["foal-handling", "pick-out-daily"],
        ),
        on("2026-08-20", right_fore={"deviation": "less than last time, about 3 degrees", "landing": "lateral first"}),
        on("2026-09-17", right_fore={"deviation": "slight, about 2 degrees", "landing": "flat"}),
        on("2026-10-15", right_fore={"deviation": "slight, seen from the front only", "landing": "flat"}),
        frogs("2026-11-12", "none"),
        on(
            "2026-11-12",
            since_last="Weaned last week, noisy but eating.",
            right_fore={"deviation": "slight, steady since October", "landing": "flat", "done": ["edge rounded"]},
            care=["foal-handling", "pick-out-daily"],
            note="Nearly straight. The vet wanted to look again in autumn, so please ask for a day.",
        ),
    ),
)
