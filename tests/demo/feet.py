"""Feet through time: each trim leaves a length, each interval adds growth, and a ruler reads both to a millimetre."""

from __future__ import annotations

from collections.abc import Set
from dataclasses import dataclass
from datetime import date, timedelta
from random import Random
from typing import Any

from tests.demo.days import growth
from tests.demo.plans import FootPlan, HorsePlan, at

# Share of the toe's growth that shows in a heel's and a side wall's height. Invented, near what heels wear.
HEEL, WALL = 0.5, 0.75
SIDES = ("medial", "lateral")


@dataclass
class _State:
    """The true measures of a foot at one moment, mm and degrees."""

    toe: float
    heels: list[float]
    walls: list[float]
    angle: float


def readings(plan: HorsePlan, foot: str, rng: Random, untrimmed: Set[date]) -> list[dict[str, dict[str, Any]]]:
    """Readings of one foot at every visit: measures before the trim and, where it was trimmed, after."""
    shape = plan.feet[foot]
    state = _target(shape, 0, rng)
    read = []
    for index, day in enumerate(plan.days):
        earlier = plan.days[index - 1] if index else day - timedelta(days=plan.first_days)
        pace = at(plan.rate, index) * rng.uniform(0.94, 1.06)
        _grow(state, shape, index, growth(earlier, day, pace), (day - earlier).days)
        before = _typed(state, rng, plan.half_degrees)
        if day in untrimmed:
            read.append({"before": before})
            continue
        state = _trimmed(state, _target(shape, index, rng))
        after = _not_above(_typed(state, rng, plan.half_degrees), before)
        read.append({"before": before, "after": after})
    return read


def _target(shape: FootPlan, index: int, rng: Random) -> _State:
    def near(value: float, spread: float) -> float:
        return value + rng.uniform(-spread, spread)

    return _State(
        near(at(shape.toe, index), 0.8),
        [near(at(side, index), 0.5) for side in shape.heels],
        [near(at(side, index), 0.5) for side in shape.walls or ()],
        near(at(shape.angle, index), 0.3),
    )


def _grow(state: _State, shape: FootPlan, index: int, grown: float, days: int) -> None:
    state.toe += grown
    state.heels = [heel + grown * HEEL for heel in state.heels]
    state.heels[1] += shape.lean.get(index, 0)
    state.walls = [wall + grown * WALL for wall in state.walls]
    state.angle -= shape.slip * min(days, 70) / 42


def _trimmed(found: _State, wanted: _State) -> _State:
    return _State(
        min(found.toe - 1, wanted.toe),
        [min(before, after) for before, after in zip(found.heels, wanted.heels, strict=True)],
        [min(before, after) for before, after in zip(found.walls, wanted.walls, strict=True)],
        max(found.angle, wanted.angle),
    )


def _typed(state: _State, rng: Random, half_degrees: bool) -> dict[str, Any]:
    def ruled(value: float) -> int:
        return round(value + rng.uniform(-0.3, 0.3))

    steps = 2 if half_degrees else 1
    typed: dict[str, Any] = {
        "toe_length": ruled(state.toe),
        "heel_height": {side: ruled(heel) for side, heel in zip(SIDES, state.heels, strict=True)},
    }
    if state.walls:
        typed["wall_height"] = {side: ruled(wall) for side, wall in zip(SIDES, state.walls, strict=True)}
    typed["toe_angle"] = round((state.angle + rng.uniform(-0.2, 0.2)) * steps) / steps
    return typed


def _not_above(after: dict[str, Any], before: dict[str, Any]) -> dict[str, Any]:
    # A ruler read twice may say a millimetre more after a light trim; nobody writes that down.
    lowered = dict(after)
    for name in ("toe_length", "heel_height", "wall_height"):
        if name in after:
            lowered[name] = _lower(after[name], before[name])
    return lowered


def _lower(after: Any, before: Any) -> Any:
    if isinstance(after, dict):
        return {side: min(after[side], before[side]) for side in after}
    return min(after, before)
