"""A page with everything in it: parts out of a folder of templates, data, and a policy that lets them alone run."""

from __future__ import annotations

import base64
import hashlib
import re
from collections.abc import Mapping, Sequence
from html import escape
from pathlib import Path
from typing import Any

import yaml

from recordgen.packaged import packaged
from recordgen.problems import Trouble
from recordgen.sentences import say

_COMMENT = re.compile(r"//.*|/\*(?:(?!\*/).)*\*/")


def read_part(folder: str, name: str, own: Path | None = None) -> str:
    """A file of a folder of the templates. own: a practice's own templates, which go before ours."""
    ours = packaged() / "site_templates" / folder / name
    theirs = own / folder / name if own else ours
    return (theirs if theirs.is_file() else ours).read_text("utf-8")


def read_table(folder: str, name: str, own: Path | None = None) -> dict[str, Any]:
    """A table of words, a practice's own entries over ours: what its file does not name stays as we say it.

    Raises Trouble where its file cannot be read as such a table.
    """
    found: dict[str, Any] = {}
    try:
        for text in dict.fromkeys(read_part(folder, name, place) for place in (None, own)):
            found = _merge(found, yaml.safe_load(text) or {})
    except (yaml.YAMLError, UnicodeError, TypeError) as fault:
        mark = fault.problem_mark if isinstance(fault, yaml.MarkedYAMLError) else None
        file = f"site_templates/{folder}/{name}"
        message = say("{file} is no table of words that can be read", file=file)
        place = say("line {line}", line=mark.line + 1) if mark else str(fault) if isinstance(fault, TypeError) else ""
        if place:
            message = say("{file}, {place}, is no table of words that can be read", file=file, place=place)
        raise Trouble(message, say("Write each entry as name: words, or take the file away, and ours stand")) from fault
    return found


def _merge(under: Any, over: Any, *steps: str) -> Any:
    """Entries over those beneath, in tables within tables too.

    steps: to these. Raises TypeError, which tells them, where a table, a list or words stand in the place of another.
    """
    if type(over) is not type(under):
        raise TypeError(".".join(steps))
    if not isinstance(under, dict):
        return over
    return {**under, **{key: _merge(under.get(key, value), value, *steps, key) for key, value in over.items()}}


def page_with(
    folder: str,
    data: tuple[str, str],
    scripts: Sequence[str],
    policy: str,
    own: Path | None,
    styles: Sequence[str],
    told: Mapping[str, str],
) -> str:
    """The page of a folder, with its styles as one, and its data before its scripts as one script.

    data: the name under which scripts find it, and JSON. scripts, styles: files of that folder, or of another as
    folder/name. policy: a content security policy with places for the hashes of script and style. own: as for
    `read_part`. told: texts by the names of their places in the page.
    """
    name, text = data
    style = "\n".join(_lean(_part(folder, part, own)) for part in styles)
    code = "\n".join(_lean(_part(folder, part, own)) for part in scripts)
    script = f"'use strict';\nconst {name} = {_inside_script(text)};\n{code}"
    allowed = policy.format(script=policy_hash(script), style=policy_hash(style))
    texts = {place: escape(text) for place, text in told.items()}
    return _fill(read_part(folder, "page.html", own), {"POLICY": allowed, "STYLE": style, **texts, "SCRIPT": script})


def _part(folder: str, name: str, own: Path | None) -> str:
    elsewhere, _, alone = name.rpartition("/")
    return read_part(elsewhere or folder, alone, own)


def _lean(code: str) -> str:
    """Scripts or styles without indents and without lines that are a comment alone: a seventh of what a phone loads."""
    lines = (line.strip() for line in code.splitlines())
    return "\n".join(line for line in lines if line and not _COMMENT.fullmatch(line))


def policy_hash(text: str) -> str:
    """A source for a content security policy that lets exactly this text run: 'sha256-…', quotes included.

    From memory, not read: W3C Content Security Policy Level 3, section 2.3.1.
    """
    return f"'sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()}'"


def _inside_script(data: str) -> str:
    """JSON that cannot end the script it stands in, whatever was typed into the records."""
    for sign in "<>&\u2028\u2029":
        data = data.replace(sign, f"\\u{ord(sign):04x}")
    return data


def _fill(page: str, parts: Mapping[str, str]) -> str:
    for name, part in parts.items():
        before, _, after = page.partition(f"%{name}%")
        page = before + part + after
    return page
