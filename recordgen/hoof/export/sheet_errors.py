"""Tell how a reading was taken and how large its error is: by what way, and whether anybody published that."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal, get_args

from recordgen.hoof.context import Context
from recordgen.hoof.measures.look import Look
from recordgen.hoof.measures.measures import Measure
from recordgen.hoof.measures.readings import Moment
from recordgen.records.models.reference import TRACING, Method

# Where the error of a reading comes from, the weakest first.
ErrorBasis = Literal["assumed", "own", "published"]


@dataclass(frozen=True)
class ReadingMethod:
    """The way a reading was taken: its name, the sd of one reading in the unit of the measure, and the source of that.

    error: whether the sd is assumed, published, or found in the practice's own readings; of a computed measure, the
    weakest of its parts.
    """

    way: str
    sd: float
    error: ErrorBasis
    source: str


def reading_method(measure: Measure, look: Look, moment: Moment, own_source: str) -> ReadingMethod:
    """Tell how a reading of one look was taken.

    moment: of the reading, which must be there. own_source: as `own_source_pattern` tells.
    """
    ways = list(_ways(measure, look, moment))
    known = [_error_basis(method, own_source) for _, method in ways]
    return ReadingMethod(
        way=" and ".join(dict.fromkeys(name for name, _ in ways)),
        sd=look.sd(measure, moment),
        error=min(known, key=get_args(ErrorBasis).index),
        source="; ".join(dict.fromkeys(method.source for _, method in ways)),
    )


def _ways(measure: Measure, look: Look, moment: Moment) -> Iterator[tuple[str, Method]]:
    """The name of the way and the way itself; of a computed measure, those of its parts."""
    if measure.parts:
        for part in measure.parts:
            yield from _ways(part, look, moment)
        return
    way = TRACING if measure.key in look.traced.get(moment, {}) else measure.way(look.methods)
    yield way, measure.words.methods[way]


def _error_basis(method: Method, own_source: str) -> ErrorBasis:
    if method.assumed:
        return "assumed"
    return "own" if re.fullmatch(own_source, method.source) else "published"


def own_source_pattern(ways: Context) -> str:
    """A pattern of the words in which the table tells of a practice's own errors, whatever the numbers in them."""
    return re.sub(r"\\\{\w+\\\}", r"\\d+", re.escape(ways.naming.phrases["repeat_source"]))
