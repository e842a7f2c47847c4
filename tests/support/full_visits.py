"""Two visits at which nearly everything was recorded, and the vet's sheet of a horse that had them."""

from __future__ import annotations

from typing import Any

from recordgen.hoof.context import Context
from recordgen.hoof.export.sheet import Sheet, sheet_of
from recordgen.records.models.stable import Stable
from recordgen.records.models.visit import Visit
from tests.support.horse_records import WAYS, summary, visit

STABLE = Stable(name="Willowmere")


def sheet(*visits: Visit, by: Context = WAYS, amendments: Any = None, **values: Any) -> Sheet:
    """The sheet of a horse with these visits."""
    return sheet_of(summary(*visits, by=by, **values), STABLE, by, amendments)


FULL = visit(
    "2026-10-14",
    lameness={"scale": "AAEP", "grade": 1},
    keeping={"feed_change": "hay soaked", "boots": "front boots"},
    condition={"henneke": 5, "girth": 180, "length": 165},
    care=["daily-grooves"],
    next={"weeks": 6},
    left_fore={
        "before": {"toe_length": 87, "toe_angle": 50, "heel_height": {"medial": 34, "lateral": 37}},
        "after": {"toe_length": 79, "toe_angle": 53, "heel_height": {"medial": 31, "lateral": 32}},
        "frog": {"infection": "surface", "width": 50, "length": 80},
        "wall": {"medial toe quarter": {"flare": 6, "separation": {"length": 18, "depth": 3}}},
    },
    right_fore={"before": {"toe_length": 90}, "after": {"toe_length": 81}},
)


EARLIER = visit("2026-09-02", left_fore={"before": {"toe_length": 86}, "after": {"toe_length": 78}})
