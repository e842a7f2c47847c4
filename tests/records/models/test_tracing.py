"""Tracings of a picture: read from YAML to points, or refused at the very line with a way out."""

import subprocess
import sys
from pathlib import Path
from typing import get_args

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from recordgen.records.models.lines.points import Size, Spot
from recordgen.records.models.tracing import LANDMARKS, TAKES, TracedView, Tracing
from recordgen.records.models.visit import Visit
from recordgen.records.yaml.read import read_partly, read_record
from tests.support.practice_folders import VISIT, lines_of
from tests.support.schema import complaints
from tests.support.tracing_text import FIRST_LINE, HEAD, arc, text

AT = "feet, left_fore, tracings, number 1"


def tracing(tmp_path: Path, typed: str) -> Tracing:
    """The one tracing in a visit that nothing is wrong with."""
    file = tmp_path / "file.yaml"
    file.write_text(typed)
    written, problems = read_record(file, "file.yaml", Visit)
    assert problems == []
    return written.record.feet["left_fore"].tracings[0]


def test_a_tracing_is_read_as_points(tmp_path: Path) -> None:
    """Numbers come out as they were typed, the scale as millimetres in one px."""
    found = tracing(tmp_path, text("frog_apex: [800, 612.5]", "bar_medial: [[1, 2], [3, 4]]"))

    assert (found.view, found.moment, found.image) == ("sole", "after", Size(1600, 1200))
    assert found.named() == {"frog_apex": (Spot(800, 612.5),), "bar_medial": (Spot(1, 2), Spot(3, 4))}
    assert (found.scale.length_px, found.scale.mm_per_px) == (400, 0.25)


def test_a_scale_may_be_in_inches(tmp_path: Path) -> None:
    """Lengths are written here as everywhere."""
    found = tracing(tmp_path, text(scale="{from: [0, 0], to: [0, 508], length: 2 in}"))

    assert found.scale.mm_per_px == pytest.approx(0.1)


def test_what_was_not_traced_is_missing(tmp_path: Path) -> None:
    """In the order of the table, only what belongs to the view."""
    found = tracing(tmp_path, text("coronet_medial: [1, 1]", "ground: [[1, 9], [9, 9]]", view="front"))

    assert found.missing() == ("medial_wall", "lateral_wall", "coronet_lateral")


@pytest.mark.parametrize(("own", "expected"), [("", 3.2), ("hand_error: 0.5", 0.8)])
def test_the_hands_error_grows_with_the_image(tmp_path: Path, own: str, expected: float) -> None:
    """Told for an image 1000 px wide; the tracing's own goes before the usual one."""
    found = tracing(tmp_path, text(own))

    assert found.error_px(usual=2) == pytest.approx(expected)


def test_an_error_of_its_own_is_held_against_that_of_the_practices_hand(tmp_path: Path) -> None:
    """Where the tracing tells none; a touch of 6 px is twice as unsure as a hand of 3 px, and four times one of 1.5."""
    found = tracing(tmp_path, text("frog_apex: [800, 612]", "hand_errors: {frog_apex: 6}"))

    assert found.by_hand_of(3).error_times() == {"frog_apex": 2}
    assert found.error_times() == {"frog_apex": 4}


def test_the_table_names_every_landmark_of_the_model() -> None:
    """Each view has its names, and no field is left without a view."""
    others = {"view", "moment", "of", "file", "sha256", "image", "scale", "drawn", "model", "ridge", "hand_error"}
    others |= {"hand_errors"}

    assert list(LANDMARKS) == list(get_args(TracedView))
    assert set(TAKES) == set(Tracing.model_fields) - others


def test_the_same_view_may_be_traced_twice(tmp_path: Path) -> None:
    """Traced twice, it tells the error of the hand."""
    once = text("frog_apex: [800, 612]")

    assert lines_of(tmp_path, once + once.removeprefix(HEAD)) == []


def test_lines_left_empty_are_left_out(tmp_path: Path) -> None:
    """A form may keep the names that nobody traced."""
    found = tracing(tmp_path, text("wall:", "frog_apex:", "white_line: ~", file=""))

    assert (found.named(), found.file) == ({}, None)


OUT = "Type it anew; x runs from 0 to 1600, y from 0 at the top to 1200."
POINT = "Write two numbers in px, such as [640, 480]."
ANEW = "Trace it anew, or leave it out."


@pytest.mark.parametrize(
    ("mark", "column", "said"),
    [
        ("wall: [[1, 2], [3, 4], [5, 6]]", 9, f"wall: it needs 12 points or more, 3 are written. {ANEW}"),
        ("wall: []", 9, f"wall: it needs 12 points or more, none is written. {ANEW}"),
        ("bar_medial: [[1, 2]]", 9, f"bar_medial: it needs 2 points, 1 is written. {ANEW}"),
        ("bar_medial: [[1, 2], [3, 4], [5, 6]]", 9, f"bar_medial: it needs 2 points, 3 are written. {ANEW}"),
        ("bar_lateral: [[7, 7], [7, 7]]", 9, f"bar_lateral: all its points are the same point. {ANEW}"),
        (
            "pastern: [[1, 2], [3, 4]]",
            9,
            f"pastern: it is not traced in a sole view. Traced there are {', '.join(LANDMARKS['sole'])}.",
        ),
        ("frog_apex: [1700, 5]", 9, f"frog_apex: [1700, 5] stands outside the image. {OUT}"),
        ("bar_medial: [[1, 2], [3, -4]]", 30, f"bar_medial, number 2: [3, -4] stands outside the image. {OUT}"),
        ("frog_apex: middle", 9, f"frog_apex: a point is written [x, y]. {POINT}"),
        ("frog_apex: {x: 1, y: 2}", 9, f"frog_apex: a point is written [x, y]. {POINT}"),
        ("frog_apex: [[1, 2]]", 9, f"frog_apex: a point is written [x, y]. {POINT}"),
        ("bar_medial: [[1, 2], [3, 4, 5]]", 30, f"bar_medial, number 2: a point is written [x, y]. {POINT}"),
        (
            "bar_medial: [[1, 2], [3, four]]",
            30,
            "bar_medial, number 2: a point is written [x, y], and 'four' does not read as a number: "
            f"it is not a number. {POINT}",
        ),
        (
            "frog_apex: ['8,2', 3]",
            9,
            "frog_apex: a point is written [x, y], and '8,2' does not read as a number: a comma stands in it. "
            "Write a decimal with a point, like 8.2, and thousands without a sign.",
        ),
        (
            "wall: [1, 2]",
            9,
            "wall: its points are written [[x, y], [x, y]]. Write each point in brackets of its own.",
        ),
        (
            "wall: all round",
            9,
            "wall: its points are written [[x, y], [x, y]]. Write each point in brackets of its own.",
        ),
    ],
)
def test_a_wrong_landmark_is_told_at_its_line(tmp_path: Path, mark: str, column: int, said: str) -> None:
    """Line, what is wrong, and what to do about it."""
    assert lines_of(tmp_path, text(mark)) == [f"file.yaml:{FIRST_LINE}:{column}: error: {AT}, {said}"]


@pytest.mark.parametrize("name", TAKES)
def test_every_landmark_is_refused_in_the_views_it_is_not_of(tmp_path: Path, name: str) -> None:
    """A name of another view is told, whatever stands behind it."""
    for view in LANDMARKS:
        lines = lines_of(tmp_path, text(f"{name}: x", view=view))
        told = f"{name}: it is not traced in a {view} view" in lines[0]
        assert (len(lines), told) == (1, name not in LANDMARKS[view])


def test_a_misspelt_landmark_is_told_with_the_right_one(tmp_path: Path) -> None:
    """As every key."""
    assert lines_of(tmp_path, text("white_lin: [[1, 2]]")) == [
        f"file.yaml:{FIRST_LINE}:9: error: 'white_lin' is not a known key here. Did you mean white_line?"
    ]


@pytest.mark.parametrize(
    ("values", "line", "said"),
    [
        ({"moment": "found"}, 6, "moment: 'found' is not one of the words for it. Choose from before, after."),
        ({"image": "[1600]"}, 8, "image: its size is written [width, height]. Write two whole numbers in px, such as"),
        ({"image": "[1600.5, 9]"}, 8, "image: its size is written [width, height], and 1600.5 is not a whole number"),
        ({"image": "[1600, 99]"}, 8, "image: 99 px is not possible; 100 to 20000 px is. Type the width and the height"),
        ({"scale": "100 mm"}, 9, "scale should hold keys with values. Write scale: {from: …, to: …, length: 100 mm}."),
        ({"scale": "{from: [1, 1], to: [1, 9]}"}, 9, "scale, length is missing. Add length."),
        ({"scale": "{from: , to: [1, 9], length: 10}"}, 9, f"scale, from: a point is written [x, y]. {POINT}"),
        ({"scale": "{from: [1, 9], to: [1, 9], length: 10}"}, 9, "scale, to: both ends of the scale are the same"),
        ({"scale": "{from: [1, 1], to: [1, 9], length: 0}"}, 9, "scale, length: 0.0 is not possible; 1 to 2000 mm is"),
        ({"scale": "{from: [1, 1], to: [1, 1300], length: 9}"}, 9, "scale, to: [1, 1300] stands outside the image."),
        (
            {"scale": "{form: [1, 1], to: [1, 9], length: 9}"},
            9,
            "scale, form: it is not a known key here. Did you mean",
        ),
        ({"file": "../a.jpg"}, 10, "file: a folder stands before the name. Write the name of the file alone; it lies"),
        ({"hand_error": "100"}, 10, "hand_error: 100 is not possible; 0.1 to 30 px is."),
    ],
)
def test_a_wrong_value_around_the_points_is_told_at_its_line(
    tmp_path: Path, values: dict[str, str], line: int, said: str
) -> None:
    """One mistake makes one problem."""
    (told,) = lines_of(tmp_path, text(**values))

    assert told.startswith(f"file.yaml:{line}:")
    assert f"error: {AT}, {said}" in told


def test_all_mistakes_come_in_one_run(tmp_path: Path) -> None:
    """Each at the line of its own, two of one outline among them."""
    marks = ["wall: [[1, 2], [3, 4], [9999, 6]]", "frog_apex: middle", "pastern: [[1, 2], [3, 4]]", "frog: [1, 2]"]
    lines = lines_of(tmp_path, text(*marks, moment="later"))

    assert sorted(int(line.split(":")[1]) for line in lines) == [6, 10, 10, 11, 12, 13]


def test_what_is_right_of_a_tracing_is_kept(tmp_path: Path) -> None:
    """One wrong landmark does not hide the others from what looks at them later."""
    file = tmp_path / "file.yaml"
    file.write_text(text("frog_apex: [800, 612]", "wall: [[1, 2]]"))
    written, problems = read_partly(file, "file.yaml", Visit)

    assert (len(problems), written.whole) == (1, False)
    assert list(written.record.feet["left_fore"].tracings[0].named()) == ["frog_apex"]


def test_an_editor_completes_and_checks_a_tracing() -> None:
    """The schema knows the names; a point is numbers, not text."""
    right = text(f"wall: {arc()}", "frog_apex: [800, 612.5]", "breakover:")

    assert complaints(right) == []
    assert complaints(right.replace("frog_apex", "frog_apx")) == ["feet/left_fore/tracings/0"]
    assert complaints(right.replace("612.5", "low")) == ["feet/left_fore/tracings/0/frog_apex/1"]


def test_no_geometry_is_loaded_where_nothing_was_traced(tmp_path: Path) -> None:
    """Reading a visit without an outline does not wait for it."""
    (tmp_path / "file.yaml").write_text(VISIT)
    code = (
        "import sys, datetime as dt; from pathlib import Path\n"
        "from recordgen.records.checks.records import visit_problems\n"
        "from recordgen.records.yaml.read import read_record; from recordgen.records.models.visit import Visit\n"
        "visit = read_record(Path(sys.argv[1]), 'file.yaml', Visit)[0]\n"
        "print(list(visit_problems(visit, '2026-10-14', dt.date(2026, 12, 1))), 'shapely' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", code, tmp_path / "file.yaml"], capture_output=True, text=True)

    assert (done.stdout, done.stderr) == ("[] False\n", "")


JUNK = st.recursive(
    st.sampled_from(["", "~", "x", "-1", "5", "1e400", ".nan", "9" * 300, "٣", "½", "'8,2'", "[1, 2]", "{}", "[]"]),
    lambda inner: (
        st.lists(inner, max_size=4).map(lambda items: f"[{', '.join(items)}]")
        | st.dictionaries(st.sampled_from(["from", "to", "length", "x"]), inner, max_size=3).map(
            lambda pairs: "{" + ", ".join(f"{key}: {value}" for key, value in pairs.items()) + "}"
        )
    ),
    max_leaves=12,
)
KEYS = st.sampled_from([*Tracing.model_fields, "x"])


@settings(max_examples=150, deadline=None, suppress_health_check=list(HealthCheck))
@given(
    view=st.sampled_from([*LANDMARKS, "x", ""]), values=st.dictionaries(KEYS.filter("view".__ne__), JUNK, max_size=5)
)
def test_junk_in_a_tracing_is_read_or_told(tmp_path: Path, view: str, values: dict[str, str]) -> None:
    """Never a traceback; every problem has a line of the file and words that print."""
    file = tmp_path / "file.yaml"
    file.write_text(text(view=view, **values))
    written, problems = read_partly(file, "file.yaml", Visit)
    lines = file.read_text().count("\n")

    assert all(1 <= problem.place.line <= lines and problem.as_line().isprintable() for problem in problems)
    assert (written is not None and written.whole) or any(problem.level == "error" for problem in problems)
