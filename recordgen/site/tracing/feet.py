"""The part on a horse's tracings: each with its day, the latest of each view, pairs, and all that is drawn."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from functools import cached_property

from recordgen.hoof.measures.balance import Pair
from recordgen.hoof.tracing.figures import Traced
from recordgen.pictures.tracing.sole import Extent, TracedSole, extent_of
from recordgen.records.models.lines.drawn import follows_usual_shape
from recordgen.records.models.names import Foot
from recordgen.records.models.tracing import TracedView
from recordgen.site.photographs import ShownPhoto
from recordgen.site.tracing.soles import RingShape, ring_shape, sole_shape
from recordgen.site.tracing.words import TracedRow

# The views in the order told.
VIEWS: tuple[TracedView, ...] = ("sole", "side", "front")


@dataclass(frozen=True, eq=False)
class DatedTracing:
    """One tracing, its foot and its day."""

    foot: Foot
    day: date
    one: Traced

    @property
    def view(self) -> TracedView:
        """From where the foot is seen."""
        return self.one.tracing.view

    @cached_property
    def ring(self) -> RingShape | None:
        """The ring of a sole; None where it was not traced."""
        return ring_shape(self.one) if self.view == "sole" else None

    @cached_property
    def sole(self) -> TracedSole | None:
        """A sole as it is drawn; None where too little was traced."""
        return sole_shape(self.one, self.ring) if self.view == "sole" else None


@dataclass(frozen=True)
class TracedViewPart:
    """The latest tracing of a view of one foot, with all that stands beside it.

    moments: the tracings of that day, before the trim first; `shown` is the last of them. earlier: the latest of a day
    before. rows: a cell for each of the moments. zones: of the one shown, thickness and what stands above the curve.
    photo: the photograph it was traced on, where the page has it.
    """

    moments: tuple[DatedTracing, ...]
    earlier: DatedTracing | None
    rows: tuple[TracedRow, ...]
    zones: tuple[tuple[str, tuple[str, ...]], ...]
    lacking: tuple[str, ...]
    photo: ShownPhoto | None

    @property
    def both_sides(self) -> bool:
        """Tell whether the wall seems to stand out on both sides, so that only an earlier visit can tell how far."""
        return bool(self.shown.ring and self.shown.ring.both_sides)

    @property
    def off_usual(self) -> bool:
        """Tell whether it was to follow the usual outlines and a tap lies off them, so that it runs through all."""
        tracing = self.shown.one.tracing
        return tracing.model is not None and not follows_usual_shape(tracing)

    @property
    def shown(self) -> DatedTracing:
        """The one that is drawn: after the trim where that was traced."""
        return self.moments[-1]


@dataclass(frozen=True)
class TracedFootPart:
    """One foot: its views, and earlier days with what was traced, the newest first.

    year: its soles of the last year at one moment, the oldest first.
    """

    foot: Foot
    views: tuple[TracedViewPart, ...]
    earlier: tuple[tuple[date, tuple[DatedTracing, ...]], ...]
    earlier_left_out: int
    year: tuple[DatedTracing, ...] = ()


@dataclass(frozen=True)
class TracedPairPart:
    """Left and right of a pair, traced from the same side."""

    pair: Pair
    left: DatedTracing
    right: DatedTracing


@dataclass(frozen=True)
class Tracings:
    """All tracings of a horse as a page tells them."""

    feet: tuple[TracedFootPart, ...] = ()
    pairs: tuple[TracedPairPart, ...] = ()

    @cached_property
    def drawn(self) -> list[DatedTracing]:
        """Every tracing that is drawn."""
        told = [view.shown for foot in self.feet for view in foot.views]
        return [*told, *(seen for foot in self.feet for _, held in foot.earlier for seen in held)]

    @cached_property
    def extent(self) -> Extent | None:
        """The extent of all soles that are drawn, so that they share one scale; None where none is."""
        soles = [seen.sole for seen in self.drawn if seen.sole]
        return extent_of(soles) if soles else None

    def latest(self, most: int) -> list[TracedViewPart]:
        """The latest views of all feet: the newest first, soles before others of the same day, feet in their order."""
        found = [view for foot in self.feet for view in foot.views]
        return sorted(found, key=lambda view: (-view.shown.day.toordinal(), VIEWS.index(view.shown.view)))[:most]
