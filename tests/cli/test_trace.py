"""recordgen trace: what it says before and after the screen."""

from __future__ import annotations

from pathlib import Path

import pytest

from recordgen.site.trace import screen
from tests.support.commands import run
from tests.support.tracing_screen import traced_practice


@pytest.mark.parametrize(("done", "said"), [(True, "the tracing was written"), (False, "Nothing was written")])
def test_it_tells_the_address_and_what_came_of_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, done: bool, said: str
) -> None:
    """No browser is opened away from a terminal."""
    photo = traced_practice(tmp_path)
    monkeypatch.setattr(screen, "serve_screen", lambda shown, port, tell: tell(f"http://127.0.0.1:{port}/x/") or done)
    told = run("trace", str(photo.file), "--records", str(tmp_path), "--port", "8005")

    assert told.exit_code == 0
    assert "Open http://127.0.0.1:8005/x/ in a browser; end with Ctrl+C." in told.output
    assert said in told.output


def test_a_photograph_that_is_not_there_is_told(tmp_path: Path) -> None:
    """Before anything is shown."""
    told = run("trace", "none.jpg", "--records", str(tmp_path))

    assert told.exit_code == 1
    assert "There is no photograph 'none.jpg'" in told.output
