"""Figures of tracings are reckoned once and kept."""

from __future__ import annotations

from pathlib import Path

import pytest

from recordgen.cache.entries import Cache
from recordgen.hoof.tracing.figures import reckoned
from recordgen.records.models.tracing import Tracing
from recordgen.site.tracing import figure_cache as room
from recordgen.site.tracing.figure_cache import FigureCache
from tests.support.typed_tracings import typed

TRACING = Tracing.model_validate(typed())


def test_what_is_kept_is_what_was_reckoned(tmp_path: Path) -> None:
    """To the last digit, and written alike: 100.0 is not 100 in a file for other programs."""
    first, again = FigureCache(Cache(tmp_path))(TRACING, 1.5), FigureCache(Cache(tmp_path))(TRACING, 1.5)

    assert repr(first) == repr(again) == repr(reckoned(TRACING, 1.5))


def test_it_is_reckoned_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Another hand or another tracing is another question."""
    asked: list[float] = []
    monkeypatch.setattr(room, "reckoned", lambda tracing, hand: asked.append(hand) or {})
    for hand in (1.5, 1.5, 2.0):
        FigureCache(Cache(tmp_path))(TRACING, hand)
    FigureCache(Cache(tmp_path))(Tracing.model_validate(typed(shift=(601, 900))), 1.5)

    assert asked == [1.5, 2.0, 1.5]


def test_one_digit_changed_in_what_is_kept_is_noticed(tmp_path: Path) -> None:
    """The figures are reckoned anew, and never wrong."""
    FigureCache(Cache(tmp_path))(TRACING, 1.5)
    (file,) = (tmp_path / "figures").rglob("?" * 64)
    file.write_bytes(file.read_bytes()[:-4] + b"9]}}")

    assert FigureCache(Cache(tmp_path))(TRACING, 1.5) == reckoned(TRACING, 1.5)
