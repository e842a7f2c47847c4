"""Which cautions are open, in which order, and for how long."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from recordgen.hoof.caution_rules import FOOT_RULES, HORSE_RULES, WALL_RULES
from recordgen.hoof.cautions import LEVELS
from tests.hoof.building import REFERENCE, summary, visit, ways
from tests.hoof.raising import DAY, ENDING, JUST_AFTER, LATER, OF_A_FOOT, RAISING, cautions, raised_by, rules


def test_every_rule_has_its_words_and_every_entry_its_rule() -> None:
    """The table and the rules name the same things, and each has its least record above."""
    named = [*FOOT_RULES, *WALL_RULES, *HORSE_RULES]

    assert len(set(named)) == len(named)
    assert {*named, "overdue"} == set(REFERENCE.cautions)
    assert set(named) == set(RAISING)


@pytest.mark.parametrize("rule", RAISING)
def test_the_least_record_raises_its_rule_and_no_other(rule: str) -> None:
    """Level, what is safe meanwhile, what not to do and the source come from the table."""
    (found,) = cautions(visit(DAY, **RAISING[rule]))
    words = REFERENCE.cautions[rule]

    assert (found.rule, found.day) == (rule, date(2026, 10, 14))
    assert found.foot == ("left_fore" if rule in OF_A_FOOT else None)
    assert (found.level, found.meanwhile, found.do_not, found.source) == (
        words.level,
        words.meanwhile,
        words.do_not,
        words.source,
    )


@pytest.mark.parametrize("rule", RAISING)
def test_the_words_are_filled_in(rule: str) -> None:
    """A sentence with its day and its foot, and no brace left over."""
    (found,) = cautions(visit(DAY, **RAISING[rule]))

    assert "14 October 2026" in found.seen
    assert ("left fore" in found.seen) == (rule in OF_A_FOOT)
    assert found.seen[0].isupper() or found.seen[0].isdigit()
    assert not set("{}") & set(found.text)
    assert found.text.startswith(f"{found.seen} {found.meanwhile}")


@pytest.mark.parametrize("rule", RAISING)
def test_a_visit_that_says_nothing_about_it_leaves_it_open(rule: str) -> None:
    """The absence of a sign clears nothing; the day stays that of the record."""
    silent = visit(LATER, left_fore={"landing": "flat", "wall": {"toe": {"flare": 2}}, "frog": {"width": 50}})
    (found,) = cautions(visit(DAY, **RAISING[rule]), silent)

    assert (found.rule, found.day) == (rule, date(2026, 10, 14))


@pytest.mark.parametrize("rule", RAISING)
def test_recorded_again_it_has_the_later_day(rule: str) -> None:
    """There is one of it, not two."""
    (found,) = cautions(visit(DAY, **RAISING[rule]), visit(LATER, **RAISING[rule]))

    assert (found.rule, found.day) == (rule, date(2026, 11, 25))


@pytest.mark.parametrize("rule", ENDING)
def test_the_same_thing_recorded_otherwise_clears_it(rule: str) -> None:
    """And alone it raises nothing."""
    assert rule not in rules(visit(DAY, **RAISING[rule]), visit(LATER, **ENDING[rule]))
    assert rule not in raised_by(**ENDING[rule])


@pytest.mark.parametrize("rule", sorted(set(OF_A_FOOT) & set(ENDING)))
def test_another_foot_clears_nothing(rule: str) -> None:
    """What was recorded of the right fore tells nothing of the left one."""
    other = visit(LATER, right_fore=ENDING[rule]["left_fore"])

    assert rule in rules(visit(DAY, **RAISING[rule]), other)


@pytest.mark.parametrize("rule", sorted(set(OF_A_FOOT) - set(ENDING)))
def test_some_end_only_by_a_word(rule: str) -> None:
    """An object, a wound, a bend: no later record can say otherwise."""
    resolved = {"caution": rule, "date": LATER, "by": "Wren Ashdown"}

    assert rules(visit(DAY, **RAISING[rule]), visit(LATER, resolved=[resolved])) == []


@pytest.mark.parametrize(
    ("named", "open_still"),
    [
        ({}, []),
        ({"foot": "left_fore"}, ["right_fore"]),
        ({"foot": "left_hind"}, ["left_fore", "right_fore"]),
        ({"date": "2026-10-14"}, []),
        ({"date": "2026-10-13"}, ["left_fore", "right_fore"]),
        ({"caution": "abscess"}, ["left_fore", "right_fore"]),
    ],
)
def test_a_word_ends_what_it_names(named: dict[str, str], open_still: list[str]) -> None:
    """The name, the foot, and no day before it was raised; all feet where none is named."""
    wound = {"wound": {"where": "coronet"}}
    word = {"caution": "wound", "date": "2026-11-01", "by": "Dr Sage", **named}
    found = cautions(visit(DAY, left_fore=wound, right_fore=wound), visit(LATER, resolved=[word]))

    assert [caution.foot for caution in found] == open_still


def test_a_word_ends_what_was_recorded_the_same_day() -> None:
    """The record tells it, and the word says it is over."""
    word = {"caution": "lame", "date": DAY, "by": "Dr Sage"}

    assert rules(visit(DAY, **RAISING["lame"], resolved=[word])) == []


def test_what_is_recorded_after_the_word_is_open_again() -> None:
    """A word of last month ends nothing of today."""
    word = {"caution": "wound", "date": "2026-11-01", "by": "Dr Sage"}
    found = cautions(visit(DAY, **RAISING["wound"]), visit(LATER, **RAISING["wound"], resolved=[word]))

    assert [caution.day for caution in found] == [date(2026, 11, 25)]


@pytest.mark.parametrize(
    ("values", "days", "expected"),
    [
        ({}, 56, []),
        ({}, 57, ["overdue"]),
        ({"kind": "donkey"}, 70, []),
        ({"kind": "donkey"}, 71, ["overdue"]),
        ({"born": "2026-05-01"}, 42, []),
        ({"born": "2026-05-01"}, 43, ["overdue"]),
        ({"left": {"date": "2026-10-20"}}, 100, []),
    ],
)
def test_overdue_after_the_longest_usual_interval(values: dict[str, Any], days: int, expected: list[str]) -> None:
    """Eight weeks, ten for a donkey, six for a foal, to the day; never for a horse that left."""
    last = visit(DAY)

    assert rules(last, today=date.fromordinal(last.date.toordinal() + days), **values) == expected


@pytest.mark.parametrize(("today", "expected"), [(date(2027, 1, 6), []), (date(2027, 1, 7), ["overdue"])])
def test_not_overdue_before_the_day_the_trimmer_set(today: date, expected: list[str]) -> None:
    """Twelve weeks were wanted: the window of the visit counts, too."""
    assert rules(visit(DAY, next={"weeks": 12}), today=today) == expected


def test_overdue_tells_its_weeks() -> None:
    """Whole weeks, and how many are usual."""
    (found,) = cautions(visit(DAY), today=date(2026, 12, 24))

    assert found.seen == "The last visit was on 14 October 2026, 10 weeks ago; up to 8 weeks is right for this horse."


def test_most_urgent_first_then_newest_then_by_foot() -> None:
    """What to act on now stands on top."""
    wound, bend = {"wound": {"where": "sole"}}, {"deviation": "a bend"}
    first = visit(DAY, right_hind={**wound, **bend}, left_fore=wound, condition={"crest": 4})
    found = cautions(first, visit(LATER, left_hind=wound, lameness={"scale": "AAEP", "grade": 4}))

    assert [(caution.rule, caution.foot) for caution in found] == [
        ("wound", "left_hind"),
        ("wound", "left_fore"),
        ("wound", "right_hind"),
        ("lame", None),
        ("deviation", "right_hind"),
        ("crest", None),
    ]
    assert [caution.level for caution in found] == sorted([caution.level for caution in found], key=LEVELS.index)


def test_feet_are_named_as_the_practice_names_them() -> None:
    """Near fore for left fore."""
    found = summary(visit(DAY, **RAISING["bears-no-weight"]), by=ways(feet="near and off"), today=JUST_AFTER)

    assert found.cautions[0].seen == "The near fore took no weight on 14 October 2026."
