"""The aims of what a change costs: each a share of what it is measured against, and why it is missed where it is."""

from __future__ import annotations

from dataclasses import dataclass

from tests.benchmarks.measured import Measured

ROW = "{:<52} {:>9} {:>9} {:>9} {:>7} {:>6}  {}"
MOST_MB = 200


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
    "each page of a horse tells how long its toes are by now, so it is computed and filled in again",
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
SUMMARY, DUE, BEGUN = (Aim(f"{name}, against one second", 0.7) for name in ("summary", "due", "visit"))
MACHINES = Aim(
    "two workers of dask, a stable each, against local", 2.0, "a cluster is begun, and each worker loads all"
)


def print_head() -> None:
    """Print what the columns hold."""
    print(ROW.format("", "seconds", "of CPU", "against", "share", "aim", ""))


def print_aim(aim: Aim, ours: Measured, against: float) -> None:
    """Print one row. against: in seconds, or in what the aim says."""
    share = ours.seconds / against
    told = (
        "met" if share <= aim.share else f"missed: {aim.why or 'the machine is busy, or slower than the aim takes it'}"
    )
    numbers = (f"{one:.2f}" for one in (ours.seconds, ours.cpu_seconds, against, share))
    print(ROW.format(aim.what, *numbers, aim.share, told), flush=True)


def print_not_measured(aim: Aim, why: str) -> None:
    """Print that a row could not be measured here."""
    print(ROW.format(aim.what, "", "", "", "", aim.share, f"not measured: {why}"), flush=True)
