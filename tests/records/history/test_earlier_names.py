"""Where horses' folders lay first, as git tells."""

from __future__ import annotations

from pathlib import Path

import pytest

from recordgen.records.history.earlier_names import find_first_places
from tests.support.git_practice import alone, begun


def test_a_horse_is_known_by_its_first_place_for_good(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Through a new name, a new stable's name, and a change that git does not hold yet."""
    alone(monkeypatch, tmp_path)
    kept = begun(tmp_path)
    kept.git("mv", "willowmere/bramble", "willowmere/old-bramble")
    kept.entry("2026-10-20", "renamed")
    kept.git("mv", "willowmere", "mere")
    found = find_first_places(kept.records, [("mere", "old-bramble")])

    assert found == {("mere", "old-bramble"): "willowmere/bramble"}


def test_a_later_horse_of_the_same_place_is_told_apart(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """One moved away, and another was begun where it lay."""
    alone(monkeypatch, tmp_path)
    kept = begun(tmp_path)
    kept.git("mv", "willowmere/bramble", "willowmere/old-bramble")
    kept.entry("2026-10-20", "renamed")
    kept.entry("2026-10-21", "another", {"willowmere/bramble/horse.yaml": "name: Bramble the younger\nkind: pony\n"})
    found = find_first_places(kept.records, [("willowmere", "bramble"), ("willowmere", "old-bramble")])

    assert found == {
        ("willowmere", "old-bramble"): "willowmere/bramble",
        ("willowmere", "bramble"): "willowmere/bramble 2",
    }


def test_without_git_the_place_of_today_counts(tmp_path: Path) -> None:
    """There is nothing else to know it by."""
    assert find_first_places(tmp_path, [("willowmere", "bramble")]) == {("willowmere", "bramble"): "willowmere/bramble"}
