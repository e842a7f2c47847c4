"""Texts that owners read are plain: short sentences, short words, and no word of the trade that is not explained."""

from __future__ import annotations

import statistics

import pytest

from tests.support.horse_records import REFERENCE
from tests.support.reading_age import grade, read_by_owners, school_year, sentences, syllables, words

# What patients are given to read should ask for no more than the fifth or sixth year of school. Source: Health Literacy
# in Primary Care Practice, Am Fam Physician 2015, 92(2):118-124, as copied on the web. The eighth: a judgement on it.
HARDEST, ON_AVERAGE = 8, 6
# One sentence may be a little harder than a text as a whole. The formula tells nothing of a few words.
HARDEST_SENTENCE, FEWEST_WORDS = 10, 10
# Words of four syllables or more that people know, or that have no shorter one of the same meaning.
KNOWN = {"antiseptic", "anybody", "emergency", "european", "regulator", "repository"}
# Words of the trade stay in, since an owner hears them in the yard; the page of words explains each.
TRADE = {
    "abscess", "fetlock", "frog", "groove", "hairline", "headcollar", "heel bulbs", "hoof testers",
    "horn", "lame", "pastern", "ringworm", "sole", "strangles", "tetanus", "white line",
}  # fmt: skip

READ = read_by_owners(REFERENCE)
TEXTS = {f"{table} {key}": text for table, entries in READ.items() for key, text in entries.items()}


@pytest.mark.parametrize(("counts", "expected"), [((6, 1, 6), -1.45), ((13, 1, 24), 11.3)])
def test_the_school_year_is_as_published(counts: tuple[int, int, int], expected: float) -> None:
    """The cat sat on the mat; and a sentence of thirteen words with twenty-four syllables.

    Source: Wikipedia, Flesch-Kincaid readability tests (the second). Derived from: the formula (the first).
    """
    assert school_year(*counts) == pytest.approx(expected, abs=0.05)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Ring the vet.", [1, 1, 1]),
        ("bleeding infection", [2, 3]),
        ("heel-bulbs 14 October", [2, 1, 3]),
        ("the horse's foot", [1, 2, 1]),
    ],
)
def test_syllables_are_counted(text: str, expected: list[int]) -> None:
    """A number is one, and a word with a hyphen is one word."""
    assert [syllables(word) for word in words(text)] == expected


def test_a_hard_text_is_told_from_an_easy_one() -> None:
    """The limits below can be missed."""
    hard = (
        "Inflammation of the laminar corium necessitates immediate veterinary intervention and radiographic evaluation."
    )

    assert grade(hard) > HARDEST_SENTENCE
    assert {word for word in words(hard.lower()) if syllables(word) >= 4} - KNOWN != set()


def test_a_text_for_owners_is_plain() -> None:
    """Nobody needs more than eight years of school for any of them."""
    years = {name: round(grade(text), 1) for name, text in TEXTS.items() if len(words(text)) >= FEWEST_WORDS}

    assert years
    assert {name: (year, TEXTS[name]) for name, year in years.items() if year > HARDEST} == {}


@pytest.mark.parametrize("table", READ)
def test_the_texts_of_a_table_are_plain_on_average(table: str) -> None:
    """Six years of school, however short the texts are."""
    assert statistics.mean(map(grade, READ[table].values())) <= ON_AVERAGE


def test_no_hard_sentence_hides_among_plain_ones() -> None:
    """The grade of a text is a mean; so each sentence is looked at as well."""
    found = {sentence: round(grade(sentence), 1) for text in TEXTS.values() for sentence in sentences(text)}
    hard = {text: year for text, year in found.items() if len(words(text)) >= FEWEST_WORDS and year > HARDEST_SENTENCE}

    assert hard == {}


def test_long_words_are_few_and_known() -> None:
    """A word of four syllables or more needs a reason."""
    found = {word.lower() for text in TEXTS.values() for word in words(text) if syllables(word) >= 4}

    assert found - KNOWN == set()
    assert KNOWN - found == set()


@pytest.mark.parametrize("word", sorted(TRADE))
def test_a_word_of_the_trade_is_used_and_explained(word: str) -> None:
    """It stands in some text for owners, and on the page of words."""
    assert any(word in text.lower() for name, text in TEXTS.items() if not name.startswith("glossary"))
    assert any(word in entry.name for entry in REFERENCE.glossary.values())
