"""Moss: a quiet, ordinary horse with even feet, typed with near and off, and with growth marks at the toe."""

from __future__ import annotations

from datetime import date

from tests.demo.days import counted_back, grown_down
from tests.demo.plans import HorsePlan, four_feet, marked, on

DAYS = counted_back(date(2026, 10, 28), 7)
# A nick filed at the toe, followed until the trim takes it away.
NICKS = (grown_down(DAYS[0:6], 15, 0.29), grown_down(DAYS[8:14], 12, 0.29))

PLAN = HorsePlan(
    stable="willowmere",
    slug="moss",
    file={
        "name": "Moss",
        "kind": "horse",
        "sex": "gelding",
        "born": date(2012, 5, 17),
        "height": "14.3 hh",
        "microchip": "999 000 000 104 419",
        "note": "Easy, sound, seven weeks.",
    },
    days=DAYS,
    feet=four_feet(79, 34, 51, more={"heel_angle": 43, "pastern_angle": 51, "sole_length": 121, "sole_width": 117}),
    rate=0.255,
    weeks=None,
    looks=0.4,
    spelling={
        "left_fore": "near_fore",
        "right_fore": "off_fore",
        "left_hind": "near_hind",
        "right_hind": "off_hind",
    },
    work=("Hacks four days a week.", "Lanes and woods.", "Nanny to the youngsters, little work.", "Pulled logs twice."),
    notes=("Textbook.", "Moss wears himself even; seven weeks is plenty."),
    told=(
        *(marked("left_fore", "growth mark", "toe", nick) for nick in NICKS),
        on("2025-03-19", note="Even feet, tight white line. Nothing to add."),
        on("2026-01-07", note="The little nick at the toe is mine: it shows how fast he grows."),
        on("2026-09-09", note="Broad, clean frogs. Thank you for the dry place to work."),
        on("2025-06-25", left_fore={"before": {"toe_length": "3 5/8 in"}}),
        on("2025-01-29", care=["pick-out-daily"]),
        on("2025-05-07", care_ends=True),
        on("2026-02-25", care=["pick-out-daily"], private_note="Paid for Fennel too."),
        on("2026-07-22", left_hind={"wall": {"medial quarter": {"chip": 12}}}),
    ),
)
