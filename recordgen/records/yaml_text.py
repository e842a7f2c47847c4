"""The bytes of a file to text that YAML can hold, or the problems that stand in the way."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import islice

from recordgen.problems import Place, Problem

LARGEST_FILE_BYTES = 1_000_000
# Of one file no more is told.
MOST_PROBLEMS = 100
# No record goes deeper than about ten.
DEEPEST_TEXT = 100

# Signs that YAML does not allow, and those that YAML takes for the end of a line where an editor does not.
_NOT_ALLOWED = re.compile("[^\t\n\r\x20-\x7e\xa0-\u2027\u202a-\ud7ff\ue000-\ufefe\uff00-\ufffd\U00010000-\U0010ffff]")
_BRACKET = re.compile(r"[\[\]{}]")
_DASHES = re.compile(rf"(?:[-?:][ \n]+){{{DEEPEST_TEXT}}}")
_LINE_END = re.compile(r"\r\n|\r|\n")
_INDENT_WITH_TAB = re.compile(r"^ *\t[ \t]*(?=\S)", re.MULTILINE)
# What git writes where two versions of a file meet: seven signs at the start of a line.
_CONFLICT = re.compile(r"^(?:<{7}|\|{7}|={7}|>{7})(?= |$)", re.MULTILINE)


def text_of(path: str, raw: bytes) -> tuple[str, list[Problem]]:
    """The text of a file, and what is wrong with it as text; the text is worth reading where nothing is.

    path: as people see it. raw: the bytes of the file.
    """
    if len(raw) > LARGEST_FILE_BYTES:
        way_out = "Move pictures and long notes elsewhere"
        return "", [Problem(Place(path), "the file is larger than 1 MB, which no record is", way_out)]
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as fault:
        place = _place(path, raw[: fault.start].decode("utf-8-sig"))
        return "", [Problem(place, "this is not UTF-8 text", "Save the file as UTF-8 in the editor")]
    if not text.strip():
        return "", [Problem(Place(path), "the file is empty", "Fill it in, or delete it")]
    in_lines = _LINE_END.sub("\n", text) if "\r" in text else text
    told = [*_strange(path, text), *_conflict(path, in_lines), *_tabs(path, in_lines), *_nested(path, text)]
    return text, told


def _nested(path: str, text: str) -> Iterator[Problem]:
    """Brackets or dashes so deep that some readers in C crash on them; those in quotes count, too."""
    place = _brackets(path, text) if text.count("[") + text.count("{") > DEEPEST_TEXT else None
    dashes = _DASHES.search(text)
    if place is None and dashes:
        place = _place(path, text[: dashes.start()])
    if place:
        yield Problem(place, "brackets or dashes are nested too deep", "Write it flatter")


def _brackets(path: str, text: str) -> Place | None:
    depth = 0
    for found in _BRACKET.finditer(text):
        depth = depth + 1 if found[0] in "[{" else max(0, depth - 1)
        if depth > DEEPEST_TEXT:
            return _place(path, text[: found.start()])
    return None


def _place(path: str, before: str) -> Place:
    lines = _LINE_END.split(before)
    return Place(path, len(lines), len(lines[-1]) + 1)


def _strange(path: str, text: str) -> Iterator[Problem]:
    found = _NOT_ALLOWED.search(text)
    if found:
        message = f"an invisible sign stands here that a record cannot hold (U+{ord(found[0]):04X})"
        yield Problem(
            _place(path, text[: found.start()]), message, "Type the line anew, and save the file as plain UTF-8 text"
        )


def _conflict(path: str, text: str) -> Iterator[Problem]:
    found = _CONFLICT.search(text)
    if found:
        message = f"a merge of two versions was not finished: git left its mark {found[0]} here"
        way_out = "Keep what is right of the two, and take out the lines <<<<<<<, ======= and >>>>>>>"
        yield Problem(_place(path, text[: found.start()]), message, way_out)


def _tabs(path: str, text: str) -> Iterator[Problem]:
    line, counted = 1, 0
    for found in islice(_INDENT_WITH_TAB.finditer(text), MOST_PROBLEMS + 1):
        line += text.count("\n", counted, found.start())
        counted = found.start()
        place = Place(path, line, found[0].index("\t") + 1)
        yield Problem(place, "a tab stands here", "Indent with spaces, two for each level")
