"""Who may read a stable's site: ways in by words or by link, given and taken away. Each takes effect when published."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from recordgen.hoof.naming import Naming
from recordgen.private.shelf import Shelf
from recordgen.private.state import State
from recordgen.problems import Trouble, quoted
from recordgen.records.tables import read_reference
from recordgen.records.walk import SLUG


@dataclass(frozen=True)
class WayIn:
    """One way in: its id, whether by words or by link, and whom it was made for."""

    id: str
    by: Literal["words", "link"]
    name: str


def ways_in(state: State) -> list[WayIn]:
    """Every way into a site, oldest first."""
    return [
        WayIn(slot.id, "link" if slot.kind == "link" else "words", state.notes.get(slot.id, "")) for slot in state.slots
    ]


def link_of(address: str, secret: str) -> str:
    """The address that opens a site by itself; its last part never reaches the host."""
    return f"{address}#k={secret}"


def way_named(state: State, told: str) -> WayIn:
    """The way in with this id, or else the only one made for somebody of this name. Raises Trouble."""
    found = [way for way in ways_in(state) if way.id == told] or [way for way in ways_in(state) if way.name == told]
    if len(found) == 1:
        return found[0]
    ids = ", ".join(way.id for way in found or ways_in(state))
    if found:
        raise Trouble(f"there are {len(found)} ways in for {quoted(told)}", f"Name one by its id: {ids}")
    raise Trouble(f"there is no way in for {quoted(told)}", f"recordgen readers lists them; their ids are: {ids}")


@contextmanager
def changing(records: Path, slug: str) -> Iterator[State]:
    """A stable's keys, to be changed by nobody else meanwhile, and saved where the block ends well. Raises Trouble."""
    state_of(records, slug)
    with Shelf.of(records, slug).room():
        state = State.load(records, slug)
        yield state
        state.save()


def state_of(records: Path, slug: str) -> State:
    """The keys of a stable that was published. Raises Trouble where it has none."""
    refuse_unknown(records, slug)
    return State.load(records, slug)


def refuse_unknown(records: Path, slug: str) -> None:
    """Raises Trouble where the records hold no stable in a folder of that name."""
    if not SLUG.fullmatch(slug) or not (records / slug / "stable.yaml").is_file():
        raise Trouble(f"there is no stable {quoted(slug)}", "A stable is a folder with a stable.yaml in it")


def naming_of(records: Path) -> Naming:
    """The practice's own words, read without its records."""
    return Naming(read_reference(records)[0].phrases)
