"""Tracings by a few taps: how many a smooth line takes, where it crosses itself, whether its picture was changed."""

import hashlib
from pathlib import Path
from typing import Any

import pytest

from recordgen.records.change.change import Change
from recordgen.records.change.outlines import keep_outlines
from recordgen.records.models.lines.shape_table import SHIPPED, own_table, text_of
from tests.support.photographs import drawn, file_of
from tests.support.practice_folders import TODAY, VISIT_FILE, told
from tests.support.tracing_text import FIRST_LINE, arc, text

AT = "left_fore, tracings, number 1"
PHOTO = "2026-10-14-left-fore-sole-after.jpg"
FROG = ["frog_apex: [800, 600]", "frog_medial: [760, 800]", "frog_lateral: [840, 800]"]


def of(tmp_path: Path, *marks: str, files: dict[str, bytes] | None = None, **values: Any) -> list[str]:
    """Problems of a visit with one tracing, less the file's name."""
    written: dict[str, str | bytes | None] = {VISIT_FILE: text(*marks, **values), **(files or {})}
    return [line.removeprefix(f"{VISIT_FILE}:") for line in told(tmp_path, written)]


def test_a_smooth_sole_takes_seven_taps_and_five(tmp_path: Path) -> None:
    """Where straight lines would need twelve and eight."""
    marks = [f"wall: {arc(number=7)}", f"white_line: {arc(220, number=5)}", *FROG]

    assert of(tmp_path, *marks, drawn="smooth") == []
    assert len(of(tmp_path, *marks)) == 2


@pytest.mark.parametrize(
    ("mark", "said"),
    [
        (f"wall: {arc(number=6)}", "wall: it needs 7 points or more, 6 are written"),
        (f"white_line: {arc(220, number=4)}", "white_line: it needs 5 points or more, 4 are written"),
    ],
)
def test_fewer_are_refused(tmp_path: Path, mark: str, said: str) -> None:
    """At the line where they stand."""
    (line,) = of(tmp_path, mark, drawn="smooth")

    assert line.startswith(f"{FIRST_LINE + 1}:9: error: feet, left_fore, tracings, number 1, {said}.")


def test_a_smooth_line_that_crosses_itself_is_told_by_its_taps(tmp_path: Path) -> None:
    """The line between the taps counts, and the taps are named."""
    taps = arc(number=9)
    (line,) = of(tmp_path, f"wall: {[*taps[:4], taps[5], taps[4], *taps[6:]]}", drawn="smooth")

    assert f"error: {AT}, wall: it crosses or touches itself, between points 4 and 5 and points" in line


def test_a_white_line_is_looked_for_inside_the_curve(tmp_path: Path) -> None:
    """A straight line from tap to tap would leave it outside."""
    marks = [f"wall: {arc(number=7)}", f"white_line: {arc(240, number=10)}"]

    assert of(tmp_path, *marks, drawn="smooth") == []
    assert (
        "stand outside the wall" in of(tmp_path, f"wall: {arc(number=7)}", f"white_line: {arc(262)}", drawn="smooth")[0]
    )


def test_walls_from_the_side_are_straight(tmp_path: Path) -> None:
    """A side view that is drawn smooth is refused."""
    (line,) = of(tmp_path, "ground: [[100, 1000], [900, 1000]]", view="side", drawn="smooth")

    assert line.endswith("walls from the side and the front are straight. Take out drawn.")


@pytest.mark.parametrize("scale", ["", "{from: [100, 1100], to: [500, 1100], length: 100, lay: on ground}"])
def test_a_picture_may_have_no_scale_on_the_foot(tmp_path: Path, scale: str) -> None:
    """Nothing is asked about then."""
    assert of(tmp_path, f"wall: {arc()}", *FROG, scale=scale) == []


@pytest.mark.parametrize("changed", [False, True])
def test_a_photograph_that_was_changed_is_asked_about(tmp_path: Path, changed: bool) -> None:
    """Its checksum is kept beside the points; while it is the same, nothing is said."""
    picture = file_of(drawn(800, 600))
    files = {f"willowmere/bramble/photos/{PHOTO}": file_of(drawn(400, 300)) if changed else picture}
    found = of(tmp_path, f"wall: {arc()}", files=files, file=PHOTO, sha256=hashlib.sha256(picture).hexdigest())

    asked = [line for line in found if "the photograph was changed since it was traced" in line]
    assert (len(found), len(asked)) == ((1, 1) if changed else (0, 0))


def test_a_checksum_of_another_form_is_refused(tmp_path: Path) -> None:
    """It is 64 digits and letters."""
    (line,) = of(tmp_path, *FROG, sha256="abc")

    assert "sha256: a checksum is 64 digits and letters from a to f" in line


def test_a_table_that_is_not_here_is_told_of_the_practice_and_not_of_a_visit_alone(tmp_path: Path) -> None:
    """So a visit is corrected, received and joined before anybody read the practice's own tables."""
    visit = text(f"wall: {arc(number=7)}", *FROG, drawn="smooth", model="own-0123abcd")
    files = {tmp_path / VISIT_FILE: visit.encode()}

    (line,) = of(tmp_path, f"wall: {arc(number=7)}", *FROG, drawn="smooth", model="own-0123abcd")
    Change(tmp_path, "Corrected", (), "", files=files).look_over()

    assert f"error: {AT}, model: there is no model own-0123abcd; known here: 1" in line


def test_a_table_is_known_as_long_as_its_file_is_there(tmp_path: Path) -> None:
    """Each reading of a practice knows its tables alone: not one that lay there before, nor another practice's."""
    table = own_table(text_of(1.01 * SHIPPED.wall), text_of(SHIPPED.ring))
    ((file, content),) = keep_outlines(tmp_path, table, 50, TODAY).files.items()
    traced = text(f"wall: {arc(number=7)}", *FROG, drawn="smooth", model=str(table.version))
    here = told(tmp_path, {VISIT_FILE: traced, str(file.relative_to(tmp_path)): content})
    file.unlink()
    gone = told(tmp_path, {VISIT_FILE: traced})

    assert here == []
    assert [f"there is no model {table.version}; known here: 1" in line for line in gone] == [True]
