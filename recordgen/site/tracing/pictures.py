"""The pictures of a horse's tracings, as its page and the vet's sheet ask for them."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

from markupsafe import Markup

from recordgen.hoof.naming import Naming
from recordgen.hoof.tracing.wall_thickness import NAMES, ZONE_BOUNDS
from recordgen.pictures.cache import PictureCache
from recordgen.pictures.tracing.off_concentric import OffForm, off_concentric, off_concentric_alone, off_key
from recordgen.pictures.tracing.ring_strip import RingForm, RingLine, RingZone, ring_key, ring_strip
from recordgen.pictures.tracing.sole import SoleForm, extent_of, sole_key, traced_pair, traced_sole
from recordgen.pictures.tracing.sole_over import sole_over_photo
from recordgen.pictures.tracing.soles_together import OverlayForm, film_strip, overlay, overlay_key
from recordgen.pictures.tracing.upright import UprightForm, traced_upright, upright_key
from recordgen.pictures.tracing.upright_layout import BAR_MM
from recordgen.records.models.names import ZONES, Zone
from recordgen.site.tracing.feet import DatedTracing, TracedFootPart, TracedPairPart, TracedViewPart, Tracings
from recordgen.site.tracing.soles import RingShape, named_zones
from recordgen.site.tracing.together import off_shape, register_soles, sole_on_photo, zones_outside
from recordgen.site.tracing.upright import PASTERN, WALLS, upright_shape
from recordgen.site.tracing.words import DASH
from recordgen.units import INCH_MM

Form = TypeVar("Form", bound=str)
# A strip of fewer soles tells no more than two laid over each other.
FEWEST_FRAMES = 3


@dataclass(frozen=True)
class TracingPictures:
    """Draws tracings; `place` leaves a place for a picture in the page's text and gives back its mark."""

    kept: PictureCache
    naming: Naming
    place: Callable[[str], Markup]

    def view(self, seen: DatedTracing, all_of: Tracings, zones: bool = False) -> Markup | None:
        """One tracing; None where it holds nothing to draw.

        all_of: the page's, whose soles share one scale. zones: whether those of the wall are named.
        """
        svg = self._sole(seen, all_of, zones) if seen.view == "sole" else self._upright(seen, over=False)
        return self.place(svg) if svg else None

    def over(self, seen: DatedTracing) -> Markup | None:
        """One tracing, to lie over its photograph; not yet placed."""
        if seen.view == "sole":
            return Markup(self.kept.picture(sole_over_photo, sole_on_photo(seen.one), self._title("sole_over", seen)))
        svg = self._upright(seen, over=True)
        return Markup(svg) if svg else None

    def _sole(self, seen: DatedTracing, all_of: Tracings, zones: bool) -> str | None:
        if seen.sole is None:
            return None
        extent = all_of.extent or extent_of([seen.sole])
        named = named_zones(seen.one, self._named()) if zones else None
        return self.kept.picture(
            traced_sole, seen.sole, extent, self._labels(), self._title("sole", seen), named, self._bar_mm
        )

    def _upright(self, seen: DatedTracing, over: bool) -> str | None:
        shape = upright_shape(seen.one, self._angles(seen), over)
        if shape is None:
            return None
        return self.kept.picture(traced_upright, shape, self._bar, self._title(seen.view, seen), self._bar_mm)

    def _angles(self, seen: DatedTracing) -> dict[str, str]:
        """Words for the figures that stand beside their lines."""
        held = seen.one.figures
        named = {figure for wall in WALLS[seen.view] for figure in wall[1:] if figure} | {PASTERN}
        return {figure: self._beside(figure, held[figure].value) for figure in sorted(named) if figure in held}

    def _beside(self, figure: str, value: float) -> str:
        """A figure of a picture: the size of a gap, or an angle with its name."""
        if figure.endswith("_mm"):
            return self.naming.quantities.span(value, 1)
        return self._phrase(f"beside_{figure}", value=f"{value:.1f}")

    def _area(self, mm2: float) -> str:
        return self.naming.quantities.figure(mm2 / 100, "cm²", 0)

    def strip(self, told: TracedViewPart) -> Markup | None:
        """The ring of the latest sole, with that of the other moment and an earlier one; None where none was traced."""
        rings = self._rings(told)
        if not rings or "latest" not in rings:
            return None
        latest = rings["latest"][0]
        lines = [RingLine(form, ring.stretches) for form, (ring, _) in rings.items()]
        lines += [RingLine("baseline", latest.baseline), RingLine("above", latest.above), RingLine("band", latest.band)]
        zones = [RingZone(words, *ZONE_BOUNDS[zone]) for zone, words in self._zones().items()]
        labels = {**self._labels(), "unit": self.naming.unit("mm")}
        return self.place(
            self.kept.picture(
                ring_strip, lines, zones, labels, self._title("ring", told.shown), self.naming.units.inches
            )
        )

    def strip_key(self, told: TracedViewPart, rings_alone: bool = False) -> list[tuple[Markup, str]]:
        """The form and the words of each line of the strip. rings_alone: without what belongs to the latest ring."""
        rings = self._rings(told)
        words: dict[RingForm, str] = {form: words for form, (_, words) in rings.items()}
        latest = rings["latest"][0] if "latest" in rings and not rings_alone else None
        if latest and any(latest.band):
            words["band"] = self._phrase("key_band")
        if latest and latest.baseline:
            words["baseline"] = self._phrase("key_baseline")
        if latest and latest.above:
            words["above"] = self._phrase("key_flare")
        return self._key(ring_key(words), words)

    def _rings(self, told: TracedViewPart) -> dict[RingForm, tuple[RingShape, str]]:
        found: dict[RingForm, tuple[RingShape, str]] = {}
        lined: list[tuple[RingForm, DatedTracing]] = [
            ("latest", told.shown),
            *(("other", one) for one in told.moments[:-1]),
        ]
        if told.earlier:
            lined.append(("earlier", told.earlier))
        for form, seen in lined:
            if seen.ring and seen.ring.stretches:
                moment = self.naming.phrase(f"photo_moment_{seen.one.tracing.moment}")
                found[form] = (
                    seen.ring,
                    f"{moment}, {self.naming.language.short_day(seen.day)}" if form == "earlier" else moment,
                )
        return found

    def pair(self, told: TracedPairPart) -> Markup | None:
        """Two soles side by side on one scale; None where one cannot be drawn."""
        soles = {self.naming.foot(seen.foot): seen.sole for seen in (told.left, told.right) if seen.sole}
        if len(soles) < 2:
            return None
        title = self._phrase("title_pair", pair=self._phrase(f"pair_{told.pair}"))
        return self.place(
            self.kept.picture(traced_pair, soles, extent_of(list(soles.values())), self._labels(), title, self._bar_mm)
        )

    def overlay(self, told: TracedViewPart) -> Markup | None:
        """The latest sole over that of the other moment, else over an earlier one; None where they do not fit."""
        first = self._first_of(told)
        both = register_soles(first.one, told.shown.one) if first else None
        if not first or not both:
            return None
        areas = [seen.one.figures.get("sole_area_mm2") for seen in (first, told.shown)]
        one, other = (self._area(area.value) if area else DASH for area in areas)
        title = self._phrase(
            "title_laid",
            foot=self.naming.foot(first.foot),
            **self.overlay_words(told),
            a=one,
            b=other,
            unit=self.naming.unit("cm²"),
        )
        return self.place(self.kept.picture(overlay, *both, self._labels(), title, self._bar_mm))

    def overlay_words(self, told: TracedViewPart) -> dict[OverlayForm, str]:
        """The words for both that `overlay` shows."""
        first = self._first_of(told)
        last: dict[OverlayForm, str] = {"last": self._dated(told.shown)}
        return {"first": self._dated(first), **last} if first else last

    def overlay_key(self, told: TracedViewPart) -> list[tuple[Markup, str]]:
        """The form and the words of both."""
        words = self.overlay_words(told)
        return self._key(overlay_key(words), words)

    @staticmethod
    def _first_of(told: TracedViewPart) -> DatedTracing | None:
        return told.moments[0] if len(told.moments) > 1 else told.earlier

    def _dated(self, seen: DatedTracing) -> str:
        moment = self.naming.phrase(f"photo_moment_{seen.one.tracing.moment}")
        return f"{moment}, {self.naming.language.short_day(seen.day)}"

    def film(self, foot: TracedFootPart) -> Markup | None:
        """The soles of a year side by side; None of fewer than three."""
        frames = [(self.naming.language.short_month_day(seen.day), seen.sole) for seen in foot.year if seen.sole]
        if len(frames) < FEWEST_FRAMES:
            return None
        first, last = foot.year[0], foot.year[-1]
        widths = [seen.one.figures.get("sole_width_mm") for seen in (first, last)]
        written = self.naming.quantities
        one, other = (written.length_figure(width.value, 0) if width else DASH for width in widths)
        days = {"first": self.naming.day(first.day), "last": self.naming.day(last.day)}
        title = self._phrase(
            "title_film", foot=self.naming.foot(foot.foot), **days, a=one, b=other, unit=self.naming.unit("mm")
        )
        return self.place(self.kept.picture(film_strip, frames, title))

    def off_concentric(self, view: TracedViewPart, words: bool = True) -> Markup | None:
        """The latest sole against the line of equal distance; None where it was not traced far enough.

        words: whether what it shows is told on the drawing, or beside it.
        """
        seen = view.shown
        shape = off_shape(seen.one, seen.sole, self.naming) if seen.view == "sole" else None
        if shape is None:
            return None
        told = self._phrase("off_nothing")
        for zone, mm in zones_outside(seen.one)[:1]:
            told = self._phrase("off_most", zone=self.naming.place(zone), size=self.naming.quantities.span(mm, 1))
        facts = {"foot": self.naming.foot(seen.foot), "day": self.naming.day(seen.day)}
        title = self._phrase("title_off", **facts, told=told)
        if not words:
            return self.place(self.kept.picture(off_concentric_alone, replace(shape, told=()), title))
        labels = self._labels() | {"note": self._phrase("off_note")}
        return self.place(self.kept.picture(off_concentric, shape, labels, title, self._bar_mm))

    def off_key(self) -> list[tuple[Markup, str]]:
        """The form and the words of what that drawing shows."""
        forms: tuple[OffForm, ...] = ("wall", "white line", "even", "outside")
        shown = self.naming.quantities.unit_in_words("mm")
        words = {form: self._phrase(f"key_{form.replace(' ', '_')}", unit=shown) for form in forms}
        return self._key(off_key(words), words)

    def sole_key(self, shown: Sequence[DatedTracing]) -> list[tuple[Markup, str]]:
        """The form and the words of whatever some soles show."""
        forms = {form for seen in shown if seen.sole for form in seen.sole.forms}
        words: dict[SoleForm, str] = {form: self._phrase(f"key_{form.replace(' ', '_')}") for form in sorted(forms)}
        return self._key(sole_key(words), words)

    def upright_key(self, shown: Sequence[DatedTracing]) -> list[tuple[Markup, str]]:
        """The form and the words of whatever some feet from the side or the front show."""
        shapes = [upright_shape(seen.one, {}) for seen in shown if seen.view != "sole"]
        forms = {form for shape in shapes if shape for form in shape.forms}
        words: dict[UprightForm, str] = {form: self._phrase(f"key_{form}") for form in sorted(forms)}
        return self._key(upright_key(words), words)

    def _key(self, drawn: Mapping[Form, str], words: Mapping[Form, str]) -> list[tuple[Markup, str]]:
        return [(self.place(svg), words[form]) for form, svg in drawn.items()]

    def _zones(self) -> dict[Zone, str]:
        """The short name of each zone, for a drawing that tells its side."""
        return {zone: self._phrase(f"zone_{NAMES[zone]}") for zone in ZONES}

    def _named(self) -> dict[Zone, tuple[str, str]]:
        """The same, and the whole name of each."""
        return {zone: (words, self.naming.place(zone)) for zone, words in self._zones().items()}

    @property
    def _bar_mm(self) -> float:
        """The true length of the bar that tells a drawing's scale."""
        return INCH_MM if self.naming.units.inches else BAR_MM

    @property
    def _bar(self) -> str:
        """Its words: 20 mm, or 1 in."""
        return self.naming.quantities.length(self._bar_mm)

    def _labels(self) -> dict[str, str]:
        sides = {side: self.naming.phrase(f"chart_{side}") for side in ("inner", "outer")}
        return {**sides, "bar": self._bar}

    def _title(self, what: str, seen: DatedTracing) -> str:
        return self._phrase(
            f"title_{what}",
            foot=self.naming.foot(seen.foot),
            moment=self.naming.phrase(f"photo_moment_{seen.one.tracing.moment}"),
            day=self.naming.day(seen.day),
            unit=self.naming.quantities.unit_in_words("mm"),
        )

    def _phrase(self, key: str, **facts: str) -> str:
        return self.naming.phrase(f"tracing_{key}", **facts)
