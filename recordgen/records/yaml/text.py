"""The bytes of a file to text that YAML can hold, or what stands in the way, in words of our own."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import islice

import yaml

from recordgen.problems import Place, Problem
from recordgen.records.yaml.slips import Slip, slips
from recordgen.sentences import say

LARGEST_FILE_BYTES = 1_000_000
# Of one file no more is told.
MOST_PROBLEMS = 100
# No record goes deeper than about ten.
DEEPEST_TEXT = 100

# How files begin that were saved as something else than plain text. Sources: Unicode Standard, byte order mark; ISO/IEC
# 21320 (PK); ISO 32000 (%PDF). The others from memory, not read.
_WORD_PROCESSOR = say("this is a document of a word processor or a spreadsheet, not plain text")
_NO_TEXT = {
    **dict.fromkeys((b"\xff\xfe", b"\xfe\xff"), say("this was saved as UTF-16, which some programs call Unicode")),
    **dict.fromkeys((b"PK\x03\x04", b"{\\rtf", b"\xd0\xcf\x11\xe0"), _WORD_PROCESSOR),
    b"%PDF": say("this is a PDF, not plain text"),
    **dict.fromkeys((b"\xff\xd8\xff", b"\x89PNG"), say("this is a picture, not plain text")),
}

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
    text, explain_fault = decode(path, raw)
    if not text:
        return text, explain_fault
    in_lines = _LINE_END.sub("\n", text) if "\r" in text else text
    return text, [
        *explain_fault,
        *unfinished_merge(path, in_lines),
        *_tabs(path, in_lines),
        *_nesting_problems(path, text),
    ]


def decode(path: str, raw: bytes) -> tuple[str, list[Problem]]:
    """The text of a file that may be no YAML, and what is wrong with it whatever it is; arguments as above."""
    if len(raw) > LARGEST_FILE_BYTES:
        way_out = say("Move pictures and long notes elsewhere")
        return "", [
            Problem(Place(path), "file-too-large", say("the file is larger than 1 MB, which no record is"), way_out)
        ]
    if message := next((words for begin, words in _NO_TEXT.items() if raw.startswith(begin)), None):
        way_out = say("Open it, choose Save As, and save it as plain text (UTF-8)")
        return "", [Problem(Place(path), "file-not-utf8", message, way_out)]
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as fault:
        place = _place(path, raw[: fault.start].decode("utf-8-sig"))
        return "", [
            Problem(place, "file-not-utf8", say("this is not UTF-8 text"), say("Save the file as UTF-8 in the editor"))
        ]
    if not text.strip():
        return "", [Problem(Place(path), "file-empty", say("the file is empty"), say("Fill it in, or delete it"))]
    return text, list(_strange(path, text))


def _nesting_problems(path: str, text: str) -> Iterator[Problem]:
    """Brackets or dashes so deep that some readers in C crash on them; those in quotes count, too."""
    place = _brackets(path, text) if text.count("[") + text.count("{") > DEEPEST_TEXT else None
    dashes = _DASHES.search(text)
    if place is None and dashes:
        place = _place(path, text[: dashes.start()])
    if place:
        yield Problem(place, "nested-too-deep", say("brackets or dashes are nested too deep"), say("Write it flatter"))


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
        message = say("an invisible sign stands here that a record cannot hold (U+{found:04X})", found=ord(found[0]))
        yield Problem(
            _place(path, text[: found.start()]),
            "invisible-sign",
            message,
            say("Type the line anew, and save the file as plain UTF-8 text"),
        )


def unfinished_merge(path: str, text: str) -> Iterator[Problem]:
    """A problem at the first mark that git left where two versions of a file meet. text: with plain line ends."""
    found = _CONFLICT.search(text)
    if found:
        message = say("a merge of two versions was not finished: git left its mark {found} here", found=found[0])
        way_out = say("Keep what is right of the two, and take out the lines <<<<<<<, ======= and >>>>>>>")
        yield Problem(_place(path, text[: found.start()]), "merge-not-finished", message, way_out)


def _tabs(path: str, text: str) -> Iterator[Problem]:
    line, counted = 1, 0
    for found in islice(_INDENT_WITH_TAB.finditer(text), MOST_PROBLEMS + 1):
        line += text.count("\n", counted, found.start())
        counted = found.start()
        place = Place(path, line, found[0].index("\t") + 1)
        yield Problem(place, "tab-in-indent", say("a tab stands here"), say("Indent with spaces, two for each level"))


# Parts of the reader's reasons, the first that fits, and what is told instead.
_SYNTAX = {
    "mapping values are not allowed": (
        "yaml-colon",
        say("a colon stands here where none can"),
        say("Put text that holds a colon in quotes, or begin a new line; keys of one level line up"),
    ),
    "could not find expected ':'": (
        "yaml-colon-missing",
        say("a key stands here without its colon"),
        say("Write key: value, a space after the colon; text that goes on below its key is indented by two"),
    ),
    "did not find expected ',' or": (
        "yaml-bracket",
        say("a bracket or a comma is missing"),
        say("Close each {{ with }} and each [ with ]"),
    ),
    "did not find expected key": (
        "yaml-indent",
        say("the indentation does not fit the lines above"),
        say("Line it up with its neighbours"),
    ),
    "did not find expected '-' indicator": (
        "yaml-indent",
        say("the indentation does not fit the list above"),
        say("Line up the dashes"),
    ),
    "block sequence entries are not allowed": (
        "yaml-dash",
        say("a dash cannot stand here"),
        say("Begin a list on the line after its key"),
    ),
    "mapping keys are not allowed": (
        "yaml-sign",
        say("a question mark cannot stand here"),
        say("Put the text in quotes"),
    ),
    "found unexpected end of stream": (
        "yaml-quote",
        say("a quote or bracket is opened here and never closed"),
        say("Close it"),
    ),
    "found unexpected document indicator": (
        "yaml-quote",
        say("a quote is opened here and not closed before ---"),
        say("Close it"),
    ),
    "did not find expected node content": (
        "yaml-bracket",
        say("a value is missing, or a bracket or comma too many"),
        say("Look at the brackets"),
    ),
    "expected a single document": (
        "yaml-second-document",
        say("a second document begins here"),
        say("Keep one record a file; take out the line ---"),
    ),
    "<document start>": (
        "yaml-bracket",
        say("something stands here after the end"),
        say("Take out what follows, or the bracket too many"),
    ),
    "that cannot start any token": (
        "yaml-sign",
        say("this sign cannot begin a value"),
        say("Put the value in quotes; use no tab"),
    ),
    "found a tab": ("tab-in-indent", say("a tab stands here"), say("Indent with spaces, two for each level")),
    "undefined alias": (
        "yaml-sign",
        say("a star begins a reference to nothing"),
        say("Put text that begins with * in quotes"),
    ),
    "undefined tag": (
        "yaml-sign",
        say("an exclamation mark begins a tag that is not known"),
        say("Put text that begins with ! in quotes"),
    ),
    "duplicate anchor": (
        "yaml-sign",
        say("this & name stands in the file twice"),
        say("Put text that begins with & in quotes"),
    ),
    "escape": (
        "yaml-backslash",
        say("a backslash stands here with a letter that means nothing"),
        say("Write single quotes, or two backslashes"),
    ),
    "expected alphabetic or numeric": (
        "yaml-sign",
        say("& or * stands here without a name"),
        say("Put the value in quotes"),
    ),
    "directive": ("yaml-sign", say("a line cannot begin with % here"), say("Put the value in quotes")),
    "incompatible YAML document": (
        "yaml-sign",
        say("this names a version of YAML that is not read"),
        say("Take out the line that begins with %"),
    ),
    "nesting depth": ("nested-too-deep", say("brackets or dashes are nested too deep"), say("Write it flatter")),
    "comment or line break": (
        "yaml-text-block",
        say("something stands behind | or > on this line"),
        say("Begin the text on the next line"),
    ),
    "indentation indicator": (
        "yaml-text-block",
        say("something stands behind | or > on this line"),
        say("Begin the text on the next line"),
    ),
    "found unexpected ':'": (
        "yaml-colon",
        say("a colon stands here where none can"),
        say("Put a space after the colon of a key, and text that holds a colon in quotes"),
    ),
}
_OTHERWISE = (
    "yaml-unreadable",
    say("this line cannot be read as YAML"),
    say("Look at this line and the one before; put unusual text in quotes"),
)
_BEGAN_EARLIER = (
    "found unexpected end of stream",
    "found unexpected document indicator",
    "could not find expected ':'",
)
# What is wrong may be a line before that is read as something else than was meant.
_SLIPPED = ("could not find expected ':'", "mapping values are not", "expected", "did not find")


def explain_fault(fault: yaml.MarkedYAMLError, text: str) -> list[Slip]:
    """A fault of the YAML itself, or the slips in `text` that explain it: line, column, code and words."""
    reason = f"{fault.problem or ''} {fault.context or ''}"
    marks = [mark for mark in (fault.context_mark, fault.problem_mark) if mark]
    if found := reason.startswith(_SLIPPED) and list(slips(text.splitlines(), [mark.line for mark in marks])):
        return found
    began = fault.context_mark if reason.startswith(_BEGAN_EARLIER) else None
    mark = began or fault.problem_mark or fault.context_mark
    code, message, way_out = next((words for part, words in _SYNTAX.items() if part in reason), _OTHERWISE)
    return [(*(_within(text, mark.line, mark.column) if mark else (1, 1)), code, message, way_out)]


def _within(text: str, line: int, column: int) -> tuple[int, int]:
    """A mark's line and column, from 1; behind the end of what was written, the end itself, which the file has."""
    written = _LINE_END.split(text.rstrip())
    return (line + 1, column + 1) if line < len(written) else (len(written), len(written[-1]) + 1)
