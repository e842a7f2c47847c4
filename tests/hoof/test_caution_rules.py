"""Each rule of the cautions at its edge, just under it, and in its words."""

from __future__ import annotations

from typing import Any, get_args

import pytest

from recordgen.hoof.caution_rules import MARKED_LAMENESS
from recordgen.records.visit import LAMENESS_SCALES, Sign
from tests.hoof.building import visit
from tests.hoof.raising import DAY, ENDING, LATER, RAISING, cautions, raised_by, rules, wall


@pytest.mark.parametrize(
    ("gap", "expected"),
    [
        ({"depth": 10}, ["separation"]),
        ({"depth": 9.9, "length": 39.9}, []),
        ({"length": 40}, ["separation"]),
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

    assert found.seen == (
        "A gap at the white line, 45 mm long, at the outer quarter of the left hind was recorded on 14 October 2026."
    )


@pytest.mark.parametrize("rule", ["crack-open", "separation"])
def test_each_zone_of_the_wall_stands_for_itself(rule: str) -> None:
    """A dry crack or a small gap at the heel does not clear the one at the toe; both are open where both are."""
    raised, ended = RAISING[rule]["left_fore"]["wall"]["toe"], ENDING[rule]["left_fore"]["wall"]["toe"]
    both = visit(DAY, left_fore={"wall": {"toe": raised, "medial heel": raised}})
    one = visit(LATER, left_fore={"wall": {"medial heel": ended}})

    assert len(cautions(both)) == 2
    (found,) = cautions(both, one)
    assert "at the toe" in found.seen or "in the toe" in found.seen


def test_a_crack_with_blood_is_told_as_one() -> None:
    """Blood before moisture; a crack of which neither was recorded says nothing."""
    (found,) = cautions(visit(DAY, left_fore=wall(crack={"blood": True, "moisture": True})))

    assert found.seen.startswith("A crack with blood in the toe")
    assert raised_by(left_fore=wall(crack={"length": 60, "depth": "full"})) == []


def test_a_groove_is_sore_where_it_is_deep_and_hurts() -> None:
    """Neither alone is enough."""
    assert raised_by(left_fore={"frog": {"infection": "deep groove"}}) == []
    assert raised_by(left_fore={"frog": {"infection": "surface", "painful": True}}) == []


@pytest.mark.parametrize(
    ("frog", "open_still"),
    [({"infection": "deep groove"}, True), ({"painful": True}, True), ({"painful": False}, False)],
)
def test_a_sore_groove_stays_open_until_it_no_longer_hurts(frog: dict[str, Any], open_still: bool) -> None:
    """A deep groove of which nobody said whether it hurts clears nothing."""
    found = rules(visit(DAY, **RAISING["painful-groove"]), visit(LATER, left_fore={"frog": frog}))

    assert ("painful-groove" in found) is open_still


@pytest.mark.parametrize(("state", "expected"), [(None, "suspected"), ("suspected", "suspected"), ("draining",) * 2])
def test_an_abscess_until_it_has_drained(state: str | None, expected: str) -> None:
    """Seen or suspected, it is told so."""
    (found,) = cautions(visit(DAY, left_fore={"abscess": {"where": "sole", "state": state}}))

    assert found.seen.startswith(f"An abscess, {expected}, at the sole")


@pytest.mark.parametrize("seen", [{"pulse": "raised"}, {"pulse": "strong"}, {"heat": True}])
def test_any_one_sign_of_a_foot_is_enough(seen: dict[str, Any]) -> None:
    """A raised or strong pulse or a warm hoof, beside feet whose pulse was usual."""
    assert raised_by(left_fore=seen, right_fore={"pulse": "usual"}) == ["pulse"]


@pytest.mark.parametrize("sign", get_args(Sign))
def test_any_one_sign_of_the_horse_is_enough(sign: str) -> None:
    """However it stood or moved, one sign raises it, and a usual pulse does not speak against it."""
    assert raised_by(signs=[sign], left_fore={"pulse": "usual"}) == ["stance"]


def test_a_usual_pulse_clears_its_own_foot_alone() -> None:
    """The other foot stays open, and so does how the horse stood."""
    first = visit(DAY, signs=["leans back"], left_fore={"pulse": "strong"}, right_fore={"pulse": "strong"})
    found = cautions(first, visit(LATER, left_fore={"pulse": "usual"}))

    assert [(caution.rule, caution.foot) for caution in found] == [("stance", None), ("pulse", "right_fore")]


def test_a_usual_pulse_does_not_clear_a_hoof_that_is_warm() -> None:
    """Heat at the same visit keeps the caution."""
    found = cautions(
        visit(DAY, left_fore={"pulse": "strong"}), visit(LATER, left_fore={"pulse": "usual", "heat": True})
    )

    assert [caution.seen for caution in found] == ["Recorded of the left fore on 25 November 2026: a warm hoof."]


def test_signs_are_told_together() -> None:
    """What the horse did in one sentence, and a foot's pulse and heat in another."""
    found = cautions(visit(DAY, signs=["leans back", "shifts weight"], left_fore={"pulse": "strong", "heat": True}))

    assert [caution.seen for caution in found] == [
        "Recorded of the horse on 14 October 2026: leans back and shifts weight.",
        "Recorded of the left fore on 14 October 2026: strong pulse and a warm hoof.",
    ]


def test_an_object_taken_out_asks_for_the_vet_the_same_day() -> None:
    """It no longer says to leave it in; both are never open at once."""
    out = {"object": {"what": "flint", "where": "sole", "still_in": False}}
    (found,) = cautions(
        visit(DAY, left_fore={"object": {"what": "flint", "where": "sole"}}), visit(LATER, left_fore=out)
    )

    assert (found.rule, found.level) == ("object-taken-out", "call today")
    assert "pull" not in found.text


def test_no_blood_does_not_clear_a_moist_crack() -> None:
    """Only a crack of which both were looked at and not seen is cleared."""
    moist, dry = (
        visit(DAY, left_fore=wall(crack={"moisture": True})),
        visit(LATER, left_fore=wall(crack={"blood": False})),
    )

    assert rules(moist, dry) == ["crack-open"]


@pytest.mark.parametrize("values", [{"left_fore": {"heat": False}}, {"left_fore": {"pulse": "usual"}}, {"signs": []}])
def test_no_sign_raises_nothing(values: dict[str, Any]) -> None:
    """A usual pulse and a cool foot are only that."""
    assert raised_by(**values) == []


@pytest.mark.parametrize("scale", LAMENESS_SCALES)
def test_lameness_is_marked_from_its_grade_on(scale: str) -> None:
    """At the grade it is marked; under it, above nothing, it is slight; nothing is nothing."""
    marked, lowest = MARKED_LAMENESS[scale], LAMENESS_SCALES[scale][0]

    assert raised_by(lameness={"scale": scale, "grade": marked}) == ["lame"]
    assert raised_by(lameness={"scale": scale, "grade": marked - 0.5}) == ["slightly-lame"]
    assert raised_by(lameness={"scale": scale, "grade": lowest}) == []


def test_lameness_that_lessens_moves_from_one_to_the_other() -> None:
    """The later grade stands alone."""
    marked, slight = (visit(day, lameness={"scale": "AAEP", "grade": grade}) for day, grade in ((DAY, 3), (LATER, 2)))

    assert rules(marked, slight) == ["slightly-lame"]
    assert rules(visit(DAY, **RAISING["slightly-lame"]), visit(LATER, **RAISING["lame"])) == ["lame"]


@pytest.mark.parametrize(
    ("condition", "expected"),
    [
        ({"henneke": 7}, ["Body condition 7 of 9 was"]),
        ({"crest": 3}, ["A crest of 3 of 5 was"]),
        ({"henneke": 8.5, "crest": 4}, ["Body condition 8.5 of 9 was", "A crest of 4 of 5 was"]),
    ],
)
def test_condition_from_its_edge_on(condition: dict[str, float], expected: list[str]) -> None:
    """Score 7 of 9 and crest 3 of 5 each raise their own."""
    found = cautions(visit(DAY, condition=condition))

    assert [caution.seen.split(" recorded")[0] for caution in found] == expected


@pytest.mark.parametrize("condition", [{"henneke": 6.9, "crest": 2.9}, {"girth": 180}])
def test_condition_under_its_edge(condition: dict[str, float]) -> None:
    """Less raises nothing, and a girth tells nothing of it."""
    assert raised_by(condition=condition) == []


@pytest.mark.parametrize(("sign", "rule"), [("gives", "sole-gives"), ("sensitive", "sole-sensitive")])
def test_a_sole_that_gives_or_is_sensitive(sign: str, rule: str) -> None:
    """Each raises its own, and the other does not clear it."""
    other = {"gives": "sensitive", "sensitive": "gives"}[sign]

    assert raised_by(left_fore={"sole": {sign: True, other: False}}) == [rule]


def test_testers_tell_where() -> None:
    """In the trimmer's words, where they were written."""
    (found,) = cautions(visit(DAY, left_fore={"testers": {"reaction": True, "where": "inner heel"}}))

    assert found.seen == "The left fore reacted to hoof testers (inner heel) on 14 October 2026."
