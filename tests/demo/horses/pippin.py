"""Pippin: a pony under a vet's plan since June; signs ease, the toe angle comes back, the gap at the toe closes.

The left fore is traced from the side and from below: the toe comes back, and its wall grows down straight again.
"""

from __future__ import annotations

from datetime import date
from typing import Any

from tests.demo.days import counted_back, grown_down
from tests.demo.plans import Feet, HorsePlan, four_feet, marked, on
from tests.demo.tracings import SoleFoot, drawn
from tests.support.side_shapes import SideFoot

EARLIER = counted_back(date(2026, 5, 13), 6)
PLANNED = tuple(
    date.fromisoformat(day)
    for day in ("2026-06-24", "2026-07-08", "2026-08-05", "2026-09-02", "2026-09-30", "2026-10-28")
)
DAYS = EARLIER + PLANNED
VET = "Imogen Sayle, Three Larches"
RING = grown_down(PLANNED[1:], 4, 0.25)


def _fore_angles(usual: float) -> tuple[float, ...]:
    ease = (usual,) * (len(EARLIER) - 2) + (usual - 0.5, usual - 1.5)
    return (*ease, usual - 4, usual - 3.5, usual - 2.5, usual - 1.5, usual - 1, usual - 0.5)


def _feet() -> Feet:
    feet = four_feet(68, 33, 52)
    toe = (68,) * (len(EARLIER) - 1) + (70, 80, 78, 76, 74, 72, 71)
    for foot in ("left_fore", "right_fore"):
        feet[foot] = feet[foot].with_(toe=toe, angle=_fore_angles(51 if foot == "right_fore" else 51.5), slip=1.5)
    return feet


def _fores(pulse: str, gap: tuple[int, int] | None, **more: Any) -> dict[str, Any]:
    wall = {"wall": {"toe": {"separation": {"length": gap[0], "depth": gap[1]}}}} if gap else {}
    right = {"wall": {"toe": {"separation": {"length": gap[0] - 6, "depth": max(2, gap[1] - 2)}}}} if gap else {}
    return {"left_fore": {"pulse": pulse, **wall, **more}, "right_fore": {"pulse": pulse, **right, **more}}


def _side(flare: float, breakover: float, heel_angle: float = 43) -> SideFoot:
    """The left fore from the side; its toe and its heel are as long as they are typed."""
    return SideFoot(heel_angle=heel_angle, pastern_angle=52.5, hairline=94, flare=flare, breakover=breakover)


def _sole(length: float, breakover: float) -> SoleFoot:
    return SoleFoot(length=length, width=100, heels=66, wall=(10, 7.5, 6.5), breakover=breakover)


PLAN = HorsePlan(
    stable="willowmere",
    slug="pippin",
    file={
        "name": "Pippin",
        "kind": "pony",
        "sex": "gelding",
        "born": 2011,
        "height": "12.1 hh",
        "microchip": "999000000104520",
        "ueln": "826ZZZ000104520",
        "vet_plan": {
            "by": VET,
            "date": date(2026, 6, 26),
            "words": "Laminitis, both fores. No grass until I say so, soaked hay, deep bed. Trim every four weeks at "
            "the most, little and often, toes back as the new wall comes down.",
            "weeks": 4,
            "until": date(2026, 12, 31),
        },
        "consent": {"vet": True, "by": "Ada Corrie", "date": date(2026, 6, 26)},
        "note": "Nothing from the bucket without asking first, please: not even carrots.",
        "private_note": "Ada worries. Ring her the evening after each visit.",
    },
    days=DAYS,
    feet=_feet(),
    rate=0.235,
    weeks=6,
    henneke=6.5,
    ridden=False,
    follows_angle=True,
    looks=0.35,
    work=("Children on Saturdays.", "Lead rein twice a week.", "Grazing with Tansy.", "Little to do but eat."),
    told=(
        marked("left_fore", "event ring", "toe", RING),
        on(
            "2026-05-13",
            since_last="Rich grass after rain, and he looks it.",
            condition={"henneke": 7.5, "crest": 3, "girth": 158, "length": 128},
            left_fore={"pulse": "usual"},
            right_fore={"pulse": "usual"},
            note="He is heavy and the crest is firm. Less grass, please, and do ask the vet about his weight.",
            care=["feed-questions-to-the-vet"],
        ),
        on(
            "2026-06-24",
            since_last="Slow in from the field since Sunday, lies down a lot.",
            lameness={"scale": "Obel", "grade": 2, "note": "both fores, worse on the turn"},
            signs=["shifts weight", "reluctant to turn", "lies down more"],
            condition={"henneke": 7.5, "crest": 3.5},
            trimmed=False,
            **_fores("strong", None, heat=True, done=None, landing="heel first"),
            vet=[{"date": date(2026, 6, 24), "by": VET, "kind": "advised", "words": "Coming this afternoon."}],
            care=["soft-ground-for-now", "dry-bed", "feed-questions-to-the-vet"],
            next={"weeks": 2, "reason": "As soon as the vet allows"},
            note="I did not trim today and rang the vet at once. Please leave him where he is, on a deep bed.",
        ),
        on(
            "2026-07-08",
            since_last="Stabled on deep shavings, comfortable lying down.",
            keeping={
                "bedding": "shavings, deep to the door",
                "turnout": "none",
                "feed_change": "Off grass since 24 June; hay soaked twelve hours, on the vet's word.",
            },
            lameness={"scale": "Obel", "grade": 1, "note": "stilted on the turn"},
            signs=["shifts weight"],
            **_fores("raised", (42, 9), done=["toe taken back a little", "heels left"]),
            vet=[
                {
                    "date": date(2026, 6, 26),
                    "by": VET,
                    "kind": "seen",
                    "words": "Laminitis, both fores, mild turn of the bone on the X-ray. Trim in two weeks.",
                }
            ],
            care=["soft-ground-for-now", "dry-bed", "feed-questions-to-the-vet"],
            next={"weeks": 4},
        ),
        on(
            "2026-08-05",
            since_last="Box and a small bare pen. Brighter, follows Ada to the gate.",
            lameness={"scale": "Obel", "grade": 1},
            signs=["pottery gait"],
            condition={"henneke": 6.5, "crest": 3, "girth": 152},
            **_fores("raised", (38, 8), done=["toe taken back", "edge rounded"]),
            note="A ring has come down from the hairline. Below it is the old wall; above it grows the new one.",
            next={"weeks": 4},
        ),
        on(
            "2026-09-02",
            since_last="Bare pen by day, in by night. No more shifting.",
            lameness={"scale": "Obel", "grade": 0},
            **_fores("raised", (32, 6), done=["toe taken back"]),
            vet=[
                {
                    "date": date(2026, 8, 27),
                    "by": VET,
                    "kind": "seen",
                    "words": "Blood test better. Sound at walk, no heat. Still no grass; carry on.",
                    "ends": ["stance", "heat"],
                }
            ],
            next={"weeks": 4},
        ),
        on(
            "2026-09-30",
            since_last="Walks in hand, ten minutes twice a day, as the vet said.",
            keeping={"feed_change": "Balancer added, chosen by the vet; still soaked hay, no grass."},
            lameness={"scale": "Obel", "grade": 0},
            condition={"henneke": 6, "crest": 2.5, "girth": 147},
            **_fores("usual", (26, 5), done=["toe taken back", "heels taken down a little"]),
            care=["dry-bed", "feed-questions-to-the-vet", "pick-out-daily"],
            next={"weeks": 4},
        ),
        on(
            "2026-10-28",
            since_last="Twenty minutes in hand, bright and a bit cheeky.",
            lameness={"scale": "Obel", "grade": 0},
            condition={"henneke": 5.5, "crest": 2.5, "girth": 145},
            **_fores("usual", (20, 4), done=["toe taken back", "edge rounded"]),
            note="A third of the wall is new and grows straight. Keep to the vet's plan: it is working.",
            next={"weeks": 4, "reason": "The vet's plan"},
        ),
    ),
    drawn=(
        *drawn("2026-05-13", "left_fore", before=_side(1, 7)),
        *drawn("2026-05-13", "left_fore", after=_side(1, 9), kept=True),
        *drawn("2026-07-08", "left_fore", before=_side(8, 4, 41), after=_side(7, 7, 41), kept=True),
        *drawn("2026-07-08", "left_fore", after=_sole(106, 7), kept=True),
        *drawn("2026-08-05", "left_fore", before=_side(7, 5, 41.5), after=_side(6, 8, 41.5)),
        *drawn("2026-09-02", "left_fore", before=_side(5.5, 6, 42), after=_side(4.5, 9, 42)),
        *drawn("2026-09-02", "left_fore", after=_sole(102.5, 9)),
        *drawn("2026-09-30", "left_fore", before=_side(4, 6, 42.5), after=_side(3.5, 9, 42.5)),
        *drawn("2026-10-28", "left_fore", before=_side(3, 7), after=_side(2, 10), kept=True),
        *drawn("2026-10-28", "left_fore", after=_sole(101, 10), kept=True),
    ),
)
