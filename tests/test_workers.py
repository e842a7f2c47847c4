"""Work shared among the cores."""

from __future__ import annotations

import sys
import threading

import pytest

from recordgen.cli.terminal import Waiting
from recordgen.workers import can_fork


@pytest.mark.skipif(sys.platform != "linux", reason="nothing is forked elsewhere")
def test_a_line_of_progress_stands_in_the_way_of_no_fork(monkeypatch: pytest.MonkeyPatch) -> None:
    """Its thread holds still meanwhile; any other thread does stand in the way."""
    Waiting.now = waiting = Waiting(patience_seconds=60)
    waiting.start()
    here = threading.current_thread()
    monkeypatch.setattr("multiprocessing.parent_process", lambda: None)
    monkeypatch.setattr(threading, "enumerate", lambda: [here, waiting])
    while_waiting = can_fork()
    Waiting.end()

    assert while_waiting
    assert not can_fork()
