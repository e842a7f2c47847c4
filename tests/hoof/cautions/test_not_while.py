"""No page contradicts itself: what an open caution says, and what else the page would ask of the owner."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import get_args

import pytest

from recordgen.hoof.cautions.cautions import LEVELS
from recordgen.hoof.cautions.not_while import against
from recordgen.hoof.summary import HorseSummary
from recordgen.records.models.reference import CareWords, CautionWords, Level
from tests.support.caution_cases import CASES, DAY
from tests.support.horse_records import REFERENCE, summary, visit

# What a caution asks for, by its words; what a job has the owner do, by its words. Judgement: read by us as an owner
# would, so that a caution or a note that is added later is held to the same.
ASKS = {
    "no step": r"keep the horse still|do not walk the horse|as few steps|where it stands",
    "deep bed": r"deep soft bed|deep bed",
    "soft ground": r"(?i)soft (level )?ground|no riding|level ground|do not ride|no work",
    "no touch of the frog": r"(?i)(groove|frog) of the \{foot\}.*(sore|painful|bled)|tissue of the frog",
    "cover": r"covered|cover it",
    "off the grass": r"(?i)off the grass",
    "call now": r"(?i)vet now|phone the vet(?! today)",
}
DOES = {
    "walks": r"(?i)^walk\b|firm ground|for riding",
    "goes out and in": r"dry place to stand",
    "stands on ground": r"soft level ground",
    "steps on stones": r"stony ground",
    "touches the frog": r"(?i)grooves? of the frog|middle groove",
    "opens the foot": r"(?i)^(pick out|pick the gap|feel along|look at the edge)",
    "lifts feet": r"(?i)^(pick out|pick the gap|dry the feet|lift each foot|feel|look at the edge)",
    "asks before grazing": r"feed or grazing",
}
CONTRADICT = {
    ("no step", "walks"), ("no step", "goes out and in"), ("no step", "stands on ground"),
    ("no step", "steps on stones"), ("deep bed", "walks"), ("deep bed", "stands on ground"),
    ("deep bed", "goes out and in"), ("soft ground", "walks"), ("no touch of the frog", "touches the frog"),
    ("cover", "opens the foot"), ("off the grass", "asks before grazing"),
}  # fmt: skip
# At a call for the vet now, the horse is left alone and its feet down.
AT_ONCE = {"walks", "goes out and in", "stands on ground", "steps on stones", "lifts feet", "touches the frog"}
EVERY_NOTE = sorted(REFERENCE.care)


def told(words: CautionWords) -> str:
    """The words of a caution on the page."""
    return " ".join(filter(None, (words.seen, words.meanwhile, words.do_not)))


def traits(patterns: dict[str, str], text: str) -> set[str]:
    """Which of the patterns a text holds."""
    return {name for name, pattern in patterns.items() if re.search(pattern, text)}


def contradicts(caution: CautionWords, note: CareWords) -> bool:
    """Whether an owner cannot do both."""
    does = traits(DOES, note.what)
    asks = traits(ASKS, told(caution))
    return bool(caution.level == "call now" and does & AT_ONCE) or any(
        (one, other) in CONTRADICT for one in asks for other in does
    )


def with_every_note(rule: str) -> HorseSummary:
    """A horse whose last visit raised a caution and gave every care note of the library."""
    case = CASES[rule]
    raised = visit(DAY, **{**case.raised, "care": EVERY_NOTE})
    return summary(*case.before, raised, **(case.horse or {}))


@pytest.mark.parametrize("rule", CASES)
def test_no_job_stands_beside_a_caution_it_contradicts(rule: str) -> None:
    """Over all cautions and all notes; each note stands or is withheld with the caution that withholds it."""
    found = with_every_note(rule)
    stand, wait = {job.key for job in found.jobs}, {one.job.key for one in found.withheld}
    bad = {key for key in EVERY_NOTE for one in found.cautions
           if contradicts(REFERENCE.cautions[one.rule], REFERENCE.care[key])}  # fmt: skip

    assert stand | wait == set(EVERY_NOTE)
    assert not stand & wait
    assert bad <= wait
    assert all(one.cautions for one in found.withheld)


def test_the_pairs_of_the_trade_are_withheld() -> None:
    """Firm ground beside no walking; a brush beside a groove too sore to touch. Common practice, no source."""
    pairs = [("signs-together", "hardening-off"), ("lame", "hardening-off"), ("painful-groove", "daily-grooves"),
             ("painful-infection", "daily-grooves"), ("pulse", "soft-ground-for-now")]  # fmt: skip

    for rule, key in pairs:
        assert contradicts(REFERENCE.cautions[rule], REFERENCE.care[key]), (rule, key)
        assert key in {one.job.key for one in with_every_note(rule).withheld}


def test_a_note_for_a_sound_horse_waits_while_it_is_lame() -> None:
    """It says to ring the vet if the horse is lame, and the caution says that it is and what to do."""
    for rule in ("slightly-lame", "lame", "bears-less", "severely-lame"):
        assert "after-a-trim-on-stones" in {one.job.key for one in with_every_note(rule).withheld}, rule


def test_without_a_caution_nothing_is_withheld() -> None:
    """Nor by one that says nothing of what the job does."""
    calm = summary(visit(DAY, care=EVERY_NOTE))
    heavy = summary(visit(DAY, condition={"henneke": 7}, care=EVERY_NOTE))

    assert [one.job.key for one in (*calm.withheld, *heavy.withheld)] == []
    assert {job.key for job in heavy.jobs} == set(EVERY_NOTE)


def test_a_withheld_job_comes_back_when_the_caution_ends() -> None:
    """It was in force all the while."""
    sore = visit("2026-10-14", left_fore=CASES["painful-groove"].raised["left_fore"], care=["wet-season-frog"])
    healed = visit("2026-11-11", left_fore={"frog": {"infection": "surface"}})

    assert [one.job.key for one in summary(sore).withheld] == ["wet-season-frog"]
    assert [job.since for job in summary(sore, healed).jobs] == [sore.date]


def entries() -> Iterator[tuple[str, tuple[str, ...], Level | None]]:
    """All that stands under `not_while` in our tables, with the level of what it is of."""
    yield from ((key, words.not_while, None) for key, words in REFERENCE.care.items())
    yield from ((key, words.not_while, words.level) for key, words in REFERENCE.cautions.items())


@pytest.mark.parametrize(("key", "not_while", "level"), [one for one in entries() if one[1]])
def test_what_stands_against_it_is_known_and_no_milder(key: str, not_while: tuple[str, ...], level: Level) -> None:
    """A caution gives way to one as urgent or more, which stands above it; never to its own level as a whole."""
    urgent = {one: REFERENCE.cautions[one].level if one in REFERENCE.cautions else one for one in not_while}

    assert set(urgent.values()) <= set(get_args(Level))
    assert key not in not_while
    if level:
        assert all(LEVELS.index(one) <= LEVELS.index(level) for one in urgent.values())
        assert level not in not_while


def test_soft_ground_is_not_told_beside_a_deep_bed() -> None:
    """Milder advice gives way, and what not to do is told all the same."""
    found = summary(visit(DAY, left_fore={"pulse": "strong", "sole": {"sensitive": True}})).cautions
    by_rule = {one.rule: one for one in found}

    assert by_rule["sole-sensitive"].meanwhile == "Do first what is said above."
    assert by_rule["sole-sensitive"].do_not == "No riding on stones."
    assert "deep soft bed" in by_rule["pulse"].meanwhile


@pytest.mark.parametrize("one", REFERENCE.cautions)
def test_no_two_cautions_ask_for_what_cannot_be_both(one: str) -> None:
    """Soft ground or a walk out beside a deep bed or standing still; a day for the trim beside a call to the vet."""
    strict = REFERENCE.cautions[one]
    still = traits(ASKS, told(strict)) & {"no step", "deep bed"} and strict.level in LEVELS[:2]
    apart = [other for other, mild in REFERENCE.cautions.items() if still and other != one and _moves(mild, strict)]
    open_one = _Open(one, strict.level)

    assert [other for other in apart if not against(REFERENCE.cautions[other].not_while, (open_one,))] == []


def _moves(mild: CautionWords, strict: CautionWords) -> bool:
    moves = re.search(r"(?i)soft (level )?ground|level ground|find a day", mild.meanwhile)
    lifts = re.search(r"(?i)pick the foot out", mild.meanwhile) and strict.level == "call now"
    return bool(moves or lifts)


class _Open:
    """A caution that is open."""

    def __init__(self, rule: str, level: Level) -> None:
        self.rule, self.level = rule, level


def test_signs_for_the_vet_never_send_to_the_trimmer_alone() -> None:
    """Where blood, pain, lameness or heat is named, the vet is named with it, in the same sentence."""
    texts = {key: words.meanwhile for key, words in REFERENCE.cautions.items()}
    texts |= {key: note.stop_if for key, note in REFERENCE.care.items() if note.stop_if}
    sentences = [(key, part) for key, text in texts.items() for part in re.split(r"(?<=[.])\s", text)]
    signs = r"(?i)\b(blood|bleeds?|hurts?|lame|warm|hot|snatches|will not walk)\b"
    named = [(key, part) for key, part in sentences if re.search(signs, part)]

    assert named
    assert [one for one in named if re.search(r"\bus\b", one[1]) and "vet" not in one[1]] == []


def test_a_call_to_the_vet_rings_the_vet_first() -> None:
    """And one that speaks of us rings the trimmer too."""
    for key, words in REFERENCE.cautions.items():
        if words.level in ("call now", "call today"):
            assert words.ring[0] == "vet", key
        assert ("trimmer" in words.ring) == bool(re.search(r"\bus\b|ring to find a day", words.meanwhile)), key
        assert ("vet" in words.ring) == ("vet" in words.meanwhile.lower()), key
