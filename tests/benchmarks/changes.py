"""Run as `python -m tests.benchmarks.changes [STABLES HORSES YEARS]`: the cost of a change beside a rival's time.

With `edits COUNT [SEED]` instead it edits a practice so many times at random, and holds each build against a cold one.
"""

from __future__ import annotations

import re
import sys
import tempfile
from dataclasses import dataclass
from datetime import timedelta
from pathlib import Path

from tests.benchmarks.measured import Measured, bare_engine, bare_site, bare_yaml, build, check
from tests.conftest import TODAY
from tests.demo.generated import generated_practice
from tests.support.edits import EDITS, Edited

ROW = "{:<44} {:>9} {:>9} {:>7} {:>6}  {}"
MOST_MB = 200


@dataclass(frozen=True)
class Aim:
    """An aim: a share of what it is measured against, and why it may be missed. None for one second."""

    what: str
    share: float
    why: str = ""


COLD = Aim("cold build, against the bare engine", 0.25, "each page goes through the engine's templates")
NOTHING = Aim("nothing new, in seconds", 0.3)
VISIT = Aim("one new visit, against that stable bare", 0.8, "the engine is loaded, and writes the frames of two sites")
NEW_DAY = Aim("a new day, against a cold build", 0.1, "every page names its day, so all are made again")
CHECK = Aim(
    "check cold, against C YAML alone", 1.5, "models, their checks and the remarks come on top, shared among the cores"
)
AGAIN = Aim("check again, against C YAML alone", 0.2)
MEMORY = Aim(
    f"peak memory of a build, against {MOST_MB} MB",
    1.0,
    "the summaries and pages of what is made are held until the sites are written",
)


def print_changes(stables: int, horses: int, years: int) -> None:
    """Print a row for each aim, measured in one run."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        visits = generated_practice(folder / "records", stables, horses, years)
        print(f"what a change costs: {stables} stables, {stables * horses} horses, {visits} visits")
        print(ROW.format("", "seconds", "against", "share", "aim", ""))
        _print_builds(folder)
        _print_checks(folder)


def _print_builds(folder: Path) -> None:
    records, sites, kept = folder / "records", folder / "sites", folder / "cache"
    cold = build(records, sites, kept)
    _print(COLD, cold, bare_engine(sites, folder / "bare").seconds)
    _print(MEMORY, Measured(cold.peak_mb, cold.peak_mb), MOST_MB)
    _print(NOTHING, build(records, sites, kept), 1)
    visit = sorted((records / "stable-001" / "horse-001").glob("2*.yaml"))[-1]
    text = re.sub(r"(?m)^date: .*$", f"date: {TODAY}", visit.read_text("utf-8"))
    (visit.parent / f"{TODAY}.yaml").write_text(text, "utf-8")
    followed = build(records, sites, kept)
    _print(VISIT, followed, bare_site(sites / "stable-001", folder / "bare one").seconds)
    _print(NEW_DAY, build(records, sites, kept, TODAY + timedelta(days=1)), cold.seconds)


def _print_checks(folder: Path) -> None:
    yaml = bare_yaml(folder / "records").seconds
    for aim in (CHECK, AGAIN):
        _print(aim, check(folder / "records", folder / "cache"), yaml)


def _print(aim: Aim, ours: Measured, against: float) -> None:
    share = ours.seconds / against
    told = "met" if share <= aim.share else f"missed: {aim.why or 'look what this machine does beside'}"
    print(ROW.format(aim.what, f"{ours.seconds:.2f}", f"{against:.2f}", f"{share:.2f}", aim.share, told), flush=True)


def print_edits(count: int, seed: int) -> None:
    """Print after which edits a build that follows them differs from a cold one; ends with 1 where one does."""
    with tempfile.TemporaryDirectory() as name:
        practice = Edited.of(Path(name), seed, stables=4, horses=3)
        practice.build("sites")
        for _ in range(count):
            practice.edit(practice.rng.choice(sorted(EDITS)))
            if differing := practice.differing():
                sys.exit(f"after {', '.join(practice.done)}: {', '.join(differing)}")
    print(f"{count} edits at random, seed {seed}: each build is byte for byte a cold one")


def main(words: list[str]) -> None:
    """Measure what was asked for."""
    if words[:1] == ["edits"]:
        print_edits(*map(int, (*words[1:], "1")[:2]))
    else:
        print_changes(*map(int, words or ("5", "12", "2")))


if __name__ == "__main__":
    main(sys.argv[1:])
