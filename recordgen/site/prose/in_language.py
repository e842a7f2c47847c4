"""Markdown in another language: each paragraph, heading, item and row of a table is a message of a catalog.

What is typed and what the terminal answers, both in fences, stays as it is.
"""

from __future__ import annotations

import re

from recordgen.language.catalogs import Catalog

_FENCE = "```"
# What a line may begin with that begins a message, and what a row of a table ends with.
_MESSAGE = re.compile(r"(?P<mark>#+ |- |\d+\. |\|)?(?P<text>.*?)(?P<end> ?\|)?", re.DOTALL)
# A heading that is the name of a command.
_COMMAND = re.compile(r"### [a-z]+")
_BEGINS = re.compile(r"#+ |- |\d+\. |\|")


def in_language(source: str, catalog: Catalog) -> str:
    """A text of Markdown with all messages that the catalog knows translated, each on one line."""
    lines: list[str] = []
    begun: list[str] = []
    fenced = False
    for line in source.splitlines():
        fence = line.startswith(_FENCE)
        if begun and (fence or not line or _BEGINS.match(line)):
            lines.append(_translate_line(" ".join(begun), catalog))
            begun = []
        if fenced or fence or not line:
            lines.append(line)
        else:
            begun.append(line.strip())
        fenced ^= fence
    return "\n".join([*lines, *([_translate_line(" ".join(begun), catalog)] if begun else ()), ""])


def _translate_line(line: str, catalog: Catalog) -> str:
    parts = _MESSAGE.fullmatch(line)
    if parts is None or _COMMAND.fullmatch(line) or not any(sign.isalpha() for sign in parts["text"]):
        return line
    text = parts["text"].strip()
    return f"{parts['mark'] or ''}{parts['text'].replace(text, catalog.gettext(text))}{parts['end'] or ''}"
