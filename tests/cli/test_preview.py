"""recordgen preview: a server on this machine, rebuilt when a record changes."""

from __future__ import annotations

import os
import signal
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.conftest import TODAY
from tests.support.commands import run_today, small_practice

PATIENCE_SECONDS = 30


def free_port() -> int:
    """A port nobody uses now."""
    with socket.socket() as asked:
        asked.bind(("127.0.0.1", 0))
        port: int = asked.getsockname()[1]
        return port


def fetched(address: str, wanted: str) -> str:
    """A page once it holds the wanted words; the last one seen after some patience."""
    text, ends = "", time.monotonic() + PATIENCE_SECONDS
    while wanted not in text and time.monotonic() < ends:
        time.sleep(0.2)
        try:
            text = urllib.request.urlopen(address, timeout=5).read().decode()
        except OSError:
            continue
    return text


def _hears_interrupts() -> None:
    """A process that was begun in the background passes on that it is deaf to them."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)


@pytest.fixture
def previewed(tmp_path: Path) -> Iterator[tuple[Path, str, subprocess.Popen[str]]]:
    """A small practice, the address of its preview, and the process that serves it."""
    records, port = small_practice(tmp_path), free_port()
    words = ["preview", "willowmere", "--port", str(port), "--records", str(records), "--today", TODAY.isoformat()]
    process = subprocess.Popen(
        [sys.executable, "-m", "recordgen", *words],
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        start_new_session=True,
        preexec_fn=_hears_interrupts,  # noqa: PLW1509 - the shell of a person has no threads either
    )
    yield records, f"http://127.0.0.1:{port}/index.html", process
    if process.poll() is None:
        os.killpg(process.pid, signal.SIGKILL)
    process.wait()


def test_a_change_of_a_record_is_shown_and_a_mistake_keeps_the_old_page(
    previewed: tuple[Path, str, subprocess.Popen[str]],
) -> None:
    """The page follows the record; while a record is wrong the last good page stays; Ctrl+C ends it quietly."""
    records, address, process = previewed
    stable = records / "willowmere" / "stable.yaml"
    good = stable.read_text()
    assert "Willowmere" in fetched(address, "Willowmere")

    stable.write_text(good.replace("Willowmere", "Willowmead"))
    assert "Willowmead" in fetched(address, "Willowmead")

    stable.write_text("nam: [")
    time.sleep(2)
    assert "Willowmead" in fetched(address, "Willowmead")

    os.kill(process.pid, signal.SIGINT)
    told = process.communicate(timeout=PATIENCE_SECONDS)[0]
    assert "records/willowmere/stable.yaml:1:7:" in told
    assert "Traceback" not in told


def test_preview_tells_what_is_wrong_at_once(tmp_path: Path) -> None:
    """With an error in the records nothing is served."""
    records = small_practice(tmp_path)
    (records / "practice.yaml").write_text("name: x\n")
    result = run_today("preview", records=records)

    assert result.exit_code == 1
    assert "trimmer is missing" in result.output
