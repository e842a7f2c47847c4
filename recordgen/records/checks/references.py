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
from recordgen.sentences import Said, say

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
    message = say(
        "{region} is no region of {country} that has public holidays of its own",
        region=quoted(region),
        country=country or say("a country"),
    )
    way_out = say("Known are {known}", known=", ".join(known)) if known else say("Add country:, such as GB")
    if country and not known:
        way_out = say("Take region: out, and write the days you do not work in holidays:")
    yield Problem(practice.place("region"), "region-unknown", message, way_out)


def unknown_in_stable(stable: Written[Stable], stables: Sequence[str]) -> Iterator[Problem]:
    """The neighbours of a stable that are none of the practice's stables. stables: the names of their folders."""
    for index, name in enumerate(stable.record.near):
        if name not in stables:
            yield Problem(
                stable.place("near", index),
                "near-unknown",
                say("no stable is named {name}", name=quoted(name)),
                _nearest(name, stables),
            )


def unknown_in_horse(horse: Written[Horse], reference: Reference) -> Iterator[Problem]:
    """The measures in a horse's aims that no table knows, and zones where a measure has none or lacks one."""
    for index, aim in enumerate(horse.record.aims):
        words = reference.measures.get(aim.measure)
        if words is None:
            message = say("no measure is named {measure}", measure=quoted(aim.measure))
            yield Problem(
                horse.place("aims", index, "measure"),
                "measure-unknown",
                message,
                _nearest(aim.measure, reference.measures),
            )
        elif words.by_zone != (aim.zone is not None):
            message = say("{measure} is of a zone of the wall", measure=aim.measure)
            if aim.zone is not None:
                message = say("{measure} is of the whole foot", measure=aim.measure)
            way_out = say("Add zone:, such as lateral quarter") if aim.zone is None else say("Take out zone:")
            yield Problem(horse.place("aims", index), "aim-zone", message, way_out)


def unknown_in_visit(visit: Written[Visit], reference: Reference) -> Iterator[Problem]:
    """The names in a visit that no table knows."""
    yield from _methods(visit, visit.record.methods, reference)
    for index, note in enumerate(visit.record.care):
        if _NAME.fullmatch(note.what) and note.what not in reference.care:
            message = say("no care note is named {what}", what=quoted(note.what))
            yield Problem(visit.place("care", index), "care-note-unknown", message, _nearest(note.what, reference.care))
    for steps, caution in _ended_cautions(visit.record):
        if caution not in reference.cautions:
            message = say("no caution is named {caution}", caution=quoted(caution))
            yield Problem(visit.place(*steps), "caution-unknown", message, _nearest(caution, reference.cautions))


def _ended_cautions(visit: Visit) -> Iterator[tuple[tuple[Step, ...], str]]:
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
                message = say("no care note named {name} is in force", name=quoted(name))
                yield warning(visit.place("care_ends", index), "care-end-not-in-force", message, _in_force(name, names))


def _in_force(typed: str, names: Sequence[str]) -> Said:
    if not names:
        return say("None is in force then; take it out")
    shown = [as_typed(name) for name in names]
    return did_you_mean(typed, shown, say("In force then: {shown}", shown=", ".join(shown)))


def _methods(
    written: Written[PracticeFile] | Written[Visit], methods: Mapping[str, str], reference: Reference
) -> Iterator[Problem]:
    for name, method in methods.items():
        words = _measure(name, reference)
        if words is None:
            taken = [key for key, measure in reference.measures.items() if measure.methods]
            message = say("no measure is named {name}", name=quoted(name))
            yield Problem(written.place("methods", name), "measure-unknown", message, _nearest(name, taken))
        elif method not in words.methods:
            message = say("{name} is not taken by {method}", name=name, method=quoted(method))
            yield Problem(
                written.place("methods", name),
                "method-unknown",
                message,
                say("Choose from {methods}", methods=", ".join(words.methods)),
            )


def _measure(name: str, reference: Reference) -> MeasureWords | None:
    sides = next((words for words in reference.measures.values() if (words.path or "").startswith(f"@.{name}.")), None)
    if sides:
        return sides
    zones = (f"_{zone.replace(' ', '_')}" for zone in ZONES)
    bare = next((name.removesuffix(zone) for zone in zones if name.removesuffix(zone) in reference.measures), name)
    words = reference.measures.get(name) or reference.measures.get(bare)
    return words if words and words.methods else None


def _nearest(typed: str, known: Iterable[str]) -> Said:
    names = sorted(known)
    return did_you_mean(typed, names, say("Known are {names}", names=", ".join(names)))
