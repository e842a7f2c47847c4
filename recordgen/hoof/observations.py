"""Observations of a visit: findings on each foot at their places, in words, and what else changes feet."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Literal

from recordgen.hoof.naming import Naming
from recordgen.records.models.foot import FootVisit, Separation, WallZone
from recordgen.records.models.names import PLACES, ZONES, FindingKind, Foot, Place, Zone
from recordgen.records.models.visit import Visit

EventKind = Literal["feed", "boots", "vet"]


@dataclass(frozen=True)
class Event:
    """Something that changes feet, on the day of the visit that told of it (or the vet's day)."""

    day: date
    kind: EventKind
    text: str


@dataclass(frozen=True)
class Finding:
    """Something seen on a foot, at a place, in words. size_mm is None where no size was recorded."""

    foot: Foot
    place: Place
    kind: FindingKind
    text: str
    size_mm: float | None = None


Look = Callable[[Foot, FootVisit, Naming], Iterator[Finding]]


def findings_of(foot: Foot, found: FootVisit, naming: Naming) -> tuple[Finding, ...]:
    """All findings of one foot at one visit, in the order of the record."""
    return tuple(finding for look in LOOKS for finding in look(foot, found, naming))


def _walls(foot: Foot, found: FootVisit, naming: Naming) -> Iterator[Finding]:
    for zone in ZONES:
        wall = (found.wall or {}).get(zone)
        if wall:
            yield from _wall(foot, zone, wall, naming)


def _wall(foot: Foot, zone: Zone, wall: WallZone, naming: Naming) -> Iterator[Finding]:
    if wall.flare:
        yield Finding(foot, zone, "flare", naming.phrase("finding_flare", size=naming.mm(wall.flare)), wall.flare)
    gap = wall.separation
    if gap and not _is_closed(gap):
        size = naming.size(gap.length, gap.depth)
        yield Finding(foot, zone, "separation", naming.phrase("finding_separation", size=size), gap.depth)
    if wall.crack:
        size = naming.size(wall.crack.length, None)
        yield Finding(foot, zone, "crack", naming.phrase("finding_crack", size=size), wall.crack.length)
    if wall.chip:
        yield Finding(foot, zone, "chip", naming.phrase("finding_chip", size=naming.mm(wall.chip)), wall.chip)
    if wall.bruise:
        yield Finding(foot, zone, "bruise", naming.phrase("finding_bruise"))
    if wall.white_line_blood:
        yield Finding(foot, zone, "blood", naming.phrase("finding_white_line_blood"))


def _is_closed(gap: Separation) -> bool:
    sizes = [size for size in (gap.length, gap.depth) if size is not None]
    return bool(sizes) and not any(sizes)


def _frog(foot: Foot, found: FootVisit, naming: Naming) -> Iterator[Finding]:
    frog = found.frog
    if frog and frog.infection and frog.infection != "none":
        place: Place = "frog" if frog.infection == "surface" else "central groove"
        text = naming.phrase("finding_infection", how=naming.phrase(f"infection_{frog.infection.replace(' ', '_')}"))
        yield Finding(foot, place, "infection", text)
    if frog and frog.tissue and frog.tissue != "usual":
        yield Finding(foot, "frog", "tissue", naming.phrase("finding_tissue", how=naming.value(frog.tissue)))


def _sole(foot: Foot, found: FootVisit, naming: Naming) -> Iterator[Finding]:
    sole = found.sole
    if sole and sole.bruise:
        yield Finding(foot, "sole", "bruise", naming.phrase("finding_bruise"))
    if sole and sole.sensitive:
        yield Finding(foot, "sole", "sensitive", naming.phrase("finding_sensitive"))
    if sole and sole.gives:
        yield Finding(foot, "sole", "gives", naming.phrase("finding_gives"))
    if sole and sole.shape and sole.shape != "hollow":
        yield Finding(foot, "sole", "shape", naming.phrase("finding_shape", how=naming.value(sole.shape)))


def _urgent(foot: Foot, found: FootVisit, naming: Naming) -> Iterator[Finding]:
    if found.object:
        key = "finding_object" if found.object.still_in else "finding_object_out"
        text = naming.phrase(key, how=found.object.what)
        yield Finding(foot, _drawn_place(found.object.where), "object", text)
    if found.wound:
        key = "finding_wound_healed" if found.wound.healed else "finding_wound"
        yield Finding(foot, found.wound.where, "wound", naming.phrase(key))
    if found.abscess:
        text = naming.phrase("finding_abscess", how=naming.value(found.abscess.state or "suspected"))
        yield Finding(foot, _drawn_place(found.abscess.where), "abscess", text)
    if found.hairline_dip:
        yield Finding(foot, "coronet", "dip", naming.phrase("finding_dip"))
    if found.drew_blood:
        yield Finding(foot, "sole", "blood", naming.phrase("finding_drew_blood"))


def _drawn_place(where: str) -> Place:
    return next((place for place in PLACES if place == where), "sole")


def _marks(foot: Foot, found: FootVisit, naming: Naming) -> Iterator[Finding]:
    for mark in found.marks:
        text = naming.phrase("finding_mark", how=naming.value(mark.kind), size=naming.mm(mark.below_hairline))
        yield Finding(foot, mark.zone, "mark", text, mark.below_hairline)


LOOKS: tuple[Look, ...] = (_walls, _frog, _sole, _urgent, _marks)


def events_of(visits: Sequence[Visit]) -> tuple[Event, ...]:
    """The events of a horse's visits by day; boots only where they are others than before. visits: oldest first."""
    found: list[Event] = []
    boots = None
    for visit in visits:
        if visit.keeping and visit.keeping.feed_change:
            found.append(Event(visit.date, "feed", visit.keeping.feed_change))
        if visit.keeping and visit.keeping.boots and visit.keeping.boots != boots:
            boots = visit.keeping.boots
            found.append(Event(visit.date, "boots", boots))
        found += [Event(entry.date, "vet", entry.words or entry.by) for entry in visit.vet if entry.kind == "seen"]
    return tuple(sorted(found, key=lambda event: (event.day, event.kind, event.text)))
