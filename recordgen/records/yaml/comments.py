"""Text that YAML takes for a comment and drops, though it was meant to be read: `note: Stall #4 is wet`."""

from __future__ import annotations

import datetime as dt
import json
import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Literal, get_origin

import yaml
from pydantic import BaseModel

from recordgen.problems import Place, Problem, Step, quoted, warning
from recordgen.records.models.annotations import annotation_at, inside
from recordgen.records.models.fields import DaySpan
from recordgen.records.yaml.slips import LONGEST_SHOWN, unsure_comment
from recordgen.records.yaml.tree import Document
from recordgen.records.yaml.validation_errors import say_steps
from recordgen.sentences import Said, say

# Where one of these stands the value is whole, and what is behind it a remark.
_WHOLE = (float, int, bool, dt.date, DaySpan)
_ANY_COMMENT = re.compile(r"\S[ \t]+#")
_BLOCK = ("|", ">")


@dataclass(frozen=True)
class _End:
    """The end of a value, or of a key whose value begins on a later line.

    annotation: the bare type the value is read as. value: the text that was read; empty where nothing was; None of what
    is more than one text.
    """

    steps: tuple[Step, ...]
    annotation: Any
    mark: yaml.Mark
    value: str | None

    @property
    def may_go_on(self) -> bool:
        """Tell whether what follows can have been meant as a part of it."""
        whole = self.annotation in _WHOLE or get_origin(self.annotation) is Literal
        return not self.value or not whole


def lost_in_comments(found: Document, model: type[BaseModel]) -> Iterator[Problem]:
    """A warning for each comment that may be a part of the text before it, or the value that is missing before it.

    Told is what stands behind free text, or in place of a value, unless it stands apart as comments do: two blanks
    before the # and one behind it. found: a file that was read without a problem.
    """
    if found.root is None or not _ANY_COMMENT.search(found.text):
        return
    lines = found.text.splitlines()
    for end in _ends(found.root, annotation_at(model, ())):
        line = lines[end.mark.line] if end.mark.line < len(lines) else ""
        column = unsure_comment(line, end.mark.column)
        if column is not None and end.may_go_on and not line[end.mark.column : column].strip(" \t:"):
            name, lost = say_steps(found.typed_steps(end.steps)), line[column:].rstrip()
            message = say("{name}: {lost} is not read, since # begins a comment", name=name, lost=quoted(lost))
            yield warning(
                Place(found.path, end.mark.line + 1, column + 1), "comment-in-text", message, _way_out(end, name, lost)
            )


def _way_out(end: _End, name: str, lost: str) -> Said:
    return say(
        "{meant}; a remark of your own has two blanks before its # and one behind", meant=_meant(end, name, lost)
    )


def _meant(end: _End, name: str, lost: str) -> Said:
    if end.value is None:
        return say("Write it where it belongs, such as in a note")
    if not end.value and end.annotation is not str:
        return say("Take out the # where the value follows it")
    key = name.rpartition(", ")[2]
    text = json.dumps(f"{end.value} {lost}".strip(), ensure_ascii=False)
    whole = text if key.startswith("number ") else f"{key}: {text}"
    return say("Write {whole}", whole=whole) if len(whole) <= LONGEST_SHOWN else say("Put the whole text in quotes")


def _ends(node: yaml.Node, annotation: Any, steps: tuple[Step, ...] = ()) -> Iterator[_End]:
    """Each place of a file where text may go on, in the order of the lines; a block below | or > is no such place."""
    if isinstance(node, yaml.ScalarNode):
        if node.style not in _BLOCK:
            yield _End(steps, annotation, node.end_mark, node.value)
        return
    for key, item in node.value if isinstance(node, yaml.MappingNode) else enumerate(node.value):
        step = key.value if isinstance(key, yaml.Node) else key
        if isinstance(key, yaml.Node) and key.end_mark.line < item.start_mark.line:
            yield _End((*steps, step), inside(annotation, step), key.end_mark, None if item.value else "")
        yield from _ends(item, inside(annotation, step), (*steps, step))
    if isinstance(node, yaml.SequenceNode) and node.flow_style:
        yield _End(steps, annotation, node.end_mark, None)
