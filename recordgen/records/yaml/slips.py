"""Slips that YAML reads as something else than was meant: a colon without its space, a # within text."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from recordgen.problems import as_typed
from recordgen.records.models.fields import CURLY
from recordgen.sentences import Said, say

Slip = tuple[int, int, str, Said, Said]  # line and column from 1, code, what is wrong, the way out

# `toe_length:88`, alone on its line or behind a dash; not an address and not a path.
_GLUED = re.compile(r"[ \t]*(?:- +)*(?P<key>[^\W\d][\w -]*):(?=[^\s:/\\])(?P<value>.*)")
# A comment that may be text: one that does not stand apart. What does has two blanks before the # and one behind it.
_UNSURE = re.compile(r"(?<=\S) #|(?<=[ \t])#(?=[^\s#])")
_NEXT_KEY = re.compile(r"\s+(?=[^\W\d][\w -]*:)")
LONGEST_SHOWN = 60
# `note: 'It's calm'`: the text within the quotes holds one of them.
_QUOTE_WITHIN = re.compile(r"[ \t]*(?:- +)*(?P<key>[^\W\d][\w -]*): +(?P<quote>['\"])(?P<text>.+)(?P=quote)[ \t]*")
# `note: Stall: wet`: a second colon in text that stands in no quotes and no brackets.
_COLON_WITHIN = re.compile(r"[ \t]*(?:- +)*(?P<key>[^\W\d][\w -]*): +(?P<text>[^\s'\"\[{|>#&*!].*?: .*)")
_KEY_AND_NUMBER = re.compile(r"[a-z_]+: [0-9][^,:]*")
# A list as other programs write it: with round points or numbers.
_BULLET = re.compile(r"[ \t]*(?:[•‣◦·–—*]|[0-9]{1,2}[.)]) *(?P<text>[^\s].*)")


def split_glued(text: str) -> tuple[str, str] | None:
    """The key and the value of `key:value`, where a space after the colon is missing; None for other text."""
    found = _GLUED.fullmatch(text)
    return (found["key"].strip(), found["value"].strip()) if found else None


def missing_space(key: str, value: str) -> tuple[str, Said, Said]:
    """The code, what is wrong with `key:value`, and the way out."""
    right = f"{key}: {_NEXT_KEY.split(value)[0]}"
    return (
        "space-missing",
        say("a space is missing after the colon of {key}", key=as_typed(key)),
        say("Write {value}", value=_short(right)),
    )


def unsure_comment(line: str, begin: int = 0) -> int | None:
    """The column, from 0, of a # behind text that begins a comment and may be meant as text; None where none is.

    A comment of one's own stands apart: two blanks before its #, and one behind. begin: where to look from; all that
    stands there up to a # is taken for blank.
    """
    found = _UNSURE.search(line, begin)
    return found.end() - 1 if found else None


def slips(lines: Sequence[str], near: Sequence[int]) -> Iterator[Slip]:
    """The slips that explain why a file cannot be read as YAML, in the order of the lines.

    near: lines from 0 where the reader stumbled; the next line above each that is not empty counts, too.
    """
    around = sorted({number for line in near for number in (line, _above(lines, line)) if 0 <= number < len(lines)})
    for number in around:
        found = split_glued(lines[number])
        if found:
            yield (number + 1, lines[number].index(":") + 1, *missing_space(*found))
            continue
        if slip := _within_line(lines[number]):
            yield (number + 1, *slip)
            continue
        column = unsure_comment(lines[number])
        if column is not None and not lines[number].lstrip().startswith("#"):
            message = say("# begins a comment here, and what follows is not read")
            yield (
                number + 1,
                column + 1,
                "comment-in-text",
                message,
                say("Put the whole text in quotes where # belongs to it"),
            )


def _within_line(line: str) -> tuple[int, str, Said, Said] | None:
    """The column, code, words and way out of what one line alone tells: a list's sign, a quote or a colon in text."""
    if found := _BULLET.fullmatch(line):
        return (
            found.start("text") + 1,
            "yaml-dash",
            say("a list is written with dashes"),
            say("Write - {value}", value=_short(found["text"])),
        )
    if (found := _QUOTE_WITHIN.fullmatch(line)) and found["quote"] in found["text"].replace("''", ""):
        at = found.start("text") + found["text"].index(found["quote"]) + 1
        return (
            at,
            "yaml-quote",
            say("the quote here ends the text"),
            say("Write {key}: {value}", key=as_typed(found["key"]), value=_in_quotes(found["text"])),
        )
    if found := _COLON_WITHIN.fullmatch(line):
        text = found["text"].strip()
        whole = f"{{{_short(text)}}}" if _KEY_AND_NUMBER.fullmatch(text) else _in_quotes(text.strip(CURLY))
        return (
            found.end("key") + 1,
            "yaml-colon",
            say("a second colon stands in this line"),
            say("Write {key}: {value}", key=as_typed(found["key"]), value=whole),
        )
    return None


def _in_quotes(text: str) -> str:
    """Text in the quotes that it does not hold."""
    sign = "'" if '"' in text else '"'
    return f"{sign}{_short(text.replace(sign, ''))}{sign}"


def _short(text: str) -> str:
    return as_typed(text, LONGEST_SHOWN)


def _above(lines: Sequence[str], line: int) -> int:
    return next((number for number in range(min(line, len(lines)) - 1, -1, -1) if lines[number].strip()), -1)
