"""A story about a horse: its file, its days, its feet through time, and what happened at which visit."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from typing import Any

from tests.demo.tracings import Drawn

# A value of every visit in turn (the last one stays), or one value throughout.
Course = float | tuple[float, ...]


def at(course: Course, index: int) -> float:
    """The value of a course at the visit of that number, counted from 0."""
    return course[min(index, len(course) - 1)] if isinstance(course, tuple) else course


@dataclass(frozen=True)
class FootPlan:
    """One foot through time: mm and degrees after each trim, and what it loses in between.

    heels, walls: medial and lateral. slip: degrees the toe angle loses in six weeks. lean: mm the lateral heel is
    longer than the medial one before the trim, by number of visit. more: measures taken now and then. frog: width of
    the frog as a share of the toe length.
    """

    toe: Course
    heels: tuple[Course, Course]
    angle: Course
    slip: float = 2.0
    lean: Mapping[int, float] = field(default_factory=dict)
    walls: tuple[Course, Course] | None = None
    more: Mapping[str, float] = field(default_factory=dict)
    frog: float = 0.56

    def with_(self, **changes: Any) -> FootPlan:
        """The same foot with some things different."""
        return replace(self, **changes)


Feet = dict[str, FootPlan]


def four_feet(toe: float, heel: float, angle: float, **both: Any) -> Feet:
    """Four ordinary feet: fores nearly alike, hinds a little shorter and steeper."""
    fore = FootPlan(toe, (heel, heel + 0.5), angle, **both)
    hind = FootPlan(toe - 2, (heel - 2, heel - 2), angle + 2, **both)
    return {
        "left_fore": fore,
        "right_fore": fore.with_(toe=toe + 0.6, angle=angle - 0.4),
        "left_hind": hind,
        "right_hind": hind.with_(toe=toe - 2.5, angle=angle + 2.3),
    }


@dataclass(frozen=True)
class HorsePlan:
    """One horse: what its file holds, the days it was seen, and what each visit tells beyond the ordinary.

    rate: mm of toe a day beyond wear, mean of the year. first_days: days of growth found at the first visit.
    told: by day, parts of the visit laid over the ordinary ones, where None takes a part out. work, notes: sentences
    for since_last and note. spelling: how feet are typed. looks: how often the hinds' heels, frogs, bars and soles are
    written down, 0 to 1. follows_angle: the toe angle of the fores is measured every time. drawn: the feet that were
    drawn and traced.
    """

    stable: str
    slug: str
    file: Mapping[str, Any]
    days: tuple[date, ...]
    feet: Feet
    rate: Course = 0.26
    first_days: int = 46
    weeks: float | None = 6
    told: Sequence[Mapping[date, Mapping[str, Any]]] = ()
    work: Sequence[str] = ()
    notes: Sequence[str] = ()
    spelling: Mapping[str, str] = field(default_factory=dict)
    looks: float = 0.5
    ridden: bool = True
    half_degrees: bool = True
    follows_angle: bool = False
    henneke: float = 5
    drawn: Sequence[Drawn] = ()


# A foot that was trimmed, and neither measured nor looked at closely.
UNMEASURED: dict[str, Any] = {
    **dict.fromkeys(("landing", "before", "after", "frog", "bars", "sole")),
    "done": ["edge rounded"],
}


def on(day: str, **parts: Any) -> dict[date, dict[str, Any]]:
    """The records of one visit, by its day written as 2026-10-14; `feet` may be given by foot names."""
    feet = parts.pop("feet", {})
    feet |= {name: parts.pop(name) for name in list(parts) if name.endswith(("_fore", "_hind"))}
    return {date.fromisoformat(day): parts | ({"feet": feet} if feet else {})}


def frogs(day: str, infection: str, groove: int = 6) -> dict[date, dict[str, Any]]:
    """The state of the hinds' frogs at one visit."""
    found = {"frog": {"infection": infection, "central_groove_depth": groove}}
    return on(day, left_hind=found, right_hind={"frog": {"infection": infection}})


def marked(foot: str, kind: str, zone: str, places: Mapping[date, int]) -> dict[date, dict[str, Any]]:
    """A mark on one foot, by day, from its mm below the hairline."""
    return {
        day: {"feet": {foot: {"marks": [{"kind": kind, "zone": zone, "below_hairline": place}]}}}
        for day, place in places.items()
    }
