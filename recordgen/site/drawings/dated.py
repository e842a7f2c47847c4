"""Parts of a page that name the day: said when the page is made, and again on a later day without the rest of it.

Their templates lie in `dated/` of the templates of the pages, and see nothing but the day and what the part holds.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import cached_property

from jinja2 import Environment
from markupsafe import Markup

from recordgen.cache.values import as_json, from_json
from recordgen.cache.watched_day import plain_day
from recordgen.hoof.due import Due
from recordgen.hoof.export.sheet_json import edition_on
from recordgen.hoof.growth.season import Season
from recordgen.hoof.observations import Event
from recordgen.pictures.charts.day_mark import day_mark
from recordgen.site.drawings.due_strip import strip
from recordgen.site.horse.courses import ToeNow
from recordgen.site.horse.glance import DaysSeen, Lasting
from recordgen.site.model import DatedPart
from recordgen.site.templates import css_text, render

# What a dated part may hold, beside plain values and days.
CLASSES = {one.__name__: one for one in (Due, Event, Lasting, Season, DaysSeen, ToeNow)}


@dataclass(frozen=True)
class DaySayer:
    """Says dated parts on a day."""

    templates: Environment
    day: date

    @cached_property
    def _shared(self) -> Mapping[str, object]:
        return {
            "today": plain_day(self.day),
            "strip": strip,
            "day_mark": lambda *facts: Markup(day_mark(*facts)),
            "edition_on": edition_on,
            "css_text": css_text,
        }

    def say(self, part: DatedPart) -> str:
        """The text of a part. Raises Trouble where its template cannot be filled in."""
        return render(self.templates, part.template, **self._shared, **from_json(json.loads(part.values), CLASSES))


def dated_part(template: str, values: Mapping[str, object]) -> DatedPart:
    """A part for a template that names the day. Raises TypeError for a value that cannot be kept."""
    return DatedPart(template, json.dumps(as_json(dict(values), CLASSES)))
