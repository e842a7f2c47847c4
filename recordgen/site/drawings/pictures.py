"""The pictures a page asks for, each drawn once for what it shows, and left as places in the page's text."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import TypeVar

from markupsafe import Markup

from recordgen.hoof.measures.readings import Reading
from recordgen.hoof.naming import Naming
from recordgen.hoof.observations import Event, EventKind, Finding
from recordgen.hoof.summary import HorseSummary
from recordgen.language.quantities import Quantities
from recordgen.pictures.cache import PictureCache
from recordgen.pictures.charts.course import course_line
from recordgen.pictures.charts.day_mark import with_mark
from recordgen.pictures.charts.events import event_key
from recordgen.pictures.charts.growth_rates import RateForm, growth_rates, rate_key
from recordgen.pictures.charts.limits import Span, scale_about_zero, shared_scale, shared_span
from recordgen.pictures.charts.through_time import (
    angle_panel,
    difference_panel,
    toe_length_panel,
)
from recordgen.pictures.feet.explained import plain_foot, side_view, wall_growth
from recordgen.pictures.feet.foot import foot_from_below
from recordgen.pictures.feet.growing_out import growing_out
from recordgen.pictures.feet.wall_marks import mark_key
from recordgen.records.models.foot import MarkKind
from recordgen.records.models.names import FEET, Foot
from recordgen.site.drawings.dated import DaySayer, dated_part
from recordgen.site.drawings.descriptions import describe_growing_out, describe_rates, describe_series
from recordgen.site.drawings.growth import (
    by_foot,
    defects,
    forecasts,
    heights,
    rate_rows,
    usual_a_month,
)
from recordgen.site.horse.courses import Courses
from recordgen.site.model import DatedPart, late_place
from recordgen.site.tracing.pictures import TracingPictures

Form = TypeVar("Form", bound=str)

# A picture names itself by an id made of its content; the same picture a second time on a page needs another.
_ID = re.compile(r'((?:aria-labelledby|id)="[^"]+)')
ReadingsByFoot = Mapping[Foot, Sequence[Reading]]
# One foot's readings, what they tell in words, and how days, numbers and lengths are written, to a picture.
Panel = Callable[[Foot, Sequence[Reading], str, Quantities], str]


@dataclass
class Pictures:
    """The pictures of one page in the order it asks for them.

    sayer: of what names the day; needed where something does.
    """

    kept: PictureCache
    naming: Naming
    sayer: DaySayer | None = None
    late: list[str] = field(default_factory=list)
    dated_parts: dict[int, DatedPart] = field(default_factory=dict)

    @property
    def traced(self) -> TracingPictures:
        """The pictures of tracings."""
        return TracingPictures(self.kept, self.naming, self._place)

    def through_time(self, summary: HorseSummary, measure: str, low: bool = False) -> dict[Foot, Markup]:
        """A measure through the visits: a panel for each foot that was measured, all on one scale and stretch of time.

        measure: toe_length, toe_angle or heel_difference. low: less high and without its unit, save for the heels.
        """
        readings = readings_of(summary, measure)
        if not readings:
            return {}
        if measure == "heel_difference":
            svgs = self._heels(measure, summary, readings)
        else:
            draw = self._lengths if measure == "toe_length" else self._angles
            svgs = draw(measure, summary, readings, low)
        return {foot: self._place(svg) for foot, svg in svgs.items()}

    def _lengths(self, measure: str, summary: HorseSummary, readings: ReadingsByFoot, low: bool) -> dict[Foot, str]:
        ahead = forecasts(summary, self.naming)
        until = None if summary.horse.left else max((one.end for one in ahead.values()), default=summary.as_of)
        span = shared_span(readings, summary.events, until)
        scale = shared_scale(readings, more=[length for one in ahead.values() for length in one.reach])
        panels = self._by_foot(
            measure,
            readings,
            lambda foot, series, told, written: self.kept.picture(
                toe_length_panel, foot, series, summary.events, span, scale, told, ahead.get(foot), low, written
            ),
        )
        return panels if summary.horse.left else self._with_today(panels, span, low)

    def _angles(self, measure: str, summary: HorseSummary, readings: ReadingsByFoot, low: bool) -> dict[Foot, str]:
        span, scale = shared_span(readings, summary.events), shared_scale(readings)
        return self._by_foot(
            measure,
            readings,
            lambda foot, series, told, written: self.kept.picture(
                angle_panel, foot, series, summary.events, span, scale, told, low=low, written=written
            ),
        )

    def _heels(self, measure: str, summary: HorseSummary, readings: ReadingsByFoot) -> dict[Foot, str]:
        span = shared_span(readings, summary.events)
        error = max(summary.feet[foot].measures[measure].smallest_real_size for foot in readings)
        scale = scale_about_zero(readings, error)
        higher = (self.naming.phrase("chart_outer_higher"), self.naming.phrase("chart_inner_higher"))
        return self._by_foot(
            measure,
            readings,
            lambda foot, series, told, written: self.kept.picture(
                difference_panel, foot, series, summary.events, span, scale, told, higher, error, written
            ),
        )

    def toe_panels(self, toes: Courses) -> dict[Foot, Markup]:
        """Toe length through the visits of the last year with what is expected since, a low panel for each foot."""
        ahead = {foot: one.expected for foot, one in toes.by_foot.items()}
        svgs = self._by_foot(
            "toe_length",
            {foot: one.readings for foot, one in toes.by_foot.items()},
            lambda foot, series, told, written: self.kept.picture(
                toe_length_panel, foot, series, (), toes.span, toes.scale, told, ahead[foot], True, written
            ),
        )
        marked = self._with_today(svgs, toes.span, low=True) if toes.present else svgs
        return {foot: self._place(svg) for foot, svg in marked.items()}

    def _with_today(self, panels: Mapping[Foot, str], span: Span, low: bool) -> dict[Foot, str]:
        """The same panels with today marked on them."""
        mark = self.dated("dated/mark.html", span=span, low=low)
        return {foot: with_mark(svg, mark) for foot, svg in panels.items()}

    def _by_foot(self, measure: str, readings: ReadingsByFoot, panel: Panel) -> dict[Foot, str]:
        """A panel for each foot, with its words and in the language of the page."""
        return {
            foot: panel(foot, series, describe_series(self.naming, measure, foot, series), self.naming.quantities)
            for foot, series in readings.items()
        }

    def toe_course(self, toes: Courses, foot: Foot) -> Markup:
        """The course of a toe's length alone, as small as a word, on the scale of all feet."""
        readings = toes.by_foot[foot].readings
        scale = shared_scale({foot: one.readings for foot, one in toes.by_foot.items()})
        told = describe_series(self.naming, "toe_length", foot, readings)
        span = shared_span({foot: readings})
        return self._place(self.kept.picture(course_line, foot, readings, span, scale, told))

    def growth_rates(self, summary: HorseSummary) -> Markup | None:
        """Growth of each foot with its interval; None where no cycle is known."""
        rows = rate_rows(summary, self.naming)
        if not rows:
            return None
        unit = self.naming.phrase("chart_rate_unit", unit=self.naming.quantities.unit_in_words("mm"))
        title, written = describe_rates(self.naming, rows), self.naming.quantities
        return self._place(self.kept.picture(growth_rates, rows, usual_a_month(summary), unit, title, written))

    def rate_key(self, summary: HorseSummary) -> list[tuple[Markup, str]]:
        """The form and the words of what the picture of growth holds."""
        rows = rate_rows(summary, self.naming)
        held: dict[RateForm, bool] = {
            "net": True,
            "true": any(row.true for row in rows),
            "usual": True,
            "cycle": True,
            "left out": any(row.left_out for row in rows),
        }
        words = {form: self.naming.phrase(f"rate_{form.replace(' ', '_')}") for form, there in held.items() if there}
        return self._key(rate_key(words), words)

    def growing_out(self, summary: HorseSummary) -> dict[Foot, Markup]:
        """Marks on their way down the wall, by foot; of the feet that have something."""
        labels = {name: self.naming.phrase(f"chart_{name}") for name in ("inner", "toe", "outer")}
        return {
            foot: self._place(
                self.kept.picture(
                    growing_out,
                    defects(one, self.naming),
                    heights(one),
                    labels,
                    foot,
                    describe_growing_out(self.naming, foot, defects(one, self.naming)),
                )
            )
            for foot, one in by_foot(summary.feet)
        }

    def mark_key(self, summary: HorseSummary) -> list[tuple[Markup, str]]:
        """The form and the words of each kind of mark that is on its way down."""
        kinds = sorted({mark.kind for one in summary.feet.values() for mark in one.growing_out})
        words: dict[MarkKind, str] = {kind: self.naming.phrase(f"mark_{kind.replace(' ', '_')}") for kind in kinds}
        return self._key(mark_key(words), words)

    def from_below(self, foot: Foot, findings: Sequence[Finding], instead: str = "", large: bool = False) -> Markup:
        """One foot from below with its findings.

        instead: what is told where there is none to show. large: for twice the width.
        """
        labels = {"outer": self.naming.phrase("chart_outer"), "inner": self.naming.phrase("chart_inner")}
        told = "; ".join(f"{self.naming.place(finding.place)}: {finding.text}" for finding in findings)
        title = self.naming.phrase(
            "chart_from_below",
            foot=self.naming.foot(foot),
            findings=told or instead or self.naming.phrase("chart_nothing_marked"),
        )
        return self._place(self.kept.picture(foot_from_below, foot, findings, labels, title, large))

    def event_key(self, events: Sequence[Event]) -> list[tuple[Markup, str]]:
        """The form and the words of each kind of event that happened."""
        kinds: dict[EventKind, str] = {event.kind: self.naming.phrase(f"event_{event.kind}") for event in events}
        words = dict(sorted(kinds.items()))
        return self._key(event_key(words), words)

    def labelled_drawing(self, which: str) -> Markup:
        """A labelled drawing for the page that explains the words: foot, side or growth."""
        draw = {"foot": plain_foot, "side": side_view, "growth": wall_growth}[which]
        prefix = f"draw_{which}_"
        labels = {
            key.removeprefix(prefix).replace("_", " "): text
            for key, text in self.naming.phrases.items()
            if key.startswith(prefix)
        }
        title = labels.pop("title")
        return self._place(self.kept.picture(draw, labels, title))

    def dated(self, template: str, **values: object) -> Markup:
        """A part that names the day, from a template of its own; the same part stands in all places it is asked for."""
        assert self.sayer is not None, template
        part = dated_part(template, values)
        number = next((number for number, one in self.dated_parts.items() if one == part), None)
        if number is None:
            number = len(self.late)
            self.late.append(self.sayer.say(part))
            self.dated_parts[number] = part
        return Markup(late_place(number))

    def table(self, caller: Callable[[], str]) -> Markup:
        """Figures that nobody searches for: they are left out of what search reads."""
        return self._place(caller())

    def _key(self, drawn: Mapping[Form, str], words: Mapping[Form, str]) -> list[tuple[Markup, str]]:
        return [(self._place(svg), words[form]) for form, svg in drawn.items()]

    def _place(self, svg: str) -> Markup:
        if svg in self.late:
            svg = _ID.sub(rf"\1-{len(self.late)}", svg)
        self.late.append(svg)
        return Markup(late_place(len(self.late) - 1))


def readings_of(summary: HorseSummary, measure: str) -> dict[Foot, tuple[Reading, ...]]:
    """The readings of a measure by foot, without the feet that have none."""
    return {
        foot: summary.feet[foot].measures[measure].readings
        for foot in FEET
        if foot in summary.feet and measure in summary.feet[foot].measures
    }
