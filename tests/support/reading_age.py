"""Tell how hard a text is to read, and what owners read of the tables, with facts filled in."""

from __future__ import annotations

import re
from collections.abc import Iterable

import syllapy

from recordgen.records.models.reference import CautionWords, Reference
from tests.support.caution_cases import CASES, case_of, the

# Sentences that stand on the pages of owners, by the beginning of their key.
FOR_OWNERS = ("because", "due_", "allowance_", "bound_", "pattern_", "caution_age", "safety_")
NOTE_PARTS = ("what", "why", "how_often", "until", "stop_if", "caution")

_WORD = re.compile(r"\d+(?:[.,]\d+)*|[A-Za-z]+(?:['-][A-Za-z]+)*")
_END = re.compile(r"(?<=[.!?;])\s+")


class Facts(dict[str, str]):
    """Facts of a usual length, whatever they are called."""

    def __missing__(self, name: str) -> str:
        return "6 weeks"


FACTS = Facts(
    allowance="as much as horses and ponies usually grow in 6 weeks",
    by="Fold Gate Vets",
    count="4",
    country="GB",
    day="14 October 2026",
    ending="Has anything changed?",
    finding="gap at the white line",
    high="9 mm",
    looked="7",
    low="7 mm",
    mm="11 mm",
    name="a crack of the wall",
    percent="12",
    rate="8 mm",
    since="2 September 2026",
    trimmer="Wren",
    **{"class": "horses and ponies"},
)


def words(text: str) -> list[str]:
    """The words of a text; a number is one."""
    return _WORD.findall(text)


def sentences(text: str) -> list[str]:
    """Its sentences, by the mark that closes each; a colon closes none here, since mostly a list comes after it.

    Source: Flesch, How to Write Plain English, as told on the web (a unit that a full stop or a semicolon closes).
    """
    return [sentence for sentence in _END.split(text) if words(sentence)]


def syllables(word: str) -> int:
    """Tell how many syllables a word has. A number counts as one, as Flesch counts it."""
    return 1 if word[0].isdigit() else max(1, syllapy.count(word))


def school_year(of_words: int, of_sentences: int, of_syllables: int) -> float:
    """The school year of the United States from which on a text with these counts is read with ease.

    Source: Kincaid et al. 1975, Research Branch Report 8-75, as told by readabilityformulas.com.
    """
    return 0.39 * of_words / of_sentences + 11.8 * of_syllables / of_words - 15.59


def grade(text: str) -> float:
    """The school year from which on a text is read with ease."""
    found = words(text)
    return school_year(len(found), len(sentences(text)), sum(map(syllables, found)))


def joined(parts: Iterable[str | None]) -> str:
    """Several texts as they stand one after the other, each closed by a mark."""
    return " ".join(part if part[-1] in ".!?" else f"{part}." for part in parts if part)


def _caution(rule: str, words: CautionWords) -> str:
    """A caution as it is told where the least records raise it; what no visit raises has facts of a usual length."""
    if rule in CASES:
        told = the(rule, case_of(rule))
        return joined((told.seen, told.meanwhile, told.do_not))
    return joined((words.seen.format_map(FACTS), words.meanwhile, words.do_not))


def read_by_owners(tables: Reference) -> dict[str, dict[str, str]]:
    """Texts that owners read, by table and key, with facts filled in; and what the page on safety tells the trimmer."""
    return {
        "care": {key: joined(getattr(note, part) for part in NOTE_PARTS) for key, note in tables.care.items()},
        "cautions": {key: _caution(key, words) for key, words in tables.cautions.items()},
        "patterns": {key: joined((one.seen.format_map(FACTS), one.maybe)) for key, one in tables.patterns.items()},
        "safety": {key: joined((one.text, one.meanwhile)) for key, one in tables.safety.items()},
        "scope": {key: joined((one.text,)) for key, one in tables.scope.items()},
        "glossary": {key: joined((one.meaning,)) for key, one in tables.glossary.items()},
        "measures": {key: joined((one.plain,)) for key, one in tables.measures.items()},
        "scales": {key: joined((one.meaning, *one.grades.values())) for key, one in tables.scales.items()},
        "phrases": {
            key: joined((text.format_map(FACTS),)) for key, text in tables.phrases.items() if key.startswith(FOR_OWNERS)
        },
    }
