"""Open cautions as a trimmer types them: by the name and the foot that end them."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from recordgen.hoof.cautions.cautions import Caution, compute_caution_book
from recordgen.hoof.cautions.timeline import Timeline
from recordgen.hoof.context import Context
from recordgen.hoof.naming import Naming
from recordgen.records.models.horse import Horse
from recordgen.records.models.names import typed_foot
from recordgen.records.models.visit import StillOpen, Visit


def still_open(horse: Horse, visits: Sequence[Visit], ways: Context, day: date) -> tuple[StillOpen, ...]:
    """Cautions that may be over by a day's new visit, the most urgent first. visits: those before it, oldest first."""
    opened = compute_caution_book(Timeline(horse, visits, ways), None, day).open
    return tuple(StillOpen(one.rule, one.foot, one.seen, one.needs_a_vet) for one in opened)


def name_to_type(caution: Caution, naming: Naming) -> str:
    """The name that ends it, with its foot: pulse, left_fore."""
    return f"{caution.rule}, {typed_foot(caution.foot, naming.near_and_off)}" if caution.foot else caution.rule


def names_to_type(cautions: Sequence[Caution], naming: Naming) -> list[str]:
    """Each level with the names of its cautions, those of one name once; the most urgent first."""
    by_level: dict[str, list[str]] = {}
    for one in cautions:
        by_level.setdefault(one.level, []).append(name_to_type(one, naming))
    return [f"{naming.level(level)}: {'; '.join(dict.fromkeys(names))}" for level, names in by_level.items()]
