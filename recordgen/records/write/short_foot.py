"""A foot of a new visit in one line: the keys it had before, empty, and how it was."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from recordgen.days import spoken_day
from recordgen.records.models.foot import FootVisit, Measures
from recordgen.records.models.foot_line import LETTERS, line_of
from recordgen.records.models.names import Foot
from recordgen.records.models.visit import Visit
from recordgen.records.write.past_visits import HALF_A_YEAR, PastVisits
from recordgen.records.write.templates import one_line

MOMENTS = ("before", "after")
# What is looked at again each time it was found; the rest is an event, and has its lines in the long form.
FOUND_AGAIN = {"landing", "frog", "wall", "bars", "sole", "heat", "pulse"}


@dataclass(frozen=True)
class ShortFoot:
    """A foot in one line.

    empty: the mapping to fill in. told: how it was, in lines for comments: the measures by day, then what was found.
    """

    empty: str
    told: tuple[str, ...]


def short_foot(past: PastVisits, foot: Foot) -> ShortFoot:
    """The line of one foot after its visits before a day; findings of more than half a year ago are left out."""
    found = {visit.date: parts for visit, parts in _last_parts(past, foot)}
    told = (
        f"{'; '.join(_part_text(*part) for part in parts.items())} on {spoken_day(day)}" for day, parts in found.items()
    )
    all_found = {name: value for parts in found.values() for name, value in parts.items()}
    in_order = {name: all_found[name] for name in FootVisit.model_fields if name in all_found}
    return ShortFoot(_empty(dict.fromkeys(MOMENTS) | in_order | {"done": None}), (*_measure_lines(past, foot), *told))


def _measure_lines(past: PastVisits, foot: Foot) -> Iterator[str]:
    """Each measure as it was last taken, those of one day in one line, the latest day first."""
    seen: set[str] = set()
    for visit in reversed(past.visits):
        taken = {moment: _leaves(visit.feet.get(foot), moment) for moment in MOMENTS}
        parts = [
            f"{line} {moment}"
            for moment, leaves in taken.items()
            if (line := line_of(_nest(_new_leaves(past, leaves, seen))))
        ]
        seen.update(*taken.values())
        if parts:
            yield f"{', '.join(parts)} on {spoken_day(visit.date)}"


def _new_leaves(past: PastVisits, leaves: Mapping[str, float], seen: Collection[str]) -> dict[str, Any]:
    """The measures that no later visit has, as the line takes them."""
    return {
        name: _in_line(past.shown(value, "before", *name.split(".")))
        for name, value in leaves.items()
        if name not in seen
    }


def _in_line(value: Any) -> Any:
    """A length of a line, which holds no blanks: 3-3/16in."""
    return value.replace(" in", "in").replace(" ", "-") if isinstance(value, str) else value


def _leaves(foot: FootVisit | None, moment: str) -> dict[str, float]:
    measures: Measures | None = getattr(foot, moment, None)
    found: dict[str, float] = {}
    for name in (name for names in LETTERS.values() for name in names):
        value: Any = measures
        for step in name.split("."):
            value = getattr(value, step, None)
        if value is not None:
            found[name] = value
    return found


def _nest(leaves: dict[str, float]) -> dict[str, Any]:
    nested: dict[str, Any] = {}
    for name, value in leaves.items():
        measure, _, side = name.partition(".")
        if side:
            nested.setdefault(measure, {})[side] = value
        else:
            nested[measure] = value
    return nested


def _last_parts(past: PastVisits, foot: Foot) -> Iterator[tuple[Visit, dict[str, Any]]]:
    """Each part of a foot as it was last found, with its visit, the latest first."""
    seen: set[str] = set()
    for visit in reversed(past.visits):
        if foot not in visit.feet or past.day - visit.date > HALF_A_YEAR:
            continue
        parts = _without_empty(
            visit.feet[foot].model_dump(include=FOUND_AGAIN - seen, exclude_none=True, exclude_unset=True)
        )
        parts = past.shown(parts)
        seen.update(parts)
        if parts:
            yield visit, parts


def _without_empty(value: dict[str, Any]) -> dict[str, Any]:
    """The value without its parts that hold nothing."""
    inside = {name: _without_empty(inner) if isinstance(inner, dict) else inner for name, inner in value.items()}
    return {name: inner for name, inner in inside.items() if inner != {}}


def _empty(value: Any) -> str:
    if not isinstance(value, dict):
        return ""
    inside = ", ".join(f"{name}: {_empty(inner)}" for name, inner in value.items())
    return f"{{{inside}}}"


def _part_text(name: str, value: Any) -> str:
    words = name.replace("_", " ")
    if isinstance(value, dict):
        return f"{words} {', '.join(_part_text(key, inner) for key, inner in value.items())}"
    return f"{words} {one_line(value)}"
