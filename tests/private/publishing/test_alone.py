"""One publishing of a stable at a time."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from recordgen.private.keystore.lock import alone
from recordgen.problems import Trouble

HOLD = """
import sys, time, pathlib
from recordgen.private.keystore.lock import alone
with alone(pathlib.Path(sys.argv[1])):
    print("held", flush=True)
    time.sleep(60)
"""


def test_the_second_is_told_and_a_killed_one_lets_go(tmp_path: Path) -> None:
    """While another process holds the keys nobody else does; killed, it holds them no longer."""
    keys = tmp_path / "willowmere.keys"
    with subprocess.Popen([sys.executable, "-c", HOLD, str(keys)], stdout=subprocess.PIPE) as other:
        assert other.stdout is not None
        assert other.stdout.readline() == b"held\n"
        with pytest.raises(Trouble, match="is being published, or its readers changed, in another window"), alone(keys):
            pass
        os.kill(other.pid, signal.SIGKILL)
    with alone(keys):
        pass


def test_two_stables_do_not_wait_for_each_other(tmp_path: Path) -> None:
    """Each has a lock of its own."""
    with alone(tmp_path / "willowmere.keys"), alone(tmp_path / "fallow-end.keys"):
        assert sorted(path.name for path in tmp_path.iterdir()) == ["fallow-end.lock", "willowmere.lock"]
