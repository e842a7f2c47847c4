"""The figures of tracings that were reckoned once, kept by content."""

from __future__ import annotations

import json
from dataclasses import dataclass

from recordgen.cache import spelling
from recordgen.cache.entries import Cache
from recordgen.cache.versions import program_version
from recordgen.hoof.tracing.errors.spread import Figure
from recordgen.hoof.tracing.figures import reckoned
from recordgen.records.models.tracing import Tracing

KIND = "figures"


@dataclass(frozen=True)
class FigureCache:
    """Finds the figures of a tracing, and reckons them where the cache does not hold them."""

    kept: Cache

    def __call__(self, tracing: Tracing, hand_px: float) -> dict[str, Figure]:
        """The figures by name. hand_px: SD of one picked coordinate, px."""
        key = key_of(tracing, hand_px)
        found = self.kept.get(KIND, key)
        if found is not None:
            return {name: Figure(*figure) for name, figure in json.loads(found).items()}
        figures = reckoned(tracing, hand_px)
        told = json.dumps({name: [figure.value, figure.sd] for name, figure in figures.items()})
        self.kept.put(KIND, key, told.encode())
        return figures


def key_of(tracing: Tracing, hand_px: float) -> str:
    """The name that figures are kept under: a hash of what reckons them and of all that they come from."""
    scale = (tracing.scale.ends, tracing.scale.length, tracing.scale.lay) if tracing.scale else None
    hand = (hand_px, tracing.error_px(), tracing.error_times())
    drawn = (tracing.of, tracing.view, tracing.drawn, tracing.model, tracing.ridge)
    told = (program_version(), hand, drawn, scale, tracing.named())
    return spelling.key_of(repr(told))
