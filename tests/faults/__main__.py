"""Kill commands at random moments, or run them on nearly full disks, and print what was lost, torn or left behind.

python -m tests.faults --count 200 --seed 1
python -m tests.faults --full-disks
"""

from __future__ import annotations

import argparse
import sys
import tempfile
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

from tests.faults import full_disk, kills

Run = tuple[str, bool, list[str]]


def main() -> None:
    """Print each fault, and of each command how often it was stopped; exit code 1 where something was wrong."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--count", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--full-disks", action="store_true", help="Seven sizes of each command; wants to mount a disk.")
    parser.add_argument("--only", choices=full_disk.KINDS, action="append", help="This command alone; may be repeated.")
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory(prefix="recordgen-") as folder:
        runs = (
            _on_full_disks(Path(folder), asked.only or full_disk.KINDS)
            if asked.full_disks
            else _killed(Path(folder), asked.only or kills.KINDS, asked.count, asked.seed)
        )
        sys.exit(_told(runs, "refused" if asked.full_disks else "killed"))


def _killed(folder: Path, kinds: Sequence[str], count: int, seed: int) -> Iterator[Run]:
    runs = kills.Kills(folder)
    for number in range(count):
        kind = kinds[number % len(kinds)]
        yield kind, *runs.faults(kind, seed * 1_000_000 + number)


def _on_full_disks(folder: Path, kinds: Sequence[str]) -> Iterator[Run]:
    runs = full_disk.FullDisks(folder)
    for kind in kinds:
        for share in full_disk.SHARES:
            yield kind, *runs.faults(kind, share)


def _told(runs: Iterable[Run], how: str) -> bool:
    """Prints the runs as they come, then their counts; whether any had a fault."""
    stopped, made, failed = Counter[str](), Counter[str](), 0
    for kind, was_stopped, wrong in runs:
        made[kind] += 1
        stopped[kind] += was_stopped
        failed += bool(wrong)
        for one in wrong:
            print(one, flush=True)
    for kind in made:
        print(f"{kind:12} {made[kind]:5} runs, {stopped[kind]:5} of them {how} before they were through")
    print(f"{made.total()} runs, {stopped.total()} {how}, {failed} with a fault")
    return bool(failed)


if __name__ == "__main__":
    main()
