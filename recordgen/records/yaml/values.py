"""Composed YAML nodes to plain values: the text that was typed, nothing guessed, empty values left out."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any, get_origin

import yaml

from recordgen.problems import quoted
from recordgen.records.models.annotations import inside, is_model
from recordgen.records.models.names import foot_named, zone_named
from recordgen.sentences import Said, say

DEEPEST = 40
MOST_REPEATS = 2_000

Refuse = Callable[[yaml.Mark, str, Said, Said], None]

_NOTHING = {"", "~", "null", "Null", "NULL"}
_TEXT_TAGS = ("tag:yaml.org,2002:str", "!")
_PLAIN_TAGS = {*_TEXT_TAGS, "tag:yaml.org,2002:map", "tag:yaml.org,2002:seq", None}
_NO_KEYS = ("", "<<")
_CONTROL = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff\ufeff\ufffe\uffff]")


class Values:
    """Turns composed nodes into values; refuses tags, keys that are no words, double keys and what explodes."""

    def __init__(self, refuse: Refuse) -> None:
        self.refuse = refuse
        self.has_empty = False
        self.exploded = False
        self.seen: set[int] = set()
        self.around: list[yaml.Node] = []
        self.repeats = 0

    def value(self, node: yaml.Node, depth: int = 0) -> Any:
        """The value of a node: a mapping, a list, text, or None where nothing was written."""
        if node.tag not in _PLAIN_TAGS:
            tag = quoted(node.tag.replace("tag:yaml.org,2002:", "!!"))
            self.refuse(node.start_mark, "yaml-tag", say("the tag {tag} is not used here", tag=tag), say("Take it out"))
            return ""
        if isinstance(node, yaml.ScalarNode):
            return self._scalar(node)
        if not self._may_enter(node, depth):
            return ""
        self.around.append(node)
        inside = self._list(node, depth + 1) if isinstance(node, yaml.SequenceNode) else self._mapping(node, depth + 1)
        self.around.pop()
        return inside

    def _may_enter(self, node: yaml.Node, depth: int) -> bool:
        if depth > DEEPEST:
            self.refuse(
                node.start_mark,
                "nested-too-deep",
                say("brackets or dashes are nested too deep"),
                say("Write it flatter"),
            )
            return False
        if id(node) not in self.seen:
            self.seen.add(id(node))
            return True
        if node in self.around:
            self.refuse(node.start_mark, "yaml-star", say("this part holds itself by a star"), say("Write it out"))
            return False
        self.repeats += 1 + len(node.value)
        if self.repeats <= MOST_REPEATS:
            return True
        if not self.exploded:
            self.exploded = True
            self.refuse(
                node.start_mark, "yaml-star", say("parts are used again by stars too often"), say("Write them out")
            )
        return False

    def _scalar(self, node: yaml.ScalarNode) -> str | None:
        text: str = node.value
        if not node.style and text in _NOTHING and node.tag != "!":
            self.has_empty = True
            return None
        if node.style == '"' and _CONTROL.search(text):
            self.refuse(
                node.start_mark,
                "invisible-sign",
                say("a sign that cannot be shown stands in this text"),
                say("Take out the backslash"),
            )
        return text

    def _list(self, node: yaml.Node, depth: int) -> list[Any]:
        return [self.value(item, depth) for item in node.value]

    def _mapping(self, node: yaml.Node, depth: int) -> dict[str, Any]:
        values: dict[str, Any] = {}
        for key, item in node.value:
            name = key.value
            if isinstance(key, yaml.ScalarNode) and name not in values and name.isprintable() and name not in _NO_KEYS:
                values[name] = self.value(item, depth)
            elif fault := self._key_fault(node, key, values):
                self.refuse(key.start_mark, *fault)
            else:
                values[name] = self.value(item, depth)
        return values

    def _key_fault(self, node: yaml.Node, key: yaml.Node, values: dict[str, Any]) -> tuple[str, Said, Said] | None:
        name = key.value
        if not isinstance(key, yaml.ScalarNode):
            return (
                "key-no-word",
                say("a key must be a word"),
                say("Write key: value, without brackets before the colon"),
            )
        if name in values:
            first = next(other for other, _ in node.value if other.value == name)
            return (
                "key-twice",
                say(
                    "{key} stands here for the second time; the first is on line {line}",
                    key=quoted(name),
                    line=first.start_mark.line + 1,
                ),
                say("Keep one of the two"),
            )
        if not name:
            return "key-empty", say("a key is missing before this colon"), say("Write key: value")
        if name == "<<" and not key.style:
            return "yaml-merge", say("keys are not merged here by <<"), say("Write the keys out")
        if not name.isprintable():
            return (
                "invisible-sign",
                say("an unusual or invisible space stands in the key {key}", key=quoted(name)),
                say("Type the key and its indent anew"),
            )
        return None


def without_empty(value: Any, annotation: Any) -> Any:
    """A value less its keys that hold nothing; None where it held keys and none of them was filled in.

    annotation: the bare type the value is read as. Keys that are not known there stay, so that they are told.
    """
    if isinstance(value, list):
        return [without_empty(item, inside(annotation, index)) for index, item in enumerate(value)]
    if not isinstance(value, dict):
        return value
    filled: dict[str, Any] = {}
    for key, item in value.items():
        left = without_empty(item, inside(annotation, key))
        if left is not None:
            filled[key] = left
        elif not is_known(annotation, key):
            filled[key] = {}
    return filled if filled or not value else None


def is_known(annotation: Any, key: str) -> bool:
    """Tell whether a value of a bare type may hold this key, however a foot or a zone is spelled."""
    if is_model(annotation):
        return key in annotation.model_fields
    return get_origin(annotation) is dict and (
        not is_model(inside(annotation, key)) or bool(foot_named(key) or zone_named(key))
    )
