"""What changed feet between visits, as the visits tell it: feed, boots, a vet."""

from __future__ import annotations

from collections.abc import Sequence

from recordgen.hoof.series import Event
from recordgen.records.visit import Visit


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
