"""One horse in two records: by its microchip or UELN, which no two horses share; and one name for two horses."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

from recordgen.problems import Problem, quoted, warning
from recordgen.records.models.horse import Horse
from recordgen.records.yaml.read import Written
from recordgen.sentences import say

IDENTITIES = ("microchip", "ueln")


def duplicate_problems(horses: Sequence[Written[Horse]]) -> Iterator[Problem]:
    """Two records of one horse of which neither has ended. horses: in the order of their files."""
    present = [horse for horse in horses if horse.record.left is None]
    for name in IDENTITIES:
        seen: dict[str, Written[Horse]] = {}
        for horse in present:
            number = getattr(horse.record, name)
            if number is None:
                continue
            first = seen.setdefault(number, horse)
            if first is not horse:
                message = say(
                    "the {name} {number} stands in {first} too", name=name, number=quoted(number), first=first.within
                )
                way_out = say("Correct one of the two; where the horse moved, write left: in the record that ended")
                yield warning(horse.place(name), "horse-twice", message, way_out)


def namesakes(horses: Sequence[Written[Horse]]) -> Iterator[Problem]:
    """Two horses of one stable with the same name, of which neither has left. horses: in the order of their files."""
    seen: dict[tuple[Path, str], Written[Horse]] = {}
    for horse in horses:
        if horse.record.left is None:
            name = " ".join(horse.record.name.casefold().split())
            first = seen.setdefault((horse.file.parent.parent, name), horse)
            if first is not horse:
                message = say(
                    "the name {horse} stands in {first} too", horse=quoted(horse.record.name), first=first.within
                )
                way_out = say("Tell the two apart, such as by Bramble (grey); delete one if it is one horse")
                yield warning(horse.place("name"), "horse-namesake", message, way_out)


def is_same(one: Horse, other: Horse) -> bool:
    """Tell whether two records tell the same microchip or UELN."""
    return any(getattr(one, name) is not None and getattr(one, name) == getattr(other, name) for name in IDENTITIES)
