"""A length that is more after the trim than before: what two readings can differ by, and what no trim can do."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping

from recordgen.problems import Problem, warning
from recordgen.records.models.foot import FootVisit, Measures, Sides
from recordgen.records.models.reference import Reference
from recordgen.records.models.visit import Visit
from recordgen.records.yaml.read import Written
from recordgen.records.yaml.typed_units import teller
from recordgen.sentences import say
from recordgen.units import decimal_inches

# Lengths that a trim takes from and cannot add to.
CANNOT_GROW = ("toe_length", "heel_height", "wall_height")
# SD of one reading where no table tells it, mm: that of a rule. Assumed, as in the table of measures.
USUAL_SD_MM = 1.0
# What whole millimetres are rounded by, as an SD. Source: JCGM 100:2008 (GUM), section F.2.2.1.
ROUNDING_SD_MM = 1 / math.sqrt(12)
# Two readings of the same length differ by more than so many of their SD in 1 of 100 cases. A limit of 5 in 100 would
# refuse one in 25 honest readings of a heel that was not touched. Derived from: the normal distribution.
COULD_DIFFER = 2.576 * math.sqrt(2)

Steps = tuple[str, ...]


def trim_problems(visit: Written[Visit], usual: Mapping[str, str], reference: Reference | None) -> Iterator[Problem]:
    """Each length that is more after the trim: unlikely as far as two readings can differ, and wrong beyond.

    usual: how the practice usually takes its measures. reference: the table with the errors of each way.
    """
    methods = {**usual, **visit.record.methods}
    for foot, found in visit.record.feet.items():
        for steps, before, after in _pairs(found):
            if after <= before:
                continue
            most = could_differ_mm("_".join(steps), methods, reference)
            document = visit.document()
            write, unit = teller(document.typed(("feet", foot, "after", *steps)), "mm")
            told = {"after": write(after), "before": write(before), "unit": unit}
            message = say(
                "{foot}, {steps}: {after} {unit} after, {before} {unit} before; a trim cannot add",
                foot=foot,
                steps=", ".join(steps),
                **told,
            )
            place = document.place(("feet", foot, "after", *steps))
            if after - before > most:
                way_out = say("Look whether before and after were swapped, or measure again")
                yield Problem(place, "longer-after-trim", message, way_out)
            else:
                apart = f"{most:.1f} mm" if unit == "mm" else f"{decimal_inches(most, 1)} {unit}"
                way_out = say("Measure again, or leave it: two readings can differ by {apart}", apart=apart)
                yield warning(place, "slightly-longer-after-trim", message, way_out)


def could_differ_mm(key: str, methods: Mapping[str, str], reference: Reference | None) -> float:
    """Tell how far two readings of one length can differ, mm. key: of the measure; methods: how each was taken."""
    words = reference.measures.get(key) if reference else None
    ways = words.methods if words else {}
    name = next((methods[one] for one in (key, key.rpartition("_")[0]) if one in methods), "")
    method = ways.get(name) or next(iter(ways.values()), None)
    return COULD_DIFFER * math.hypot(method.sd if method else USUAL_SD_MM, ROUNDING_SD_MM)


def _pairs(found: FootVisit) -> Iterator[tuple[Steps, float, float]]:
    if found.before is None or found.after is None:
        return
    before, after = _lengths(found.before), _lengths(found.after)
    yield from ((steps, before[steps], after[steps]) for steps in before if steps in after)


def _lengths(measures: Measures) -> dict[Steps, float]:
    lengths: dict[Steps, float | None] = {}
    for name in CANNOT_GROW:
        value = getattr(measures, name)
        if isinstance(value, Sides):
            lengths |= {(name, "medial"): value.medial, (name, "lateral"): value.lateral}
        else:
            lengths[(name,)] = value
    return {steps: length for steps, length in lengths.items() if length is not None}
