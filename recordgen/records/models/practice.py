"""A practice as it was read: its stables, their horses, each horse's visits in order."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path

from recordgen.nearest import did_you_mean
from recordgen.problems import Trouble, quoted
from recordgen.records.models.horse import Horse, Shared
from recordgen.records.models.lines.shape_table import SHIPPED, ShapeTable
from recordgen.records.models.settings import PracticeFile
from recordgen.records.models.stable import Stable
from recordgen.records.models.visit import Visit
from recordgen.records.pages.model import OwnPages
from recordgen.records.photos.files import Photo
from recordgen.records.yaml.read import Written
from recordgen.sentences import say


@dataclass(frozen=True)
class VisitPrint:
    """The part of a visit that is known without its record: its file, its day, and what tells whether it was copied.

    repeats: whether a reading was taken more than once. outline: the hash of a few of its readings. readings: the hash
    of all of them and how many they are; None where the outline hardly ever is that of another.
    """

    file: str
    day: date
    repeats: bool
    outline: str
    readings: tuple[str, int] | None


@dataclass(frozen=True)
class HorseRecord:
    """One horse: its file, and its visits, oldest first; of a practice that was read they are parsed when asked for.

    written: the same visits with the files they stand in. prints: what is known of them without asking. earlier:
    records of the same horse that ended elsewhere, such as fallow-end/otter. shared: whom the record was shared with,
    in the order of the file. photos: its photographs by day, foot, view and moment.
    """

    slug: str
    stable: str
    horse: Horse
    visits: Sequence[Visit]
    written: Sequence[Written[Visit]] = ()
    prints: tuple[VisitPrint, ...] = ()
    earlier: tuple[str, ...] = ()
    shared: tuple[Shared, ...] = ()
    photos: tuple[Photo, ...] = ()


@dataclass(frozen=True)
class StableRecord:
    """One stable: its file, its horses, sorted by name, and the pages for its site alone."""

    slug: str
    stable: Stable
    horses: tuple[HorseRecord, ...]
    pages: OwnPages = field(default_factory=OwnPages)


@dataclass(frozen=True)
class Practice:
    """A whole practice as read. pages: its own, for every site; those of a stable stand with the stable.

    outlines: the table by which soles are traced from now on.
    """

    folder: Path
    file: PracticeFile
    stables: tuple[StableRecord, ...]
    pages: OwnPages = field(default_factory=OwnPages)
    outlines: ShapeTable = SHIPPED

    @property
    def horses(self) -> tuple[HorseRecord, ...]:
        """All horses of all stables."""
        return tuple(horse for stable in self.stables for horse in stable.horses)

    def horse(self, stable: str, horse: str) -> HorseRecord:
        """One horse by the names of its folders. Raises Trouble where there is none."""
        here = [record for record in self.horses if record.stable == stable]
        found = next((record for record in here if record.slug == horse), None)
        if found is None:
            names = [record.slug for record in here]
            way_out = did_you_mean(
                horse, names, say("The horses there are: {names}", names=", ".join(names) or say("none"))
            )
            raise Trouble(
                say("there is no horse {horse} at {stable}", horse=quoted(horse), stable=quoted(stable)), way_out
            )
        return found

    @property
    def visit_count(self) -> int:
        """Tell how many visits were read."""
        return sum(len(horse.visits) for horse in self.horses)
