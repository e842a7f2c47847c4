"""Lengths without their unit where a practice measures in inches: what could be either is asked for, never guessed.

A number without a unit is millimetres (of a horse's body centimetres) in every practice, so that a file means the same
wherever it lies. Where feet are measured in inches, one that could be inches too may not stand: 81 can be no toe in
inches, 1.5 may be a heel in both.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Any

from recordgen.problems import Problem, Step, as_typed
from recordgen.records.models.annotations import extra, range_at
from recordgen.records.models.foot import Measures
from recordgen.records.models.foot_line import foot_line
from recordgen.records.models.horse import Horse
from recordgen.records.models.quantity import CENTIMETRES, MILLIMETRES, NotAQuantity, quantity
from recordgen.records.models.reference import Reference
from recordgen.records.yaml.read import Kind, Written, values
from recordgen.records.yaml.shapes import correct_line
from recordgen.records.yaml.tree import Document, typed_key
from recordgen.records.yaml.validation_errors import say_steps
from recordgen.sentences import OR, listed, say

_UNITS = {"mm": MILLIMETRES, "cm": CENTIMETRES}
# A number, or a fraction as no metric rule shows one; and no unit behind it.
_BARE = re.compile(r"[-+]?[0-9.]*(?P<fraction> *-?[0-9]* *(?:[0-9]+/[0-9]+|[¼½¾⅛⅜⅝⅞]))?")
# Written by the program, from the length of a rule in a picture.
_TRACED = "tracings"
# What an aim at a length may be at most, mm. Judgement.
LONGEST_AIM = (0.0, 200.0)


def bare_lengths(written: Written[Kind], reference: Reference | None = None) -> Iterator[Problem]:
    """Each length of a file that has no unit and could be millimetres or inches, with what to write.

    reference: the tables, which tell of which measures an aim is a length.
    """
    found = written.document()
    for steps, info, _ in values(written.record):
        told = extra(info)
        if told.get("unit") in _UNITS and _TRACED not in steps:
            yield from _unsure(found, steps, told["unit"], told["possible"], told["likely"])
    if isinstance(written.record, Horse) and reference:
        yield from _aims(found, written.record, reference)


def _aims(found: Document, horse: Horse, reference: Reference) -> Iterator[Problem]:
    for number, aim in enumerate(horse.aims):
        words = reference.measures.get(aim.measure)
        told = range_at(words.path) if words and words.path else None
        if (told.unit if told else words.unit if words else None) == "mm":
            for name in ("under", "over"):
                yield from _unsure(found, ("aims", number, name), "mm", LONGEST_AIM, LONGEST_AIM)


def _unsure(
    found: Document, steps: tuple[Step, ...], unit: str, possible: Sequence[float], likely: Sequence[float]
) -> Iterator[Problem]:
    """The problem of one length, where it has no unit and is possible in inches, or is written as inches are."""
    typed = _typed(found.values, steps)
    bare = _BARE.fullmatch(typed.strip()) if isinstance(typed, str) else None
    if bare is None or not (bare["fraction"] or _within(typed, "in", unit, possible)):
        return
    meant = ["in"] if bare["fraction"] else [one for one in (unit, "in") if _within(typed, one, unit, likely)]
    name, key = say_steps(found.typed_steps(steps)), as_typed(str(found.typed_steps(steps)[-1]))
    lines = [f"{key}: {typed.strip()} {one}" for one in (unit, "in")]
    both = say("Write {lines}", lines=listed(lines, OR))
    yield Problem(
        found.place(steps),
        "unit-missing",
        say("{name}: {typed} could be {unit} or inches", name=name, typed=as_typed(typed), unit=unit),
        correct_line(found.typed_steps(steps), f"{typed.strip()} {meant[0]}", both) if len(meant) == 1 else both,
    )


def _within(typed: str, as_unit: str, unit: str, limits: Sequence[float]) -> bool:
    try:
        return limits[0] <= quantity(f"{typed.strip()} {as_unit}", _UNITS[unit]) <= limits[1]
    except NotAQuantity:
        return False


def _typed(values_around: Any, steps: Sequence[Step]) -> Any:
    """The text that was typed at some steps, also within a line of measures; None where none stands there."""
    for step in steps:
        around = foot_line(values_around) if step in Measures.model_fields else values_around
        if isinstance(around, dict):
            key = typed_key(around.keys(), step)
            values_around = None if key is None else around[key]
        else:
            values_around = around[step] if isinstance(around, list) and isinstance(step, int) else None
    return values_around
