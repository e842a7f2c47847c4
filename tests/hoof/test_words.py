"""Words that the tables put before people: nothing that only a vet may say, and nothing that promises."""

from __future__ import annotations

import re

import pytest

from recordgen.records.models.reference import Reference
from tests.support.horse_records import REFERENCE
from tests.support.words import NEVER_SAID, texts

TABLES = list(Reference.model_fields)
# What is sold carries one of these; no text of ours speaks of what is sold.
FOR_SALE = re.compile(r"[®™©]|\b(?:Ltd|Inc|LLC|GmbH|patented)\b")
# Tables whose entries give advice or a figure: each says where from.
SOURCED = [name for name in TABLES if any(hasattr(entry, "source") for entry in getattr(REFERENCE, name).values())]


@pytest.mark.parametrize("table", TABLES)
def test_no_table_says_what_only_a_vet_may_say(table: str) -> None:
    """No text names a diagnosis, calls a horse healthy or fine, or promises a cure."""
    found = list(texts(getattr(REFERENCE, table)))

    assert found
    assert [text for text in found if NEVER_SAID.search(text)] == []


@pytest.mark.parametrize("table", TABLES)
def test_no_table_names_what_is_sold(table: str) -> None:
    """No mark of a brand and no firm; a source may be a magazine."""
    assert [text for text in texts(getattr(REFERENCE, table)) if FOR_SALE.search(text)] == []


def test_the_tables_with_sources_are_found() -> None:
    """The text for the next test is not nothing."""
    assert {"cautions", "care", "patterns", "scales", "safety", "scope"} <= set(SOURCED)


@pytest.mark.parametrize("table", SOURCED)
def test_all_advice_names_where_it_comes_from(table: str) -> None:
    """A source, or the plain word that there is none."""
    assert all(entry.source.strip() for entry in getattr(REFERENCE, table).values())


@pytest.mark.parametrize("rule", [rule for rule, words in REFERENCE.cautions.items() if "call" in words.level])
def test_a_call_to_the_vet_says_so(rule: str) -> None:
    """The advice meanwhile names the vet."""
    assert "vet" in REFERENCE.cautions[rule].meanwhile


def test_published_figures_are_told_with_their_source() -> None:
    """Each context of a measure has one, and tells a figure or a rule without a verdict."""
    contexts = [context for words in REFERENCE.measures.values() for context in words.context]

    assert contexts
    assert all(context.source for context in contexts)
