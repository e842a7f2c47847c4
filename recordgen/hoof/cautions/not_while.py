"""Advice that may not stand beside an open caution: a job is withheld, a milder caution's advice gives way.

The tables say it with `not_while:`, by the names of cautions, or by a level for all cautions of that level.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Protocol, TypeVar

from recordgen.records.models.reference import Level


class OpenCaution(Protocol):
    """A caution that is open, as far as it matters here."""

    @property
    def rule(self) -> str:
        """Its rule, which is its key in the table."""

    @property
    def level(self) -> Level:
        """Tell how urgent it is."""


Standing = TypeVar("Standing", bound=OpenCaution)


def against(not_while: Sequence[str], cautions: Iterable[Standing]) -> tuple[Standing, ...]:
    """The open cautions that stand against something. not_while: rules and levels."""
    return tuple(one for one in cautions if one.rule in not_while or one.level in not_while)
