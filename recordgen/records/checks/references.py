"""Names in the records that must stand in the reference tables: measures and methods, care notes, cautions."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence

from recordgen.nearest import did_you_mean
from recordgen.problems import Problem, Step, as_typed, quoted, warning
from recordgen.public_holidays import regions_of
from recordgen.records.models.care_in_force import care_in_force
from recordgen.records.models.horse import Horse
from recordgen.records.models.names import ZONES
from recordgen.records.models.reference import CareWords, MeasureWords, Reference
from recordgen.records.models.settings import PracticeFile
from recordgen.records.models.stable import Stable
from recordgen.records.models.visit import ALL, Visit, alike
from recordgen.records.yaml.read import Written

# A care note in words has a space or a capital letter; a name has neither.
_NAME = re.compile("[a-z0-9]+(-[a-z0-9]+)+")


def unknown_in_practice(practice: Written[PracticeFile], reference: Reference) -> Iterator[Problem]:
    """The names in a practice's file that no table knows."""
    yield from _methods(practice, practice.record.methods, reference)
    yield from _region(practice)


def _region(practice: Written[PracticeFile]) -> Iterator[Problem]:
    country, region = practice.record.country, practice.record.region
    known = regions_of(country) if country and region else ()
    if region is None or region in known:
        return
    message = f"{quoted(region)} is no region of {country or 'a country'} that has public holidays of its own"
    way_out = f"Known are {', '.join(known)}" if known else "Add country:, such as GB"
    if country and not known:
        way_out = "Take region: out, and write the days you do not work in holidays:"
    yield Problem(practice.place("region"), "region-unknown", message, way_out)


def unknown_in_stable(stable: Written[Stable], stables: Sequence[str]) -> Iterator[Problem]:
    """The neighbours of a stable that are none of the practice's stables. stables: the names of their folders."""
    for index, name in enumerate(stable.record.near):
        if name not in stables:
            yield Problem(
                stable.place("near", index),
                "near-unknown",
                f"no stable is named {quoted(name)}",
                _nearest(name, stables),
            )


def unknown_in_horse(horse: Written[Horse], reference: Reference) -> Iterator[Problem]:
    """The measures in a horse's aims that no table knows, and zones where a measure has none or lacks one."""
    for index, aim in enumerate(horse.record.aims):
        words = reference.measures.get(aim.measure)
        if words is None:
            message = f"no measure is named {quoted(aim.measure)}"
            yield Problem(
                horse.place("aims", index, "measure"),
                "measure-unknown",
                message,
                _nearest(aim.measure, reference.measures),
            )
        elif words.by_zone != (aim.zone is not None):
            message = f"{aim.measure} is of {'a zone of the wall' if aim.zone is None else 'the whole foot'}"
            way_out = "Add zone:, such as lateral quarter" if aim.zone is None else "Take out zone:"
            yield Problem(horse.place("aims", index), "aim-zone", message, way_out)


def unknown_in_visit(visit: Written[Visit], reference: Reference) -> Iterator[Problem]:
    """The names in a visit that no table knows."""
    yield from _methods(visit, visit.record.methods, reference)
    for index, note in enumerate(visit.record.care):
        if _NAME.fullmatch(note.what) and note.what not in reference.care:
            message = f"no care note is named {quoted(note.what)}"
            yield Problem(visit.place("care", index), "care-note-unknown", message, _nearest(note.what, reference.care))
    for steps, caution in _ended(visit.record):
        if caution not in reference.cautions:
            message = f"no caution is named {quoted(caution)}"
            yield Problem(visit.place(*steps), "caution-unknown", message, _nearest(caution, reference.cautions))


def _ended(visit: Visit) -> Iterator[tuple[tuple[Step, ...], str]]:
    """The cautions that a visit says are over, and where it says so."""
    for index, over in enumerate(visit.resolved):
        yield ("resolved", index, "caution"), over.caution
    for index, entry in enumerate(visit.vet):
        yield from ((("vet", index, "ends", place), ended.caution) for place, ended in enumerate(entry.ends))


def ended_in_vain(visits: Sequence[Written[Visit]], library: Mapping[str, CareWords]) -> Iterator[Problem]:
    """The care notes that a visit ends and that are not in force then. visits: one horse's. library: the notes by name.

    Nothing is told from a visit on of which a part could not be read, since it may be the care notes.
    """
    in_order = sorted(visits, key=lambda visit: (visit.record.date, visit.file.stem))
    for count, visit in enumerate(in_order):
        if not visit.whole:
            return
        if not visit.record.care_ends:
            continue
        before = (earlier.record for earlier in in_order[:count])
        names = [one.note.what for one in care_in_force(before, library)]
        for index, name in enumerate(visit.record.care_ends):
            if alike(name) not in {ALL, *map(alike, names)}:
                message = f"no care note named {quoted(name)} is in force"
                yield warning(visit.place("care_ends", index), "care-end-not-in-force", message, _in_force(name, names))


def _in_force(typed: str, names: Sequence[str]) -> str:
    if not names:
        return "None is in force then; take it out"
    shown = [as_typed(name) for name in names]
    return did_you_mean(typed, shown, f"In force then: {', '.join(shown)}")


def _methods(
    written: Written[PracticeFile] | Written[Visit], methods: Mapping[str, str], reference: Reference
) -> Iterator[Problem]:
    for name, method in methods.items():
        words = _measure(name, reference)
        if words is None:
            taken = [key for key, measure in reference.measures.items() if measure.methods]
            message = f"no measure is named {quoted(name)}"
            yield Problem(written.place("methods", name), "measure-unknown", message, _nearest(name, taken))
        elif method not in words.methods:
            message = f"{name} is not taken by {quoted(method)}"
            yield Problem(
                written.place("methods", name), "method-unknown", message, f"Choose from {', '.join(words.methods)}"
            )


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
    return did_you_mean(typed, names, f"Known are {', '.join(names)}")
