"""All that a column of a sheet can be: the horse, the day, the foot, or a value of a visit or of a foot."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Literal, get_args

from recordgen.nearest import did_you_mean
from recordgen.records.models.foot import FootVisit
from recordgen.records.models.names import FEET, Foot, foot_named
from recordgen.records.models.visit import Visit
from recordgen.records.sheets.columns import NOTHING
from recordgen.records.sheets.leaves import Leaf, leaves
from recordgen.sentences import Said, say

# Tells whose row it is. number: tells visits of one horse and day apart.
Role = Literal["horse", "stable", "date", "foot", "number"]
ROLES: tuple[Role, ...] = get_args(Role)
THE_FOOT: Literal["foot"] = "foot"
# Measures of a foot in one line, as in a visit's file.
_LINES = ("before", "after")


@dataclass(frozen=True)
class Target:
    """The meaning of a column. role: where it tells whose row it is. foot: of one foot, or of the foot of the row.

    steps: the value's, within the foot or the visit. leaf: None for measures in one line.
    """

    role: Role | None = None
    steps: tuple[str, ...] = ()
    leaf: Leaf | None = None
    foot: Foot | Literal["foot"] | None = None

    def at(self, row_foot: Foot | None) -> tuple[str, ...]:
        """The steps in a visit's record. row_foot: the foot of the row."""
        if self.foot is None:
            return self.steps
        foot = row_foot if self.foot == THE_FOOT else self.foot
        assert foot is not None
        return ("feet", foot, *self.steps)


def target_of(typed: str) -> Target | None:
    """The meaning of what stands behind `is:`; None where it names nothing that can be."""
    if typed in ROLES:
        return Target(role=next(role for role in ROLES if role == typed))
    first, _, rest = typed.partition(".")
    foot = THE_FOOT if first == THE_FOOT else foot_named(first)
    if foot is not None and rest:
        if rest in _LINES:
            return Target(steps=(rest,), foot=foot)
        leaf = _by_path()[FootVisit.__name__].get(rest)
        return Target(steps=leaf.steps, leaf=leaf, foot=foot) if leaf else None
    leaf = _by_path()[Visit.__name__].get(typed)
    return Target(steps=leaf.steps, leaf=leaf) if leaf and typed != "date" else None


def target_meant(typed: str) -> Said:
    """The way out where a name stands for nothing."""
    return did_you_mean(
        typed,
        target_names(),
        say("Write one of {roles}, a path of a visit, or {nothing}", roles=", ".join(ROLES), nothing=NOTHING),
    )


@cache
def target_names() -> tuple[str, ...]:
    """All that a column can be, as it is typed."""
    paths = _by_path()
    of_feet = [f"{foot}.{path}" for foot in (THE_FOOT, *FEET) for path in (*paths[FootVisit.__name__], *_LINES)]
    return (*ROLES, NOTHING, *(path for path in paths[Visit.__name__] if path != "date"), *of_feet)


@cache
def _by_path() -> dict[str, dict[str, Leaf]]:
    return {model.__name__: {leaf.path: leaf for leaf in _in_a_cell(model)} for model in (Visit, FootVisit)}


def _in_a_cell(model: type[Visit | FootVisit]) -> Iterator[Leaf]:
    return (leaf for leaf in leaves(model) if leaf.kind in ("value", "words", "seen"))
