"""Records as the YAML a person types: short groups on one line, longer ones below, quotes only where needed."""

from __future__ import annotations

import json
import re
import textwrap
from collections.abc import Iterator, Mapping, Sequence
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

_PLAIN = re.compile(r"[^\s\-?:,\[\]{}#&*!|>'\"%@`](.*[^\s:])?")
# What a reader of YAML takes for nothing, or for keys to be merged.
_MEANS_MORE = {"~", "null", "Null", "NULL", "<<"}
# Signs that can stand in YAML as they are, on one line.
_SHOWN = re.compile("[ -~\xa0-\u2027\u202a-\ud7ff\ue000-\ufefe\uff00-\ufffd\U00010000-\U0010ffff]*")
# A value that needs quotes inside brackets reads better below.
_QUOTED = re.compile(r"[:\[,] ['\"]|\[['\"]")
_IN_GROUP = re.compile(r"[,\[\]{}]")


def as_yaml(record: Mapping[str, Any]) -> str:
    """A record as the text of its file. Groups are mappings, lists, text, numbers, dates, True and False."""
    return "\n".join(_lines(record, "")) + "\n"


def item_lines(items: Sequence[Any]) -> list[str]:
    """The lines of the items of a list, groups among them, from the first column on."""
    return [line[2:] for line in _items(list(items), "  ")]


def _lines(group: Mapping[str, Any], indent: str) -> Iterator[str]:
    for name, value in group.items():
        key = _key(name)
        head = f"{indent}{key}:"
        short = f"{indent}{ALIGNED.get(key, key + ':')} {on_one_line(value)}"
        wide = len(short) > WIDEST or _QUOTED.search(short)
        if isinstance(value, Mapping) and value and (key in BELOW or wide):
            yield head
            yield from _lines(value, indent + "  ")
        elif isinstance(value, list) and value and wide and all(isinstance(item, list) for item in value):
            yield from _fill_lines(head + " [", value, indent + "  ")
        elif isinstance(value, list) and value and (wide or any(isinstance(item, Mapping) for item in value)):
            yield head
            yield from _items(value, indent + "  ")
        elif isinstance(value, str):
            yield from _text(head, value, indent + "  ", len(short) > WIDEST)
        else:
            yield short


def _items(values: list[Any], indent: str) -> Iterator[str]:
    for value in values:
        short = f"{indent}- {on_one_line(value)}"
        if isinstance(value, Mapping) and value and (len(short) > WIDEST or _QUOTED.search(short)):
            first, *others = _lines(value, indent + "  ")
            yield f"{indent}- {first.lstrip()}"
            yield from others
        else:
            yield f"{indent}- {scalar(value)}" if isinstance(value, str) else short


def _text(head: str, value: str, indent: str, wide: bool) -> Iterator[str]:
    """Text behind its key: on the same line, folded below where it is long, or line by line as it was written."""
    folded = textwrap.wrap(value, WIDEST - 12, break_long_words=False, break_on_hyphens=False) if wide else []
    if wide and " ".join(folded) == value and all(map(_stands_in_block, folded)):
        yield f"{head} >-"
        yield from (indent + line for line in folded)
    elif "\n" in value and all(map(_stands_in_block, value.split("\n"))):
        yield f"{head} |-"
        yield from (indent + line if line else "" for line in value.split("\n"))
    else:
        yield f"{head} {scalar(value)}"


def _stands_in_block(line: str) -> bool:
    return bool(_SHOWN.fullmatch(line)) and line == line.strip()


def _fill_lines(line: str, values: Sequence[Any], indent: str) -> Iterator[str]:
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
        return "{" + ", ".join(f"{_key(key)}: {on_one_line(inner)}" for key, inner in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(map(on_one_line, value)) + "]"
    return scalar(value, in_group=True)


def _key(name: str) -> str:
    return scalar(name, in_group=True)


def scalar(value: str | float | bool | date, in_group: bool = False) -> str:
    """One value as typed: yes and no, numbers without needless digits (four decimals), text bare where it may be."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float):
        return f"{value:.4f}".rstrip("0").rstrip(".")
    if isinstance(value, date):
        return value.isoformat()
    if not _SHOWN.fullmatch(value):
        return _escaped(value)
    bare = _PLAIN.fullmatch(value) and ": " not in value and " #" not in value and value not in _MEANS_MORE
    if bare and not (in_group and _IN_GROUP.search(value)):
        return value
    return f"'{value}'" if "'" not in value else _escaped(value)


def _escaped(value: str) -> str:
    """Text in double quotes, in which a backslash stands before what cannot be shown."""
    return "".join(
        sign if _SHOWN.fullmatch(sign) else json.dumps(sign)[1:-1] for sign in json.dumps(value, ensure_ascii=False)
    )
