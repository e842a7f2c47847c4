"""Two photographs of one foot from one side, to lay over each other."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from recordgen.records.models.names import Moment
from recordgen.site.photographs import Album, ShownPhoto

# After the trim is how a foot stands until the next one, so two of these tell most.
MOMENTS: tuple[Moment, ...] = ("after", "found", "before")


@dataclass(frozen=True)
class Overlay:
    """An earlier photograph of a foot and a later one, from the same side. same_day: before and after one trim."""

    earlier: ShownPhoto
    later: ShownPhoto

    @property
    def same_day(self) -> bool:
        """Tell whether both were taken at one visit."""
        return self.earlier.subject.day == self.later.subject.day


def overlay_of(album: Album) -> Overlay | None:
    """The first and the last photograph of a foot at one moment, else before and after the last trim; None without two.

    Of several, the pair that ends last, then the one that spans most days, then after the trim before others.
    """
    return max(_pairs(album), key=_worth, default=None)


def _pairs(album: Album) -> Iterator[Overlay]:
    by_sort: dict[tuple[str, str, str], list[ShownPhoto]] = {}
    for one in sorted(album.shown, key=lambda one: one.subject.day):
        by_sort.setdefault((one.subject.foot, one.subject.view, one.subject.moment), []).append(one)
    for held in by_sort.values():
        if held[0].subject.day < held[-1].subject.day:
            yield Overlay(held[0], held[-1])
    for day in album.days:
        yield from (Overlay(pair.before, pair.after) for pair in day.pairs)


def _worth(one: Overlay) -> tuple[int, int, int]:
    last = one.later.subject.day
    return last.toordinal(), (last - one.earlier.subject.day).days, -MOMENTS.index(one.later.subject.moment)
