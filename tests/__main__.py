"""Everything before a commit, in one command: format, lint, types, tests. Run as `python -m tests`."""

from __future__ import annotations

import subprocess
import sys

STEPS = (["ruff", "format", "."], ["ruff", "check", "."], ["mypy"], ["pytest"])

if __name__ == "__main__":
    for step in STEPS:
        print("+", *step, flush=True)
        code = subprocess.run([sys.executable, "-m", *step]).returncode
        if code:
            sys.exit(code)
