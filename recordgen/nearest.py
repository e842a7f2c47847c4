"""The one 'did you mean': the known name that is nearest to what was typed."""

from __future__ import annotations

from collections.abc import Iterable

from recordgen.sentences import Said, say

# How alike two names must be, of 1 for the same. Judgement: below a half, guesses are wilder than a list of the names.
LEAST_ALIKE = 0.5
# Longer than any name; what goes on further is no slip of the pen.
LONGEST = 60


def nearest(typed: str, known: Iterable[str]) -> str | None:
    """The known name nearest to what was typed, whatever its case, blanks and hyphens; None where none is near."""
    return next(iter(nearest_ones(typed, known, most=1)), None)


def nearest_ones(typed: str, known: Iterable[str], most: int, least_alike: float = LEAST_ALIKE) -> list[str]:
    """The known names nearest to what was typed, the nearest first. least_alike: 1 for the same."""
    from difflib import get_close_matches

    names = {_plain(name): name for name in sorted(known, reverse=True)}
    return [names[near] for near in get_close_matches(_plain(typed[:LONGEST]), list(names), n=most, cutoff=least_alike)]


def did_you_mean(typed: str, known: Iterable[str], otherwise: Said) -> Said:
    """The way out of a name that is not known: the nearest one as a question, or `otherwise` where none is near."""
    near = nearest(typed, known)
    return say("Did you mean {name}?", name=near) if near else otherwise


def _plain(name: str) -> str:
    return name.lower().replace(" ", "_").replace("-", "_")
