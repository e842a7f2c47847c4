"""A tracing taken in: written where nothing is wrong, refused in words where something is, and nothing else touched."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from recordgen.hoof.tracing.figures import reckoned
from recordgen.problems import Trouble
from recordgen.records.load.practice import read_practice
from recordgen.site.trace.keep import keep_tracing
from recordgen.site.trace.photo import photo_to_trace
from tests.support.practice_folders import TODAY, VISIT, VISIT_FILE
from tests.support.tracing_screen import marks_of, traced_practice, tracings_in

MARKS = marks_of()
SCALE = {"from": MARKS["scale"][0], "to": MARKS["scale"][1], "length": 100, "lay": "on foot"}
LANDMARKS = {name: points for name, points in MARKS.items() if name != "scale"}


def answer(**values: Any) -> bytes:
    """A tracing as the screen sends it."""
    usual = {"view": "sole", "scale": SCALE, "drawn": "smooth", "landmarks": LANDMARKS, "hand_error": 2.4}
    usual["hand_errors"] = {"frog_apex": 15.0}
    return json.dumps(usual | values).encode()


def test_it_is_written_with_its_picture(tmp_path: Path) -> None:
    """View, moment and checksum come from the photograph; the figures come back with their errors."""
    photo = traced_practice(tmp_path)
    kept = keep_tracing(photo, answer())

    (found,) = tracings_in(photo)
    assert (kept.written, kept.problems) == (True, ())
    assert (found.view, found.moment, found.hand_error, found.sha256) == ("sole", "after", 2.4, photo.sha256)
    assert found.hand_errors == {"frog_apex": 15.0}
    assert kept.as_json()["figures"].keys() == reckoned(found, found.error_px()).keys()
    assert all(line in photo.visit.read_text().splitlines() for line in VISIT.splitlines())


@pytest.mark.parametrize(
    ("values", "said"),
    [
        ({"landmarks": LANDMARKS | {"wall": MARKS["wall"][:6]}}, "wall: it needs 7 points or more, 6 are written"),
        ({"landmarks": LANDMARKS | {"frog_apex": [[5000, 1]]}}, "frog apex: [5000, 1] stands outside the image"),
        ({"scale": SCALE | {"to": SCALE["from"]}}, "scale, to: both ends of the scale are the same point"),
        ({"scale": SCALE | {"length": 9}}, "mm is possible"),
        ({"landmarks": LANDMARKS | {"wall": [*MARKS["wall"][:4], MARKS["wall"][9], *MARKS["wall"][4:]]}}, "crosses"),
        ({"landmarks": LANDMARKS | {"white_line": MARKS["wall"], "wall": MARKS["white_line"]}}, "outside the wall"),
        ({"landmarks": {"frog_apex": "here"}}, "a point is written [x, y]"),
        ({"landmarks": {"eye": [[1, 1]]}}, "eye"),
    ],
)
def test_what_is_wrong_is_not_written(tmp_path: Path, values: dict[str, Any], said: str) -> None:
    """The file stays as it was, byte for byte."""
    photo = traced_practice(tmp_path)
    kept = keep_tracing(photo, answer(**values))

    assert not kept.written
    assert any(said in problem for problem in kept.problems), kept.problems
    assert photo.visit.read_text() == VISIT


def test_a_sole_is_asked_about_by_the_class_of_the_animal(tmp_path: Path) -> None:
    """As `check` would: one that fits a heavy horse is written without a question, and of a pony with one."""
    photo, asked = traced_practice(tmp_path), {}
    for animal in ("heavy: yes", "kind: pony"):
        (photo.visit.parent / "horse.yaml").write_text(f"name: Bramble\nborn: 2015\n{animal}\n")
        kept = keep_tracing(photo, answer(scale=SCALE | {"length": 150}))
        asked[animal] = [kept.written, *(problem.partition(", scale: ")[2][:21] for problem in kept.problems)]

    assert asked == {"heavy: yes": [True], "kind: pony": [True, "by it the sole is 216"]}


def test_a_foot_of_the_other_side_is_not_written(tmp_path: Path) -> None:
    """A right fore whose inner side lies as in a left one."""
    kept = keep_tracing(traced_practice(tmp_path, foot="right-fore"), answer())

    assert "its lateral side lies as in a left foot" in kept.problems[0]


def test_what_is_unlikely_is_written_and_told(tmp_path: Path) -> None:
    """A scale that few feet fit."""
    photo = traced_practice(tmp_path)
    kept = keep_tracing(photo, answer(scale=SCALE | {"length": 150}))

    assert kept.written
    assert "so look again" in kept.problems[0]


def test_a_second_tracing_stands_beside_the_first_or_in_its_place(tmp_path: Path) -> None:
    """As the screen asks."""
    photo = traced_practice(tmp_path)
    for instead_of in (None, None, 0):
        keep_tracing(photo, answer(instead_of=instead_of, hand_error=3.0 if instead_of == 0 else 2.0))

    assert [one.hand_error for one in tracings_in(photo)] == [3.0, 2.0]


def test_a_photographed_drawing_stays_a_drawing(tmp_path: Path) -> None:
    """As the visit tells of its earlier tracing."""
    photo = traced_practice(tmp_path)
    keep_tracing(photo, answer())
    photo.visit.write_text(photo.visit.read_text().replace("of: photograph", "of: drawing"))
    keep_tracing(photo_to_trace(tmp_path, photo.file), answer(instead_of=0))

    assert [one.of for one in tracings_in(photo)] == ["drawing"]


@pytest.mark.parametrize("sent", [b"", b"{", b"[]", b"{}", b'{"landmarks": 3}'])
def test_what_is_no_tracing_is_refused(tmp_path: Path, sent: bytes) -> None:
    """Whatever was sent."""
    with pytest.raises(Trouble, match="the screen sent no tracing"):
        keep_tracing(traced_practice(tmp_path), sent)


def test_a_visit_with_another_mistake_takes_it_all_the_same(tmp_path: Path) -> None:
    """The mistake stays for check to tell."""
    photo = traced_practice(tmp_path, willowmere__bramble__2026_10_14="")
    photo.visit.write_text("date: 2026-10-14\nfeet:\n  left_fore: {landing: sideways}\n")

    assert keep_tracing(photo, answer()).written
    assert "landing: sideways" in photo.visit.read_text()


def test_signs_before_the_text_stay(tmp_path: Path) -> None:
    """Some editors begin a file with a mark of its encoding."""
    photo = traced_practice(tmp_path)
    photo.visit.write_bytes(b"\xef\xbb\xbf" + VISIT.encode())
    keep_tracing(photo, answer())

    assert photo.visit.read_bytes().startswith(b"\xef\xbb\xbfdate:")


def test_a_visit_that_is_damaged_is_left(tmp_path: Path) -> None:
    """With a way out, and the points stay on the screen."""
    photo = traced_practice(tmp_path)
    photo.visit.write_text("date: [")

    with pytest.raises(Trouble, match=VISIT_FILE):
        keep_tracing(photo, answer())
    assert photo.visit.read_text() == "date: ["


def test_check_has_nothing_to_say_about_what_was_written(tmp_path: Path) -> None:
    """Neither of the tracing nor of its photograph."""
    photo = traced_practice(tmp_path)
    keep_tracing(photo, answer(model=1))
    _, problems = read_practice(tmp_path, TODAY)

    assert [problem.as_line() for problem in problems] == []
