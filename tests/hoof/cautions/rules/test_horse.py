"""Each rule of the whole horse, at one visit: signs, lameness on its own scale, condition; at and around its edge."""

from __future__ import annotations

from typing import Any, get_args

import pytest

from recordgen.hoof.cautions.rules.lameness import MARKED_LAMENESS, PAIN_SCALE, SEVERE_LAMENESS
from recordgen.records.models.visit import IN_HALVES, LAMENESS_SCALES, Sign
from tests.support.caution_cases import CASES, DAY, LATER, aaep, cautions, obel, raised_by, rules, the, wall
from tests.support.horse_records import visit

CRACK = wall(crack={"length": 20})


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
        {"left_fore": {"pulse": "strong"}, "lameness": aaep(4)},
        {"left_hind": {"heat": True}, "lameness": aaep(0.5)},
        {"signs": ["leans back"], "lameness": obel(1)},
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
        {"left_fore": {"pulse": "strong"}, "lameness": aaep(0)},
        {"left_fore": {"pulse": "strong"}, "lameness": {"scale": PAIN_SCALE, "grade": 12}},
    ],
)
def test_one_kind_of_sign_is_not_several(values: dict[str, Any]) -> None:
    """On however many feet; each is told for itself."""
    found = raised_by(**values)

    assert "signs-together" not in found
    assert found


def test_signs_are_told_together_and_each_foot_for_itself() -> None:
    """The horse's behaviour in one sentence, and a foot's pulse and heat in their own."""
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
        ("stance", "signs-together"),
        ("pulse", "signs-together"),
        ("lame", "signs-together"),
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
    assert raised_by(lameness={"scale": "modified Obel", "grade": 1}) == ["obel"]


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
