"""Remarks on the records of a horse: nothing that stops a build, with its place."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from recordgen.hoof.age_class import care_class
from recordgen.hoof.care.advice import Advice
from recordgen.hoof.context import Context
from recordgen.hoof.growth.cycles import DoubtedCycle
from recordgen.hoof.growth.growth import HorseGrowth
from recordgen.hoof.measures.measures import Measure
from recordgen.hoof.naming import Naming
from recordgen.hoof.tracing.readings import Disagreement, PicturesApart, disagreements, pictures_apart
from recordgen.problems import Step
from recordgen.records.models.foot import FootVisit
from recordgen.records.models.horse import Horse
from recordgen.records.models.names import Foot
from recordgen.records.models.visit import Visit


@dataclass(frozen=True)
class Remark:
    """One thing to look at: the number of the visit it stands in, where in it, its code, what, and what to do."""

    visit: int
    steps: tuple[Step, ...]
    code: str
    text: str
    way_out: str


def growth_remarks(growth: HorseGrowth, visits: Sequence[Visit], naming: Naming) -> Iterator[Remark]:
    """The cycles of growth that are named rather than used. visits: oldest first."""
    for foot, found in growth.feet.items():
        for doubted in found.left_out:
            # A break of many weeks is told among the gaps.
            if doubted.why != "too long":
                yield _growth_remark(foot, doubted, visits, naming)


def care_remarks(advised: Sequence[Advice], visits: Sequence[Visit]) -> Iterator[Remark]:
    """The care notes to consider after the last visit. visits: oldest first."""
    for advice in advised:
        number = max(count for count, visit in enumerate(visits) if visit.date == advice.day)
        yield Remark(number, tuple(advice.steps), "care-suggested", advice.text, "")


def next_remarks(horse: Horse, visits: Sequence[Visit], ways: Context) -> Iterator[Remark]:
    """A next visit that was set later than the class of the animal usually needs it. visits: oldest first."""
    wanted = visits[-1].next if visits and not horse.left else None
    if wanted is None:
        return
    day, naming = visits[-1].date, ways.naming
    group = ways.group(care_class(horse, day))
    weeks = float(wanted.weeks or 0) if wanted.date is None else (wanted.date - day).days / 7
    if weeks > group.weeks.at_most:
        facts = {"most": naming.weeks(group.weeks.at_most), "class": group.name}
        text = naming.phrase("remark_next_late", weeks=naming.weeks(round(weeks, 1)), **facts)
        yield Remark(
            len(visits) - 1, ("next",), "next-later-than-usual", text, naming.phrase("remark_next_late_way_out")
        )


def tracing_remarks(visits: Sequence[Visit], ways: Context) -> Iterator[Remark]:
    """The readings, typed and traced or traced in two pictures, that cannot both be right. visits: oldest first."""
    for number, visit in enumerate(visits):
        methods = {**ways.practice.methods, **visit.methods}
        for foot, found in visit.feet.items():
            for one in disagreements(ways.measures, found, methods, ways.hand_error, ways.reckon, ways.hand_times):
                yield _tracing_remark(number, foot, one, ways.naming)
            for pair in pictures_apart(ways.measures, found, ways.hand_error, ways.reckon, ways.hand_times):
                yield _pictures_remark(number, foot, pair, found, ways.naming)


def _pictures_remark(visit: int, foot: Foot, pair: PicturesApart, found: FootVisit, naming: Naming) -> Remark:
    """Two pictures, each by its file where it has one, else by its number."""
    first, second = (found.tracings[number].file for number in (pair.first, pair.second))
    named = first and second and first != second
    facts = {
        "foot": naming.foot(foot),
        "view": naming.phrase(f"photo_view_{found.tracings[pair.first].view}"),
        "measure": naming.measure(pair.measure.words.name, pair.measure.zone),
        "first": str(first if named else pair.first + 1),
        "second": str(second if named else pair.second + 1),
        **_figures(pair.measure, naming, one=pair.one, other=pair.other, apart=pair.apart),
        "unit": naming.unit(pair.measure.unit),
    }
    steps = ("feet", foot, "tracings", pair.second)
    way_out = naming.phrase("remark_pictures_way_out")
    return Remark(visit, steps, "traced-pictures-differ", naming.phrase("remark_pictures", **facts), way_out)


def _figures(measure: Measure, naming: Naming, **values: float) -> dict[str, str]:
    """Values of a measure that stand beside each other, in the unit that is shown."""
    return {name: naming.quantities.figure(value, measure.unit, 1) for name, value in values.items()}


def _tracing_remark(visit: int, foot: Foot, one: Disagreement, naming: Naming) -> Remark:
    facts = {
        "foot": naming.foot(foot),
        "measure": naming.measure(one.measure.words.name, one.measure.zone),
        **_figures(one.measure, naming, typed=one.typed, traced=one.traced, apart=one.apart),
        "unit": naming.unit(one.measure.unit),
    }
    steps = ("feet", foot, "tracings", one.number)
    way_out = naming.phrase("remark_traced_way_out")
    return Remark(visit, steps, "traced-reading-differs", naming.phrase("remark_traced", **facts), way_out)


def _growth_remark(foot: Foot, doubted: DoubtedCycle, visits: Sequence[Visit], naming: Naming) -> Remark:
    cycle = doubted.cycle
    number = max(count for count, visit in enumerate(visits) if visit.date == cycle.end)
    key = f"remark_growth_{doubted.why.replace(' ', '_')}"
    facts = {
        "foot": naming.foot(foot),
        "growth": naming.quantities.span(round(cycle.growth_mm, 1)),
        "days": naming.days(cycle.days),
    }
    return Remark(
        number,
        ("feet", foot),
        "growth-left-out",
        naming.phrase(key, **facts),
        naming.phrase(f"{key}_way_out"),
    )
