"""Stables and horses found by what somebody types."""

from __future__ import annotations

from pathlib import Path

import pytest

from recordgen.records.home import home_above
from recordgen.records.load.named import horses_meant, stables_meant
from tests.support.practice_folders import build

TWO_STABLES = {
    "hazel-bottom/stable.yaml": 'name: "Hazel Bottom"  # by the ford\n',
    "hazel-bottom/bilberry/horse.yaml": "name: Bilberry\n",
    "hazel-bottom/bramble/horse.yaml": "# the grey one\nname: Bramble\n",
    "hazel-bottom/lady-two/horse.yaml": "name: 'Lady Day'\n",
}


@pytest.fixture
def records(tmp_path: Path) -> Path:
    """A practice of two stables that both have a Bramble."""
    return build(tmp_path / "records", TWO_STABLES)


@pytest.mark.parametrize("typed", ["hazel-bottom", "Hazel Bottom", "hazel  bottom", "HAZEL BOTTOM", "hazel-bottom/"])
def test_a_stable_is_found_by_folder_or_name(records: Path, typed: str) -> None:
    """In any case, and with the stroke that a shell puts behind a folder."""
    assert stables_meant(records, typed) == ["hazel-bottom"]


@pytest.mark.parametrize(
    ("typed", "found"),
    [
        ("hazel-bottom/bilberry", ["hazel-bottom/bilberry"]),
        ("Hazel Bottom/Bilberry", ["hazel-bottom/bilberry"]),
        ("bilberry", ["hazel-bottom/bilberry"]),
        ("lady day", ["hazel-bottom/lady-two"]),
        ("bramble", ["hazel-bottom/bramble", "willowmere/bramble"]),
        ("willowmere/bilberry", []),
        ("willowmere/bramble/", ["willowmere/bramble"]),
        ("", []),
    ],
)
def test_a_horse_is_found_by_what_is_told_of_it(records: Path, typed: str, found: list[str]) -> None:
    """By its name alone too, where every horse of that name is told."""
    assert horses_meant(records, typed) == found


def test_no_way_leads_out_of_the_records(records: Path) -> None:
    """A name with strokes or stars in it is no pattern of files."""
    assert horses_meant(records, "../records/willowmere/bramble") == []
    assert horses_meant(records, "*/*") == []
    assert stables_meant(records, "..") == []


def test_the_records_are_found_from_within(records: Path) -> None:
    """From any folder inside them, and not from outside."""
    assert home_above(records / "willowmere" / "bramble") == records
    assert home_above(records.parent) is None
