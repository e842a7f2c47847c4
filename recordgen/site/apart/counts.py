"""Counts that a stable must be told of the practice's others; no record.

All the rest of its site is made of its own folder and of what all stables share (`BuildContext.alone`).
"""

from __future__ import annotations

import datetime as dt
import hashlib
import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any, Literal

from pydantic import BaseModel, ConfigDict, ValidationError, field_validator

from recordgen import __version__
from recordgen.files import write_whole
from recordgen.hoof.measures.repeatability import Own, Way
from recordgen.hoof.stable.prevalence import SIGNS, Share, Shares, pool_shares
from recordgen.problems import Trouble
from recordgen.sentences import say

ANEW = say("Make them anew where all records are: recordgen stables --counts FILE")


class _Counted(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True, strict=True)


class OwnError(_Counted):
    """The repeatability of one measure when this practice takes it in one way; as `Own`, in the measure's unit."""

    measure: str
    way: str
    sd: float
    sets: int
    freedom: int


# How many horses of a stable had a finding, were looked at for it, and were seen; as `Share`.
Found = tuple[int, int, int]


class Counts(_Counted):
    """The counts of a practice as of a day.

    version: of the program. shared: the hash of what all stables share. history: the entry of git they were made at.
    errors: those of the practice's own readings. hand_times: how much larger the error of its hands is than its
    tracings tell. private: entries that changed something private in any visit. stables: by folder, the counts of each
    finding.
    """

    form: Literal["recordgen counts 1"] = "recordgen counts 1"
    version: str
    today: dt.date
    shared: str
    history: str
    errors: tuple[OwnError, ...]
    hand_times: float
    private: tuple[str, ...]
    stables: dict[str, dict[str, Found]]

    @field_validator("stables")
    @classmethod
    def _of_all_findings(cls, stables: dict[str, dict[str, Found]]) -> dict[str, dict[str, Found]]:
        for found in stables.values():
            if found.keys() != SIGNS.keys() or not all(0 <= one[0] <= one[1] <= one[2] for one in found.values()):
                raise ValueError("these are no counts of findings")
        return stables

    @property
    def shares(self) -> Mapping[str, Shares]:
        """The shares of each stable today."""
        return {slug: {key: Share(*one) for key, one in found.items()} for slug, found in self.stables.items()}

    @property
    def own_errors(self) -> dict[Way, Own]:
        """The practice's own errors of reading."""
        return {(one.measure, one.way): Own(one.sd, one.sets, one.freedom) for one in self.errors}

    @property
    def private_entries(self) -> frozenset[str]:
        """The entries of git that changed something private in any visit."""
        return frozenset(self.private)

    def told_to(self, stable: str) -> object:
        """All that a stable's pages tell of the others: as long as it is the same, so are they, by the same records."""
        others = [found for slug, found in self.shares.items() if slug != stable]
        together = {key: pool_shares([found[key] for found in others]) for key in SIGNS}
        return together, self.errors, self.hand_times, self.shared, self.version, self.today

    def write(self, path: Path) -> None:
        """Write them into a file, for this user alone, with a hash over all. Raises OSError."""
        told = self.model_dump(mode="json")
        text = json.dumps({"sha256": _hash(told), "counts": told}, indent=1, sort_keys=True)
        write_whole(path, f"{text}\n", mode=0o600)


def read_counts(path: Path) -> Counts:
    """The counts of a file. Raises Trouble where it holds none, was changed, or comes of another version; OSError."""
    try:
        held = json.loads(path.read_bytes())
        told = held["counts"]
        version = told["version"]
        whole = held["sha256"] == _hash(told)
        counts = Counts.model_validate_json(json.dumps(told))
    except (ValueError, KeyError, TypeError, RecursionError, ValidationError):
        raise Trouble(say("{path} holds no counts", path=path), ANEW) from None
    if not whole:
        raise Trouble(say("{path} was changed or damaged", path=path), ANEW)
    if version != __version__:
        raise Trouble(
            say(
                "the counts in {path} were made by recordgen {version}, and this is {own}",
                path=path,
                version=version,
                own=__version__,
            ),
            ANEW,
        )
    return counts


def _hash(told: Any) -> str:
    return hashlib.sha256(json.dumps(told, sort_keys=True).encode("utf-8", "surrogatepass")).hexdigest()
