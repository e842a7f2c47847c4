"""One tracing more in a visit's file, or a new one in the place of an old; every other line stays as it was typed.

The text is changed where the tracing belongs and read again: unless all else reads as before, nothing is written.
"""

from __future__ import annotations

import copy
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

import yaml

from recordgen.problems import Step, Trouble
from recordgen.records.models.names import Foot, typed_foot
from recordgen.records.models.tracing import LANDMARKS, ONE, Tracing
from recordgen.records.yaml.tree import Document, document, typed_key
from recordgen.records.yaml.write import as_yaml, item_lines, on_one_line
from recordgen.sentences import say

BLOCKS = ("|", ">")


def with_tracing(
    before: str, foot: Foot, tracing: Tracing, shown: str, near_and_off: bool = False, instead_of: int | None = None
) -> str:
    """The text of a visit with one tracing more, or with it instead of the one of that number (from 0) of the foot.

    before: the file's text. shown: its path as people see it. near_and_off: how feet are named where this one is new.
    Raises Trouble where the file cannot be read, or where the tracing finds no place without touching anything else.
    """
    held = document(shown, before.encode())
    if held.problems or not isinstance(held.root, yaml.MappingNode):
        raise Trouble(
            say("{shown} cannot be read", shown=shown),
            say("Look at it with recordgen check, then save the tracing again"),
        )
    change = _Change(held, foot, entry_of(tracing), typed_foot(foot, near_and_off))
    wanted = change.values_after(instead_of)
    after = (change.with_added() if instead_of is None else change.with_replaced(instead_of)) if wanted else None
    if after is None or _values(after, shown) != wanted:
        raise Trouble(
            say("{shown} is written in a form in which the tracing finds no place", shown=shown),
            say("Write {key}: below feet: on a line of its own, then save the tracing again", key=change.key),
        )
    return after


def entry_of(tracing: Tracing) -> dict[str, Any]:
    """A tracing as it is typed: what was told of it, then its landmarks, px to a tenth."""
    held = tracing.model_dump(exclude_unset=True, exclude_none=True, by_alias=True)
    marks = {
        name: spots[0] if LANDMARKS[tracing.view][name] == ONE else spots for name, spots in tracing.named().items()
    }
    told = {name: value for name, value in held.items() if name not in LANDMARKS[tracing.view]}
    return {name: _plain_values(value) for name, value in (told | marks).items()}


def _plain_values(value: Any) -> Any:
    if isinstance(value, dict):
        return {name: _plain_values(inner) for name, inner in value.items()}
    if isinstance(value, list | tuple):
        return [round(inner, 1) if isinstance(inner, float) else _plain_values(inner) for inner in value]
    return value


def _values(text: str, shown: str) -> Any:
    found = document(shown, text.encode())
    return None if found.problems else found.values


@dataclass(frozen=True)
class _Change:
    """A change of a visit's text: where it goes, by the places of what stands there. key: the foot, where it is new."""

    held: Document
    foot: Foot
    entry: dict[str, Any]
    key: str

    @property
    def steps(self) -> tuple[Step, ...]:
        """The way to the foot's tracings."""
        return ("feet", self.foot, "tracings")

    def values_after(self, instead_of: int | None) -> Any:
        """The values that the file shall hold afterwards; an empty group where what stands there is none."""
        values = copy.deepcopy(self.held.values)
        values["feet"] = feet = values.get("feet") or {}
        key = (typed_key(feet.keys(), self.foot) if isinstance(feet, dict) else None) or self.key
        foot = (feet.get(key) or {}) if isinstance(feet, dict) else None
        tracings = (foot.get("tracings") or []) if isinstance(foot, dict) else None
        if not isinstance(foot, dict) or not isinstance(tracings, list):
            return {}
        feet[key] = foot
        entry = _values(as_yaml({"tracings": [self.entry]}), "")["tracings"]
        at = len(tracings) if instead_of is None else instead_of
        foot["tracings"] = [*tracings[:at], *entry, *tracings[at + (instead_of is not None) :]]
        return values

    def with_added(self) -> str | None:
        """The text with one entry more; None where there is no way to put it in."""
        nodes = list(self._nodes())
        key, node = nodes[-1]
        names = [self.key if step == self.foot else str(step) for step in self.steps[len(nodes) - 1 :]]
        if isinstance(node, yaml.CollectionNode) and node.flow_style:
            return self._in_brackets(node, names)
        lines = _lines_of(_under(names, [self.entry]))
        if isinstance(node, yaml.CollectionNode):
            return _with_lines(self.held.text, _last_line(node) + 1, node.start_mark.column, lines)
        return _with_lines(self.held.text, key.end_mark.line + 1, key.start_mark.column + 2, lines)

    def _nodes(self) -> Iterator[tuple[yaml.Node, yaml.Node]]:
        """Keys and values on the way to the tracings, as far as there are any; the whole file first."""
        node = self.held.root
        assert node is not None
        yield node, node
        for step in self.steps:
            pairs = node.value if isinstance(node, yaml.MappingNode) else []
            typed = typed_key([key.value for key, _ in pairs if isinstance(key, yaml.ScalarNode)], step)
            pair = next(((key, item) for key, item in pairs if typed is not None and key.value == typed), None)
            if pair is None:
                return
            yield pair
            node = pair[1]

    def _in_brackets(self, node: yaml.CollectionNode, names: Sequence[str]) -> str:
        """Put it behind the last of what stands in brackets."""
        value = _under(names[1:], [self.entry] if names else self.entry)
        text = f"{names[0]}: {on_one_line(value)}" if names else on_one_line(value)
        if node.value:
            last = node.value[-1][1] if isinstance(node, yaml.MappingNode) else node.value[-1]
            at = last.end_mark.line, last.end_mark.column
            return _splice(self.held.text, at, at, f", {text}")
        at = node.end_mark.line, node.end_mark.column - 1
        return _splice(self.held.text, at, at, text)

    def with_replaced(self, number: int) -> str | None:
        """The text with the entry in the place of another; None where that holds a comment, which would be lost."""
        *_, (_, node) = self._nodes()
        if not isinstance(node, yaml.SequenceNode) or number >= len(node.value):
            return None
        item, lines = node.value[number], self.held.text.splitlines(keepends=True)
        first, last = item.start_mark.line, _last_line(item)
        if any("#" in line for line in lines[first : last + 1]):
            return None
        if item.flow_style:
            start, end = ((mark.line, mark.column) for mark in (item.start_mark, item.end_mark))
            return _splice(self.held.text, start, end, on_one_line(self.entry))
        rest = "".join([*lines[:first], *lines[last + 1 :]])
        return _with_lines(rest, first, node.start_mark.column, _lines_of([self.entry]))


def _under(names: Sequence[str], value: Any) -> Any:
    """A value under keys, the first outermost."""
    for name in reversed(names):
        value = {name: value}
    return value


def _lines_of(value: Any) -> list[str]:
    """The lines of a group, or of the items of a list, from the first column on."""
    if isinstance(value, list):
        return item_lines(value)
    return as_yaml(value).splitlines()


def _with_lines(text: str, at: int, column: int, lines: Sequence[str]) -> str:
    """A text with new lines before the one of that number, from 0, each so many blanks in."""
    kept = text.splitlines(keepends=True)
    end = "\r\n" if "\r\n" in text else "\n"
    if at and not kept[at - 1].endswith(("\n", "\r")):
        kept[at - 1] += end
    return "".join([*kept[:at], *(" " * column + line + end for line in lines), *kept[at:]])


def _splice(text: str, start: tuple[int, int], end: tuple[int, int], put: str) -> str:
    """A text with something put between two places, each as line and column from 0."""
    kept = text.splitlines(keepends=True)
    line = kept[start[0]][: start[1]] + put + kept[end[0]][end[1] :]
    return "".join([*kept[: start[0]], line, *kept[end[0] + 1 :]])


def _last_line(node: yaml.Node) -> int:
    """The last line on which anything of a value stands, from 0; what follows may be comments of what comes next."""
    if isinstance(node, yaml.CollectionNode) and not node.flow_style and node.value:
        parts = node.value[-1] if isinstance(node, yaml.MappingNode) else (node.value[-1],)
        return max(_last_line(part) for part in parts if part.value or part is parts[0])
    below = isinstance(node, yaml.ScalarNode) and node.style in BLOCKS and node.end_mark.column == 0
    return int(node.end_mark.line) - (1 if below else 0)
