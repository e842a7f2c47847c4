"""Columns guessed from the words above it; whatever they do not tell is left to the trimmer."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

import yaml

from recordgen.packaged import packaged
from recordgen.records.models.names import Foot, zone_named
from recordgen.records.sheets.cells import LENGTHS, CellForm, Unfit, foot
from recordgen.records.sheets.columns import NOTHING
from recordgen.records.sheets.targets import THE_FOOT, target_of

_WORD = re.compile(r'[a-z0-9]+(?:[-.][a-z0-9]+)*|"|″')
_ALL_FEET = ("left_fore", "left_hind")


@dataclass(frozen=True)
class Guess:
    """A guess at a column. is_: as in the file of columns. remark: what the trimmer has to decide."""

    is_: str = NOTHING
    unit: str | None = None
    remark: str = ""
    scale: str | None = None

    @property
    def is_known(self) -> bool:
        """Tell whether the heading told anything."""
        return self.is_ != NOTHING or bool(self.remark)


@cache
def words() -> dict[str, Any]:
    """The table of words over columns."""
    text = (packaged() / "site_templates" / "records" / "headings.yaml").read_text("utf-8")
    table: dict[str, Any] = yaml.safe_load(text)
    return table


def guess(heading: str, each_row_is_foot: bool) -> Guess:
    """A guess at the column under a heading."""
    exact = _exact(heading.strip(), each_row_is_foot)
    return exact or _HeadingParts(heading).guess(each_row_is_foot)


def _exact(heading: str, each_row_is_foot: bool) -> Guess | None:
    """A heading that is a path of the records already, as in tables that recordgen wrote."""
    paths = (f"{THE_FOOT}.{heading}", heading) if each_row_is_foot else (heading,)
    found = next(((path, target) for path in paths if (target := target_of(path))), None)
    if found is None:
        return None
    path, target = found
    return Guess(path, target.leaf.unit if target.leaf and target.leaf.unit in LENGTHS else None)


def tells_foot_or_moment(heading: str) -> bool:
    """Tell whether a heading names a foot, or before or after, as one that stands over several columns does."""
    parsed = _HeadingParts(heading)
    return bool(parsed.foot or parsed.moment)


def is_unit(heading: str) -> bool:
    """Tell whether a heading is a unit and nothing else."""
    parsed = _HeadingParts(heading)
    return parsed.unit is not None and not parsed.rest


class _HeadingParts:
    """The words of a heading, taken apart."""

    def __init__(self, heading: str) -> None:
        self.scale = next((one for one in words()["scales"] if one.lower() in heading.lower()), None)
        plain = heading.replace(self.scale, " ").lower() if self.scale else heading.lower()
        self.rest = _WORD.findall(plain.replace("_", " ").replace("°", " degrees "))
        self.foot = self._foot()
        self.unit = self._unit()
        self.moment = self._one_of("before", "after")
        self.words = list(self.rest)
        self.side = self._one_of("medial", "lateral")

    def _foot(self) -> Foot | None:
        for length in (2, 1):
            for at in range(len(self.rest) - length + 1):
                part = self.rest[at : at + length]
                try:
                    found = foot(" ".join(part), CellForm())
                except Unfit:
                    continue
                del self.rest[at : at + length]
                return found
        return None

    def _unit(self) -> str | None:
        last = self.rest[-1] if self.rest else ""
        found = next((unit for unit, names in words()["units"].items() if last in names), None)
        if found or last in ("degrees", "deg"):
            self.rest.pop()
        return found

    def _one_of(self, *kinds: str) -> str | None:
        for kind in kinds:
            for word in words()[kind]:
                if word in self.rest and len(self.rest) > (1 if kind in ("medial", "lateral") else 0):
                    self.rest.remove(word)
                    return kind
        return None

    def guess(self, each_row_is_foot: bool) -> Guess:
        text = " ".join(self.rest)
        if not text:
            return Guess()
        role = _name_of(words()["roles"], text)
        if role and not (self.foot or self.moment or self.side):
            return Guess(role)
        of_visit = _name_of(words()["visit"], text)
        either = _name_of(words()["either"], text)
        if either and not each_row_is_foot and not self.foot:
            of_visit = either
        if of_visit and not self.foot:
            return Guess(of_visit, self.unit, scale=self.scale if of_visit.startswith("lameness") else None)
        paths = self._paths(text, either)
        return self._of_foot(paths, each_row_is_foot) if paths else Guess()

    def _paths(self, text: str, either: str | None) -> list[str]:
        """The paths within a foot that the words may mean."""
        table = words()
        if either:
            return [either]
        if found := _name_of(table["measures"], text):
            return [f"{moment}.{found}" for moment in self._moments()]
        if found := _name_of(table["sided_measures"], text):
            return [f"{moment}.{found}.{side}" for moment in self._moments() for side in self._sides()]
        if found := _name_of(table["foot"], text):
            return [found]
        if found := _name_of(table["sided_foot"], text):
            return [f"{found}.{side}" for side in self._sides()]
        return list(self._of_wall(table["wall"]))

    def _moments(self) -> Sequence[str]:
        return [self.moment] if self.moment else ["before", "after"]

    def _sides(self) -> Sequence[str]:
        return [self.side] if self.side else ["medial", "lateral"]

    def _of_wall(self, table: Mapping[str, Sequence[str]]) -> Iterator[str]:
        """Findings of a zone: some words name the finding, those before or behind it the zone."""
        for at in range(1, len(self.words)):
            first, last = " ".join(self.words[:at]), " ".join(self.words[at:])
            for finding, zone in (
                (_name_of(table, first), zone_named(last)),
                (_name_of(table, last), zone_named(first)),
            ):
                if finding and zone:
                    yield f"wall.{zone}.{_with_size(finding, self.unit)}"

    def _of_foot(self, paths: Sequence[str], each_row_is_foot: bool) -> Guess:
        feet: Sequence[str] = [self.foot] if self.foot else [THE_FOOT] if each_row_is_foot else _ALL_FEET
        full = [f"{one}.{path}" for path in paths for one in feet]
        if len(full) == 1:
            return Guess(full[0], self.unit)
        return Guess(NOTHING, self.unit, f"{full[0]}, {full[1]}{', …' if len(full) > 2 or feet is _ALL_FEET else ''}?")


def _with_size(finding: str, unit: str | None) -> str:
    return f"{finding}.length" if unit and finding in ("separation", "crack") else finding


def _name_of(table: Mapping[str, Sequence[str]], text: str) -> str | None:
    return next((name for name, spoken in table.items() if text in spoken), None)
