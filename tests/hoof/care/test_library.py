"""The library of care notes: whole, short, and safe to read."""

from __future__ import annotations

import re
from typing import get_args

import pytest

from recordgen.hoof.care.signs import SIGNS
from recordgen.records.models.reference import CareReason, CareWords
from tests.support.horse_records import REFERENCE

LIBRARY = REFERENCE.care
MOST_WORDS, USUAL_WORDS = 26, 14
# A sentence for an owner in the barn: of these a note consists.
PARTS = ("what", "why", "stop_if", "caution")


def sentences(words: CareWords) -> list[str]:
    """The sentences of a note that an owner reads."""
    told = [getattr(words, part) for part in PARTS if getattr(words, part)]
    return [sentence for text in told for sentence in re.split(r"[.:]\s+", text)]


def test_the_library_holds_what_a_practice_needs() -> None:
    """Enough to choose from, and not so much that nobody reads it."""
    assert 14 <= len(LIBRARY) <= 18


@pytest.mark.parametrize("key", LIBRARY)
def test_a_note_is_short(key: str) -> None:
    """No long sentence, and few words in most."""
    lengths = [len(sentence.split()) for sentence in sentences(LIBRARY[key])]

    assert max(lengths) <= MOST_WORDS
    assert sum(lengths) / len(lengths) <= USUAL_WORDS


@pytest.mark.parametrize("key", LIBRARY)
def test_a_note_is_whole(key: str) -> None:
    """Each note tells what, why, how often and the source; what to stop at or to beware of."""
    words = LIBRARY[key]

    assert all((words.what, words.why, words.how_often, words.source))
    assert words.stop_if or words.caution or key == "dry-bed"


@pytest.mark.parametrize("key", [key for key, words in LIBRARY.items() if "product" in (words.caution or "")])
def test_a_product_is_never_spoken_of_without_care(key: str) -> None:
    """Label, gloves and air; never on what lives, bleeds or hurts.

    Sources: Adams and Stashak, Lameness in Horses, 7th ed., p. 1126; UKHSA, July 2024 (formaldehyde).
    """
    caution = LIBRARY[key].caution or ""

    assert all(word in caution for word in ("label", "gloves", "fresh air"))
    assert "live, bleeding or sore tissue" in caution or "keep it off the horse" in caution


def test_no_note_names_a_dose_or_feeds_a_horse() -> None:
    """Feed and medicine are the vet's."""
    told = " ".join(text for words in LIBRARY.values() for text in (*sentences(words), words.how_often))

    assert re.findall(r"\b\d+\s*(?:ml|g|mg|%|drops?)\b|\bdose\b|\bgive it (?:bute|paste)\b", told) == []
    assert "Never starve a horse, pony or donkey" in told


def test_often_enough_is_counted() -> None:
    """Where the words say daily the ticks do too."""
    for words in LIBRARY.values():
        if "every day" in words.how_often:
            assert words.times_a_week == 7
        if "once a week" in words.how_often:
            assert words.times_a_week == 1


@pytest.mark.parametrize("reason", get_args(CareReason))
def test_each_reason_has_a_note_and_somebody_who_looks(reason: CareReason) -> None:
    """None is spoken of in vain."""
    assert any(reason in words.suits for words in LIBRARY.values())
    assert reason in SIGNS or reason in ("foal", "wet months", "dry months")
