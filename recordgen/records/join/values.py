"""Three states of a record compared value by value: what one side changed is taken, what both changed is a clash."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from recordgen.records.models.names import foot_named, zone_named

Path = tuple[str, ...]


@dataclass(frozen=True)
class Clash:
    """One value that both sides changed, each otherwise; None where a side took it out."""

    steps: Path
    here: Any
    there: Any


@dataclass
class MergedRecord:
    """A record joined out of two. clashes: values at which the side here stands until somebody decides."""

    values: dict[str, Any]
    clashes: list[Clash] = field(default_factory=list)

    def settle(self, clash: Clash, value: Any) -> None:
        """Put a value at the place of a clash, or take the key out where None."""
        around = self.values
        for step in clash.steps[:-1]:
            around = around.setdefault(step, {})
        if value is None:
            around.pop(clash.steps[-1], None)
        else:
            around[clash.steps[-1]] = value


def merge(before: Mapping[str, Any], here: Mapping[str, Any], there: Mapping[str, Any]) -> MergedRecord:
    """Join two states of a record that came out of one. What is empty counts as not written."""
    found = MergedRecord({})
    found.values = _group(_with_one_name(before), _with_one_name(here), _with_one_name(there), (), found.clashes)
    return found


def _with_one_name(value: Any, within: str = "") -> Any:
    """A value with feet and zones under their one name, less all that is empty."""
    if isinstance(value, Mapping):
        kept = {_name(key, within): _with_one_name(inner, key) for key, inner in value.items()}
        return {key: inner for key, inner in kept.items() if inner is not None}
    if isinstance(value, list):
        return [inner for inner in map(_with_one_name, value) if inner is not None]
    return value


def _name(key: str, within: str) -> str:
    if within == "feet":
        return foot_named(key) or key
    return (zone_named(key) or key) if within == "wall" else key


def _group(before: Any, here: Any, there: Any, steps: Path, clashes: list[Clash]) -> dict[str, Any]:
    keys = [*here, *(key for key in there if key not in here)]
    found = {}
    for key in keys:
        value = _value(before.get(key), here.get(key), there.get(key), (*steps, key), clashes)
        if value is not None:
            found[key] = value
    return found


def _value(before: Any, here: Any, there: Any, steps: Path, clashes: list[Clash]) -> Any:
    if there in (here, before):
        return here
    if here == before:
        return there
    if isinstance(here, Mapping) and isinstance(there, Mapping):
        return _group(before if isinstance(before, Mapping) else {}, here, there, steps, clashes)
    if isinstance(here, list) and isinstance(there, list):
        both = _list(before if isinstance(before, list) else [], here, there)
        if both is not None:
            return both
    clashes.append(Clash(steps, here, there))
    return here


def _list(before: list[Any], here: list[Any], there: list[Any]) -> list[Any] | None:
    """Two lists that only grew at their ends: what was there, what came here, what came there; None otherwise."""
    length = len(before)
    if here[:length] != before or there[:length] != before:
        return None
    return [*here, *(item for item in there[length:] if item not in here[length:])]
