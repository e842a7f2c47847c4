"""Hawthorn: a record with gaps: five months missed, a visit without a trim, hinds not measured, after left out."""

from __future__ import annotations

from datetime import date

from tests.demo.days import counted_back
from tests.demo.plans import UNMEASURED, HorsePlan, four_feet, on

DAYS = (
    *counted_back(date(2025, 6, 13), 7),
    *counted_back(date(2026, 10, 16), 6, 7, 7, 7, 7, 7, 7, since=date(2025, 11, 10)),
)

# mm after each trim: half of the overgrown length was left on in November, the rest came off by summer.
TOES = (78, 78, 78, 78, 90, 90, 95, 86, 80, 79)
HEELS = (35, 35, 35, 35, 40, 40, 42, 38, 36, 35)
_feet = {foot: plan.with_(toe=TOES, heels=(HEELS, HEELS)) for foot, plan in four_feet(78, 35, 51).items()}

PLAN = HorsePlan(
    stable="tithe-barn",
    slug="hawthorn",
    file={
        "name": "Hawthorn",
        "sex": "mare",
        "born": 2008,
        "height": "14.2 hh",
        "note": "Shared between three people, so dates slip now and then.",
        "private_note": "Agree the next date with all three before leaving, or nobody writes it down.",
    },
    days=DAYS,
    feet=_feet,
    rate=(*(0.225,) * 4, 0.155, 0.225),
    weeks=6,
    looks=0.25,
    half_degrees=False,
    work=("Ridden by three people.", "Not much done.", "Hacks at weekends.", "Turned away for a bit."),
    told=(
        on(
            "2025-11-14",
            since_last="Five months since I was here; moved to the far field in between.",
            right_fore={"wall": {"lateral quarter": {"flare": 5, "chip": 25}}},
            left_fore={"wall": {"toe": {"chip": 30}}},
            note="Long and broken at the edges, but sound. I took half now; the other half next time.",
            next={"weeks": 5, "reason": "Half of the length was left on"},
            care=["soft-ground-for-now"],
        ),
        on(
            "2026-01-02",
            since_last="Frozen ruts; could not stand her on level ground.",
            trimmed=False,
            left_hind=None,
            right_hind=None,
            left_fore={"done": None},
            right_fore={"done": None},
            note="Looked only: too icy to work safely.",
        ),
        on(
            "2026-02-20",
            left_hind=UNMEASURED,
            right_hind={**UNMEASURED, "note": "Would not hold up long enough to measure."},
            sore_after_last_trim=False,
        ),
        on(
            "2026-04-10",
            left_fore={"after": None},
            right_fore={"after": None},
            left_hind=UNMEASURED,
            right_hind=UNMEASURED,
            private_note="Rain came on; no time to measure again after the trim.",
        ),
        on("2026-10-16", next={"weeks": 6}),
    ),
)
