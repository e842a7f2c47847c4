"""Sizes of a foot against what is likely for the animal: a foal's toe is shorter than that of a heavy horse."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass

from pydantic.fields import FieldInfo

from recordgen.problems import Problem, Step
from recordgen.records.models.annotations import extra
from recordgen.records.models.foot import FootVisit, Measures
from recordgen.records.models.horse import Horse
from recordgen.records.models.names import SizeClass
from recordgen.records.models.visit import Visit
from recordgen.records.yaml.read import Written, unusual
from recordgen.sentences import NOTHING, Said, say

_SIZES = {name: info for name, info in Measures.model_fields.items() if "by_class" in extra(info)}


_FOR_WHOM: dict[SizeClass, Said] = {
    "foal": say(" for foals"),
    "yearling": say(" for yearlings"),
    "donkey": say(" for donkeys"),
    "pony": say(" for ponies"),
    "heavy": say(" for heavy horses"),
    "horse": say(" for horses"),
}


@dataclass(frozen=True)
class Animal:
    """The class by which the size of an animal's feet goes; None where it is not known.

    named: for whom its ranges are, in words, such as ' for ponies'; none for any animal.
    """

    size: SizeClass | None = None
    named: Said = NOTHING

    @classmethod
    def of(cls, horse: Horse | None, day: dt.date) -> Animal:
        """The animal on a day."""
        size = horse.size_class(day) if horse else None
        return cls(size, _FOR_WHOM[size]) if size else cls()


ANY = Animal()


def size_problems(visit: Written[Visit], animal: Animal) -> Iterator[Problem]:
    """A warning for each size that is unlikely at its age and of its kind; of any animal where that is not known."""
    for foot, found in visit.record.feet.items():
        for steps, measures in _readings(found):
            for name, info in _SIZES.items():
                low, high = likely_for(info, animal.size)
                value = getattr(measures, name)
                if value is not None and not low <= value <= high:
                    at = ("feet", foot, *steps, name)
                    yield unusual(visit.document(), info, at, value, (low, high), animal.named)


def likely_for(info: FieldInfo, size: SizeClass | None) -> tuple[float, float]:
    """The likely range of a field for a class of animals; that of any animal where it has none by class."""
    told = extra(info)
    low, high = told["by_class"][size][:2] if size and "by_class" in told else told["likely"]
    return low, high


def _readings(found: FootVisit) -> Iterator[tuple[tuple[Step, ...], Measures]]:
    """The measures of a foot, those taken again among them, each with the steps to it."""
    for moment in ("before", "after"):
        if one := getattr(found, moment):
            yield (moment,), one
        for number, again in enumerate(getattr(found.repeat, moment)) if found.repeat else ():
            yield ("repeat", moment, number), again
