"""The figures of tracings, each tracing reckoned once a process: tests show the same few again and again."""

from __future__ import annotations

from recordgen.hoof.tracing import figures
from recordgen.hoof.tracing.errors.spread import Figure
from recordgen.records.models.tracing import Tracing

_KNOWN: dict[tuple[str, float], dict[str, Figure]] = {}


def reckoned_once(tracing: Tracing, hand_px: float) -> dict[str, Figure]:
    """The figures of a tracing by name, as the package reckons them: nothing else goes into them than what is given."""
    key = repr(tracing), hand_px
    if key not in _KNOWN:
        _KNOWN[key] = figures.reckoned(tracing, hand_px)
    return dict(_KNOWN[key])
