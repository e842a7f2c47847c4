"""Two visits at which nearly everything was recorded, and the vet's sheet of a horse that had them."""

from __future__ import annotations

from typing import Any

from recordgen.hoof.context import Context
from recordgen.hoof.export.sheet import Sheet, sheet_of
from recordgen.records.models.names import FEET
from recordgen.records.models.stable import Stable
from recordgen.records.models.visit import Visit
from tests.support.horse_records import WAYS, summary, visit
from tests.support.tracing_pages import FLARED, side
from tests.support.typed_tracings import typed

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


# The visits before, some six weeks apart.
_DAYS = ("2026-01-28", "2026-03-11", "2026-04-22", "2026-06-03", "2026-07-15", "2026-08-26")


def _found_much(flare: float, gap: float) -> dict[str, Any]:
    """A foot as found: measured before and after the trim, traced twice, and something at each of five places; mm."""
    heels = {"medial": 34, "lateral": 37}
    return {
        "before": {"toe_length": 87, "toe_angle": 50, "heel_height": heels},
        "after": {"toe_length": 79, "toe_angle": 53, "heel_height": heels},
        "pulse": "raised",
        "frog": {"infection": "deep groove", "painful": True, "width": 50, "length": 80, "central_groove_depth": 5},
        "sole": {"depth": 11, "bruise": True},
        "wall": {
            "toe": {"separation": {"length": 2 * gap, "depth": gap / 2}, "crack": {"length": 20, "depth": "surface"}},
            "medial toe quarter": {"flare": flare, "separation": {"length": gap, "depth": gap / 4}},
            "lateral quarter": {"flare": flare + 1, "chip": 12},
        },
        "tracings": [typed(FLARED), side()],
    }


def heavy() -> Sheet:
    """The sheet of a horse with all four feet traced from below and the side, and much that was found at each."""
    feet = {foot: _found_much(3, 10) for foot in FEET}
    earlier = [visit(day, **dict.fromkeys(FEET, _found_much(size, size))) for size, day in enumerate(_DAYS, start=2)]
    plan = {"by": "Imogen Sayle", "date": "2026-06-26", "words": "Little and often. " * 12, "until": "2026-12-31"}
    told = {"date": "2026-09-01", "by": "Imogen Sayle", "kind": "seen", "words": "Sound at walk, no heat. " * 6}
    last = visit("2026-10-14", lameness={"scale": "AAEP", "grade": 1}, vet=[told], care=["daily-grooves"], **feet)
    return sheet(*earlier, last, vet_plan=plan, microchip="999000000104217")
