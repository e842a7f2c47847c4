"""The aims of what a change costs: each a share of what it is measured against, and why it is missed where it is."""

from __future__ import annotations

from dataclasses import dataclass

from tests.benchmarks.measured import Measured

ROW = "{:<52} {:>9} {:>9} {:>9} {:>9} {:>8} {:>9} {:>6}  {}"
MOST_MB = 200
ONE_SECOND = Measured(1, 0, 1)


@dataclass(frozen=True)
class Aim:
    """An aim: what is measured, the most it may be, as a share, and the reason where that is missed."""

    what: str
    share: float
    why: str = ""


COLD = Aim(
    "cold build, against the bare engine",
    0.25,
    "each horse's page and sheet are filled in for two sites, which takes longer than the engine does",
)
NOTHING = Aim("nothing new, against one second", 0.3)
VISIT = Aim(
    "one new visit, against that stable bare",
    0.8,
    "half of it is loading the engine and matplotlib and compiling the templates, none of which may be kept",
)
NEW_DAY = Aim(
    "a new day, against a cold build",
    0.1,
    "a horse is made again on the day on which its window opens or ends, on each day that it is late, and on the first "
    "of a month; beside few horses, loading the engine and the front pages weigh as much",
)
CHECK = Aim(
    "check cold, against C YAML alone", 1.5, "models, their checks and the remarks come on top, shared among the cores"
)
AGAIN = Aim(
    "check again, against C YAML alone", 0.2, "Python and our code are loaded, and each file is read for its bytes"
)
PUBLISH = Aim(
    "publish after one new visit, against that stable bare",
    1.5,
    "all pages of the stable are made under their sealed names, then encrypted, and none is kept",
)
MEMORY = Aim(
    f"peak memory of a cold build, against {MOST_MB} MB",
    1.0,
    "the builder of the trimmer's site holds all its pages, packed, until the engine has written them",
)
SLOPE = Aim("slope of the cold build over visits, log-log", 1.0)
HUGO = Aim("one new visit, against hugo over the same pages", 3.0, "hugo is one compiled program with nothing to load")
SUMMARY, DUE, BEGUN = (
    Aim(f"{name}, against one second", 0.7, "loading our models, numpy and YAML takes most of it")
    for name in ("summary", "due", "visit")
)
MACHINES = Aim(
    "two workers of dask, a stable each, against local", 2.0, "a cluster is begun, and each worker loads all"
)


def print_head() -> None:
    """Print what the columns hold: a share by the clock goes up on a busy machine, one by the cores does not."""
    print(ROW.format("", "seconds", "of cores", "against", "of cores", "share", "of cores", "aim", ""))


def print_aim(aim: Aim, ours: Measured, against: Measured) -> None:
    """Print one row."""
    share = ours.seconds / against.seconds
    by_cores = ours.cpu_seconds / against.cpu_seconds if ours.cpu_seconds and against.cpu_seconds else share
    told = (ours.seconds, ours.cpu_seconds, against.seconds, against.cpu_seconds, share, by_cores)
    print(ROW.format(aim.what, *(f"{one:.2f}" for one in told), aim.share, _verdict(aim, share, by_cores)), flush=True)


def _verdict(aim: Aim, share: float, by_cores: float) -> str:
    if share <= aim.share:
        return "met"
    if by_cores <= aim.share:
        return "missed by the clock alone: this machine is busy"
    return f"missed: {aim.why}" if aim.why else "missed"


def print_not_measured(aim: Aim, why: str) -> None:
    """Print that a row could not be measured here."""
    print(ROW.format(aim.what, *[""] * 6, aim.share, f"not measured: {why}"), flush=True)
