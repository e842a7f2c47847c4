"""One horse in two records."""

from __future__ import annotations

from pathlib import Path

import pytest

from recordgen.records.load.practice import read_practice
from tests.support.practice_folders import TODAY, build

CHIP = "microchip: 968000004531234\n"
LEFT = "left: {date: 2026-05-01, why: moved}\n"


def records(folder: Path, first: str, second: str) -> Path:
    """A practice whose Bramble has a second record at another stable."""
    return build(
        folder,
        {
            "willowmere/bramble/horse.yaml": f"name: Bramble\n{first}",
            "willowmere/bramble/2026-10-14.yaml": None,
            "fallow-end/stable.yaml": "name: Fallow End\n",
            "fallow-end/bramble/horse.yaml": f"name: Bramble\n{second}",
        },
    )


@pytest.mark.parametrize("number", [CHIP, "ueln: 372414001234567\n"])
def test_one_number_in_two_records_is_told_with_both_files(tmp_path: Path, number: str) -> None:
    """A slip, or a horse that moved and nobody wrote it down."""
    _, problems = read_practice(records(tmp_path, number, number), TODAY)

    (found,) = problems
    assert (found.place.line, found.level) == (2, "warning")
    assert " stands in fallow-end/bramble/horse.yaml too" in found.message
    assert "write left:" in found.way_out


@pytest.mark.parametrize(("first", "second"), [(CHIP, CHIP + LEFT), (CHIP, ""), ("", "")])
def test_a_horse_that_moved_is_no_slip(tmp_path: Path, first: str, second: str) -> None:
    """Nor are two horses without a number."""
    _, problems = read_practice(records(tmp_path, first, second), TODAY)

    assert list(problems) == []


def test_a_horse_that_moved_knows_its_earlier_record(tmp_path: Path) -> None:
    """The new record names the old one, and the old one nothing."""
    practice, _ = read_practice(records(tmp_path, CHIP, CHIP + LEFT), TODAY)

    assert practice is not None
    assert practice.horse("willowmere", "bramble").earlier == ("fallow-end/bramble",)
    assert practice.horse("fallow-end", "bramble").earlier == ()


@pytest.mark.parametrize("second", ["Bramble", "bramble", '" Bramble "'])
def test_two_horses_of_one_name_in_one_stable_are_told(tmp_path: Path, second: str) -> None:
    """However it is spelled, with the file of the first."""
    build(tmp_path, {"willowmere/fennel/horse.yaml": f"kind: pony\nname: {second}\n"})
    _, problems = read_practice(tmp_path, TODAY)

    (found,) = problems
    assert (found.place.path.split("/", 1)[1], found.place.line) == ("willowmere/fennel/horse.yaml", 2)
    assert found.message.endswith(" stands in willowmere/bramble/horse.yaml too")


def test_a_name_goes_on_to_another_horse(tmp_path: Path) -> None:
    """One that left, or one of another stable, is mixed up with nobody."""
    build(tmp_path, {"willowmere/fennel/horse.yaml": f"name: Bramble\n{LEFT}"})
    build(
        tmp_path, {"fallow-end/stable.yaml": "name: Fallow End\n", "fallow-end/bramble/horse.yaml": "name: Bramble\n"}
    )

    assert list(read_practice(tmp_path, TODAY)[1]) == []
