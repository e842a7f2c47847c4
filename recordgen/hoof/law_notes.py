"""Tell which notes on law are told where a practice works: its country's own, then those that hold everywhere."""

from __future__ import annotations

from collections.abc import Mapping

from recordgen.records.models.reference import ScopeWords


def scope_notes(country: str | None, table: Mapping[str, ScopeWords]) -> tuple[ScopeWords, ...]:
    """The notes that hold in a country, in the order of the table, then the general ones.

    country: two letters (ISO 3166), or None where a practice names none: then the general notes alone.
    """
    own = [note for note in table.values() if country in note.countries]
    general = [note for note in table.values() if not note.countries]
    return (*own, *general)
