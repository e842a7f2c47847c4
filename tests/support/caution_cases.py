"""For each rule of the cautions the least records that raise it and end it, and what is open after some visits."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Any

from recordgen.hoof.cautions.cautions import Caution, CautionBook, ClosedCaution, compute_caution_book
from recordgen.hoof.cautions.timeline import Timeline
from recordgen.records.models.names import Foot
from recordgen.records.models.visit import Visit
from tests.support.horse_records import WAYS, horse, summary, visit

BEFORE, DAY, LATER = "2026-09-02", "2026-10-14", "2026-11-25"
EARLIER = ("2026-04-29", "2026-05-27", "2026-06-24", "2026-07-22", "2026-08-12", BEFORE)
JUST_AFTER = date(2026, 11, 26)

Values = dict[str, Any]
YEARLING: Values = {"born": "2025-05-01"}
FOAL: Values = {"born": "2026-05-01"}
SUCKLING: Values = {"born": "2026-09-01"}


@dataclass(frozen=True)
class Case:
    """The least record that raises a rule, and the same thing recorded otherwise; None where only a word ends it.

    first: what was recorded at the visit before. earlier: at the visits before that, oldest first. also: the other
    rules that the least record raises. horse: the animal.
    """

    raised: Values
    ended: Values | None = None
    of: Foot | None = None
    first: Values | None = None
    earlier: tuple[Values, ...] = ()
    also: tuple[str, ...] = ()
    horse: Values | None = None

    def visits(self, *more: Visit) -> list[Visit]:
        """The visits up to the one that raises it, and `more`."""
        return [*self.before, visit(DAY, **self.raised), *more]

    @property
    def before(self) -> list[Visit]:
        """The visit before, where one is needed."""
        first = (*self.earlier, self.first) if self.first else ()
        return [visit(day, **found) for day, found in zip(EARLIER[-len(first) :], first, strict=True)] if first else []


def wall(**values: Any) -> Values:
    """A foot of which the toe of the wall was recorded."""
    return {"wall": {"toe": values}}


def grooves(medial: float, lateral: float | None) -> Values:
    """A foot of which the grooves beside the frog were measured at its point, mm."""
    return {"frog": {"groove_depth": {"medial": medial, "lateral": lateral}}}


def of_foot(raised: Values, ended: Values | None = None, first: Values | None = None, **more: Any) -> Case:
    """A case of the left fore."""
    named = [{"left_fore": found} if found else None for found in (ended, first)]
    return Case({"left_fore": raised}, named[0], "left_fore", named[1], **more)


def by_small_steps(steps: list[Values], ended: Values) -> Case:
    """A case of the left fore that several visits make, and the reading that ends it."""
    *earlier, first, raised = [{"left_fore": found} for found in steps]
    return Case(raised, {"left_fore": ended}, "left_fore", first, tuple(earlier))


def of_foot_and_lame(found: Values, **more: Any) -> Case:
    """A case of the left fore at a visit with lameness; the end of lameness ends it."""
    raised = {"left_fore": found, "lameness": aaep(1)}
    return Case(raised, {"lameness": aaep(0)}, "left_fore", **more)


def aaep(grade: float) -> Values:
    """A grade on the AAEP scale."""
    return {"scale": "AAEP", "grade": grade}


def obel(grade: float) -> Values:
    """A grade on the Obel scale."""
    return {"scale": "Obel", "grade": grade}


def grimace(total: float) -> Values:
    """A total on the Horse Grimace Scale."""
    return {"scale": "Horse Grimace", "grade": total}


NAIL = {"what": "nail", "where": "sole"}
SORE_GROOVE = {"frog": {"infection": "deep groove", "painful": True}}
DRAINED = {"abscess": {"where": "sole", "state": "drained"}}
MOIST, DRY = wall(crack={"moisture": True}), wall(crack={"moisture": False, "blood": False})

CASES: dict[str, Case] = {
    "object-in-foot": of_foot({"object": NAIL}, {"object": {**NAIL, "still_in": False}}),
    "object-out-of-frog": of_foot({"object": {"what": "nail", "where": "frog", "still_in": False}}),
    "object-taken-out": of_foot({"object": {**NAIL, "still_in": False}}),
    "bears-no-weight": of_foot({"bears_weight": "not"}, {"bears_weight": "fully"}),
    "bears-less": of_foot({"bears_weight": "less"}, {"bears_weight": "fully"}),
    "wound": of_foot({"wound": {"where": "coronet"}}, {"wound": {"where": "coronet", "healed": True}}),
    "abscess": of_foot({"abscess": {"where": "sole"}}, DRAINED),
    "abscess-again": of_foot(DRAINED, None, DRAINED, also=("abscess-drained",)),
    "abscess-drained": of_foot(DRAINED),
    "drew-blood": of_foot({"drew_blood": True}),
    "frog-tissue": of_foot({"frog": {"tissue": "creamy"}}, {"frog": {"tissue": "usual"}}),
    "painful-infection": of_foot({"frog": {"infection": "painful or bleeding"}}, {"frog": {"infection": "surface"}}),
    "painful-groove": of_foot(SORE_GROOVE, {"frog": {"infection": "surface"}}),
    "painful-frog": of_foot({"frog": {"painful": True}}, {"frog": {"painful": False}}),
    "groove-and-lame": of_foot_and_lame(SORE_GROOVE, also=("painful-groove", "slightly-lame")),
    "pulse": of_foot({"pulse": "strong"}, {"pulse": "usual"}),
    "heat": of_foot({"heat": True}, {"heat": False}),
    "testers": of_foot({"testers": {"reaction": True}}, {"testers": {"reaction": False}}),
    "sole-sensitive": of_foot({"sole": {"sensitive": True}}, {"sole": {"sensitive": False}}),
    "sole-gives": of_foot({"sole": {"gives": True}}, {"sole": {"gives": False}}),
    "gives-and-warm": of_foot(
        {"sole": {"gives": True}, "pulse": "raised"}, {"sole": {"gives": False}}, also=("sole-gives", "pulse")
    ),
    "sole-flat": of_foot({"sole": {"shape": "flat"}}, {"sole": {"shape": "hollow"}}),
    "sole-bulging": of_foot({"sole": {"shape": "bulging"}}, {"sole": {"shape": "hollow"}}),
    "hairline-dip": of_foot({"hairline_dip": True}, {"hairline_dip": False}),
    "white-line-blood": of_foot(wall(white_line_blood=True), wall(white_line_blood=False)),
    "sole-shallow": of_foot({"sole": {"depth": 3}}, {"sole": {"depth": 3.5}}),
    "groove-shallow": of_foot(grooves(3, 8), grooves(3.5, 8)),
    "sole-falls": by_small_steps(
        [{"sole": {"depth": depth}} for depth in (13, 13, 12, 11, 10, 9.5, 9.5)], {"sole": {"depth": 12}}
    ),
    "groove-falls": by_small_steps(
        [grooves(depth, None) for depth in (13, 13, 12, 11, 10, 9.5, 9.5)], grooves(12, None)
    ),
    "angle-climbs": by_small_steps(
        [{"before": {"toe_angle": angle}} for angle in (50, 50, 51, 52, 53, 54, 54)], {"before": {"toe_angle": 51}}
    ),
    "sole-thinner": of_foot({"sole": {"depth": 9}}, {"sole": {"depth": 11}}, {"sole": {"depth": 12}}),
    "angle-sudden": of_foot(
        {"before": {"toe_angle": 46}}, {"before": {"toe_angle": 49}}, {"before": {"toe_angle": 51}}
    ),
    "deviation": of_foot({"deviation": "a bend at the knee"}, {"deviation": "none"}, horse=YEARLING),
    "deviation-short": of_foot({"deviation": "a bend at the knee"}, {"deviation": "none"}, horse=SUCKLING),
    "crack-open": of_foot(MOIST, DRY),
    "crack-and-lame": of_foot_and_lame(wall(crack={"length": 20}), also=("slightly-lame",)),
    "separation": of_foot(wall(separation={"depth": 10}), wall(separation={"depth": 9.9})),
    "separation-grows": of_foot(
        wall(separation={"depth": 5}), wall(separation={"depth": 3}), wall(separation={"depth": 2})
    ),
    "signs-together": Case({"signs": ["leans back", "reluctant to turn"]}, also=("stance",)),
    "stance": Case({"signs": ["leans back"]}, {"signs": []}),
    "obel": Case({"lameness": obel(1)}, {"lameness": obel(0)}),
    "obel-high": Case({"lameness": obel(3)}, {"lameness": obel(2)}),
    "foal-lame": Case({"lameness": aaep(1)}, {"lameness": aaep(0)}, also=("slightly-lame",), horse=FOAL),
    "foal-spares": of_foot({"bears_weight": "less"}, {"bears_weight": "fully"}, also=("bears-less",), horse=FOAL),
    "foal-hot": of_foot({"heat": True}, {"heat": False}, also=("heat",), horse=FOAL),
    "severely-lame": Case({"lameness": aaep(5)}, {"lameness": aaep(4.5)}),
    "lame": Case({"lameness": aaep(3)}, {"lameness": aaep(0)}),
    "slightly-lame": Case({"lameness": aaep(1)}, {"lameness": aaep(0)}),
    "pain-face": Case({"lameness": grimace(4)}, {"lameness": grimace(3)}),
    "sore-after-trim": Case({"sore_after_last_trim": True}, {"sore_after_last_trim": False}),
    "sore-and-lame": Case(
        {"sore_after_last_trim": True, "lameness": aaep(1)},
        {"lameness": aaep(0)},
        also=("slightly-lame", "sore-after-trim"),
    ),
    "heavy": Case({"condition": {"henneke": 7}}, {"condition": {"henneke": 6.5}}),
    "thin": Case({"condition": {"henneke": 3}}, {"condition": {"henneke": 3.5}}),
    "crest": Case({"condition": {"crest": 3}}, {"condition": {"crest": 2.5}}),
}
ENDING = {rule: case.ended for rule, case in CASES.items() if case.ended}
BY_A_WORD = sorted(set(CASES) - set(ENDING) - {"signs-together"})


def case_of(rule: str, *more: Visit, today: date = JUST_AFTER) -> list[Caution]:
    """The cautions that are open after the case of a rule, and `more`."""
    case = CASES[rule]
    return cautions(*case.visits(*more), today=today, **(case.horse or {}))


def the(rule: str, found: list[Caution]) -> Caution:
    """The one caution of a rule."""
    (one,) = [caution for caution in found if caution.rule == rule]
    return one


def cautions(*visits: Visit, today: date = JUST_AFTER, **values: Any) -> list[Caution]:
    """The cautions that are open after these visits."""
    return list(summary(*visits, today=today, **values).cautions)


def rules(*visits: Visit, **values: Any) -> list[str]:
    """Their rules."""
    return [caution.rule for caution in cautions(*visits, **values)]


def raised_by(**values: Any) -> list[str]:
    """The rules that one visit raises."""
    return rules(visit(DAY, **values))


def book_of(*visits: Visit, today: date = JUST_AFTER, **values: Any) -> CautionBook:
    """The cautions that are open after these visits, and those that ended, but for one of being overdue."""
    return compute_caution_book(Timeline(horse(**values), visits, WAYS), None, today)


def closed_by(*visits: Visit, **values: Any) -> list[ClosedCaution]:
    """The cautions that ended."""
    return list(book_of(*visits, **values).closed)


def said(rule: str, day: str, by: str = "Wren Ashdown", **more: Any) -> dict[str, Any]:
    """A word of anybody that a caution is over."""
    return {"resolved": [{"caution": rule, "date": day, "by": by, **more}]}


def found_by_a_vet(day: str, *ends: Any, by: str = "Dr Sage") -> dict[str, Any]:
    """A vet's finding that ends cautions."""
    return {"vet": [{"date": day, "by": by, "kind": "seen", "ends": list(ends)}]}
