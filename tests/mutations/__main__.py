"""Change the meaning of the records in small ways, a change at a time, and name those that no test notices.

    python -m tests.mutations --count 60 --seed 1 --room hoof/tracing

The work goes on in a copy of the repository, whose tests must pass before anything is changed. For each change the
tests of the changed file's own room run first, then those of the whole floor, such as `hoof` with the published
figures; the first failure ends it, and a change by which they run on without end counts as noticed.
"""

from __future__ import annotations

import argparse
import os
import random
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from tests.conftest import ROOT
from tests.mutations.changes import Change, changes_of

# The tests of each floor that changes may be made on.
TESTS = {
    "hoof": ["tests/hoof", "tests/published"],
    "records": [
        "tests/records",
        *(f"tests/cli/test_{name}.py" for name in ("receive", "receive_sheets", "changing", "check")),
    ],
    "private": ["tests/private"],
}
# A loop that no longer ends is noticed after so many times what all tests took before, and a minute. Judgement.
PATIENCE, LEAST_PATIENCE = 3, 60
PASSED, NO_TESTS = 0, (4, 5)
NOT_COPIED = shutil.ignore_patterns(".venv", ".git", "sites", ".mypy_cache", ".ruff_cache", ".pytest_cache")


def main() -> None:
    """Print each change that was made, and at the end those that no test noticed."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--count", type=int, default=60)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument(
        "--room", type=Path, default=Path("hoof"), help="such as hoof/tracing, records or private/crypto"
    )
    asked = parser.parse_args()
    tests = TESTS.get(str(asked.room).split(os.sep)[0])
    if tests is None or not (ROOT / "recordgen" / asked.room).is_dir():
        parser.error(f"--room must be a folder of recordgen within {', '.join(TESTS)}, not {asked.room}")
    every = [change for file in sorted((ROOT / "recordgen" / asked.room).rglob("*.py")) for change in changes_of(file)]
    chosen = random.Random(asked.seed).sample(every, min(asked.count, len(every)))
    with tempfile.TemporaryDirectory(prefix="recordgen-") as folder:
        copy = Path(folder) / "code"
        shutil.copytree(ROOT, copy, ignore=NOT_COPIED)
        patience = _patience(copy, tests)
        left = [change for change in chosen if not _noticed(change, copy, tests, patience)]
    print(f"{len(chosen)} of {len(every)} possible changes made, {len(left)} noticed by no test")
    for change in left:
        print(f"  {_shown(change)}")


def _patience(copy: Path, tests: list[str]) -> float:
    """Seconds that the tests of a change may take, by what all take without one.

    Raises SystemExit where they fail without one, since every change would then seem noticed.
    """
    start = time.monotonic()
    if _fails(copy, tests, timeout=None):
        raise SystemExit("The tests fail without any change. Mend that first.")
    return LEAST_PATIENCE + PATIENCE * (time.monotonic() - start)


def _noticed(change: Change, copy: Path, tests: list[str], patience: float) -> bool:
    place = copy / change.file.relative_to(ROOT)
    before = place.read_text("utf-8")
    place.write_text(change.applied(before), "utf-8")
    try:
        failed = any(_fails(copy, some, patience) for some in [*_near(place, copy), tests])
    finally:
        place.write_text(before, "utf-8")
    print("noticed " if failed else "NOT SEEN", _shown(change), flush=True)
    return failed


def _near(place: Path, copy: Path) -> list[list[str]]:
    """The tests of a file, then those of its folder; none where that has none of its own."""
    own = copy / "tests" / place.parent.relative_to(copy / "recordgen")
    near = sorted(own.glob(f"test_{place.stem}*.py"))
    rooms = [[str(path) for path in near]] if near else []
    return [*rooms, [str(own)]] if any(own.rglob("test_*.py")) else []


def _fails(copy: Path, tests: list[str], timeout: float | None) -> bool:
    """Tell whether tests fail, or do not end. Raises ValueError where there are none."""
    command = [sys.executable, "-m", "pytest", "-x", "-q", "-n", "2", "-p", "no:cacheprovider", *tests]
    surroundings = {**os.environ, "PYTHONPATH": str(copy), "PYTHONDONTWRITEBYTECODE": "1"}
    with subprocess.Popen(
        command,
        cwd=copy,
        env=surroundings,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
        start_new_session=True,
    ) as run:
        try:
            code = run.wait(timeout)
        except subprocess.TimeoutExpired:
            os.killpg(run.pid, signal.SIGKILL)
            return True
    if code in NO_TESTS:
        raise ValueError(f"no tests ran: {' '.join(tests)}")
    return code != PASSED


def _shown(change: Change) -> str:
    return str(change).replace(f"{ROOT}{os.sep}", "")


if __name__ == "__main__":
    main()
