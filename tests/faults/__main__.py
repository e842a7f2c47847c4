"""Kill commands at random moments and print what was lost, torn or left behind; the full count.

python -m tests.faults --count 200 --seed 1
"""

from __future__ import annotations

import argparse
import sys
import tempfile
from collections import Counter
from pathlib import Path

from tests.faults.kills import KINDS, Kills


def main() -> None:
    """Print each fault, and of each command how often it was killed; exit code 1 where something was wrong."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--count", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--only", choices=KINDS, action="append", help="This command alone; may be said again.")
    asked = parser.parse_args()
    killed, made, failed = Counter[str](), Counter[str](), 0
    with tempfile.TemporaryDirectory(prefix="recordgen-") as folder:
        kills = Kills(Path(folder))
        for number in range(asked.count):
            kind = (asked.only or KINDS)[number % len(asked.only or KINDS)]
            was_killed, wrong = kills.faults(kind, asked.seed * 1_000_000 + number)
            made[kind] += 1
            killed[kind] += was_killed
            failed += bool(wrong)
            for one in wrong:
                print(one, flush=True)
    for kind in made:
        print(f"{kind:12} {made[kind]:5} runs, {killed[kind]:5} of them killed before they were through")
    print(f"{made.total()} runs, {killed.total()} killed, {failed} with a fault")
    sys.exit(bool(failed))


if __name__ == "__main__":
    main()
