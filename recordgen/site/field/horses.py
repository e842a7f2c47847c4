"""The field page's data of each horse: what was last written, what is open, what is in force, when it is due."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from recordgen.hoof.care.jobs import Job
from recordgen.hoof.cautions.cautions import Caution
from recordgen.hoof.naming import Naming
from recordgen.hoof.rounds.rounds import Plan
from recordgen.hoof.summary import HorseSummary, StableSummary
from recordgen.records.models.foot import FootVisit
from recordgen.records.models.names import FEET, Foot
from recordgen.records.models.visit import Visit
from recordgen.records.yaml.read import values

# What was done before, offered as things to tap: so many of the practice's most common ones.
MOST_DONE = 12
# So many visits back a value is looked for; an older one invites to a wrong expectation.
MOST_VISITS_BACK = 6
# Whoever stands beside the horse has come.
OVERDUE = "overdue"
NOT_LAST = {"tracings", "repeat", "note", "done"}


def stables_for_phone(
    stables: Sequence[StableSummary], naming: Naming, words: Mapping[str, str]
) -> list[dict[str, Any]]:
    """Each stable with its horses that have not left, as plain values. words: of the field page."""
    return [
        {"id": one.slug, "name": one.stable.name, "horses": [_horse(horse, naming, words) for horse in one.present]}
        for one in stables
    ]


def rounds_for_phone(plan: Plan) -> list[dict[str, Any]]:
    """The planned rounds: the day and the horses of each, as stable/horse."""
    return [
        {"day": one.day.isoformat(), "horses": [f"{wish.stable}/{wish.horse}" for wish in one.wishes]}
        for one in plan.rounds
    ]


def done_before(stables: Sequence[StableSummary]) -> list[str]:
    """Work done most often in the practice, most common first."""
    visits = (visit.visit for stable in stables for horse in stable.horses for visit in horse.history)
    found = Counter(word for visit in visits for foot in visit.feet.values() for word in foot.done)
    return sorted(found, key=lambda word: (-found[word], word))[:MOST_DONE]


def _horse(horse: HorseSummary, naming: Naming, words: Mapping[str, str]) -> dict[str, Any]:
    visits = [one.visit for one in horse.history]
    one = horse.horse
    kind = [naming.value(word) for word in (one.kind, one.sex) if word]
    born = [words["born"].format(day=naming.born(one.born))] if one.born else []
    return {
        "id": f"{horse.stable}/{horse.slug}",
        "name": one.name,
        "about": ", ".join(kind + born),
        "size": one.size_class(horse.as_of),
        "last": horse.last_visit.isoformat() if horse.last_visit else None,
        "due": _due(horse),
        "weeks": visits[0].next.weeks if visits and visits[0].next else None,
        "plan": one.vet_plan.words if one.vet_plan else None,
        "cautions": [_caution(found, naming) for found in horse.cautions if found.rule != OVERDUE],
        "care": [
            {"name": job.key or job.what, "what": job.what} for job in (*horse.jobs, *(w.job for w in horse.withheld))
        ],
        "feet": {foot: _foot(foot, visits) for foot in FEET},
    }


def _in_force(horse: HorseSummary) -> tuple[Job, ...]:
    """The jobs that a visit which says nothing of them leaves in force, also those that wait for a caution to end."""
    return (*horse.jobs, *(one.job for one in horse.withheld))


def _due(horse: HorseSummary) -> dict[str, Any] | None:
    if horse.due is None:
        return None
    return {name: getattr(horse.due, name).isoformat() for name in ("best", "latest")}


def _caution(caution: Caution, naming: Naming) -> dict[str, Any]:
    return {
        "rule": caution.rule,
        "foot": caution.foot,
        "where": naming.foot(caution.foot) if caution.foot else "",
        "level": caution.level,
        "told": naming.phrases[f"level_{caution.level.replace(' ', '_')}"],
        "since": caution.since.isoformat(),
        "seen": caution.seen,
        "meanwhile": caution.meanwhile,
        "not": caution.do_not,
    }


def _foot(foot: Foot, visits: Sequence[Visit]) -> dict[str, Any]:
    """visits: the latest first. last: by path, such as before.toe_length, the value and the day it was written."""
    last: dict[str, list[Any]] = {}
    done: list[str] = []
    for visit in visits[:MOST_VISITS_BACK]:
        found = visit.feet.get(foot)
        if found is None:
            continue
        done = done or list(found.done)
        for path, value in _leaves(found):
            last.setdefault(path, [value, visit.date.isoformat()])
    return {"last": last, "done": done}


def _leaves(found: FootVisit) -> Iterator[tuple[str, Any]]:
    for steps, _, value in values(found):
        if (
            steps[0] not in NOT_LAST
            and isinstance(value, (bool, int, float, str))
            and not any(isinstance(step, int) for step in steps)
        ):
            yield ".".join(map(str, steps)), value
