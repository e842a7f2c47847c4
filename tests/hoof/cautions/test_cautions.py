"""Which cautions are open, in which words and order, and what each rule adds."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from datetime import date
from typing import Any

import pytest

from recordgen.hoof.cautions import cautions, timeline
from recordgen.hoof.cautions.cautions import LEVELS
from recordgen.hoof.cautions.rules.table import RULES
from recordgen.hoof.context import Context
from recordgen.hoof.summary import compute_remarks, summarise
from recordgen.records.checks.tables import facts_in
from recordgen.records.models.practice import HorseRecord
from recordgen.records.models.visit import Visit
from tests.support.caution_cases import (
    CASES,
    DAY,
    ENDING,
    JUST_AFTER,
    LATER,
    YEARLING,
    case_of,
    raised_by,
    rules,
    said,
    the,
)
from tests.support.caution_cases import cautions as open_after
from tests.support.horse_records import REFERENCE, TODAY, WAYS, horse, record, summary, visit, ways

OVERDUE = date(2026, 12, 24)
SILENT = visit(LATER, left_fore={"landing": "flat", "wall": {"toe": {"flare": 2}}, "frog": {"width": 50}})
MEANWHILE = [words.meanwhile + " " + (words.do_not or "") for words in REFERENCE.cautions.values()]


def test_every_rule_has_its_words_and_every_entry_its_rule() -> None:
    """The table and the rules name the same things, and each has its case."""
    keys = [rule.key for rule in RULES]

    assert len(set(keys)) == len(keys)
    assert set(keys) == set(REFERENCE.cautions)
    assert set(keys) == {*CASES, "overdue"}


@pytest.mark.parametrize("rule", REFERENCE.cautions)
def test_every_entry_says_how_urgent_what_is_safe_and_why(rule: str) -> None:
    """A level that is known, words for what was seen and for meanwhile, and a source."""
    words = REFERENCE.cautions[rule]

    assert words.level in LEVELS
    assert facts_in(words.seen) is not None
    assert "{day}" in words.seen
    assert words.meanwhile.endswith(".")
    assert (words.do_not or "Do not.").endswith(".")
    assert words.source


@pytest.mark.parametrize("rule", CASES)
def test_the_least_record_raises_its_rule(rule: str) -> None:
    """With the day, the foot, and the words of the table; nothing else is raised but what is known to be."""
    case, found = CASES[rule], case_of(rule, today=date.fromisoformat(DAY))
    one, words = the(rule, found), REFERENCE.cautions[rule]

    assert {caution.rule for caution in found} == {rule, *case.also}
    assert (one.day, one.foot) == (date(2026, 10, 14), case.of)
    assert (one.level, one.meanwhile, one.do_not, one.source) == (
        words.level,
        words.meanwhile,
        words.do_not,
        words.source,
    )


@pytest.mark.parametrize("rule", [rule for rule, case in CASES.items() if case.first])
def test_what_several_visits_say_is_said_by_none_alone(rule: str) -> None:
    """The record that raises it after earlier ones does not without them, nor do the earlier ones."""
    case = CASES[rule]

    assert rule not in raised_by(**case.raised)
    assert rule not in rules(*case.before, today=date(2026, 10, 14))


@pytest.mark.parametrize("rule", [*CASES, "overdue"])
def test_without_its_rule_nothing_raises_it(rule: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Each case hangs on its rule: taken out of the table, it is not raised, and the others still are."""
    others = [one for one in RULES if one.key != rule]
    case = CASES.get(rule, CASES["heavy"])
    before = {caution.rule for caution in case_of("heavy" if rule == "overdue" else rule, today=OVERDUE)}
    for module in (timeline, cautions):
        monkeypatch.setattr(module, "RULES", tuple(others))
    after = {caution.rule for caution in open_after(*case.visits(), today=OVERDUE, **(case.horse or {}))}

    assert rule in before
    assert before - after == {rule}


@pytest.mark.parametrize("rule", CASES)
def test_the_words_are_filled_in(rule: str) -> None:
    """A sentence with its day and its foot, and no brace left over."""
    found, words = the(rule, case_of(rule)), REFERENCE.cautions[rule]

    assert "14 October 2026" in found.seen
    assert ("left fore" in found.seen) == (CASES[rule].of is not None)
    assert found.seen[0].isupper() or found.seen[0].isdigit()
    assert not set("{}") & set(found.text)
    assert found.text == " ".join(part for part in (found.seen, words.meanwhile, words.do_not) if part)


@pytest.mark.parametrize("rule", CASES)
def test_a_visit_that_says_nothing_about_it_leaves_it_open(rule: str) -> None:
    """The absence of a sign clears nothing; the day stays that of the record."""
    found = the(rule, case_of(rule, SILENT, visit("2026-11-26")))

    assert (found.day, found.seen_again) == (date(2026, 10, 14), 0)


@pytest.mark.parametrize("rule", CASES)
def test_recorded_again_it_has_the_later_day(rule: str) -> None:
    """There is one of it, not two."""
    found = the(rule, case_of(rule, visit(LATER, **CASES[rule].raised)))

    assert (found.day, found.seen_again) == (date(2026, 11, 25), 1)


@pytest.mark.parametrize("rule", ENDING)
def test_the_same_thing_recorded_otherwise_clears_it(rule: str) -> None:
    """And alone it raises nothing of the kind."""
    ended = ENDING[rule]

    assert rule not in [caution.rule for caution in case_of(rule, visit(LATER, **ended))]
    assert rule not in raised_by(**ended)


@pytest.mark.parametrize("rule", [rule for rule in ENDING if "left_fore" in ENDING[rule]])
def test_another_foot_clears_nothing(rule: str) -> None:
    """Records of the right fore tell nothing of the left one."""
    assert the(rule, case_of(rule, visit(LATER, right_fore=ENDING[rule]["left_fore"]))).foot == "left_fore"


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


@pytest.mark.parametrize("wanted", [{"weeks": 20}, {"weeks": 12}, {"date": "2027-03-01"}, {"weeks": 4}])
def test_a_later_day_set_by_the_trimmer_does_not_silence_it(wanted: dict[str, Any]) -> None:
    """The usual weeks of its class go before it; a sooner day is no longest interval."""
    last = visit(DAY, next=wanted)

    assert rules(last, today=date(2026, 12, 9)) == []
    assert rules(last, today=date(2026, 12, 10)) == ["overdue"]


def test_overdue_tells_its_weeks() -> None:
    """Whole weeks, how late by the horse's own window, and since which day it is overdue; no visit recorded it."""
    (found,) = open_after(visit(DAY), today=OVERDUE)

    assert found.seen == "The last visit was on 14 October 2026, 10 weeks ago; the trim is 3 weeks late."
    assert (found.day, found.since) == (date(2026, 10, 14), date(2026, 12, 10))
    assert (found.days_open, found.seen_again, found.age) == (14, 0, "")


def test_overdue_sooner_by_a_vets_plan() -> None:
    """A plan of four weeks goes before the eight of its class."""
    plan = {"by": "Dr Sage", "date": "2026-10-01", "words": "often", "weeks": 4}
    late = date(2026, 11, 12)

    assert rules(visit(DAY), today=late, vet_plan=plan) == ["overdue"]
    assert rules(visit(DAY), today=late) == []


def test_nothing_is_open_of_a_horse_without_a_visit() -> None:
    """Neither from a record nor from the day."""
    found = cautions.compute_caution_book(timeline.Timeline(horse(), [], ways()), None, JUST_AFTER)

    assert (found.open, found.closed) == ((), ())


@pytest.mark.parametrize("compute", [summarise, compute_remarks])
def test_the_visits_are_followed_once_a_horse(
    compute: Callable[[HorseRecord, Context, date], object], monkeypatch: pytest.MonkeyPatch
) -> None:
    """For its cautions and for the words that end none alike."""
    read, followed = timeline.Timeline._process, []

    def counting(self: timeline.Timeline, visits: Sequence[Visit]) -> None:
        followed.append(len(visits))
        read(self, visits)

    monkeypatch.setattr(timeline.Timeline, "_process", counting)
    compute(record(visit(DAY), visit(LATER, **said("wound", LATER))), WAYS, TODAY)

    assert followed == [1, 2]


def test_most_urgent_first_then_newest_then_by_foot() -> None:
    """Advice to act on now stands on top."""
    wound, bend = {"wound": {"where": "sole"}}, {"deviation": "a bend"}
    first = visit(DAY, right_hind={**wound, **bend}, left_fore=wound, condition={"crest": 4})
    found = open_after(first, visit(LATER, left_hind=wound, lameness={"scale": "AAEP", "grade": 4}), **YEARLING)

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
    found = summary(visit(DAY, left_fore={"bears_weight": "not"}), by=ways(feet="near and off"), today=JUST_AFTER)

    assert found.cautions[0].seen == "The near fore took no weight on 14 October 2026."


def test_nothing_reassures_where_nothing_is_open() -> None:
    """A visit at which everything was looked at and nothing was seen tells no word of it."""
    looked = {"pulse": "usual", "heat": False, "bears_weight": "fully", "sole": {"sensitive": False, "gives": False}}
    sound = visit(DAY, lameness={"scale": "AAEP", "grade": 0}, sore_after_last_trim=False, left_fore=looked)

    assert open_after(sound) == []


@pytest.mark.parametrize("text", MEANWHILE)
def test_advice_is_short_and_plain(text: str) -> None:
    """Sentences of at most twenty words, at a reading grade of eight and under.

    From memory, not read: Flesch-Kincaid grade, 0.39 words a sentence + 11.8 syllables a word - 15.59.
    """
    sentences = [sentence.split() for sentence in re.split(r"[.;] *", text) if sentence.strip()]
    words = [word for sentence in sentences for word in sentence]
    syllables = sum(max(1, len(re.findall("[aeiouy]+", re.sub("e$", "", word.lower())))) for word in words)

    assert max(map(len, sentences)) <= 20
    assert 0.39 * len(words) / len(sentences) + 11.8 * syllables / len(words) - 15.59 <= 8


@pytest.mark.parametrize("level", ["call now", "call today"])
def test_an_urgent_caution_asks_for_the_vet_first(level: str) -> None:
    """The vet stands in the first two sentences, and what is safe meanwhile is told beside."""
    for rule, words in REFERENCE.cautions.items():
        if words.level == level:
            assert "vet" in " ".join(words.meanwhile.split(". ")[:2]), rule
            assert len(words.meanwhile.split()) >= 8, rule


@pytest.mark.parametrize("rule", ["signs-together", "stance", "pulse", "heat", "heavy", "crest", "thin"])
def test_where_sources_differ_about_feed_the_vet_is_asked(rule: str) -> None:
    """No feed is named as right or wrong before the vet has spoken.

    Source: the Laminitis Trust, laminitis.org (none until the vet has come), against others (never starve).
    """
    words = REFERENCE.cautions[rule]

    assert "sk the vet" in words.meanwhile
    assert "feed" in words.meanwhile


def test_a_nail_is_left_to_the_vet_by_phone() -> None:
    """Sources differ on pulling it, so that the vet is phoned first.

    Source: Morton, University of Florida, 12 December 2012, and Merck Veterinary Manual, against a second vet's view.
    """
    words = REFERENCE.cautions["object-in-foot"]

    assert words.meanwhile.startswith("Phone the vet first")
    assert words.do_not == "Do not pull it out before the vet has said so by phone."
