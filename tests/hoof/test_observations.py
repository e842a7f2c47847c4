"""Observations of a foot, at its place, in words."""

from typing import Any

import pytest

from recordgen.hoof.observations import Finding, findings_of
from tests.support.horse_records import NAMING, foot


def seen(**values: Any) -> list[tuple[str, str, str, float | None]]:
    """Place, kind, words and size of the findings of a foot."""
    found = findings_of("left_fore", foot(**values), NAMING)
    assert all(finding.foot == "left_fore" for finding in found)
    return [(finding.place, finding.kind, finding.text, finding.size_mm) for finding in found]


ONE_FINDING: dict[str, tuple[dict[str, Any], tuple[str, str, str, float | None]]] = {
    "flare": ({"wall": {"toe": {"flare": 4}}}, ("toe", "flare", "flare, 4 mm", 4)),
    "gap": (
        {"wall": {"medial heel": {"separation": {"length": 18, "depth": 3}}}},
        ("medial heel", "separation", "gap at the white line, 18 mm long and 3 mm deep", 3),
    ),
    "unmeasured gap": (
        {"wall": {"toe": {"separation": {}}}},
        ("toe", "separation", "gap at the white line, size not measured", None),
    ),
    "crack": ({"wall": {"toe": {"crack": {"length": 30}}}}, ("toe", "crack", "crack, 30 mm long", 30)),
    "chip": ({"wall": {"medial heel": {"chip": 12}}}, ("medial heel", "chip", "broken edge, 12 mm", 12)),
    "bruise of the wall": ({"wall": {"toe": {"bruise": True}}}, ("toe", "bruise", "bruise", None)),
    "infection": ({"frog": {"infection": "surface"}}, ("frog", "infection", "infection, on the surface", None)),
    "deep infection": (
        {"frog": {"infection": "deep groove"}},
        ("central groove", "infection", "infection, in the deep groove", None),
    ),
    "tissue": ({"frog": {"tissue": "proud"}}, ("frog", "tissue", "proud tissue", None)),
    "bruise of the sole": ({"sole": {"bruise": True}}, ("sole", "bruise", "bruise", None)),
    "sensitive": ({"sole": {"sensitive": True, "gives": False}}, ("sole", "sensitive", "sensitive", None)),
    "flat sole": ({"sole": {"shape": "flat"}}, ("sole", "shape", "flat", None)),
    "dip": ({"hairline_dip": True}, ("coronet", "dip", "a dip at the hairline", None)),
    "blood in the white line": (
        {"wall": {"toe": {"white_line_blood": True}}},
        ("toe", "blood", "blood in the white line", None),
    ),
    "blood of the trim": ({"drew_blood": True}, ("sole", "blood", "the trim drew blood", None)),
    "healed wound": ({"wound": {"where": "coronet", "healed": True}}, ("coronet", "wound", "wound, healed", None)),
    "gives": ({"sole": {"gives": True}}, ("sole", "gives", "gives under the thumbs", None)),
    "object": ({"object": {"what": "thorn", "where": "medial groove"}}, ("medial groove", "object", "thorn", None)),
    "wound": ({"wound": {"where": "heel bulbs"}}, ("heel bulbs", "wound", "wound", None)),
    "abscess": ({"abscess": {"where": "coronet"}}, ("coronet", "abscess", "abscess, suspected", None)),
    "drained": (
        {"abscess": {"where": "toe", "state": "drained"}},
        ("toe", "abscess", "abscess, drained", None),
    ),
    "mark": (
        {"marks": [{"kind": "growth mark", "below_hairline": 13}]},
        ("toe", "mark", "growth mark, 13 mm below the hairline", 13),
    ),
}


@pytest.mark.parametrize("name", ONE_FINDING)
def test_one_thing_seen_is_one_finding(name: str) -> None:
    """Its place, its kind, its words and its size."""
    values, expected = ONE_FINDING[name]

    assert seen(**values) == [expected]


@pytest.mark.parametrize(
    "values",
    [
        {},
        {"wall": {"toe": {"flare": 0, "thickness": 10, "bruise": False}}},
        {"wall": {"toe": {"separation": {"length": 0, "depth": 0}}}},
        {"wall": {"toe": {"separation": {"depth": 0}}}},
        {"frog": {"infection": "none", "tissue": "usual", "width": 60}},
        {"sole": {"bruise": False, "gives": False, "sensitive": False, "depth": 12}},
        {"testers": {"reaction": True}, "heat": True},
    ],
)
def test_nothing_to_mark(values: dict[str, Any]) -> None:
    """A thing looked at and not found, and one without a place on the sole, is no finding."""
    assert seen(**values) == []


def test_a_place_that_is_not_drawn_goes_to_the_sole() -> None:
    """The white line has no spot of its own in the picture."""
    assert seen(object={"what": "grit", "where": "white line"}) == [("sole", "object", "grit", None)]


def test_findings_come_in_one_order_however_they_were_typed() -> None:
    """By zone from heel to heel, then frog, sole, and what is urgent."""
    one = {"sole": {"bruise": True}, "wall": {"lateral heel": {"flare": 2}, "medial heel": {"chip": 5, "flare": 1}}}
    other = {"wall": {"medial heel": {"flare": 1, "chip": 5}, "lateral heel": {"flare": 2}}, "sole": {"bruise": True}}

    assert seen(**one) == seen(**other)
    assert [(place, kind) for place, kind, _, _ in seen(**one)] == [
        ("medial heel", "flare"),
        ("medial heel", "chip"),
        ("lateral heel", "flare"),
        ("sole", "bruise"),
    ]


def test_a_finding_knows_its_foot() -> None:
    """The same find on another foot is another finding."""
    found = foot(wall={"toe": {"flare": 4}})

    assert findings_of("right_hind", found, NAMING) == (Finding("right_hind", "toe", "flare", "flare, 4 mm", 4),)
