"""Changes of a file at random: of its bytes, its lines, its keys and its values."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from random import Random

# What people, programs and disks leave in files, and what has ended readers of YAML before.
VALUES = (
    *("", "~", "null", "yes", "no", "0", "-1", "1e400", ".nan", ".inf", "9" * 400, "0x1F", "1_000", "1:30", "79,5"),
    *("2026-02-30", "0000-00-00", "2026-10-14T08:00", "9999-12-31", "14.10.2026", "[", "]", "{", "}", "[]", "{}"),
    *("[[[[[[]]]]]]", "{a: {b: {c: d}}}", "[1, 2, {x: 3}]", "'", '"', "'open", '"\\u0000"', '"\\ud800"', "|", ">"),
    *("|\n  text\n  more", "&a [*a]", "&a x", "*a", "*none", "!!python/object:os.system x", "!!binary aGk=", "!own x"),
    *("<<: {a: 1}", "? a", "- a", "a: b", "# only a remark", "%YAML 9.9", "---", "...", "\t", "\u00a0", "\u202e"),
    *("\u2028", "\x85", "\u200b", "\U0001f40e", "Zoë", "é", "e\u0301", "../../etc/passwd", "/dev/zero", "{{ 7 * 7 }}"),
    *(
        "<script>",
        "a" * 5000,
        "[" * 3000,
        "{a: " * 500,
        "- " * 2000,
        "left_fore",
        "near fore",
        "sole",
        "75 mm",
        "75-80",
    ),
)
BYTES = (
    b"\0",
    b"\xff",
    b"\xc3",
    b"\xed\xa0\x80",
    b"\xef\xbb\xbf",
    b"\xff\xfe",
    b"\r",
    b"\t",
    b"\x1b[31m",
    b"\x7f",
    b"\n",
)
_KEY = re.compile(r"(?m)^([ \-]*)([^\s:#\-][^:\n#]*):(?=\s)|([{,]\s*)([\w ]+):(?=\s)")
_VALUE = re.compile(r"(?<=: )[^\n,{}\[\]#]+")
_PIECE = 12


def changed(content: bytes, rng: Random, others: Sequence[bytes]) -> bytes:
    """The content after one to three changes. others: files of which pieces may be put in."""
    for _ in range(rng.choice((1, 1, 1, 2, 3))):
        content = rng.choice(CHANGES)(content, rng, others)
    return content


def _byte(content: bytes, rng: Random, _: Sequence[bytes]) -> bytes:
    """Some bytes are others, gone, doubled or put in, or the file is cut off."""
    at = rng.randrange(len(content) + 1)
    end = at + rng.randrange(_PIECE)
    return rng.choice(
        (
            content[:at] + bytes([rng.randrange(256)]) + content[at + 1 :],
            content[:at] + content[end:],
            content[:end] + content[at:],
            content[:at] + rng.choice(BYTES) + content[at:],
            content[:at],
        )
    )


def _line(content: bytes, rng: Random, others: Sequence[bytes]) -> bytes:
    """A line is gone, doubled, moved, moved in or out, or comes from another file."""
    lines = content.splitlines(keepends=True) or [b"\n"]
    at, other = rng.randrange(len(lines)), rng.choice(rng.choice(others).splitlines(keepends=True))
    line = lines.pop(at)
    new = rng.choice(
        ([], [line, line], [b" " * rng.randrange(9) + line.lstrip()], [line, other], [other], [line.rstrip(b"\n")])
    )
    lines[at:at] = new
    if rng.random() < 0.2:
        rng.shuffle(lines)
    return b"".join(lines)


def _key(content: bytes, rng: Random, others: Sequence[bytes]) -> bytes:
    """A key is misspelt, another one, or a value that is no key."""
    text = _text(content)
    found = list(_KEY.finditer(text))
    if not found:
        return _byte(content, rng, others)
    one, other = rng.choice(found), rng.choice(list(_KEY.finditer(_text(rng.choice(others)))) or found)
    begin, end = one.span(2 if one[2] else 4)
    key = text[begin:end]
    cut = rng.randrange(len(key))
    new = rng.choice(
        (key[:cut] + key[cut + 1 :], key.upper(), other[2] or other[4], rng.choice(VALUES), f"{key}: {key}")
    )
    return _bytes(text[:begin] + new + text[end:])


def _value(content: bytes, rng: Random, others: Sequence[bytes]) -> bytes:
    """A value is another one."""
    text = _text(content)
    found = list(_VALUE.finditer(text))
    if not found:
        return _byte(content, rng, others)
    one = rng.choice(found)
    return _bytes(text[: one.start()] + rng.choice(VALUES) + text[one.end() :])


def _text(content: bytes) -> str:
    return content.decode("utf-8", "surrogateescape")


def _bytes(text: str) -> bytes:
    return text.encode("utf-8", "surrogateescape")


CHANGES: tuple[Callable[[bytes, Random, Sequence[bytes]], bytes], ...] = (_byte, _line, _key, _value)
