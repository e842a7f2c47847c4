"""Findings shared by several horses of one stable, and the place."""

from __future__ import annotations

import copy
import re
from collections.abc import Sequence

import pytest

from recordgen.hoof.stable.patterns import Pattern, patterns, patterns_by_stable, shares_in_time
from recordgen.hoof.stable.prevalence import SIGNS, Share
from recordgen.hoof.stable.proportions import wilson
from recordgen.hoof.summary import StableSummary
from recordgen.records.checks.tables import PATTERN_FACTS, facts_in
from tests.support.horse_records import NAMING, REFERENCE, TODAY, summary, visit
from tests.support.stables import CLEAN, INFECTED, NOW, YEAR_AGO, share, stable
from tests.support.words import NEVER_SAID, texts

SINCE = "1 September 2026"


def herd(now: tuple[int, int], then: tuple[int, int] = (0, 0), slug: str = "willowmere") -> StableSummary:
    """A stable in which so many of so many horses had an infected frog, now and a year ago."""
    horses = []
    for number in range(max(now[1], then[1])):
        told = [(day, number < count) for day, (count, of) in ((YEAR_AGO, then), (NOW, now)) if number < of]
        horses.append(summary(*(visit(day, left_fore=INFECTED if found else CLEAN) for day, found in told)))
    return stable(*horses, slug=slug)


def found(here: StableSummary, *others: StableSummary, finding: str = "infection") -> Pattern:
    """The pattern of one finding."""
    every = patterns(here, others, REFERENCE.patterns, NAMING, TODAY)
    return next(pattern for pattern in every if pattern.finding == finding)


def others(*counts: tuple[int, int]) -> list[StableSummary]:
    """Other stables with so many of so many."""
    return [herd(count, slug=f"other-{number}") for number, count in enumerate(counts)]


def test_more_than_a_year_ago_is_said_as_a_question() -> None:
    """Both shares stand in the sentence, and what it may come of."""
    pattern = found(herd((6, 9), (1, 8)))

    assert (pattern.than_year_ago, pattern.than_others, pattern.is_told) == ("more", None, True)
    assert pattern.text == (
        f"6 of the 9 horses looked at here since {SINCE} had an infection of the frog: "
        "more often than a year ago (1 of 8). It may be the ground or the bed: how wet do they stand?"
    )


def test_fewer_than_a_year_ago_is_good_news() -> None:
    """Seven of nine a year ago, two of nine now: that is said too, without a question."""
    pattern = found(herd((2, 9), (7, 9)))

    assert (pattern.than_year_ago, pattern.is_told) == ("less", True)
    assert pattern.text.endswith(": less often than a year ago (7 of 9). That is good to see.")


def test_none_is_a_word() -> None:
    """Nobody has to read `0 of the 9`."""
    assert found(herd((0, 9), (7, 9))).text.startswith("None of the 9 horses looked at here")


def test_a_finding_that_begins_the_sentence_has_a_capital() -> None:
    """And says `noted`, since nobody writes down that there was no crack."""
    pattern = found(stable(summary(visit(NOW, left_fore={"wall": {"toe": {"crack": {}}}}))), finding="crack")

    assert pattern.text == f"A crack of the wall was noted in 1 of the 1 horses seen here since {SINCE}."


def test_more_than_the_other_horses_of_the_practice() -> None:
    """Of them the share is told, and neither how many nor where."""
    pattern = found(herd((6, 9)), *others((2, 20), (4, 20)))

    assert (pattern.others, pattern.than_others) == (Share(6, 40, 40), "more")
    assert (
        "had an infection of the frog: more often than in the other horses of this practice (15 %). It" in pattern.text
    )


def test_both_comparisons_in_one_sentence() -> None:
    """Better than a year ago and still more than elsewhere: the question is asked."""
    pattern = found(herd((5, 10), (10, 10)), *others((0, 20), (1, 20)))

    assert (pattern.than_year_ago, pattern.than_others) == ("less", "more")
    assert "less often than a year ago (10 of 10) and more often than in the other horses" in pattern.text
    assert pattern.text.endswith(REFERENCE.patterns["infection"].maybe)


def test_what_cannot_be_said_is_listed_with_its_share() -> None:
    """The trimmer sees the plain share, its interval and what it was compared with."""
    pattern = found(herd((4, 9), (2, 9)), *others((10, 30), (10, 30)))

    assert (pattern.is_told, pattern.count, pattern.looked) == (False, 4, 9)
    assert (pattern.low, pattern.high) == wilson(4, 9)
    assert (pattern.year_ago, pattern.others) == (Share(2, 9, 9), Share(20, 60, 60))
    assert pattern.text == f"4 of the 9 horses looked at here since {SINCE} had an infection of the frog."


def test_the_published_figure_is_context() -> None:
    """It stands apart, called the nearest, with its source; a finding nobody surveyed has none."""
    pattern = found(herd((4, 9)))

    assert pattern.context == "Nearest published figure, though not quite the same: thrush, 45 % of 942 horses."
    assert pattern.source == REFERENCE.patterns["infection"].source
    assert found(stable(summary(visit(NOW, left_fore={"bars": {"medial": 60}}))), finding="chip").context is None


def test_a_pattern_names_no_stable_and_no_horse() -> None:
    """Not even its own: it is about the place."""
    told = repr(patterns(herd((6, 9), (1, 9)), others((1, 9), (1, 9)), REFERENCE.patterns, NAMING, TODAY))

    assert "Share(count=2, looked=18" in told
    assert [
        name for name in ("Bramble", "bramble", "Willowmere", "willowmere", "ther-0", "ther-1") if name in told
    ] == []


def test_nothing_to_tell() -> None:
    """A stable without horses, or of which nothing was looked at, has no pattern."""
    assert patterns(stable(), others((5, 9)), REFERENCE.patterns, NAMING, TODAY) == ()
    assert patterns(stable(summary(visit(NOW))), [], REFERENCE.patterns, NAMING, TODAY) == ()
    assert share("infection", summary(visit(NOW))) == (0, 0, 0)
    assert (found(herd((5, 9))).year_ago, found(herd((5, 9))).others) == (None, None)


def test_a_whole_practice_at_once() -> None:
    """Each stable has the patterns it has alone, and nothing was changed by asking."""
    practice = [herd((6, 9), (1, 9)), *others((1, 9), (2, 9))]
    before = copy.deepcopy(practice)
    every = patterns_by_stable(
        {one.slug: shares_in_time(one, TODAY) for one in practice}, REFERENCE.patterns, NAMING, TODAY
    )

    for one in practice:
        elsewhere: Sequence[StableSummary] = [other for other in practice if other is not one]
        assert every[one.slug] == patterns(one, elsewhere, REFERENCE.patterns, NAMING, TODAY)
    assert practice == before


def test_signs_and_words_belong_together() -> None:
    """Each finding that is counted has its words, and no words are left over."""
    asked = {f"pattern_{stood}_than_{whom}" for stood in ("more", "less") for whom in ("year_ago", "others")}
    asked |= {f"pattern_{part}" for part in ("none", "plain", "said", "good", "published")}

    assert list(SIGNS) == list(REFERENCE.patterns)
    assert {key for key in REFERENCE.phrases if key.startswith("pattern_")} == asked


@pytest.mark.parametrize("finding", list(REFERENCE.patterns))
def test_the_words_of_a_pattern(finding: str) -> None:
    """Known facts, one kind question, no second sentence in between, and nothing that only a vet may say."""
    words = REFERENCE.patterns[finding]
    seen = words.seen.format(count="1", looked="2", since=SINCE, name=words.name)

    assert facts_in(words.seen) == PATTERN_FACTS
    assert re.search("[.?!]", seen) is None
    assert re.findall("[.?!]", words.maybe) == ["?"]
    assert words.maybe.startswith("It may be")
    assert [text for text in texts(words) if NEVER_SAID.search(text)] == []
