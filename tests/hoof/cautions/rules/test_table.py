"""Each rule of a foot and its wall, at one visit: at its edge, just under it, just over it, and in its words."""

from __future__ import annotations

from typing import Any

import pytest

from tests.support.caution_cases import (
    DAY,
    DRY,
    LATER,
    MOIST,
    NAIL,
    SORE_GROOVE,
    YEARLING,
    cautions,
    raised_by,
    rules,
    the,
    wall,
)
from tests.support.horse_records import visit


@pytest.mark.parametrize(
    ("gap", "expected"),
    [
        ({"depth": 10}, ["separation"]),
        ({"depth": 10.1}, ["separation"]),
        ({"depth": 9.9, "length": 39.9}, []),
        ({"length": 40}, ["separation"]),
        ({"length": 40.1}, ["separation"]),
        ({}, []),
    ],
)
def test_a_gap_is_told_from_its_edge_on(gap: dict[str, float], expected: list[str]) -> None:
    """10 mm deep or 40 mm long.

    Common practice, no source
    """
    assert raised_by(left_fore=wall(separation=gap)) == expected


def test_a_gap_tells_only_the_size_that_was_measured() -> None:
    """A depth that nobody took is not told as zero."""
    (found,) = cautions(visit(DAY, left_hind={"wall": {"lateral quarter": {"separation": {"length": 45}}}}))

    assert found.about == "lateral quarter"
    assert found.seen == (
        "A gap at the white line, 45 mm long, at the outer quarter of the left hind was recorded on 14 October 2026."
    )


@pytest.mark.parametrize(
    ("raised", "ended"),
    [
        ({"crack": {"moisture": True}}, {"crack": {"moisture": False, "blood": False}}),
        ({"separation": {"depth": 12}}, {"separation": {"depth": 4}}),
    ],
)
def test_each_zone_of_the_wall_stands_for_itself(raised: dict[str, Any], ended: dict[str, Any]) -> None:
    """A dry crack or a small gap at the heel does not clear the one at the toe; both are open where both are."""
    both = visit(DAY, left_fore={"wall": {"toe": raised, "medial heel": raised}})
    one = visit(LATER, left_fore={"wall": {"medial heel": ended}})

    assert [caution.about for caution in cautions(both)] == ["medial heel", "toe"]
    assert [caution.about for caution in cautions(both, one)] == ["toe"]


@pytest.mark.parametrize(
    ("raised", "elsewhere"),
    [
        ({"object": NAIL}, {"object": {**NAIL, "where": "frog", "still_in": False}}),
        ({"wound": {"where": "coronet"}}, {"wound": {"where": "heel bulbs"}}),
    ],
)
def test_each_place_of_a_foot_stands_for_itself(raised: dict[str, Any], elsewhere: dict[str, Any]) -> None:
    """Records of another place of the foot do not clear the first one, nor take its place."""
    first = visit(DAY, left_fore=raised)
    (alone,) = cautions(first)
    found = [(one.rule, one.about) for one in cautions(first, visit(LATER, left_fore=elsewhere))]

    assert (alone.rule, alone.about) in found


def test_a_crack_with_blood_is_told_as_one() -> None:
    """Blood before moisture, or alone; a crack of which neither was recorded says nothing."""
    (both,) = cautions(visit(DAY, left_fore=wall(crack={"blood": True, "moisture": True})))
    (blood,) = cautions(visit(DAY, left_fore=wall(crack={"blood": True})))

    assert both.seen == blood.seen
    assert both.seen.startswith("A crack with blood in the toe")
    assert raised_by(left_fore=wall(crack={"length": 60, "depth": "full"})) == []


def test_no_blood_does_not_clear_a_moist_crack() -> None:
    """Only a crack of which both were looked at and not seen is cleared."""
    moist = visit(DAY, left_fore=MOIST)

    assert rules(moist, visit(LATER, left_fore=wall(crack={"blood": False}))) == ["crack-open"]
    assert rules(moist, visit(LATER, left_fore=DRY)) == []


def test_a_groove_is_sore_where_it_is_deep_and_hurts() -> None:
    """Depth alone is no caution, and pain of a groove that is not deep is told as that of the frog."""
    assert raised_by(left_fore={"frog": {"infection": "deep groove"}}) == []
    assert raised_by(left_fore={"frog": {"infection": "surface", "painful": True}}) == ["painful-frog"]
    assert raised_by(left_fore=SORE_GROOVE) == ["painful-groove"]


@pytest.mark.parametrize(
    ("frog", "open_still"),
    [({"infection": "deep groove"}, True), ({"painful": True}, True), ({"painful": False}, False)],
)
def test_a_sore_groove_stays_open_until_it_no_longer_hurts(frog: dict[str, Any], open_still: bool) -> None:
    """A deep groove of which nobody said whether it hurts clears nothing."""
    found = rules(visit(DAY, left_fore=SORE_GROOVE), visit(LATER, left_fore={"frog": frog}))

    assert ("painful-groove" in found) is open_still


@pytest.mark.parametrize(("state", "expected"), [(None, "suspected"), ("suspected", "suspected"), ("draining",) * 2])
def test_an_abscess_until_it_has_drained(state: str | None, expected: str) -> None:
    """Seen or suspected, it is told so."""
    (found,) = cautions(visit(DAY, left_fore={"abscess": {"where": "sole", "state": state}}))

    assert found.seen.startswith(f"An abscess, {expected}, at the sole")


def test_an_abscess_may_come_out_elsewhere() -> None:
    """Suspected at the sole, drained at the coronet: it is that foot's one, and another foot's is another.

    Common practice, no source
    """
    drained = {"abscess": {"where": "coronet", "state": "drained"}}

    assert rules(visit(DAY, left_fore={"abscess": {"where": "sole"}}), visit(LATER, left_fore=drained)) == []
    assert rules(visit(DAY, left_fore={"abscess": {"where": "sole"}}), visit(LATER, right_fore=drained)) == [
        "abscess",
        "abscess-drained",
    ]


@pytest.mark.parametrize(("tissue", "expected"), [("proud", "Proud tissue"), ("creamy", "Creamy tissue")])
def test_tissue_of_the_frog(tissue: str, expected: str) -> None:
    """Proud or creamy, as it was recorded.

    Source: Equine Clinical Medicine, Surgery and Reproduction, 2nd ed., p. 67.
    """
    (found,) = cautions(visit(DAY, left_fore={"frog": {"tissue": tissue}}))

    assert found.seen == f"{expected} of the frog of the left fore was recorded on 14 October 2026."


@pytest.mark.parametrize(
    ("seen", "expected"),
    [({"pulse": "raised"}, ["pulse"]), ({"pulse": "strong"}, ["pulse"]), ({"heat": True}, ["heat"])],
)
def test_any_one_sign_of_a_foot_is_enough(seen: dict[str, Any], expected: list[str]) -> None:
    """A raised or strong pulse or a warm hoof, beside feet whose pulse was usual."""
    assert raised_by(left_fore=seen, right_fore={"pulse": "usual", "heat": False}) == expected


def test_a_usual_pulse_does_not_clear_a_hoof_that_is_warm() -> None:
    """Pulse and heat are two things."""
    found = rules(visit(DAY, left_fore={"heat": True}), visit(LATER, left_fore={"pulse": "usual"}))

    assert found == ["heat"]


def test_an_object_taken_out_asks_for_the_vet_the_same_day() -> None:
    """It no longer says to leave it in; both are never open at once."""
    out = {"object": {"what": "flint", "where": "sole", "still_in": False}}
    (found,) = cautions(
        visit(DAY, left_fore={"object": {"what": "flint", "where": "sole"}}), visit(LATER, left_fore=out)
    )

    assert (found.rule, found.level) == ("object-taken-out", "call today")
    assert "pull" not in found.text


@pytest.mark.parametrize(("found", "expected"), [("not", "call now"), ("less", "arrange soon"), ("fully", None)])
def test_weight_on_a_foot(found: str, expected: str | None) -> None:
    """None at all is for now; less than the others is not forgotten once it takes some again."""
    open_now = cautions(visit(DAY, left_fore={"bears_weight": found}))
    after = rules(visit(DAY, left_fore={"bears_weight": "not"}), visit(LATER, left_fore={"bears_weight": "less"}))

    assert [caution.level for caution in open_now] == ([expected] if expected else [])
    assert after == ["bears-less"]


@pytest.mark.parametrize(
    ("born", "expected"),
    [("2026-04-01", True), ("2024-10-15", True), ("2024-10-14", False), ("2015-05-01", False), (None, True)],
)
def test_a_bend_of_a_young_limb(born: str | None, expected: bool) -> None:
    """Until its second birthday; one whose birth is not told may be young.

    Common practice, no source
    """
    bend = visit(DAY, left_fore={"deviation": "turns out from the knee"})

    assert ("deviation" in rules(bend, born=born)) is expected


def test_a_bend_is_told_in_the_trimmers_words() -> None:
    """As recorded."""
    found = the("deviation", cautions(visit(DAY, left_fore={"deviation": "turns out"}), **YEARLING))

    assert found.seen == "The leg above the left fore was not straight on 14 October 2026: turns out."


@pytest.mark.parametrize(("sign", "rule"), [("gives", "sole-gives"), ("sensitive", "sole-sensitive")])
def test_a_sole_that_gives_or_is_sensitive(sign: str, rule: str) -> None:
    """Each raises its own, and the other does not clear it."""
    other = {"gives": "sensitive", "sensitive": "gives"}[sign]

    assert raised_by(left_fore={"sole": {sign: True, other: False}}) == [rule]


def test_testers_tell_where() -> None:
    """In the trimmer's words, where they were written."""
    (found,) = cautions(visit(DAY, left_fore={"testers": {"reaction": True, "where": "inner heel"}}))

    assert found.seen == "The left fore reacted to hoof testers (inner heel) on 14 October 2026."
