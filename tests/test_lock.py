"""The lock of all that is installed: every file by its hash, and nothing with a published hole."""

from __future__ import annotations

import re
import tomllib

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

from tests.conftest import ROOT

LOCK = (ROOT / ".ci" / "lock.txt").read_text("utf-8")

# The newest version with a hole that matters to us or to who tests us, of packages named in pyproject.toml.
# Sources: CVE-2026-69247, CVE-2026-59199, CVE-2026-41066, CVE-2026-25645, CVE-2026-44431, CVE-2026-4539 (as told in
# public change requests); for jinja2 (CVE-2025-27516), markdown (CVE-2025-69534) and pytest (CVE-2025-71176):
# From memory, not read. pillow and pypdf had more holes told in October 2026; their bounds are what the tests ran with.
HOLES = {
    "cryptography": "49.0.0",
    "jinja2": "3.1.5",
    "lxml": "6.0.2",
    "markdown": "3.8",
    "pillow": "12.2.0",
    "pygments": "2.19.2",
    "pypdf": "6.10.1",
    "pytest": "9.0.2",
    "requests": "2.32.5",
    "urllib3": "2.6.3",
}


def named() -> list[Requirement]:
    """The libraries that pyproject.toml asks for, with what the tests and the PDF need."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    extras = project["optional-dependencies"]
    return [Requirement(line) for line in (*project["dependencies"], *extras["pdf"], *extras["test"])]


def locked() -> dict[str, str]:
    """The version of each package in the lock."""
    return dict(re.findall(r"^([a-z0-9-]+)==([^ ;]+)", LOCK, re.MULTILINE))


def test_every_package_of_the_lock_carries_hashes() -> None:
    """One line a package, and below it nothing but hashes; no host is named."""
    packages = LOCK.replace("\\\n", " ").splitlines()

    assert len(packages) == len(locked()) > 50
    assert [line for line in packages if not re.search(r" --hash=sha256:[0-9a-f]{64}$", line)] == []
    assert "://" not in LOCK


def test_the_lock_holds_what_is_asked_for() -> None:
    """Each dependency stands in it, in a version that its bounds allow."""
    versions = locked()
    missing = [str(one) for one in named() if not one.specifier.contains(versions[canonicalize_name(one.name)])]

    assert missing == []


@pytest.mark.parametrize("package", HOLES)
def test_a_version_with_a_published_hole_is_left_out(package: str) -> None:
    """The lower bound lies above it."""
    bounds = [one.specifier for one in named() if canonicalize_name(one.name) == package]

    assert bounds
    assert not any(bound.contains(HOLES[package]) for bound in bounds)


def test_the_test_command_finds_locked_files_alone() -> None:
    """Fetched files are held against their hash; before the README's command runs, the way to others is closed."""
    script = (ROOT / ".ci" / "run").read_text("utf-8")
    fetch, close, run = (script.index(part) for part in ("--require-hashes", "PIP_NO_INDEX=1", 'eval "$test_command"'))

    assert fetch < close < run
