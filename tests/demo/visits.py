"""One horse's visits as records: measures from `feet`, sentences from `diary`, and over them what its story tells."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date
from random import Random
from typing import Any

from tests.demo import diary
from tests.demo.days import season
from tests.demo.feet import readings
from tests.demo.plans import HorsePlan
from tests.demo.tracings import Drawn, as_typed, with_tracings

Record = dict[str, Any]

VISIT_ORDER = (
    *("date", "by", "since_last", "keeping", "lameness", "signs", "sore_after_last_trim", "condition", "trimmed"),
    *("feet", "care", "care_ends", "vet", "resolved", "next", "note", "private_note", "methods"),
)
FOOT_ORDER = (
    *("landing", "before", "after", "frog", "wall", "bars", "sole", "marks", "object", "wound", "abscess", "heat"),
    *("pulse", "testers", "bears_weight", "deviation", "done", "note", "tracings"),
)


def visits(plan: HorsePlan, seed: str) -> Iterator[Record]:
    """The visits of a horse, oldest first. The same plan and seed give the same visits.

    Raises ValueError where the story tells of a day on which the horse was not seen.
    """
    told = merged_by_day(plan.told)
    if strangers := {*told, *(one.day for one in plan.drawn)} - set(plan.days):
        raise ValueError(f"{plan.slug} was not seen on {', '.join(map(str, sorted(strangers)))}")
    untrimmed = {day for day, parts in told.items() if parts.get("trimmed") is False}
    rng = Random(f"{seed} {plan.stable} {plan.slug}")
    feet = {foot: readings(plan, foot, rng, untrimmed) for foot in plan.feet}
    words = _Words(plan, rng)
    for index, day in enumerate(plan.days):
        visit = words.around(day, plain=day not in told)
        visit["feet"] = {foot: _foot(plan, foot, index, feet[foot][index], rng) for foot in plan.feet}
        laid = _laid_over(visit, told.get(day, {}))
        yield _ordered(with_tracings(laid, plan.drawn, f"{seed} {plan.slug}"), plan)


def drawn_feet(plan: HorsePlan, seed: str) -> Iterator[Drawn]:
    """The feet of a horse that were drawn, with the sizes that its visits tell. Plan and seed as in `visits`."""
    for visit in visits(plan, seed) if plan.drawn else ():
        for one in plan.drawn:
            if one.day == visit["date"]:
                yield as_typed(one, visit["feet"][plan.spelling.get(one.foot, one.foot)])


def _laid_over(visit: Record, parts: Mapping[str, Any]) -> Record:
    return visit | dict(parts) | {"feet": over(visit.get("feet", {}), parts.get("feet", {}))}


def merged_by_day(stories: Iterable[Mapping[date, Mapping[str, Any]]]) -> dict[date, Record]:
    """Several stories as one, day by day: feet grow together, of anything else the later story holds."""
    merged: dict[date, Record] = {}
    for story in stories:
        for day, parts in story.items():
            merged[day] = _laid_over(merged.get(day, {}), parts)
    return merged


def over(under: Mapping[str, Any], parts: Mapping[str, Any]) -> Record:
    """`parts` laid over `under`: groups grow together, anything else is replaced; None stays, to take a part out."""
    laid = dict(under)
    for key, value in parts.items():
        below = laid.get(key)
        laid[key] = over(below if isinstance(below, Mapping) else {}, value) if isinstance(value, Mapping) else value
    return laid


class _Words:
    """The sentences of one horse's visits, none said twice before all were said."""

    def __init__(self, plan: HorsePlan, rng: Random) -> None:
        self.plan = plan
        self.rng = rng
        self.said: dict[str, list[str]] = {}

    def around(self, day: date, plain: bool) -> Record:
        """Everything but the feet: the day, how it was, sometimes condition and lameness, next time, a remark.

        plain: the story tells nothing of that day, so a passing remark contradicts nothing.
        """
        rng, plan = self.rng, self.plan
        visit: Record = {"date": day}
        if rng.random() < 0.85:
            visit["since_last"] = self.since_last(day)
        if plain and plan.ridden and rng.random() < 0.2:
            visit["keeping"] = dict(rng.choice(diary.KEEPING[season(day)]))
        if plan.ridden and rng.random() < 0.25:
            visit["lameness"] = {"scale": "AAEP", "grade": 0}
        if rng.random() < 0.2:
            visit["condition"] = {"henneke": plan.henneke + rng.choice((-0.5, 0, 0, 0.5))}
        if plan.weeks:
            visit["next"] = {"weeks": plan.weeks}
        if plain and rng.random() < 0.45:
            visit["note"] = self.remark(day)
        return visit

    def since_last(self, day: date) -> str:
        weather = self.next_of(
            f"weather {day:%Y-%m}", diary.WEATHER.get((day.year, day.month), ("Nothing to report.",))
        )
        if not self.plan.work or self.rng.random() < 0.25:
            return weather
        work = self.next_of("work", self.plan.work)
        return work if self.rng.random() < 0.3 else f"{weather} {work}"

    def remark(self, day: date) -> str:
        if self.plan.notes and self.rng.random() < 0.4:
            return self.next_of("notes", self.plan.notes)
        kind = season(day) if self.rng.random() < 0.45 else "any"
        return self.next_of(kind, diary.REMARKS[kind])

    def next_of(self, kind: str, sentences: Sequence[str]) -> str:
        if not self.said.get(kind):
            self.said[kind] = self.rng.sample(sentences, len(sentences))
        return self.said[kind].pop()


def _foot(plan: HorsePlan, foot: str, index: int, read: Mapping[str, Record], rng: Random) -> Record:
    fore = foot.endswith("fore")
    found: Record = {moment: dict(measures) for moment, measures in read.items()}
    if not fore and rng.random() > plan.looks:
        for measures in found.values():
            del measures["heel_height"]
    if rng.random() > (0.95 if fore else 0.8) and not (fore and plan.follows_angle):
        for measures in found.values():
            del measures["toe_angle"]
    if rng.random() < 0.3:
        for name, value in plan.feet[foot].more.items():
            found["before"][name] = round(value + rng.uniform(-1, 1))
    if rng.random() < 0.4:
        found["landing"] = rng.choice(("heel first", "heel first", "flat"))
    if "after" in read:
        found |= _underneath(plan, foot, read["before"]["toe_length"], plan.days[index], rng)
    if "after" in read and rng.random() < (0.5 if fore else 0.3):
        pool = diary.DONE_FORE if fore else diary.DONE_HIND
        found["done"] = [words for words in pool if words in rng.sample(pool, rng.choice((1, 2, 2, 3)))]
    return found


def _underneath(plan: HorsePlan, foot: str, toe: float, day: date, rng: Random) -> Record:
    wet = day.month in (11, 12, 1, 2)
    found: Record = {}
    if rng.random() < plan.looks * 0.6:
        found["frog"] = {"infection": "none", "central_groove_depth": 5 + wet + rng.choice((0, 0, 1))}
    elif rng.random() < plan.looks * 0.3:
        found["frog"] = {"length": round(toe * 0.9) + rng.choice((0, 1)), "width": round(toe * plan.feet[foot].frog)}
    if rng.random() < plan.looks * 0.2:
        found["bars"] = {"medial": round(toe * 0.68), "lateral": round(toe * 0.66)}
    if rng.random() < plan.looks * 0.3:
        found["sole"] = {"depth": round(toe * 0.13) + rng.choice((0, 1)), "toe_callus": "left"}
    return found


def _ordered(visit: Record, plan: HorsePlan) -> Record:
    feet = {foot: _sorted(parts, FOOT_ORDER) for foot, parts in visit["feet"].items() if parts is not None}
    spelled = {plan.spelling.get(foot, foot): parts for foot, parts in feet.items()}
    return _sorted(_without_none(visit | {"feet": spelled}), VISIT_ORDER)


def _sorted(parts: Record, order: Sequence[str]) -> Record:
    return dict(sorted(_without_none(parts).items(), key=lambda item: order.index(item[0])))


def _without_none(parts: Mapping[str, Any]) -> Record:
    kept = {key: _without_none(value) if isinstance(value, Mapping) else value for key, value in parts.items()}
    return {key: value for key, value in kept.items() if value not in (None, {}, [])}
