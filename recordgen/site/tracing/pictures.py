"""The pictures of a horse's tracings, as its page and the vet's sheet ask for them."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import TypeVar

from markupsafe import Markup

from recordgen.hoof.naming import Naming
from recordgen.hoof.tracing.wall_thickness import ZONE_BOUNDS
from recordgen.pictures.cache import PictureCache
from recordgen.pictures.tracing.ring_strip import RingForm, RingLine, RingZone, ring_key, ring_strip
from recordgen.pictures.tracing.sole import SoleForm, extent_of, sole_key, traced_pair, traced_sole
from recordgen.pictures.tracing.upright import UprightForm, traced_upright, upright_key
from recordgen.records.models.names import ZONES
from recordgen.site.tracing.feet import DatedTracing, PairTold, Tracings, ViewTold
from recordgen.site.tracing.soles import RingShape
from recordgen.site.tracing.upright import PASTERN, WALLS, upright_shape

Form = TypeVar("Form", bound=str)


@dataclass(frozen=True)
class TracingPictures:
    """Draws tracings; `place` leaves a place for a picture in the page's text and gives back its mark."""

    kept: PictureCache
    naming: Naming
    place: Callable[[str], Markup]

    def view(self, seen: DatedTracing, all_of: Tracings) -> Markup | None:
        """One tracing; None where it holds nothing to draw. all_of: the page's, whose soles share one scale."""
        svg = self._sole(seen, all_of) if seen.view == "sole" else self._upright(seen, over=False)
        return self.place(svg) if svg else None

    def over(self, seen: DatedTracing) -> Markup | None:
        """One tracing from the side or the front, to lie over its photograph; not yet placed."""
        svg = self._upright(seen, over=True) if seen.view != "sole" else None
        return Markup(svg) if svg else None

    def _sole(self, seen: DatedTracing, all_of: Tracings) -> str | None:
        if seen.sole is None:
            return None
        extent = all_of.extent or extent_of([seen.sole])
        return self.kept.drawn(traced_sole, seen.sole, extent, self._labels(), self._title("sole", seen))

    def _upright(self, seen: DatedTracing, over: bool) -> str | None:
        shape = upright_shape(seen.one, self._angles(seen), over)
        if shape is None:
            return None
        return self.kept.drawn(traced_upright, shape, self._phrase("bar"), self._title(seen.view, seen))

    def _angles(self, seen: DatedTracing) -> dict[str, str]:
        """Words for the figures that stand beside their lines."""
        held = seen.one.figures
        named = {figure for wall in WALLS[seen.view] for figure in wall[1:] if figure} | {PASTERN}
        return {
            figure: self._phrase(f"beside_{figure}", value=f"{held[figure].value:.1f}")
            for figure in sorted(named)
            if figure in held
        }

    def strip(self, told: ViewTold) -> Markup | None:
        """The ring of the latest sole, with that of the other moment and an earlier one; None where none was traced."""
        rings = self._rings(told)
        if not rings or "latest" not in rings:
            return None
        latest = rings["latest"][0]
        lines = [RingLine(form, ring.stretches) for form, (ring, _) in rings.items()]
        lines += [RingLine("baseline", latest.baseline), RingLine("above", latest.above)]
        zones = [RingZone(self._phrase(f"zone_{zone.replace(' ', '_')}"), *ZONE_BOUNDS[zone]) for zone in ZONES]
        labels = {**self._labels(), "unit": self._phrase("mm")}
        return self.place(self.kept.drawn(ring_strip, lines, zones, labels, self._title("ring", told.shown)))

    def strip_key(self, told: ViewTold) -> list[tuple[Markup, str]]:
        """The form and the words of each line of the strip."""
        rings = self._rings(told)
        words: dict[RingForm, str] = {form: words for form, (_, words) in rings.items()}
        latest = rings["latest"][0] if "latest" in rings else None
        if latest and latest.baseline:
            words["baseline"] = self._phrase("key_baseline")
        if latest and latest.above:
            words["above"] = self._phrase("key_flare")
        return self._key(ring_key(words), words)

    def _rings(self, told: ViewTold) -> dict[RingForm, tuple[RingShape, str]]:
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

    def pair(self, told: PairTold) -> Markup | None:
        """Two soles side by side on one scale; None where one cannot be drawn."""
        soles = {self.naming.foot(seen.foot): seen.sole for seen in (told.left, told.right) if seen.sole}
        if len(soles) < 2:
            return None
        title = self._phrase("title_pair", pair=self._phrase(f"pair_{told.pair}"))
        return self.place(self.kept.drawn(traced_pair, soles, extent_of(list(soles.values())), self._labels(), title))

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

    def _labels(self) -> dict[str, str]:
        sides = {side: self.naming.phrase(f"chart_{side}") for side in ("inner", "outer")}
        return {**sides, "bar": self._phrase("bar")}

    def _title(self, what: str, seen: DatedTracing) -> str:
        return self._phrase(
            f"title_{what}",
            foot=self.naming.foot(seen.foot),
            moment=self.naming.phrase(f"photo_moment_{seen.one.tracing.moment}"),
            day=self.naming.day(seen.day),
        )

    def _phrase(self, key: str, **facts: str) -> str:
        return self.naming.phrase(f"tracing_{key}", **facts)
