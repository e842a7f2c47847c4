"""Records as the YAML a person types: short groups on one line, longer ones below, quotes only where needed."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterator, Mapping
from datetime import date
from typing import Any

WIDEST = 112
# Groups that stand below each other even where they are short.
BELOW = {
    "feet",
    "wall",
    *("left_fore", "right_fore", "left_hind", "right_hind"),
    *("near_fore", "off_fore", "near_hind", "off_hind", "LF", "RF", "LH", "RH"),
}
# Typed with a second blank, so that before and after line up.
ALIGNED = {"after": "after: "}

_PLAIN = re.compile(r"[^\s\-?:,\[\]{}#&*!|>'\"%@`](.*[^\s:])?", re.DOTALL)
# A value that needs quotes inside brackets reads better below.
_QUOTED = re.compile(r"[:\[,] ['\"]|\[['\"]")
_IN_GROUP = re.compile(r"[,\[\]{}]")


def as_yaml(record: Mapping[str, Any]) -> str:
    """A record as the text of its file. Groups are dicts, lists, text, numbers, dates, True and False."""
    return "\n".join(_lines(record, "")) + "\n"


def _lines(group: Mapping[str, Any], indent: str) -> Iterator[str]:
    for key, value in group.items():
        head = f"{indent}{key}:"
        short = f"{indent}{ALIGNED.get(key, key + ':')} {on_one_line(value)}"
        wide = len(short) > WIDEST or _QUOTED.search(short)
        if isinstance(value, Mapping) and (key in BELOW or wide):
            yield head
            yield from _lines(value, indent + "  ")
        elif isinstance(value, list) and wide and all(isinstance(item, list) for item in value):
            yield from _filled(head + " [", value, indent + "  ")
        elif isinstance(value, list) and (wide or any(isinstance(item, Mapping) for item in value)):
            yield head
            yield from _items(value, indent + "  ")
        elif isinstance(value, str) and len(short) > WIDEST:
            yield f"{head} >-"
            yield from (indent + "  " + line for line in textwrap.wrap(value, WIDEST - 12))
        else:
            yield f"{head} {scalar(value)}" if isinstance(value, str) else short


def _items(values: list[Any], indent: str) -> Iterator[str]:
    for value in values:
        short = f"{indent}- {on_one_line(value)}"
        if isinstance(value, Mapping) and (len(short) > WIDEST or _QUOTED.search(short)):
            first, *others = _lines(value, indent + "  ")
            yield f"{indent}- {first.lstrip()}"
            yield from others
        else:
            yield f"{indent}- {scalar(value)}" if isinstance(value, str) else short


def _filled(line: str, values: list[Any], indent: str) -> Iterator[str]:
    """Short lists beside each other, as many as a line holds."""
    for number, value in enumerate(values, 1):
        word = on_one_line(value) + ("]" if number == len(values) else ",")
        if len(line) + len(word) + 1 > WIDEST:
            yield line
            line = indent + word
        else:
            line += word if line.endswith("[") else " " + word
    yield line


def on_one_line(value: Any) -> str:
    """A value inside one line: groups in braces, lists in brackets."""
    if isinstance(value, Mapping):
        return "{" + ", ".join(f"{key}: {on_one_line(inner)}" for key, inner in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(map(on_one_line, value)) + "]"
    return scalar(value, in_group=True)


def scalar(value: str | float | bool | date, in_group: bool = False) -> str:
    """One value as typed: yes and no, whole numbers without a point, text bare where that can be read back."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float):
        return f"{value:g}"
    if isinstance(value, date):
        return value.isoformat()
    bare = _PLAIN.fullmatch(value) and ": " not in value and " #" not in value
    if bare and not (in_group and _IN_GROUP.search(value)):
        return value
    if "'" not in value:
        return f"'{value}'"
    return '"' + value.replace("\\", "\\\\").replace('"', '\\"') + '"'
