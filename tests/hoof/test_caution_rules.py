"""Each rule that looks at one visit: at its edge, just under it, just over it, and in its words."""

from __future__ import annotations

from typing import Any, get_args

import pytest

from recordgen.hoof.caution_horse import MARKED_LAMENESS, PAIN_SCALE, SEVERE_LAMENESS
from recordgen.records.visit import IN_HALVES, LAMENESS_SCALES, Sign
from tests.hoof.building import visit
from tests.hoof.raising import (
    CASES,
    DAY,
    DRY,
    LATER,
    MOIST,
    NAIL,
    SORE_GROOVE,
    YEARLING,
    aaep,
    cautions,
    raised_by,
    rules,
    the,
    wall,
)

CRACK = wall(crack={"length": 20})


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
    """What was recorded at another place of the foot does not clear the first one, nor take its place."""
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


@pytest.mark.parametrize(
    ("grade", "expected"),
    [(None, []), (aaep(0), []), (aaep(0.5), ["crack-and-lame", "slightly-lame"])],
)
def test_a_crack_of_a_lame_horse(grade: dict[str, Any] | None, expected: list[str]) -> None:
    """Any grade above 0 is enough, and none of a pain face.

    Source: Horse & Rider: a vet where a horse with a crack is lame.
    """
    assert raised_by(left_fore=CRACK, lameness=grade) == expected
    assert raised_by(left_fore=CRACK, lameness={"scale": PAIN_SCALE, "grade": 3}) == []


def test_a_crack_of_a_lame_horse_is_told_with_grade_and_scale() -> None:
    """The zone, the foot, and never a grade without its scale."""
    found = the("crack-and-lame", cautions(visit(DAY, left_fore=CRACK, lameness=aaep(2))))

    assert found.seen == (
        "A crack in the toe of the left fore, and lameness of grade 2 on the AAEP scale, "
        "were recorded on 14 October 2026."
    )


@pytest.mark.parametrize("rule", ["crack-and-lame", "groove-and-lame", "sore-and-lame"])
def test_with_lameness_ends_by_the_same_scale_alone(rule: str) -> None:
    """Sound on another scale, or less lame on the same one, ends nothing; a foot need not be looked at again."""
    first = visit(DAY, **CASES[rule].raised)
    later = [
        visit(LATER, lameness=grade)
        for grade in (aaep(0.5), {"scale": "Obel", "grade": 0}, {"scale": "0-10", "grade": 0})
    ]

    assert [rule in rules(first, one) for one in later] == [True, True, True]
    assert rule not in rules(first, *later[1:], visit("2026-11-26", lameness=aaep(0)))


def test_a_groove_is_sore_where_it_is_deep_and_hurts() -> None:
    """Neither alone is enough."""
    assert raised_by(left_fore={"frog": {"infection": "deep groove"}}) == []
    assert raised_by(left_fore={"frog": {"infection": "surface", "painful": True}}) == []
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
    assert rules(visit(DAY, left_fore={"abscess": {"where": "sole"}}), visit(LATER, right_fore=drained)) == ["abscess"]


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


@pytest.mark.parametrize("sign", get_args(Sign))
def test_any_one_sign_of_the_horse_is_enough(sign: str) -> None:
    """However it stood or moved, one sign raises it, and a usual pulse does not speak against it.

    Source: EQUUS, April 2017 (owners' list of signs).
    """
    assert raised_by(signs=[sign], left_fore={"pulse": "usual"}) == ["stance"]


@pytest.mark.parametrize(
    "values",
    [
        {"signs": ["leans back", "shifts weight"]},
        {"signs": ["leans back"], "left_fore": {"pulse": "raised"}},
        {"signs": ["leans back"], "left_hind": {"heat": True}},
        {"left_fore": {"pulse": "strong"}, "right_fore": {"heat": True}},
    ],
)
def test_several_signs_together_ask_for_the_vet_now(values: dict[str, Any]) -> None:
    """Two kinds at one visit, on whichever feet, stand on top."""
    first = cautions(visit(DAY, **values))[0]

    assert (first.rule, first.level) == ("signs-together", "call now")


@pytest.mark.parametrize(
    "values",
    [
        {"signs": ["leans back", "leans back"]},
        {"left_fore": {"pulse": "strong"}, "right_fore": {"pulse": "raised"}},
        {"left_fore": {"heat": True}, "right_fore": {"heat": True}, "left_hind": {"pulse": "usual"}},
    ],
)
def test_one_kind_of_sign_is_not_several(values: dict[str, Any]) -> None:
    """On however many feet; each is told for itself."""
    found = raised_by(**values)

    assert "signs-together" not in found
    assert found


def test_signs_are_told_together_and_each_foot_for_itself() -> None:
    """What the horse did in one sentence, and a foot's pulse and heat in their own."""
    found = cautions(visit(DAY, signs=["leans back", "shifts weight"], left_fore={"pulse": "strong", "heat": True}))

    assert [caution.seen for caution in found] == [
        "Several signs were recorded on 14 October 2026: leans back, shifts weight, strong pulse and a warm hoof.",
        "Recorded of the horse on 14 October 2026: leans back and shifts weight.",
        "The left fore was warmer than the other feet on 14 October 2026.",
        "A strong pulse at the left fore was recorded on 14 October 2026.",
    ]


def test_a_sign_that_is_summed_up_says_so() -> None:
    """Its advice is told once, above; alone, it tells its own."""
    together = cautions(visit(DAY, signs=["leans back"], left_fore={"pulse": "strong"}, lameness=aaep(3)))
    alone = cautions(visit(DAY, signs=["leans back"]))

    assert [(one.rule, one.part_of) for one in together] == [
        ("signs-together", None),
        ("lame", None),
        ("stance", "signs-together"),
        ("pulse", "signs-together"),
    ]
    assert [one.part_of for one in alone] == [None]


def test_a_usual_pulse_clears_its_own_foot_alone() -> None:
    """The other foot stays open, and so does how the horse stood."""
    first = visit(DAY, signs=["leans back"], left_fore={"pulse": "strong"}, right_fore={"pulse": "strong"})
    found = cautions(first, visit(LATER, left_fore={"pulse": "usual"}))

    assert [(caution.rule, caution.foot) for caution in found] == [
        ("signs-together", None),
        ("stance", None),
        ("pulse", "right_fore"),
    ]


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


@pytest.mark.parametrize("values", [{"left_fore": {"heat": False}}, {"left_fore": {"pulse": "usual"}}, {"signs": []}])
def test_no_sign_raises_nothing(values: dict[str, Any]) -> None:
    """A usual pulse and a cool foot are only that."""
    assert raised_by(**values) == []


@pytest.mark.parametrize("scale", MARKED_LAMENESS)
def test_lameness_by_its_grade_on_its_own_scale(scale: str) -> None:
    """Every grade of the scale raises the one of three that its edges say, and nothing raises none."""
    low, high = LAMENESS_SCALES[scale]
    step = 0.5 if scale in IN_HALVES else 1
    marked, severe = MARKED_LAMENESS[scale], SEVERE_LAMENESS.get(scale, high + 1)
    for grade in (low + step * count for count in range(int((high - low) / step) + 1)):
        expected = "severely-lame" if grade >= severe else "lame" if grade >= marked else "slightly-lame"

        assert raised_by(lameness={"scale": scale, "grade": grade}) == ([expected] if grade else [])


def test_one_point_of_a_total_is_enough() -> None:
    """Of the modified Obel scale, whose points are not graded.

    Common practice, no source
    """
    assert raised_by(lameness={"scale": "modified Obel", "grade": 1}) == ["lame"]


def test_lameness_that_lessens_moves_from_one_to_the_other() -> None:
    """The later grade stands alone."""
    severe, marked, slight = (visit(day, lameness=aaep(grade)) for day, grade in ((DAY, 5), (LATER, 3), (LATER, 2.5)))

    assert rules(severe, marked) == ["lame"]
    assert rules(marked, slight) == ["slightly-lame"]
    assert rules(slight, visit(LATER, lameness=aaep(3))) == ["lame"]


def test_a_grade_of_one_scale_clears_none_of_another() -> None:
    """Sound on the scale of ten, and still grade 3 on the other, each with its name."""
    found = cautions(visit(DAY, lameness=aaep(3)), visit(LATER, lameness={"scale": "0-10", "grade": 0}))
    both = cautions(visit(DAY, lameness=aaep(3)), visit(LATER, lameness={"scale": "0-10", "grade": 4}))

    assert [caution.seen for caution in found] == [
        "Lameness of grade 3 on the AAEP scale was recorded on 14 October 2026."
    ]
    assert [caution.about for caution in both] == ["0-10", "AAEP"]


@pytest.mark.parametrize(("total", "expected"), [(3, []), (4, ["pain-face"]), (5, ["pain-face"]), (12, ["pain-face"])])
def test_a_face_that_may_show_pain(total: int, expected: list[str]) -> None:
    """From 4 of 12 on; it is no lameness, and lameness does not clear it.

    Common practice, no source
    """
    face = {"scale": PAIN_SCALE, "grade": total}

    assert raised_by(lameness=face) == expected
    assert rules(visit(DAY, lameness=face), visit(LATER, lameness=aaep(0))) == expected


@pytest.mark.parametrize(
    ("condition", "expected"),
    [
        ({"henneke": 7}, ["Body condition 7 of 9 (Henneke) was"]),
        ({"henneke": 3}, ["Body condition 3 of 9 (Henneke) was"]),
        ({"crest": 3}, ["A crest of 3 of 5 was"]),
        ({"henneke": 8.5, "crest": 4}, ["A crest of 4 of 5 was", "Body condition 8.5 of 9 (Henneke) was"]),
        ({"henneke": 1}, ["Body condition 1 of 9 (Henneke) was"]),
    ],
)
def test_condition_from_its_edge_on(condition: dict[str, float], expected: list[str]) -> None:
    """Score 7 of 9 and over, 3 of 9 and under, and crest 3 of 5 each raise their own.

    Source: Henneke et al. 1983, Equine Vet J 15:371-372; Giles et al. 2015, BMC Vet Res 11.
    """
    found = cautions(visit(DAY, condition=condition))

    assert [caution.seen.split(" recorded")[0] for caution in found] == expected


@pytest.mark.parametrize("condition", [{"henneke": 6.5, "crest": 2.5}, {"henneke": 3.5}, {"girth": 180}])
def test_condition_inside_its_edges(condition: dict[str, float]) -> None:
    """Less raises nothing, and a girth tells nothing of it."""
    assert raised_by(condition=condition) == []


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

    assert found.seen == "Recorded of the limb above the left fore on 14 October 2026: turns out."


@pytest.mark.parametrize(("sign", "rule"), [("gives", "sole-gives"), ("sensitive", "sole-sensitive")])
def test_a_sole_that_gives_or_is_sensitive(sign: str, rule: str) -> None:
    """Each raises its own, and the other does not clear it."""
    other = {"gives": "sensitive", "sensitive": "gives"}[sign]

    assert raised_by(left_fore={"sole": {sign: True, other: False}}) == [rule]


def test_testers_tell_where() -> None:
    """In the trimmer's words, where they were written."""
    (found,) = cautions(visit(DAY, left_fore={"testers": {"reaction": True, "where": "inner heel"}}))

    assert found.seen == "The left fore reacted to hoof testers (inner heel) on 14 October 2026."
