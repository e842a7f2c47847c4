"""One entry more in the log of what was shared; whatever stands there stays as it is."""

from __future__ import annotations

import yaml
from pydantic import ValidationError

from recordgen.problems import Trouble
from recordgen.records.models.horse import SHARED_FILE, Shared, SharedFile
from recordgen.records.write.templates import render_template, yaml_text
from recordgen.records.yaml.tree import document
from recordgen.sentences import say


def append_entry(before: str, entry: Shared, shown: str) -> str:
    """The text of a log with one entry more at its end; a new log where `before` is empty.

    shown: the log's path as people see it. Raises Trouble where an entry at the end would not stand in the list.
    """
    begun = before if before.strip() else render_template("shared.yaml.jinja")
    end = "\r\n" if "\r\n" in begun else "\n"
    longer = f"{begun if begun.endswith(end) else begun + end}{' ' * _column(begun)}- {_line(entry)}{end}"
    if _entries(longer) != (*(_entries(before) or ()), entry):
        raise Trouble(
            say("{shown}: nothing can be added at its end", shown=shown),
            say("Let the list under shared: be the last thing in the file, an entry a line"),
        )
    return longer


def _line(entry: Shared) -> str:
    parts = [f"date: {entry.date}", f"to: {yaml_text(entry.to)}", f"edition: {yaml_text(entry.edition)}"]
    if entry.until:
        parts.append(f"until: {entry.until}")
    parts.append(f"what: [{', '.join(entry.what)}]")
    return f"{{{', '.join(parts)}}}"


def _column(text: str) -> int:
    """The place where the dashes of the list stand."""
    root = document(SHARED_FILE, text.encode()).root
    lists = [item for _, item in root.value] if isinstance(root, yaml.MappingNode) else []
    return next((one.start_mark.column for one in lists if isinstance(one, yaml.SequenceNode)), 2)


def _entries(text: str) -> tuple[Shared, ...] | None:
    """The entries of a log; None where it cannot be read."""
    found = document(SHARED_FILE, text.encode())
    try:
        return None if found.problems else SharedFile.model_validate(found.values).shared
    except ValidationError:
        return None
