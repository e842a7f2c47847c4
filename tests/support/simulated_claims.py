"""Simulated horses that change or do not, and what the page tells of them visit by visit.

The horses are made here, by numpy alone: nine measures of four feet, read to the whole millimetre six weeks apart.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date, timedelta

import numpy as np

from recordgen.hoof.claims.claims import Claims, Series, claims_of
from recordgen.hoof.tracing.foot_frame import Floats

VISITS, FEET, MEASURES = 12, 4, 9
# The visit, from 0, at which a change begins.
FROM = 6
FIRST = date(2024, 1, 8)
# SD of one reading by measure, mm: a difference of two readings has root two, a tape 0.649.
SDS = (1.0, 2**0.5, 2**0.5, 1.0, 0.649, 1.0, 1.0, 1.0, 1.0)
ROUNDED = 1 / 12**0.5
# The series of a flare that comes at once, and of a difference of heels that grows by a millimetre a visit.
FLARE, HEELS = 8, 1


@dataclass(frozen=True)
class Horses:
    """The way simulated horses are read. true: by the measures' SD, how far their readings truly spread."""

    count: int
    seed: int
    true: float = 1.0
    gaps: Sequence[int] = field(default=(42,) * (VISITS - 1))
    missing: float = 0.0
    together: float = 0.0

    def readings(self) -> Floats:
        """Readings without a change, (horse, series, visit), mm, not yet rounded.

        together: the share of the error's variance that a visit gives all feet alike.
        """
        rng = np.random.default_rng(self.seed)
        own = rng.standard_normal((self.count, FEET * MEASURES, VISITS))
        shared = np.tile(rng.standard_normal((self.count, MEASURES, VISITS)), (1, FEET, 1))
        noise = (1 - self.together) ** 0.5 * own + self.together**0.5 * shared
        level = rng.uniform(20, 90, (self.count, FEET * MEASURES, 1))
        found: Floats = level + self.true * noise * np.tile(SDS, FEET)[:, None]
        return found

    def pages(self, readings: Floats, visit: int) -> list[Claims[int]]:
        """Claims of each horse's page on the day of a visit, from 0; missing readings are left out."""
        rng = np.random.default_rng(self.seed + 1)
        there = rng.uniform(size=readings.shape) >= self.missing
        return [self._page(np.round(one), taken, visit) for one, taken in zip(readings, there, strict=True)]

    def _page(self, readings: Floats, taken: np.ndarray, visit: int) -> Claims[int]:
        days = [FIRST + timedelta(days=int(sum(self.gaps[:at]))) for at in range(visit + 1)]
        made = []
        for number, values in enumerate(readings):
            kept = [at for at in range(visit + 1) if taken[number, at]]
            sd = float(np.hypot(SDS[number % MEASURES], ROUNDED))
            read = tuple(float(values[at]) for at in kept)
            made.append(Series(number, str(number % MEASURES), tuple(days[at] for at in kept), read, (sd,) * len(kept)))
        return claims_of(made)


def flared(readings: Floats, mm: float = 3) -> Floats:
    """The same horses with a flare that comes at once and stays."""
    changed = readings.copy()
    changed[:, FLARE, FROM:] += mm
    return changed


def growing(readings: Floats, mm: float = 1) -> Floats:
    """The same horses with heels that grow apart by so much a visit."""
    changed = readings.copy()
    changed[:, HEELS, FROM:] += mm * np.arange(1, VISITS - FROM + 1)
    return changed


@dataclass(frozen=True)
class Told:
    """Shares of simulated horses, 0 to 1, of which a page tells something.

    false_pages: pages of horses that never change with a change told. ever_false: such horses told one at any of their
    visits. maybe: remarks on such a page, their mean number, and how many the page says chance makes. flare: told by
    the first, second, ... visit after it; still: told at the sixth. growing: told by 1, 2, ... mm. held: intervals of
    told flares and growing heels that hold the truth.
    """

    false_pages: float
    ever_false: float
    maybe: float
    maybe_said: float
    flare: tuple[float, ...]
    still: float
    growing: tuple[float, ...]
    held: float


def told(horses: Horses) -> Told:
    """Claims of pages about simulated horses."""
    still = horses.readings()
    pages = [horses.pages(still, visit) for visit in range(1, VISITS)]
    false = np.array([[bool(page.real) for page in at] for at in pages])
    flare, flare_held = _found(horses, flared(still), FLARE, [3.0] * (VISITS - FROM))
    heels, heels_held = _found(horses, growing(still), HEELS, list(range(1, VISITS - FROM + 1)))
    return Told(
        float(false.mean()),
        float(false.any(axis=0).mean()),
        float(np.mean([len(page.maybe) for at in pages for page in at])),
        float(np.mean([page.by_chance for at in pages for page in at])),
        _by_then(flare),
        float(flare[-1].mean()),
        _by_then(heels),
        float(np.mean(flare_held + heels_held)),
    )


def _found(horses: Horses, readings: Floats, of: int, sizes: Sequence[float]) -> tuple[np.ndarray, list[bool]]:
    """At each visit since the change, (visit, horse), whether it is told; and whether each interval told holds it."""
    found, held = [], []
    for visit, size in zip(range(FROM, VISITS), sizes, strict=True):
        claims = [[one for one in page.real if one.of == of] for page in horses.pages(readings, visit)]
        found.append([bool(one) for one in claims])
        held += [one.low <= size <= one.high for each in claims for one in each]
    return np.array(found), held


def _by_then(found: np.ndarray) -> tuple[float, ...]:
    return tuple(float(found[: count + 1].any(axis=0).mean()) for count in range(len(found)))
