"""Whom a caution asks to ring, with the number as recorded; and which numbers the records lack."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from recordgen.hoof.naming import Naming
from recordgen.hoof.summary import HorseSummary, StableSummary
from recordgen.records.models.horse import Horse
from recordgen.records.models.reference import Whom
from recordgen.records.models.settings import PracticeFile
from recordgen.records.models.stable import Contact, Stable


@dataclass(frozen=True)
class Ring:
    """Somebody to ring: the name as recorded, or plain words where none is; None where no number is recorded."""

    name: str
    phone: str | None


@dataclass(frozen=True)
class NumbersMissing:
    """A stable without a vet's number for some of its horses, so that their pages can say no more than your vet."""

    stable: StableSummary
    horses: tuple[HorseSummary, ...]


def vet_of(horse: Horse, stable: Stable) -> Contact | None:
    """The horse's own vet, or else the stable's."""
    return horse.vet or stable.vet


def whom_to_ring(
    whom: Sequence[Whom], horse: Horse, stable: Stable, practice: PracticeFile, naming: Naming
) -> tuple[Ring, ...]:
    """Those to ring, in the order of the caution."""
    vet = vet_of(horse, stable)
    known = {
        "vet": Ring(vet.name, vet.phone) if vet else Ring(naming.phrase("ring_your_vet"), None),
        "trimmer": Ring(practice.trimmer, practice.phone),
    }
    return tuple(known[one] for one in whom)


def numbers_missing(stables: Iterable[StableSummary]) -> tuple[NumbersMissing, ...]:
    """The stables where a vet's number is missing, each with the horses that lack it."""
    found = (NumbersMissing(stable, tuple(_without_number(stable))) for stable in stables)
    return tuple(one for one in found if one.horses)


def _without_number(stable: StableSummary) -> Iterable[HorseSummary]:
    for horse in stable.present:
        vet = vet_of(horse.horse, stable.stable)
        if vet is None or not vet.phone:
            yield horse
