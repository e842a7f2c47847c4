"""YAML text to plain values and the place of each: mappings, lists and the text that was typed, nothing guessed.

Scalars stay text (`no`, `0012`, `1:30`), an empty one is None. A part may be used again by a star; parts that hold
themselves, or that multiply, are refused.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any, ClassVar

import yaml
from yaml.composer import Composer
from yaml.parser import Parser
from yaml.reader import Reader
from yaml.scanner import Scanner

from recordgen.problems import Place, Problem, Step
from recordgen.records.models.names import foot_named, zone_named
from recordgen.records.yaml.text import explain_fault, text_of
from recordgen.records.yaml.values import Values
from recordgen.sentences import Said, say


class _NoTypes:
    """Stands in for PyYAML's resolver: every value is text, every mapping a mapping, every list a list."""

    _TAGS: ClassVar = {
        yaml.ScalarNode: "tag:yaml.org,2002:str",
        yaml.SequenceNode: "tag:yaml.org,2002:seq",
        yaml.MappingNode: "tag:yaml.org,2002:map",
    }

    def resolve(self, kind: type[yaml.Node], value: Any, implicit: Any) -> str:
        """The tag of a node that carries none."""
        return self._TAGS[kind]

    def descend_resolver(self, *where: Any) -> None:
        """Called on the way into a node."""

    def ascend_resolver(self) -> None:
        """Called on the way out of a node."""


class PlainComposer(_NoTypes, Reader, Scanner, Parser, Composer):
    """Composes nodes and resolves no types."""

    def __init__(self, stream: str) -> None:
        Reader.__init__(self, stream)
        Scanner.__init__(self)
        Parser.__init__(self)
        Composer.__init__(self)


COMPOSER: type[Any] = PlainComposer

if yaml.__with_libyaml__:
    from yaml.cyaml import CParser  # type: ignore[attr-defined]

    class FastComposer(_NoTypes, CParser):
        """Composes nodes in C and resolves no types."""

    COMPOSER = FastComposer


@dataclass
class Document:
    """One file: its text and values, the nodes that know where they stand, and what was wrong with the YAML itself."""

    path: str
    text: str = ""
    values: Any = None
    root: yaml.Node | None = None
    has_empty: bool = False
    problems: list[Problem] = field(default_factory=list)

    def refuse(self, mark: yaml.Mark, code: str, message: Said, way_out: Said) -> None:
        """Keep a problem at a mark in this file."""
        self.problems.append(Problem(Place(self.path, mark.line + 1, mark.column + 1), code, message, way_out))

    def place(self, steps: Sequence[Step]) -> Place:
        """The place of the key or item at `steps`, or of the nearest thing around it that was written."""
        nodes = [key for key, _ in self._path(steps)]
        node = nodes[-1] if nodes else self.root
        return self._place_of(node) if node else Place(self.path)

    def value_place(self, steps: Sequence[Step]) -> Place:
        """The place where the value at `steps` begins, which may be on another line than its key."""
        nodes = [item for _, item in self._path(steps)]
        item = nodes[-1] if nodes else self.root
        return self._place_of(item) if item else Place(self.path)

    def steps_at(self, place: Place) -> tuple[Step, ...]:
        """The steps to the outermost key or item that stands at a place, as typed; none where none does."""
        return next((steps for steps, node in _all_in(self.root) if self._place_of(node) == place), ())

    def _place_of(self, node: yaml.Node) -> Place:
        return Place(self.path, node.start_mark.line + 1, node.start_mark.column + 1)

    def typed_steps(self, steps: Sequence[Step]) -> tuple[Step, ...]:
        """The steps with each name as it was typed in the file."""
        names = [
            key.value if isinstance(step, str) and isinstance(key, yaml.ScalarNode) and key is not item else step
            for step, (key, item) in zip(steps, self._path(steps), strict=False)
        ]
        return (*names, *steps[len(names) :])

    def typed(self, steps: Sequence[Step]) -> str | None:
        """The text that was typed at `steps`; None where no text stands there itself."""
        found = list(self._path(steps))
        node = found[-1][1] if found and len(found) == len(steps) else None
        return str(node.value) if isinstance(node, yaml.ScalarNode) else None

    def wrote(self, steps: Sequence[Step]) -> bool:
        """Tell whether there is a key or item at `steps`, be it empty."""
        return len(list(self._path(steps))) == len(steps)

    def _path(self, steps: Sequence[Step]) -> Iterator[tuple[yaml.Node, yaml.Node]]:
        node = self.root
        for step in steps:
            pair = _inside(node, step)
            if pair is None:
                return
            yield pair
            node = pair[1]


def _inside(node: yaml.Node | None, step: Step) -> tuple[yaml.Node, yaml.Node] | None:
    if isinstance(node, yaml.SequenceNode) and isinstance(step, int) and step < len(node.value):
        return node.value[step], node.value[step]
    if not isinstance(node, yaml.MappingNode):
        return None
    typed = typed_key([key.value for key, _ in node.value if isinstance(key, yaml.ScalarNode)], step)
    return next(((key, item) for key, item in node.value if typed is not None and key.value == typed), None)


def _all_in(node: yaml.Node | None, around: tuple[Step, ...] = ()) -> Iterator[tuple[tuple[Step, ...], yaml.Node]]:
    """Every key and every item below a node with the steps to it, from outside in."""
    if not isinstance(node, yaml.CollectionNode):
        return
    pairs = node.value if isinstance(node, yaml.MappingNode) else [(item, item) for item in node.value]
    for number, (key, item) in enumerate(pairs):
        steps = (*around, key.value if isinstance(node, yaml.MappingNode) else number)
        yield steps, key
        yield from _all_in(item, steps)


def typed_key(keys: Collection[str], step: Step) -> str | None:
    """The key that was typed for `step`: itself, or another spelling of that foot or zone; None where neither is."""
    if step in keys:
        return str(step)
    return next((key for key in keys if step in (foot_named(key), zone_named(key))), None)


def document(path: str, raw: bytes) -> Document:
    """The values of a YAML file and the place of each, or its problems.

    path: as people see it, for the problems. raw: the bytes of the file.
    """
    found = Document(path)
    found.text, found.problems = text_of(path, raw)
    if found.problems:
        return found
    try:
        found.root = _compose(found.text)
    except yaml.MarkedYAMLError as fault:
        for line, column, code, message, way_out in explain_fault(fault, found.text):
            found.problems.append(Problem(Place(path, line, column), code, message, way_out))
    except (yaml.YAMLError, RecursionError):
        found.problems.append(
            Problem(
                Place(path), "nested-too-deep", say("brackets or dashes are nested too deep"), say("Write it flatter")
            )
        )
    else:
        _fill(found)
    return found


def _compose(text: str) -> yaml.Node | None:
    composer = COMPOSER(text)
    try:
        root: yaml.Node | None = composer.get_single_node()
    finally:
        if hasattr(composer, "dispose"):
            composer.dispose()
    return root


def _fill(found: Document) -> None:
    if found.root is None:
        found.problems.append(
            Problem(
                Place(found.path), "file-empty", say("the file holds comments alone"), say("Fill it in, or delete it")
            )
        )
        return
    values = Values(found.refuse)
    found.values = values.value(found.root)
    found.has_empty = values.has_empty
