"""The pictures a page asks for, each drawn once for what it shows, and left as places in the page's text."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field

from markupsafe import Markup

from recordgen.hoof.naming import Naming
from recordgen.hoof.series import Event, EventKind, Finding, Reading
from recordgen.hoof.summary import HorseSummary
from recordgen.pictures.explained import plain_foot, wall_growth
from recordgen.pictures.feet import foot_from_below
from recordgen.pictures.kept import Kept
from recordgen.pictures.marks import event_key
from recordgen.pictures.side import side_view
from recordgen.pictures.through_time import (
    angle_panel,
    difference_panel,
    scale_about_zero,
    shared_scale,
    shared_span,
    toe_length_panel,
)
from recordgen.pictures.ticks import Span
from recordgen.records.names import FEET, Foot
from recordgen.site.model import late_place

# A picture names itself by an id made of its content; the same picture a second time on a page needs another.
_ID = re.compile(r'((?:aria-labelledby|id)="[^"]+)')
ReadingsByFoot = Mapping[Foot, Sequence[Reading]]


@dataclass
class Pictures:
    """The pictures of one page in the order it asks for them."""

    kept: Kept
    naming: Naming
    late: list[str] = field(default_factory=list)

    def through_time(self, summary: HorseSummary, measure: str) -> dict[Foot, Markup]:
        """A measure through the visits: a panel for each foot that was measured, all on one scale and stretch of time.

        measure: toe_length, toe_angle or heel_difference.
        """
        readings = readings_of(summary, measure)
        if not readings:
            return {}
        draw = self._heels if measure == "heel_difference" else self._levels
        svgs = draw(measure, summary, readings, shared_span(readings, summary.events))
        return {foot: self._place(svg) for foot, svg in svgs.items()}

    def _levels(self, measure: str, summary: HorseSummary, readings: ReadingsByFoot, span: Span) -> dict[Foot, str]:
        panel = toe_length_panel if measure == "toe_length" else angle_panel
        scale = shared_scale(readings)
        return {
            foot: self.kept.drawn(panel, foot, series, summary.events, span, scale, self._title(measure, foot))
            for foot, series in readings.items()
        }

    def _heels(self, measure: str, summary: HorseSummary, readings: ReadingsByFoot, span: Span) -> dict[Foot, str]:
        error = max(summary.feet[foot].measures[measure].smallest_real_size for foot in readings)
        scale = scale_about_zero(readings, error)
        higher = (self.naming.phrase("chart_outer_higher"), self.naming.phrase("chart_inner_higher"))
        title = {foot: self._title(measure, foot) for foot in readings}
        return {
            foot: self.kept.drawn(
                difference_panel, foot, series, summary.events, span, scale, title[foot], higher, error
            )
            for foot, series in readings.items()
        }

    def from_below(self, foot: Foot, findings: Sequence[Finding]) -> Markup:
        """One foot from below with its findings."""
        labels = {"outer": self.naming.phrase("chart_outer"), "inner": self.naming.phrase("chart_inner")}
        told = "; ".join(f"{self.naming.place(finding.place)}: {finding.text}" for finding in findings)
        title = self.naming.phrase(
            "chart_from_below", foot=self.naming.foot(foot), findings=told or self.naming.phrase("chart_nothing_marked")
        )
        return self._place(self.kept.drawn(foot_from_below, foot, findings, labels, title))

    def event_key(self, events: Sequence[Event]) -> list[tuple[Markup, str]]:
        """The form and the words of each kind of event that happened."""
        kinds: dict[EventKind, str] = {event.kind: self.naming.phrase(f"event_{event.kind}") for event in events}
        return [(self._place(svg), kinds[kind]) for kind, svg in event_key(dict(sorted(kinds.items()))).items()]

    def explained(self, which: str) -> Markup:
        """A labelled drawing for the page that explains the words: foot, side or growth."""
        draw = {"foot": plain_foot, "side": side_view, "growth": wall_growth}[which]
        prefix = f"draw_{which}_"
        labels = {
            key.removeprefix(prefix).replace("_", " "): text
            for key, text in self.naming.phrases.items()
            if key.startswith(prefix)
        }
        title = labels.pop("title")
        return self._place(self.kept.drawn(draw, labels, title))

    def table(self, caller: Callable[[], str]) -> Markup:
        """Figures that nobody searches for: they are left out of what search reads."""
        return self._place(caller())

    def _title(self, measure: str, foot: Foot) -> str:
        return self.naming.phrase(f"chart_{measure}", foot=self.naming.foot(foot))

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
