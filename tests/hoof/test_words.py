"""What the tables put before people: nothing that only a vet may say, and nothing that promises."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest

from recordgen.records.fields import Record
from tests.hoof.building import REFERENCE

NEVER_SAID = re.compile(r"\b(diagnos\w*|healthy|cures?|cured|fine)\b", re.IGNORECASE)


def texts(value: object) -> Iterator[str]:
    """Every text inside a table."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, Record):
        yield from texts(list(value.__dict__.values()))
    elif isinstance(value, dict):
        yield from texts(list(value.values()))
    elif isinstance(value, list | tuple):
        for one in value:
            yield from texts(one)


@pytest.mark.parametrize("table", ["measures", "cautions", "care", "glossary", "phrases"])
def test_no_table_says_what_only_a_vet_may_say(table: str) -> None:
    """No text names a diagnosis, calls a horse healthy or fine, or promises a cure."""
    found = list(texts(getattr(REFERENCE, table)))

    assert found
    assert [text for text in found if NEVER_SAID.search(text)] == []


@pytest.mark.parametrize("table", ["cautions", "care"])
def test_all_advice_names_where_it_comes_from(table: str) -> None:
    """A source, or the plain word that there is none."""
    assert all(entry.source.strip() for entry in getattr(REFERENCE, table).values())


@pytest.mark.parametrize("rule", [rule for rule, words in REFERENCE.cautions.items() if "call" in words.level])
def test_a_call_to_the_vet_says_so(rule: str) -> None:
    """What is to be done meanwhile names the vet."""
    assert "vet" in REFERENCE.cautions[rule].meanwhile


def test_published_figures_are_told_with_their_source() -> None:
    """Each context of a measure has one, and tells a figure or a rule without a verdict."""
    contexts = [context for words in REFERENCE.measures.values() for context in words.context]

    assert contexts
    assert all(context.source for context in contexts)
