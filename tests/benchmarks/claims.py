"""Run as `python -m tests.benchmarks.claims`: what pages tell of simulated horses, a row for each way of reading."""

from __future__ import annotations

from collections.abc import Sequence

from tests.support.simulated_claims import Horses, told
from tests.support.simulated_season import Kind, held

COLUMNS = ("false pages", "ever false", "flare by 1/2/3/4", "at the 6th", "growing by 2/3/4/5/6 mm", "held", "may-bes")
ROW = "{:<34} {:>11} {:>10} {:>17} {:>10} {:>23} {:>6} {:>10}"
GAPS = (28, 56, 42, 35, 84, 42, 30, 60, 42, 56, 42)
HORSES = {
    "as read": Horses(800, 1),
    "uneven gaps, a fifth missing": Horses(200, 2, gaps=GAPS, missing=0.2),
    "errors shared by all feet": Horses(200, 3, together=0.5),
    "readings waver 1.5 times as much": Horses(200, 4, true=1.5),
}


def print_claims() -> None:
    """Print one row for each way of reading."""
    print(
        "claims of a page, % of simulated horses: 36 measures, 12 visits, a flare of 3 mm or heels 1 mm a visit apart"
    )
    print(ROW.format("", *COLUMNS))
    for name, horses in HORSES.items():
        found = told(horses)
        print(
            ROW.format(
                f"{name}, {horses.count} horses",
                _percent([found.false_pages]),
                _percent([found.ever_false]),
                _percent(found.flare[:4]),
                _percent([found.still]),
                _percent(found.growing[1:]),
                _percent([found.held]),
                f"{found.maybe:.1f} ({found.maybe_said:.1f})",
            )
        )


def print_windows() -> None:
    """Print how often the due window holds the day that is truly due, and how wide it is."""
    print("the due window of 800 horses, 3 to 7 cycles, uneven gaps, a fifth of the readings missing: held, rate, days")
    kinds = {"season of 15 %": Kind(), "no season": Kind(swing=0), "season, heavy tails": Kind(tails=3)}
    for name, kind in kinds.items():
        found = held(kind, horses=800, seed=3)
        print(f"{name:<34} {100 * found.window:6.1f} % {100 * found.rate:6.1f} % {found.days:6.1f}")


def _percent(shares: Sequence[float]) -> str:
    return " / ".join(f"{100 * share:.0f}" for share in shares)


if __name__ == "__main__":
    print_claims()
    print_windows()
