"""The least records that raise cautions, and what is open after some visits."""

from __future__ import annotations

from datetime import date
from typing import Any

from recordgen.hoof.cautions import Caution
from recordgen.records.visit import Visit
from tests.hoof.building import summary, visit

DAY, LATER = "2026-10-14", "2026-11-25"
JUST_AFTER = date(2026, 11, 26)


def wall(**values: Any) -> dict[str, Any]:
    """A foot of which the toe of the wall was recorded."""
    return {"wall": {"toe": values}}


# The least that raises each rule, and the same thing recorded otherwise; None where nothing but `resolved` ends it.
OF_A_FOOT: dict[str, tuple[dict[str, Any], dict[str, Any] | None]] = {
    "object-in-foot": (
        {"object": {"what": "nail", "where": "sole"}},
        {"object": {"what": "nail", "where": "sole", "still_in": False}},
    ),
    "object-taken-out": ({"object": {"what": "nail", "where": "sole", "still_in": False}}, None),
    "bears-no-weight": ({"bears_weight": "not"}, {"bears_weight": "less"}),
    "wound": ({"wound": {"where": "coronet"}}, None),
    "abscess": ({"abscess": {"where": "sole"}}, {"abscess": {"where": "sole", "state": "drained"}}),
    "crack-open": (wall(crack={"moisture": True}), wall(crack={"moisture": False, "blood": False})),
    "frog-tissue": ({"frog": {"tissue": "creamy"}}, {"frog": {"tissue": "usual"}}),
    "painful-infection": ({"frog": {"infection": "painful or bleeding"}}, {"frog": {"infection": "deep groove"}}),
    "painful-groove": ({"frog": {"infection": "deep groove", "painful": True}}, {"frog": {"infection": "surface"}}),
    "separation": (wall(separation={"depth": 10}), wall(separation={"depth": 9.9})),
    "sole-sensitive": ({"sole": {"sensitive": True}}, {"sole": {"sensitive": False}}),
    "sole-gives": ({"sole": {"gives": True}}, {"sole": {"gives": False}}),
    "pulse": ({"pulse": "strong"}, {"pulse": "usual"}),
    "testers": ({"testers": {"reaction": True}}, {"testers": {"reaction": False}}),
    "deviation": ({"deviation": "a bend at the knee"}, None),
}
OF_A_HORSE: dict[str, tuple[dict[str, Any], dict[str, Any] | None]] = {
    "stance": ({"signs": ["leans back"]}, None),
    "lame": ({"lameness": {"scale": "AAEP", "grade": 3}}, {"lameness": {"scale": "AAEP", "grade": 0}}),
    "slightly-lame": ({"lameness": {"scale": "AAEP", "grade": 1}}, {"lameness": {"scale": "AAEP", "grade": 0}}),
    "sore-after-trim": ({"sore_after_last_trim": True}, {"sore_after_last_trim": False}),
    "condition": ({"condition": {"henneke": 7}}, {"condition": {"henneke": 6.5}}),
    "crest": ({"condition": {"crest": 3}}, {"condition": {"crest": 2.5}}),
}
RAISING: dict[str, dict[str, Any]] = {
    **{rule: {"left_fore": raised} for rule, (raised, _) in OF_A_FOOT.items()},
    **{rule: raised for rule, (raised, _) in OF_A_HORSE.items()},
}
ENDING: dict[str, dict[str, Any]] = {
    **{rule: {"left_fore": ended} for rule, (_, ended) in OF_A_FOOT.items() if ended},
    **{rule: ended for rule, (_, ended) in OF_A_HORSE.items() if ended},
}


def cautions(*visits: Visit, today: date = JUST_AFTER, **values: Any) -> list[Caution]:
    """The cautions that are open after these visits."""
    return list(summary(*visits, today=today, **values).cautions)


def rules(*visits: Visit, **values: Any) -> list[str]:
    """Their rules."""
    return [caution.rule for caution in cautions(*visits, **values)]


def raised_by(**values: Any) -> list[str]:
    """The rules that one visit raises."""
    return rules(visit(DAY, **values))
