"""The names of photographs: day, foot, view and moment, such as `2026-10-14-left-fore-sole-before.jpg`."""

from __future__ import annotations

import datetime as dt
import re
from dataclasses import dataclass

from recordgen.records.models.names import FEET, MOMENTS, VIEWS, Foot, Moment, View, foot_named

_FEET = "|".join(foot.replace("_", "-") for foot in FEET)
_WHAT = f"(?P<foot>{_FEET})-(?P<view>{'|'.join(VIEWS)})(?:-(?P<moment>{'|'.join(MOMENTS)}))?"
_NAME = re.compile(rf"(?P<day>[0-9]{{4}}-[0-9]{{2}}-[0-9]{{2}})-{_WHAT}(?:-(?P<number>[2-9]|[1-9][0-9]))?\.jpg")


@dataclass(frozen=True)
class Subject:
    """The subject of a photograph: a foot on a day, from where, and when in the visit."""

    day: dt.date
    foot: Foot
    view: View
    moment: Moment = "found"

    def file_name(self, number: int = 1) -> str:
        """The name of its file; number: from 2 on where there are several."""
        parts = [self.day.isoformat(), self.foot.replace("_", "-"), self.view, self.moment]
        return "-".join([*parts, *([str(number)] if number > 1 else [])]) + ".jpg"

    @property
    def place(self) -> tuple[dt.date, int, int, int]:
        """The place where it stands among others: by day, then foot, view and moment."""
        return self.day, FEET.index(self.foot), VIEWS.index(self.view), MOMENTS.index(self.moment)


def parse_photo_name(name: str) -> tuple[Subject, int] | None:
    """The subject of a photograph by the name of its file, and its number; None where the name does not tell."""
    found = _NAME.fullmatch(name)
    foot = foot_named(found["foot"]) if found else None
    if found is None or foot is None:
        return None
    try:
        day = dt.date.fromisoformat(found["day"])
    except ValueError:
        return None
    view = next(view for view in VIEWS if view == found["view"])
    moment: Moment = next((moment for moment in MOMENTS if moment == found["moment"]), "found")
    return Subject(day, foot, view, moment), int(found["number"] or 1)
