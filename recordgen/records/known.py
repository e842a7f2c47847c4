"""Names in the records that must stand in the reference tables: measures and methods, care notes, cautions."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterable, Iterator, Mapping

from recordgen.problems import Problem, quoted
from recordgen.records.horse import PracticeFile
from recordgen.records.names import ZONES
from recordgen.records.reading import Written
from recordgen.records.reference import MeasureWords, Reference
from recordgen.records.visit import Visit

# A care note in words has a space or a capital letter; a name has neither.
_NAME = re.compile("[a-z0-9]+(-[a-z0-9]+)+")


def unknown_in_practice(practice: Written[PracticeFile], reference: Reference) -> Iterator[Problem]:
    """The names in a practice's file that no table knows."""
    yield from _methods(practice, practice.record.methods, reference)


def unknown_in_visit(visit: Written[Visit], reference: Reference) -> Iterator[Problem]:
    """The names in a visit that no table knows."""
    yield from _methods(visit, visit.record.methods, reference)
    for index, note in enumerate(visit.record.care):
        if _NAME.fullmatch(note.what) and note.what not in reference.care:
            message = f"no care note is named {quoted(note.what)}"
            yield Problem(visit.place("care", index), message, _nearest(note.what, reference.care))
    for index, over in enumerate(visit.record.resolved):
        if over.caution not in reference.cautions:
            message = f"no caution is named {quoted(over.caution)}"
            yield Problem(
                visit.place("resolved", index, "caution"), message, _nearest(over.caution, reference.cautions)
            )


def _methods(
    written: Written[PracticeFile] | Written[Visit], methods: Mapping[str, str], reference: Reference
) -> Iterator[Problem]:
    for name, method in methods.items():
        words = _measure(name, reference)
        if words is None:
            taken = [key for key, measure in reference.measures.items() if measure.methods]
            message = f"no measure is named {quoted(name)}"
            yield Problem(written.place("methods", name), message, _nearest(name, taken))
        elif method not in words.methods:
            message = f"{name} is not taken by {quoted(method)}"
            yield Problem(written.place("methods", name), message, f"Choose from {', '.join(words.methods)}")


def _measure(name: str, reference: Reference) -> MeasureWords | None:
    sides = next((words for words in reference.measures.values() if (words.path or "").startswith(f"@.{name}.")), None)
    if sides:
        return sides
    zones = (f"_{zone.replace(' ', '_')}" for zone in ZONES)
    bare = next((name.removesuffix(zone) for zone in zones if name.removesuffix(zone) in reference.measures), name)
    words = reference.measures.get(name) or reference.measures.get(bare)
    return words if words and words.methods else None


def _nearest(typed: str, known: Iterable[str]) -> str:
    names = sorted(known)
    near = difflib.get_close_matches(typed.lower()[:60], names, n=1, cutoff=0.5)
    return f"Did you mean {near[0]}?" if near else f"Known are {', '.join(names)}"
