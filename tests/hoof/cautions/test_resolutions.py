"""How a caution ends, how old an open one is, and words that end nothing."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from recordgen.hoof.cautions.cautions import Caution
from recordgen.hoof.cautions.checks import resolved_before_raised, resolved_never_raised, resolved_without_a_vet
from recordgen.hoof.cautions.timeline import Timeline
from recordgen.hoof.remarks import Remark
from recordgen.records.models.visit import Visit
from tests.support.caution_cases import (
    BEFORE,
    BY_A_WORD,
    CASES,
    DAY,
    ENDING,
    LATER,
    Values,
    aaep,
    book_of,
    case_of,
    cautions,
    closed_by,
    found_by_a_vet,
    rules,
    said,
    the,
    wall,
)
from tests.support.horse_records import REFERENCE, WAYS, horse, visit

WOUND: Values = {"wound": {"where": "coronet"}}
CUT: Values = {"drew_blood": True}
NEXT_DAY = "2026-10-15"
LAST = "2027-01-06"


def the_rules(found: list[Caution]) -> list[str]:
    """The rules of some cautions."""
    return [caution.rule for caution in found]


def too_early(*visits: Visit) -> list[Remark]:
    """A caution over before it was recorded."""
    return list(resolved_before_raised(Timeline(horse(), visits, WAYS)))


def never(*visits: Visit) -> list[Remark]:
    """A caution over and never recorded."""
    return list(resolved_never_raised(Timeline(horse(), visits, WAYS)))


@pytest.mark.parametrize("rule", CASES)
def test_a_vets_word_ends_any_caution(rule: str) -> None:
    """The day it was recorded is enough: the vet was called."""
    assert rule in [caution.rule for caution in case_of(rule, visit(LATER, **found_by_a_vet("2026-10-13", rule)))]
    assert rule not in [caution.rule for caution in case_of(rule, visit(LATER, **found_by_a_vet(DAY, rule)))]


@pytest.mark.parametrize("rule", CASES)
def test_the_word_of_anybody_ends_what_is_not_the_vets(rule: str) -> None:
    """From the day after the record on; never where the vet was to be called at once."""
    left = {day: the_rules(case_of(rule, visit(LATER, **said(rule, day)))) for day in (DAY, NEXT_DAY)}

    assert rule in left[DAY]
    assert (rule in left[NEXT_DAY]) is (REFERENCE.cautions[rule].level == "call now")


@pytest.mark.parametrize("day", [DAY, NEXT_DAY, LATER])
def test_what_is_still_in_the_foot_is_told_whatever_the_same_file_says(day: str) -> None:
    """A nail that still sticks, and a word beside it that it is over."""
    nail = visit(DAY, left_fore={"object": {"what": "nail", "where": "frog"}}, **said("object-in-foot", day))

    assert [(one.rule, one.level) for one in cautions(nail)] == [("object-in-foot", "call now")]


def test_the_trimmers_record_ends_a_call_to_the_vet() -> None:
    """Taken out, it is no longer in; the wound that was found healed is none; and a nail in again is again told."""
    out = {"object": {"what": "nail", "where": "sole", "still_in": False}}
    nail = {"object": {"what": "nail", "where": "sole"}}
    healed = {"wound": {"where": "coronet", "healed": True}}

    assert rules(visit(DAY, left_fore=nail), visit(LATER, left_fore=out)) == ["object-taken-out"]
    assert rules(visit(DAY, left_fore=WOUND), visit(LATER, left_fore=healed)) == []
    assert rules(visit(BEFORE, left_fore=nail), visit(DAY, left_fore=out), visit(LATER, left_fore=nail))[0] == (
        "object-in-foot"
    )


def test_a_part_of_a_call_to_the_vet_is_the_vets_too() -> None:
    """An owner's words on each sign leave them all open; a vet's word on the whole frees them on the same day."""
    first = visit(BEFORE, signs=["leans back"], left_fore={"pulse": "strong"})
    owner = [{"caution": rule, "date": "2026-10-01", "by": "Ada Corrie"} for rule in ("stance", "pulse")]
    vet = {"date": "2026-10-01", "by": "Dr Sage", "kind": "seen", "ends": ["signs-together"]}

    assert rules(first, visit(DAY, resolved=owner)) == ["signs-together", "stance", "pulse"]
    assert rules(first, visit(DAY, resolved=owner, vet=[vet])) == []


@pytest.mark.parametrize("rule", BY_A_WORD)
def test_some_end_only_by_a_word(rule: str) -> None:
    """A hole, blood, an abscess that came back: no later record can say otherwise, and all looked at clears nothing."""
    everything = {
        "left_fore": {"pulse": "usual", "heat": False, "bears_weight": "fully", "sole": {"sensitive": False}},
        "lameness": aaep(0),
        "sore_after_last_trim": False,
    }

    assert rule not in ENDING
    assert rule in [caution.rule for caution in case_of(rule, visit(LATER, **everything))]


@pytest.mark.parametrize(
    ("named", "open_still"),
    [
        ({}, []),
        ({"foot": "left_fore"}, ["right_fore"]),
        ({"foot": "left_hind"}, ["left_fore", "right_fore"]),
        ({"date": "2026-10-15"}, []),
        ({"date": "2026-10-14"}, ["left_fore", "right_fore"]),
        ({"caution": "abscess"}, ["left_fore", "right_fore"]),
    ],
)
def test_a_word_ends_what_it_names(named: dict[str, str], open_still: list[str]) -> None:
    """The name, the foot, and a day after it was raised; all feet where none is named."""
    word = {"caution": "drew-blood", "date": "2026-11-01", "by": "Wren Ashdown", **named}
    found = cautions(visit(DAY, left_fore=CUT, right_fore=CUT), visit(LATER, resolved=[word]))

    assert [caution.foot for caution in found] == open_still


@pytest.mark.parametrize(
    ("ends", "open_still"),
    [
        (["wound"], ["stance"]),
        (["wound", "stance"], []),
        ([{"caution": "wound", "foot": "left_fore"}], ["wound", "stance"]),
        ([], ["wound", "wound", "stance"]),
    ],
)
def test_a_vets_finding_ends_what_it_names(ends: list[Any], open_still: list[str]) -> None:
    """By name, on all feet or on one."""
    first = visit(DAY, left_fore=WOUND, right_fore=WOUND, signs=["leans back"])

    assert rules(first, visit(LATER, **found_by_a_vet("2026-11-01", *ends))) == open_still


def test_what_is_recorded_after_the_word_is_open_again() -> None:
    """A word of last month ends nothing of today, and the age begins anew."""
    again = visit(LATER, left_fore=CUT, **said("drew-blood", "2026-11-01"))
    (kept,) = cautions(visit(DAY, left_fore=CUT), again)
    (anew,) = cautions(visit(DAY, left_fore=CUT, **said("drew-blood", NEXT_DAY)), visit(LATER, left_fore=CUT))

    assert (kept.day, kept.since) == (date(2026, 11, 25), date(2026, 10, 14))
    assert (anew.day, anew.since, anew.seen_again) == (date(2026, 11, 25), date(2026, 11, 25), 0)


@pytest.mark.parametrize(
    ("word", "how", "by", "ending"),
    [
        (
            {"left_fore": {"pulse": "usual"}},
            "recorded otherwise",
            "Wren Ashdown",
            "25 November 2026: a later record of Wren Ashdown says otherwise",
        ),
        (said("pulse", "2026-11-02"), "resolved", "Wren Ashdown", "2 November 2026, as Wren Ashdown says"),
        (found_by_a_vet("2026-11-03", "pulse"), "vet", "Dr Sage", "3 November 2026 by the vet, Dr Sage"),
    ],
)
def test_what_ended_is_kept_with_how_it_did(word: Values, how: str, by: str | None, ending: str) -> None:
    """The day of the record or of the word, and whose word it was; with what had been seen."""
    (found,) = closed_by(
        visit(BEFORE, left_fore={"pulse": "raised"}), visit(DAY, left_fore={"pulse": "strong"}), visit(LATER, **word)
    )

    assert (found.rule, found.level, found.foot) == ("pulse", "call today", "left_fore")
    assert (found.since, found.day) == (date(2026, 9, 2), date(2026, 10, 14))
    assert found.seen == "A strong pulse at the left fore was recorded on 14 October 2026."
    assert (found.how, found.by, found.ending) == (how, by, f"Ended on {ending}")
    assert ending.startswith(f"{found.ended.day} ")


@pytest.mark.parametrize(
    ("word", "left"),
    [
        (
            {"left_fore": wall(separation={"length": 38, "depth": 4})},
            "a gap 38 mm long and 4 mm deep was still recorded",
        ),
        ({"left_fore": wall(separation={"depth": 9.5})}, "a gap 9.5 mm deep was still recorded"),
        ({"left_fore": wall(separation={"length": 0, "depth": 0})}, None),
        (said("separation", LATER), None),
    ],
)
def test_a_gap_that_is_told_no_more_is_told_as_recorded(word: Values, left: str | None) -> None:
    """A record of a smaller gap ends the caution and not the gap; nothing is left of one closed or ended by a word."""
    deep = wall(separation={"length": 45, "depth": 12})
    (found,) = closed_by(visit(DAY, left_fore=deep), visit(LATER, **word))

    assert (found.rule, found.ended) == ("separation", date(2026, 11, 25))
    assert found.left == (left or "")
    assert found.ending.endswith(f"; {found.left}") is bool(left)


def test_a_gap_that_grew_and_shrank_again_is_told_as_recorded() -> None:
    """The record that ends the caution that it grew tells how large it still is."""
    (found,) = closed_by(*CASES["separation-grows"].visits(visit(LATER, **ENDING["separation-grows"])))

    assert found.ending.endswith("; a gap 3 mm deep was still recorded")


def test_what_ended_stands_latest_first() -> None:
    """The vet asks for the last thing first; an open one is not among them."""
    visits = [
        visit(BEFORE, lameness=aaep(3), left_fore={"testers": {"reaction": True}, **WOUND}),
        visit(DAY, lameness=aaep(0)),
        visit(LATER, left_fore={"testers": {"reaction": False}}),
    ]

    assert [(found.rule, found.ended) for found in closed_by(*visits)] == [
        ("testers", date(2026, 11, 25)),
        ("lame", date(2026, 10, 14)),
    ]
    assert [caution.rule for caution in book_of(*visits).open] == ["wound"]


def test_being_overdue_is_not_kept_among_what_ended() -> None:
    """It ends by a visit, and only the day tells it."""
    assert book_of(visit(BEFORE), visit(LAST)).closed == ()


def test_several_signs_end_with_the_last_of_them() -> None:
    """As long as one of them is open, so are they; then they end as that one did."""
    first = visit(BEFORE, signs=["leans back"], left_fore={"pulse": "strong", "heat": True})
    cooler = visit(DAY, left_fore={"heat": False, "pulse": "usual"})
    book = book_of(first, cooler, visit(LATER, **found_by_a_vet("2026-11-20", "stance")))

    assert rules(first, cooler) == ["signs-together", "stance"]
    assert book.open == ()
    assert [(one.rule, one.how, one.by) for one in book.closed[:2]] == [
        ("stance", "vet", "Dr Sage"),
        ("signs-together", "vet", "Dr Sage"),
    ]


@pytest.mark.parametrize(
    ("today", "days", "age"),
    [
        ("2026-10-14", 0, "First recorded today"),
        ("2026-10-15", 1, "First recorded on 14 October 2026, 1 day ago"),
        ("2026-10-27", 13, "First recorded on 14 October 2026, 13 days ago"),
        ("2026-10-28", 14, "First recorded on 14 October 2026, 2 weeks ago"),
        ("2026-11-25", 42, "First recorded on 14 October 2026, 6 weeks ago"),
        ("2026-12-01", 48, "First recorded on 14 October 2026, 6 weeks ago"),
    ],
)
def test_an_open_one_tells_its_age(today: str, days: int, age: str) -> None:
    """Days for two weeks, whole weeks from then on."""
    found = the("wound", cautions(visit(DAY, left_fore=WOUND), today=date.fromisoformat(today)))

    assert (found.since, found.days_open, found.age) == (date(2026, 10, 14), days, age)


def test_an_open_one_tells_how_often_it_was_seen_again() -> None:
    """The first day without a break, the last one, and the visits between that recorded it."""
    strong: Values = {"left_fore": {"pulse": "strong"}}
    once = the("pulse", cautions(visit(BEFORE, **strong), visit(DAY), visit(LATER, **strong)))
    twice = the("pulse", cautions(*[visit(day, **strong) for day in (BEFORE, DAY, LATER)]))

    assert (once.since, once.day, once.days_open, once.seen_again) == (date(2026, 9, 2), date(2026, 11, 25), 85, 1)
    assert once.age == "First recorded on 2 September 2026, 12 weeks ago, and once more"
    assert twice.age == "First recorded on 2 September 2026, 12 weeks ago, and 2 times more"


def test_a_break_begins_the_age_anew() -> None:
    """Usual in October: it is open since November, and the earlier one is among those that ended."""
    strong: Values = {"left_fore": {"pulse": "strong"}}
    book = book_of(visit(BEFORE, **strong), visit(DAY, left_fore={"pulse": "usual"}), visit(LATER, **strong))

    assert [(one.since, one.seen_again) for one in book.open] == [(date(2026, 11, 25), 0)]
    assert [(one.since, one.ended) for one in book.closed] == [(date(2026, 9, 2), date(2026, 10, 14))]


def test_the_age_grows_from_build_to_build() -> None:
    """Nothing was recorded in between: the same caution is a day older a day later."""
    ages = [the("wound", cautions(visit(DAY, left_fore=WOUND), today=date(2026, 11, day))).days_open for day in (2, 3)]

    assert ages == [19, 20]


@pytest.mark.parametrize(
    ("word", "steps"),
    [
        (said("wound", "2026-10-13"), ("resolved", 0)),
        (said("wound", "2026-10-13", foot="left_fore"), ("resolved", 0)),
        (said("drew-blood", "2026-10-13"), ("resolved", 0)),
        (found_by_a_vet("2026-10-13", "wound"), ("vet", 0, "ends", 0)),
    ],
)
def test_over_before_it_was_recorded(word: Values, steps: tuple[str | int, ...]) -> None:
    """The day of the word is before the first record; told with its visit, its place and the way out."""
    (found,) = too_early(visit(BEFORE), visit(DAY, left_fore={**WOUND, **CUT}), visit(LATER, **word))

    assert (found.visit, found.steps) == (2, steps)
    assert "is said to be over on 13 October 2026, but was first recorded on 14 October 2026" in found.text
    assert found.way_out == "Write a day after it, or take it out"


def test_a_word_on_an_earlier_record_is_right() -> None:
    """It was recorded twice, and over between; or a vet ended it on the very day."""
    twice = visit(DAY, left_fore=CUT), visit(LATER, left_fore=CUT, **said("drew-blood", "2026-11-01"))
    at_once = visit(DAY, left_fore=CUT, **found_by_a_vet(DAY, "drew-blood"))

    assert too_early(*twice) == []
    assert too_early(at_once) == []
    assert never(*twice) == []
    assert never(at_once) == []


def test_a_word_on_the_very_day_is_too_early() -> None:
    """Of anybody: what was recorded on a day is not over on it."""
    assert [found.visit for found in too_early(visit(DAY, left_fore=CUT, **said("drew-blood", DAY)))] == [0]


def test_a_word_on_what_is_the_vets_is_told() -> None:
    """With its place, what it may not end, and how that ends; nothing of it once the vet has ended it."""
    wounded = visit(DAY, left_fore=WOUND)
    word = visit(LATER, **said("wound", NEXT_DAY, foot="left_fore"))
    (found,) = resolved_without_a_vet(Timeline(horse(), [wounded, word], WAYS))

    assert (found.visit, found.steps) == (1, ("resolved", 0))
    assert found.text.startswith("wound (left fore) is part of a call for the vet now")
    assert "kind: seen and ends:" in found.way_out
    of_another = Timeline(horse(), [wounded, visit(LATER, **said("stance", NEXT_DAY))], WAYS)
    assert list(resolved_without_a_vet(of_another)) == []


@pytest.mark.parametrize(
    "word",
    [
        said("abscess", LATER),
        said("wound", LATER, foot="left_hind"),
        said("overdue", LATER),
        found_by_a_vet(LATER, "abscess"),
    ],
)
def test_over_without_ever_being_recorded(word: Values) -> None:
    """Another caution, or another foot, was recorded; being overdue ends by a visit alone."""
    visits = visit(DAY, left_fore=WOUND), visit(LATER, **word)

    assert [found.visit for found in never(*visits)] == [1]
    assert too_early(*visits) == []


def test_what_comes_after_a_word_is_not_asked_about_it() -> None:
    """A wound of a later visit makes an old word no mistake of its day."""
    visits = visit(DAY, **said("wound", DAY)), visit(LATER, left_fore=WOUND)

    assert too_early(*visits) == []
    assert [found.text for found in never(*visits)] == [
        "wound is said to be over, but no visit up to this one recorded it"
    ]


def test_a_name_that_no_table_knows_is_told_elsewhere() -> None:
    """Once is enough."""
    assert never(visit(DAY, **said("wounds", DAY))) == []


def test_the_foot_of_a_word_is_named() -> None:
    """As the practice names it."""
    (found,) = never(visit(DAY, **said("wound", DAY, foot="left_fore")))

    assert found.text.startswith("wound (left fore) is said to be over")


def test_a_vets_word_on_a_foot_ends_what_was_said_of_the_whole_horse() -> None:
    """Lameness has no foot of its own; the vet who found it in one foot names that foot and means the lameness."""
    lame = visit(DAY, lameness=aaep(3))
    vet = {"date": LATER, "by": "Dr Sage", "kind": "seen"}
    named = [{"caution": "lame", "foot": "left_fore"}]

    assert "lame" in rules(lame, visit(LATER, vet=[vet]))
    assert "lame" not in rules(lame, visit(LATER, vet=[{**vet, "ends": named}]))
