"""Sizes of a foot against what is likely for the animal: a foal's toe is shorter than that of a heavy horse."""

from __future__ import annotations

from collections.abc import Iterator

from recordgen.problems import Problem, Step
from recordgen.records.models.annotations import extra
from recordgen.records.models.foot import FootVisit, Measures
from recordgen.records.models.horse import Horse
from recordgen.records.models.names import SizeClass
from recordgen.records.models.visit import Visit
from recordgen.records.yaml.read import Written, unusual

_NAMES: dict[SizeClass, str] = {
    "foal": "foals",
    "yearling": "yearlings",
    "donkey": "donkeys",
    "pony": "ponies",
    "heavy": "heavy horses",
    "horse": "horses",
}
_SIZES = {name: told for name, info in Measures.model_fields.items() if "by_class" in (told := extra(info))}


def size_problems(visit: Written[Visit], horse: Horse | None) -> Iterator[Problem]:
    """A warning for each size that is unlikely at its age and of its kind; of any animal where that is not known."""
    size = horse.size_class(visit.record.date) if horse else None
    of_whom = f" for {_NAMES[size]}" if size else ""
    for foot, found in visit.record.feet.items():
        for steps, measures in _readings(found):
            for name, told in _SIZES.items():
                low, high = told["by_class"][size][:2] if size else told["likely"]
                value = getattr(measures, name)
                if value is not None and not low <= value <= high:
                    at = ("feet", foot, *steps, name)
                    yield unusual(visit.document(), Measures.model_fields[name], at, value, (low, high), of_whom)


def _readings(found: FootVisit) -> Iterator[tuple[tuple[Step, ...], Measures]]:
    """The measures of a foot, those taken again among them, each with the steps to it."""
    for moment in ("before", "after"):
        if one := getattr(found, moment):
            yield (moment,), one
        for number, again in enumerate(getattr(found.repeat, moment)) if found.repeat else ():
            yield ("repeat", moment, number), again
