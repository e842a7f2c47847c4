"""One value of a file set, taken out or put in another's place; every other sign of the file stays as it was typed.

Comments, order and form are the trimmer's own, so that no file is written anew for the sake of one value. What came out
is read again and held against what it should say; where it says anything else, nothing is changed.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import Any

import yaml

from recordgen.problems import Step, Trouble, quoted
from recordgen.records.models.names import foot_named, zone_named
from recordgen.records.yaml.tree import Document, document, typed_key
from recordgen.records.yaml.write import as_yaml, item_lines, on_one_line, scalar
from recordgen.sentences import say

_LINE_END = re.compile(r"\r\n|\r|\n")


def with_value(raw: bytes, key: str, value: Any, path: str) -> bytes:
    """A file with a value under a key of its own lines: in the place of what stood there, else on lines at its end.

    value: text, numbers, days, lists and mappings. path: as people see it. Raises Trouble where that cannot be done.
    """
    found = _parse_mapping(raw, path)
    lines = as_yaml({key: value})
    wanted = {**_values(found), key: document(path, lines.encode()).values[key]}
    pair = _pair(found, key)
    if pair is None:
        end = len(found.text)
        joint = "" if not found.text or found.text.endswith(("\n", "\r")) else "\n"
        return _checked(raw, found, (end, end, joint + lines), wanted)
    start, end = _at(found.text, pair[0].start_mark), _end_of(found.text, pair)
    return _checked(raw, found, (start, end, lines.rstrip("\n")), wanted)


def with_item(raw: bytes, key: str, item: Mapping[str, Any], path: str, instead_of: int | None = None) -> bytes:
    """A file with one item more in the list under a key, or with it in the place of the one of that number, from 0.

    The others stay as they were typed. Raises Trouble where that cannot be done.
    """
    found = _parse_mapping(raw, path)
    pair = _pair(found, key)
    if pair is None or not pair[1].value:
        return with_value(raw, key, [item], path)
    node = pair[1]
    if not isinstance(node, yaml.SequenceNode):
        raise Trouble(say("{key} is no list in {path}", key=key, path=path), say("Change it by hand"))
    items = _values(found)[key]
    put = document(path, as_yaml({key: [item]}).encode()).values[key]
    at = len(items) if instead_of is None else instead_of
    wanted = {**_values(found), key: [*items[:at], *put, *items[at + 1 :]]}
    place = _behind(found.text, node, item) if instead_of is None else _over(found.text, node.value[at], item)
    return _checked(raw, found, place, wanted)


def _behind(text: str, node: yaml.SequenceNode, item: Mapping[str, Any]) -> tuple[int, int, str]:
    """The place behind the last item of a list, and what is put there."""
    end = _end_of(text, (node.value[-1], node.value[-1]))
    if node.flow_style:
        return end, end, f", {on_one_line(item)}"
    line_end = _LINE_END.search(text, end)
    at = line_end.start() if line_end else len(text)
    return at, at, "".join(f"\n{' ' * node.start_mark.column}{line}" for line in item_lines([item]))


def _over(text: str, node: yaml.Node, item: Mapping[str, Any]) -> tuple[int, int, str]:
    """The place of one item, and what is put there."""
    place = _at(text, node.start_mark), _end_of(text, (node, node))
    if isinstance(node, yaml.CollectionNode) and node.flow_style:
        return *place, on_one_line(item)
    first, *rest = item_lines([item])
    indent = " " * (node.start_mark.column - 2)
    return *place, "\n".join([first.removeprefix("- "), *(f"{indent}{line}" for line in rest)])


def without_key(raw: bytes, key: str, path: str) -> bytes:
    """A file without a key, its value, and the remark behind it. Raises Trouble where that cannot be done."""
    found = _parse_mapping(raw, path)
    pair = _pair(found, key)
    if pair is None:
        return raw
    wanted = {name: value for name, value in _values(found).items() if name != key}
    after = _LINE_END.search(found.text, _end_of(found.text, pair))
    end = after.end() if after else len(found.text)
    return _checked(raw, found, (_at(found.text, pair[0].start_mark), end, ""), wanted)


def with_other(raw: bytes, steps: Sequence[Step], value: str, path: str) -> bytes:
    """A file with other text in the place of one value, wherever it stands. Raises Trouble where none stands there."""
    found = _parse_mapping(raw, path)
    node: Any = found.root
    typed: list[Step] = []
    for step in steps:
        name, node = _inside(node, step)
        typed.append(name)
    if not isinstance(node, yaml.ScalarNode) or node.style in ("|", ">"):
        name = quoted(".".join(map(str, steps)))
        raise Trouble(
            say("no single value stands at {name} in {path}", name=name, path=path),
            say("Correct it in the file, then name the reason"),
        )
    wanted = _replaced(found.values, typed, value)
    place = (_at(found.text, node.start_mark), _at(found.text, node.end_mark), scalar(value, in_group=True))
    return _checked(raw, found, place, wanted)


def _inside(node: Any, step: Step) -> tuple[Step, Any]:
    """The name as it was typed in the file, and the node below it; no node where nothing is there."""
    if isinstance(node, yaml.SequenceNode) and str(step).isdigit() and int(step) < len(node.value):
        return int(step), node.value[int(step)]
    if not isinstance(node, yaml.MappingNode):
        return step, None
    meant = foot_named(str(step)) or zone_named(str(step)) or step
    keys = [key.value for key, _ in node.value if isinstance(key, yaml.ScalarNode)]
    typed = typed_key(keys, step) or typed_key(keys, meant)
    return next(((key.value, item) for key, item in node.value if typed == key.value), (step, None))


def _replaced(values: Any, steps: Sequence[Step], value: str) -> Any:
    if not steps:
        return value
    step, *rest = steps
    if isinstance(values, list):
        return [_replaced(one, rest, value) if at == step else one for at, one in enumerate(values)]
    return {key: _replaced(one, rest, value) if key == step else one for key, one in values.items()}


def _parse_mapping(raw: bytes, path: str) -> Document:
    found = document(path, raw)
    if found.problems or not isinstance(found.root, yaml.MappingNode) or found.root.flow_style:
        raise Trouble(
            say("{path} cannot be changed as it stands", path=path),
            say("Look at it with recordgen check, and change it by hand"),
        )
    return found


def _values(found: Document) -> dict[str, Any]:
    return dict(found.values) if isinstance(found.values, Mapping) else {}


def _pair(found: Document, key: str) -> tuple[yaml.Node, yaml.Node] | None:
    pairs = found.root.value if found.root else []
    return next(((name, item) for name, item in pairs if name.value == key), None)


def _at(text: str, mark: yaml.Mark) -> int:
    """The place of a mark in the text, counted in signs: marks themselves count differently from parser to parser."""
    starts = [0, *(found.end() for found in _LINE_END.finditer(text))]
    return starts[mark.line] + mark.column if mark.line < len(starts) else len(text)


def _end_of(text: str, pair: tuple[yaml.Node, yaml.Node]) -> int:
    """The end of a key's value, without the blanks and remarks behind it, which a parser counts to a block."""
    key, node = pair
    while isinstance(node, yaml.CollectionNode) and not node.flow_style and node.value:
        last = node.value[-1]
        key, node = last if isinstance(last, tuple) else (last, last)
    if isinstance(node, yaml.ScalarNode) and not node.value and node.style is None:
        return _at(text, key.end_mark) + 1
    return len(text[: _at(text, node.end_mark)].rstrip())


def _checked(raw: bytes, found: Document, place: tuple[int, int, str], wanted: Any) -> bytes:
    start, end, put = place
    text = found.text
    own = "\r\n" if "\r\n" in text else "\n"
    made = text[:start] + put.replace("\n", own) + text[end:]
    mark = b"\xef\xbb\xbf" if raw.startswith(b"\xef\xbb\xbf") else b""
    out = mark + made.encode()
    again = document(found.path, out)
    if again.problems or (again.values or {}) != wanted:
        raise Trouble(
            say("{path} cannot be changed without changing more of it", path=found.path), say("Change it by hand")
        )
    return out
