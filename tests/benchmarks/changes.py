"""Run as `python -m tests.benchmarks.changes [STABLES HORSES YEARS]`: the cost of a change beside a rival's time.

With `slope COUNT...` instead it builds practices of so many stables, and prints how time and memory grow with them;
with `edits COUNT [SEED]` it edits a practice so many times at random, and holds each build against a cold one.
"""

from __future__ import annotations

import math
import re
import shutil
import sys
import tempfile
from collections.abc import Sequence
from datetime import date, timedelta
from itertools import pairwise
from pathlib import Path

from tests.benchmarks import aims
from tests.benchmarks.machines import machines
from tests.benchmarks.measured import Measured, bare_engine, bare_hugo, bare_site, bare_yaml, build, check, command
from tests.conftest import TODAY
from tests.demo.generated import generated_practice
from tests.support.apart import git
from tests.support.edits import EDITS, Edited

# Of each horse in practices that grow.
SLOPE_HORSES, SLOPE_YEARS = 12, 2


def print_changes(stables: int, horses: int, years: int) -> None:
    """Print a row for each aim, measured in one run."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        visits = generated_practice(folder / "records", stables, horses, years)
        print(f"what a change costs: {stables} stables, {stables * horses} horses, {visits} visits")
        aims.print_head()
        _print_builds(folder)
        _print_checks(folder)
        _print_small(folder)
        _print_machines(folder)
        _print_published(folder)


def _print_builds(folder: Path) -> None:
    records, sites, kept = folder / "records", folder / "sites", folder / "cache"
    cold = build(records, sites, kept)
    aims.print_aim(aims.COLD, cold, bare_engine(sites, folder / "bare"))
    aims.print_aim(aims.MEMORY, Measured(cold.peak_mb, cold.peak_mb), Measured(aims.MOST_MB, 0))
    aims.print_aim(aims.NOTHING, build(records, sites, kept), aims.ONE_SECOND)
    _visit(records, TODAY)
    followed = build(records, sites, kept)
    aims.print_aim(aims.VISIT, followed, bare_site(sites / "stable-001", folder / "bare one"))
    aims.print_aim(aims.NEW_DAY, build(records, sites, kept, TODAY + timedelta(days=1)), cold)
    if shutil.which("hugo"):
        aims.print_aim(aims.HUGO, followed, bare_hugo(sites, folder / "hugo"))
    else:
        aims.print_not_measured(aims.HUGO, "hugo is not on this machine")


def _visit(records: Path, day: date) -> None:
    """A new visit of one horse, with the readings of its last one."""
    visit = sorted((records / "stable-001" / "horse-001").glob("2*.yaml"))[-1]
    text = re.sub(r"(?m)^date: .*$", f"date: {day}", visit.read_text("utf-8"))
    (visit.parent / f"{day}.yaml").write_text(text, "utf-8")


def _print_checks(folder: Path) -> None:
    yaml = bare_yaml(folder / "records")
    for aim in (aims.CHECK, aims.AGAIN):
        aims.print_aim(aim, check(folder / "records", folder / "cache of checks"), yaml)


def _print_small(folder: Path) -> None:
    """The commands of every day, whose answers need no site."""
    records, kept = folder / "records", folder / "cache"
    words = {
        aims.SUMMARY: ("summary", "stable-001/horse-002"),
        aims.DUE: ("due",),
        aims.BEGUN: ("visit", "stable-001/horse-002", "--date", TODAY.isoformat()),
    }
    for aim, asked in words.items():
        aims.print_aim(aim, command(records, kept, *asked), aims.ONE_SECOND)


def _print_machines(folder: Path) -> None:
    try:
        local, apart = machines(folder / "machines")
    except ImportError:
        aims.print_not_measured(aims.MACHINES, "dask.distributed is not installed")
        return
    aims.print_aim(aims.MACHINES, apart, local)


def _print_published(folder: Path) -> None:
    """Publishing goes by the history of the records, so they are kept in git first."""
    records, kept = folder / "records", folder / "cache"
    stable = records / "stable-001" / "stable.yaml"
    publish = f"publish: {{address: 'https://one.example.org/', to: {folder / 'public'}}}\n"
    stable.write_text(stable.read_text("utf-8") + publish, "utf-8")
    for day in (None, TODAY - timedelta(days=1)):
        if day:
            _visit(records, day)
        else:
            git(records, "init", "--quiet")
        git(records, "add", "--all")
        git(records, "commit", "--quiet", "--message=kept")
        published = command(records, kept, "publish", "stable-001", "--yes")
    bare = bare_site(folder / "sites" / "stable-001", folder / "bare published")
    aims.print_aim(aims.PUBLISH, published, bare)


def print_slope(counts: Sequence[int]) -> None:
    """Print how time and peak memory of a cold build grow with the stables, from one practice to the next."""
    found = []
    print(f"practices of {SLOPE_HORSES} horses a stable, {SLOPE_YEARS} years each")
    for count in counts:
        with tempfile.TemporaryDirectory() as name:
            folder = Path(name)
            visits = generated_practice(folder / "records", count, SLOPE_HORSES, SLOPE_YEARS)
            cold = build(folder / "records", folder / "sites", folder / "cache")
        found.append((visits, cold))
        print(f"{count:4} stables, {visits:6} visits: {cold.seconds:8.1f} s, {cold.peak_mb:6.0f} MB", flush=True)
    aims.print_head()
    for (few, first), (many, then) in pairwise(found):
        slope = math.log(then.seconds / first.seconds) / math.log(many / few)
        aims.print_aim(aims.SLOPE, Measured(slope, then.peak_mb), Measured(1, 0))


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
    elif words[:1] == ["slope"]:
        print_slope([*map(int, words[1:])] or [1, 3, 9])
    else:
        print_changes(*map(int, words or ("5", "12", "2")))


if __name__ == "__main__":
    main(sys.argv[1:])
