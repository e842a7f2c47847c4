"""Format, lint and types, as the configuration asks."""

from __future__ import annotations

import subprocess
import sys

import pytest

from tests.conftest import ROOT

CHECKS = {
    "format": ["ruff", "format", "--check", "--quiet", "."],
    "lint": ["ruff", "check", "--quiet", "."],
    "types": ["mypy"],
}


@pytest.mark.parametrize("check", CHECKS)
def test_the_code_is_in_form(check: str) -> None:
    """The checker finds nothing."""
    done = subprocess.run([sys.executable, "-m", *CHECKS[check]], cwd=ROOT, capture_output=True, text=True)

    assert done.returncode == 0, done.stdout + done.stderr
