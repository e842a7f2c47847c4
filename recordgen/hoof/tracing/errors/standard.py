"""Errors of size 1 for each landmark, the same on every run, which do not depend on each other to the last digit.

A hundred draws of two landmarks go together by a tenth by chance, and on every run alike: the difference of two heels
was then told a fifth too sure on every foot. So the draws of the landmarks of a view are made to be of mean 0, of
size 1 and uncorrelated all together. Source: moment matching, Glasserman 2003, Monte Carlo Methods in Financial
Engineering, section 4.5; from memory, not read.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping
from functools import cache
from itertools import islice

import numpy as np

from recordgen.hoof.tracing.foot_frame import Floats
from recordgen.records.models.tracing import LANDMARKS, Takes

SCALE_FROM, SCALE_TO, TILT, PLANE = "scale from", "scale to", "tilt", "plane of the scale"
# A hundred draws leave room for so many points; those of a line beyond them are drawn each by itself.
MOST_POINTS = 49
# One point of a landmark, by its number.
Place = tuple[str, int]


@cache
def standard_errors(name: str, draws: int, count: int) -> Floats:
    """Errors of size 1 of a landmark's points, (draws, count, 2); those of a point do not hang on other points."""
    alone, together = _alone(name, draws, count), _together(draws)
    return np.stack([together.get((name, number), one) for number, one in enumerate(alone)], axis=1)


def _alone(name: str, draws: int, count: int) -> Floats:
    """The same without a look at others, (count, draws, 2), each of mean 0 and size 1 where there are some draws."""
    seed = int.from_bytes(hashlib.sha256(name.encode()).digest()[:8], "big")
    found = np.random.default_rng(seed).standard_normal((count, draws, 2))
    if draws < 3:
        return found
    found = found - found.mean(axis=1, keepdims=True)
    return np.asarray(found / found.std(axis=1, ddof=1, keepdims=True))


@cache
def _together(draws: int) -> Mapping[Place, Floats]:
    """The errors of points that must not depend on each other, (draws, 2) each."""
    found: dict[Place, Floats] = {}
    for marks in LANDMARKS.values():
        places = list(islice(_places(marks), min(MOST_POINTS, (draws - 1) // 2)))
        raw = [_alone(name, draws, number + 1)[number] for name, number in places]
        # Column after column, so that what two views share comes out alike in both.
        across, sizes = np.linalg.qr(np.concatenate([np.ones((draws, 1)), *raw], axis=1))
        columns = (across * np.sign(np.diag(sizes)))[:, 1:] * np.sqrt(draws - 1)
        found |= {place: columns[:, 2 * at : 2 * at + 2] for at, place in enumerate(places)}
    return found


def _places(marks: Mapping[str, Takes]) -> Iterator[Place]:
    """The points of a view in an order that begins alike in all of them; those of lines come last, in turns."""
    yield from ((name, 0) for name in (SCALE_FROM, SCALE_TO, TILT, PLANE))
    shared = {
        name: takes
        for view in LANDMARKS.values()
        for name, takes in view.items()
        if takes.exactly and sum(name in other for other in LANDMARKS.values()) > 1
    }
    own = {name: takes for name, takes in marks.items() if takes.exactly and name not in shared}
    yield from ((name, number) for name, takes in (shared | own).items() for number in range(takes.least))
    lines = [name for name, takes in marks.items() if not takes.exactly]
    yield from ((name, number) for number in range(MOST_POINTS) for name in lines)
