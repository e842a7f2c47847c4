"""The measures of a foot typed in one line, such as `96 h42/42 a48`, for whoever types a round in the evening."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from recordgen.problems import quoted
from recordgen.records.models.fields import refusal
from recordgen.sentences import say

# What stands behind each letter; two names take two values, the inner (medial) side first.
LETTERS: dict[str, tuple[str, ...]] = {
    "": ("toe_length",),
    "h": ("heel_height.medial", "heel_height.lateral"),
    "w": ("wall_height.medial", "wall_height.lateral"),
    "a": ("toe_angle",),
    "ha": ("heel_angle",),
    "hh": ("heel_angles.medial", "heel_angles.lateral"),
    "pa": ("pastern_angle",),
    "s": ("sole_length", "sole_width"),
    "c": ("circumference",),
    "b": ("breakover",),
}
HELP = "a number alone is the toe's length; h42/43 heels, w50/52 walls (inner/outer), a48 toe angle, ha heel angle"
HELP += ", hh40/42 both, pa pastern angle, s130/118 sole length/width, c370 around the hairline, b12 breakover"
HELP += "; - where one of two was not taken"

_PART = re.compile(r"(?P<letter>[a-z]*)(?P<values>[^a-z].*)")
# One value between strokes; the stroke of a fraction, which only stands before inches, parts nothing.
_VALUE = re.compile(r'(?:\A|(?<=/))(?:(?:[0-9]+-)?[0-9]+/[0-9]+(?:in|")|[^/]*)(?=/|\Z)')


def foot_line(typed: Any) -> Any:
    """The measures that a line of text stands for, as the mapping somebody might have typed; anything else unchanged.

    Raises a refusal for a letter that is not known, a value too many, and a measure that stands twice.
    """
    if not isinstance(typed, str):
        return typed
    found: dict[str, Any] = {}
    for name, value in _values(typed.lower()):
        measure, _, side = name.partition(".")
        place = found.setdefault(measure, {}) if side else found
        if (side or measure) in place:
            raise refusal(
                "line-measure-twice",
                say(
                    "'{measure}' stands twice in the line {typed}",
                    measure=measure.replace("_", " "),
                    typed=quoted(typed),
                ),
                say("Take one of them out"),
            )
        place[side or measure] = value
    return found


def _values(line: str) -> Iterator[tuple[str, str]]:
    for part in line.split():
        match = _PART.fullmatch(part)
        names = LETTERS.get(match["letter"]) if match else None
        if match is None or names is None:
            raise refusal(
                "line-not-understood",
                say("{part} is not understood in a line of measures", part=quoted(part)),
                say("Write it so: {help}", help=HELP),
            )
        values = _VALUE.findall(match["values"])
        if len(values) != len(names):
            wanted = "one value" if len(names) == 1 else "two values, as h42/43"
            raise refusal(
                "line-value-count",
                say("{part} wants {wanted}", part=quoted(part), wanted=wanted),
                say("Write it so: {help}", help=HELP),
            )
        yield from ((name, value) for name, value in zip(names, values, strict=True) if value != "-")


def line_of(measures: dict[str, Any]) -> str:
    """The line that stands for some measures, as `foot_line` reads it.

    measures: as a mapping, None where not taken, text where it has a unit.
    """
    parts = []
    for letter, names in LETTERS.items():
        values = [_at(measures, *name.split(".")) for name in names]
        if any(value is not None for value in values):
            parts.append(letter + "/".join(map(_in_line, values)))
    return " ".join(parts)


def _in_line(value: Any) -> str:
    if isinstance(value, str):
        return value
    return "-" if value is None else f"{value:.10g}"


def _at(measures: dict[str, Any], *steps: str) -> Any:
    value: Any = measures
    for step in steps:
        value = (value or {}).get(step)
    return value
