"""Run as `python -m tests.benchmarks`: prints one table of times, each beside what it is measured against."""

from __future__ import annotations

import tempfile
from pathlib import Path

from tests.benchmarks.changes import print_changes
from tests.benchmarks.claims import print_claims, print_windows
from tests.benchmarks.field import print_field
from tests.benchmarks.first_levels import print_first_levels
from tests.benchmarks.measured import (
    bare_engine,
    bare_yaml,
    build,
    check,
    coverages,
    help_time,
    picture_times,
    rounds_seconds,
)
from tests.benchmarks.pages import print_pages
from tests.conftest import RECORDS

ROW = "{:<86} {:>9} {:>9} {:>9}"


def main() -> None:
    """Measure and print."""
    print(ROW.format("", "seconds", "against", "MB peak"))
    with tempfile.TemporaryDirectory() as folder:
        _practice("demo", RECORDS, Path(folder))
        print_first_levels(Path(folder) / "demo sites")
        print_pages(Path(folder) / "demo sites")
    print_changes(stables=5, horses=12, years=2)
    print(ROW.format("recordgen --help", f"{help_time():.2f}", "", ""))
    for kind, ms in picture_times().items():
        print(f"{kind:<86} {ms:9.2f} ms a picture, drawn anew")
    print(ROW.format("rounds of 25 stables x 12 horses, some near each other", _s(rounds_seconds(25, 12)), "", ""))
    print("the 95 % interval of growth: share of 2,000 simulated horses whose true rate it holds, and its mean width")
    for count, (held, width) in coverages().items():
        print(f"{f'{count} cycles':<86} {100 * held:9.1f} % {width * 30.4375:9.2f} mm a month")
    print_claims()
    print_windows()
    print_field()


def _practice(name: str, records: Path, folder: Path) -> None:
    yaml, ours = bare_yaml(records), check(records, folder / f"{name} kept")
    print(ROW.format(f"{name}: check, against C YAML alone", _s(ours.seconds), _s(yaml.seconds), _mb(ours.peak_mb)))
    sites = folder / f"{name} sites"
    ours = build(records, sites, folder / f"{name} kept")
    bare = bare_engine(sites, folder / f"{name} bare")
    told = f"{name}: build, all drawn, against mkdocs alone"
    print(ROW.format(told, _s(ours.seconds), _s(bare.seconds), _mb(ours.peak_mb)))


def _s(seconds: float) -> str:
    return f"{seconds:.2f}"


def _mb(peak: float) -> str:
    return f"{peak:.0f}"


if __name__ == "__main__":
    main()
