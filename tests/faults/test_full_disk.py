"""Changes on a nearly full disk; `python -m tests.faults --full-disks` takes every command and seven sizes."""

from __future__ import annotations

import pytest

from tests.faults.full_disk import SHARES, FullDisks, can_mount, told_badly


@pytest.fixture(scope="module")
def disks(tmp_path_factory: pytest.TempPathFactory) -> FullDisks:
    """One prepared computer, of which each run gets a copy on a small disk; skips where none may be made."""
    if not can_mount():
        pytest.skip("makes a small disk, which wants the right to mount")
    return FullDisks(tmp_path_factory.mktemp("disks"))


@pytest.mark.parametrize(("kind", "share"), [("correct", SHARES[2]), ("undo", SHARES[4])])
def test_a_change_that_finds_no_room_changes_nothing_and_says_so(disks: FullDisks, kind: str, share: float) -> None:
    """Stopped in the middle of git's own work, too; with room again it is made as if nothing had been."""
    refused, wrong = disks.faults(kind, share)

    assert refused
    assert wrong == []


def test_the_judge_notices_a_refusal_that_names_no_disk() -> None:
    """And a traceback, and an end that is none of ours."""
    assert list(told_badly(1, "git is busy in another window"))
    assert list(told_badly(1, "the disk of x is full\nTRACEBACK OSError()"))
    assert list(told_badly(70, "the disk of x is full"))
    assert not list(told_badly(1, "the disk of x is full"))
