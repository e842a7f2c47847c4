"""Words that `recordgen init` left to be filled in, and that would stand on every page."""

from __future__ import annotations

from collections.abc import Iterator

from recordgen.problems import Problem, quoted
from recordgen.records.models.names import PLACEHOLDERS
from recordgen.records.models.settings import PracticeFile
from recordgen.records.models.stable import Stable
from recordgen.records.yaml.read import Written
from recordgen.sentences import say


def placeholder_problems(file: Written[PracticeFile] | Written[Stable]) -> Iterator[Problem]:
    """A problem for each name that is still the one written by `recordgen init`."""
    for key in ("name", "trimmer"):
        typed = str(getattr(file.record, key, ""))
        if typed in PLACEHOLDERS.values():
            message = say("{key}: {typed} was left to be filled in", key=key, typed=quoted(typed))
            yield Problem(
                file.place(key), "placeholder-left", message, say("Write {key}: and the right name behind it", key=key)
            )
