"""The open cautions of a horse, as a new visit holds them ready: what to type where one of them is over."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from recordgen.records.models.names import Foot, typed_foot


@dataclass(frozen=True)
class StillOpen:
    """A caution that is open: its name, its foot (None for the horse), what was seen, and whether it takes a vet."""

    caution: str
    foot: Foot | None
    seen: str
    needs_a_vet: bool

    def typed(self, near_and_off: bool) -> str:
        """Its name and its foot as a record holds them."""
        foot = f", foot: {typed_foot(self.foot, near_and_off)}" if self.foot else ""
        return f"caution: {self.caution}{foot}"


@dataclass(frozen=True)
class Ending:
    """One caution that may be over: its name and foot as typed, and what was seen."""

    typed: str
    seen: str


def endings(cautions: Sequence[StillOpen], near_and_off: bool) -> dict[bool, list[Ending]]:
    """What may be over, by whether it takes a vet; each name and foot once, with all that was seen of it."""
    found: dict[bool, dict[str, list[str]]] = {False: {}, True: {}}
    for one in cautions:
        found[one.needs_a_vet].setdefault(one.typed(near_and_off), []).append(one.seen)
    return {needs: [Ending(name, " ".join(seen)) for name, seen in by_name.items()] for needs, by_name in found.items()}
