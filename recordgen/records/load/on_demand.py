"""A horse's visits as a sequence that is read, or unpacked, when it is first asked for, and forgotten after a while."""

from __future__ import annotations

import hashlib
import pickle
import zlib
from collections import OrderedDict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, TypeVar, overload

from recordgen.problems import Trouble
from recordgen.records.models.visit import Visit
from recordgen.records.yaml.read import Written, read_partly
from recordgen.sentences import say

Item = TypeVar("Item")
# So many horses' visits are at hand at a time: those of a stable. Judgement.
MOST_HORSES = 24


@dataclass(frozen=True)
class Packed:
    """Visits that were read, as bytes that a hundredth of the memory holds; they stay within this run's processes."""

    content: bytes

    @classmethod
    def of(cls, visits: Sequence[Written[Visit]]) -> Packed:
        """Some visits, packed."""
        return cls(zlib.compress(pickle.dumps(tuple(visits), pickle.HIGHEST_PROTOCOL), 1))

    def unpack(self) -> tuple[Written[Visit], ...]:
        """The same visits."""
        found: tuple[Written[Visit], ...] = pickle.loads(zlib.decompress(self.content))
        return found


class Shelf:
    """The visits of the horses that were asked for last."""

    def __init__(self, most: int = MOST_HORSES) -> None:
        self._most = most
        self._at_hand: OrderedDict[Path, tuple[Written[Visit], ...]] = OrderedDict()

    def take(self, visits: WrittenVisits) -> tuple[Written[Visit], ...]:
        """All visits of a horse."""
        found = self._at_hand.pop(visits.folder, None)
        self._at_hand[visits.folder] = found = visits.read_visits() if found is None else found
        if len(self._at_hand) > self._most:
            self._at_hand.popitem(last=False)
        return found

    def __getstate__(self) -> dict[str, Any]:
        """The state that another process gets: an empty shelf."""
        return {"_most": self._most, "_at_hand": OrderedDict()}


class _OnDemand(Sequence[Item]):
    """A sequence whose items are asked for each time."""

    def _all(self) -> tuple[Item, ...]:
        raise NotImplementedError

    @overload
    def __getitem__(self, index: int) -> Item: ...
    @overload
    def __getitem__(self, index: slice) -> tuple[Item, ...]: ...
    def __getitem__(self, index: int | slice) -> Item | tuple[Item, ...]:
        return self._all()[index]

    def __iter__(self) -> Iterator[Item]:
        return iter(self._all())

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Sequence) and self._all() == tuple(other)

    def __hash__(self) -> int:
        return hash(self._all())


@dataclass(frozen=True, eq=False)
class WrittenVisits(_OnDemand[Written[Visit]]):
    """The visits of a horse with the files they stand in.

    folder: the horse's; shown: the same as people see it. files: their names, in order. digests: by the name, the
    SHA-256 of what was read. packed: the visits, where they were parsed.
    """

    folder: Path
    shown: str
    files: tuple[str, ...]
    digests: Mapping[str, bytes]
    packed: Packed | None
    shelf: Shelf

    def __len__(self) -> int:
        return len(self.files)

    def _all(self) -> tuple[Written[Visit], ...]:
        return self.shelf.take(self) if self.files else ()

    def read_visits(self) -> tuple[Written[Visit], ...]:
        """The visits, unpacked or read again. Raises Trouble where one is not as it was when it was looked over."""
        return self.packed.unpack() if self.packed else tuple(map(self._read, self.files))

    def _read(self, name: str) -> Written[Visit]:
        shown = f"{self.shown}/{name}"
        written, _ = read_partly(self.folder / name, shown, Visit)
        if written and written.whole and hashlib.sha256(written.text).digest() == self.digests[name]:
            return written
        raise Trouble(say("{shown} was changed while it was being read", shown=shown), say("Run the command again"))


class RecordsOf(_OnDemand[Visit]):
    """The records alone of some visits."""

    def __init__(self, written: Sequence[Written[Visit]]) -> None:
        self._written = written

    def __len__(self) -> int:
        return len(self._written)

    def _all(self) -> tuple[Visit, ...]:
        return tuple(visit.record for visit in self._written)
