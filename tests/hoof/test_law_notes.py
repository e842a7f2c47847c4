"""Which notes on law are told in which country."""

from __future__ import annotations

from datetime import date

import pytest
from babel import Locale

from recordgen.hoof.law_notes import scope_notes
from recordgen.records.models.reference import ScopeWords
from tests.support.horse_records import REFERENCE

KEYS = {id(note): key for key, note in REFERENCE.scope.items()}
# The countries of the world by their code (ISO 3166), as the Unicode locale data names them.
NOT_COUNTRIES = {"EU", "EZ", "QO", "UN", "XA", "XB", "ZZ"}
COUNTRIES = {str(code) for code in Locale("en").territories if len(str(code)) == 2} - NOT_COUNTRIES


def told(country: str | None) -> list[str]:
    """The keys of the notes of a country."""
    return [KEYS[id(note)] for note in scope_notes(country, REFERENCE.scope)]


@pytest.mark.parametrize(
    ("country", "own"),
    [
        ("GB", ["gb-shoes", "gb-vets", "gb-fee"]),
        ("DE", ["de-shoes", "eu-gdpr"]),
        ("US", ["us-states"]),
        ("AU", ["au-states"]),
        ("FR", ["eu-gdpr"]),
        ("NO", ["eu-gdpr"]),
        ("JP", []),
        (None, []),
    ],
)
def test_a_country_has_its_own_notes_and_the_general_ones_last(country: str | None, own: list[str]) -> None:
    """A country we know nothing of, and none at all, have the general ones alone."""
    assert told(country) == [*own, "everywhere", "data-everywhere"]


def test_each_country_has_a_code_of_the_standard() -> None:
    """So that UK, which is none, cannot stand for GB."""
    named = {country for note in REFERENCE.scope.values() for country in note.countries}

    assert {"GB", "DE", "US", "AU"} <= named
    assert named - COUNTRIES == set()
    assert "UK" not in COUNTRIES


def test_each_part_has_a_general_note() -> None:
    """Whatever the country, something is told of what a trimmer may do, and of data on people."""
    assert {note.about for note in REFERENCE.scope.values() if not note.countries} == {"work", "data"}


def test_no_note_was_read_before_its_time() -> None:
    """A note is told with the day it was read, and that day is no guess."""
    assert all(date(2026, 1, 1) <= note.read <= date(2026, 12, 31) for note in REFERENCE.scope.values())


def test_the_order_of_the_table_is_kept() -> None:
    """A practice's own notes come after ours, before the general ones."""
    own = ScopeWords(about="work", countries=("DE",), text="Ask the district.", source="own", read=date(2026, 11, 25))
    table = {**REFERENCE.scope, "own": own}

    assert [note.text for note in scope_notes("DE", table)][2] == "Ask the district."
