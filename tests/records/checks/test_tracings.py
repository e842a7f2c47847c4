"""Tracings beyond the form of their points: lines that cross, sides, scale, picture."""

from pathlib import Path
from typing import Any

import pytest
import shapely
import shapely.affinity
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from recordgen.records.checks.records import visit_problems
from recordgen.records.checks.tracing_sides import side_of, traced_as
from recordgen.records.checks.tracings import crossing, outside
from recordgen.records.models.lines.points import Spot
from recordgen.records.models.names import Foot
from recordgen.records.models.visit import Visit
from recordgen.records.yaml.read import read_partly
from tests.support.photographs import drawn, file_of
from tests.support.practice_folders import TODAY, VISIT_FILE, told
from tests.support.tracing_text import FIRST_LINE, arc, text

AT = "left_fore, tracings, number 1"
PHOTO = "2026-10-14-left-fore-sole-after.jpg"
CROSSED = [*arc()[:6], arc()[8], arc()[7], arc()[6], *arc()[9:]]
SOLE = [
    f"wall: {arc()}",
    f"white_line: {arc(220)}",
    "frog_apex: [800, 600]",
    "frog_medial: [760, 800]",
    "frog_lateral: [840, 800]",
    "buttress_medial: [640, 830]",
    "buttress_lateral: [960, 830]",
    "bar_medial: [[650, 820], [720, 720]]",
    "bar_lateral: [[950, 820], [880, 720]]",
]
SIDE = ["ground: [[100, 1000], [900, 1000]]", "dorsal_wall: [[400, 700], [330, 850], [260, 995]]"]


def of(tmp_path: Path, *marks: str, more: str = "", **values: Any) -> list[str]:
    """Problems of a visit with one tracing, less the file's name."""
    return [line.removeprefix(f"{VISIT_FILE}:") for line in told(tmp_path, {VISIT_FILE: text(*marks, **values) + more})]


def with_mark(mark: str) -> list[str]:
    """The sole with one landmark written otherwise."""
    name = mark.split(":", maxsplit=1)[0]
    return [mark if old.split(":")[0] == name else old for old in SOLE]


def test_a_good_tracing_has_no_problems(tmp_path: Path) -> None:
    """A whole sole, and a side."""
    assert of(tmp_path, *SOLE) == []
    assert of(tmp_path, *SIDE, view="side") == []


def test_a_foot_under_its_ground_line_is_asked_about(tmp_path: Path) -> None:
    """As in a picture that is upside down; the tracing may stand."""
    under = ["ground: [[100, 300], [900, 300]]", "dorsal_wall: [[400, 700], [330, 500], [260, 305]]"]
    (line,) = of(tmp_path, *under, view="side")

    assert f"warning: {AT}, ground: the foot stands under its ground line. Look whether the picture is upside" in line


def test_an_outline_traced_the_other_way_round_is_accepted(tmp_path: Path) -> None:
    """Sides are told by names, not by the order of the points."""
    assert of(tmp_path, *with_mark(f"wall: {arc()[::-1]}")) == []


@pytest.mark.parametrize("name", ["wall", "white_line"])
def test_an_outline_that_crosses_itself_is_told_where(tmp_path: Path, name: str) -> None:
    """By the numbers of the points, at the line of the first."""
    (line,) = of(tmp_path, f"{name}: {CROSSED}")

    assert line.startswith(f"{FIRST_LINE}:")
    assert line.endswith(
        f"error: {AT}, {name}: it crosses or touches itself, between points 6 and 7 and points 9 and 10. "
        "Trace the points in order, once round; the straight line between the ends closes it."
    )


def test_the_place_of_a_crossing_is_the_point(tmp_path: Path) -> None:
    """Where each point has a line of its own, that line is told."""
    rows = "".join(f"\n          - {point}" for point in CROSSED)

    assert of(tmp_path, f"wall:{rows}")[0].startswith(f"{FIRST_LINE + 6}:13: error: ")


SQUARE = [Spot(0, 0), Spot(10, 0), Spot(10, 10), Spot(0, 10)]


@pytest.mark.parametrize(
    ("points", "expected"),
    [
        (SQUARE, None),
        ([*SQUARE, SQUARE[0]], None),
        ([SQUARE[0], *SQUARE, SQUARE[3]], None),
        ([SQUARE[0], SQUARE[2], SQUARE[1], SQUARE[3]], ((0, 1), (2, 3))),
        ([Spot(0, 0), Spot(10, 0), Spot(5, 5), Spot(5, -5)], ((0, 1), (2, 3))),
        ([*SQUARE, Spot(5, 0)], ((0, 1), (3, 4))),
        ([Spot(0, 0), Spot(10, 0), Spot(4, 0), Spot(4, 9)], ((0, 1), (1, 2))),
        ([Spot(0, 0), Spot(5, 5), Spot(9, 9)], ((0, 1), (2, 0))),
        ([Spot(0, 0), Spot(0, 0), Spot(9, 9)], ((0, 2), (2, 0))),
    ],
)
def test_a_crossing_is_found(points: list[Spot], expected: tuple[tuple[int, int], tuple[int, int]] | None) -> None:
    """Crossed, touched, doubled back, all in one line; a point written twice is no crossing."""
    assert crossing(points) == expected


def test_a_white_line_outside_the_wall_is_told_by_its_points(tmp_path: Path) -> None:
    """At the line of the first of them."""
    line = arc(220)
    line[3], line[9] = arc(270)[3], arc(270)[9]
    (found,) = of(tmp_path, *with_mark(f"white_line: {line}"))

    assert f"error: {AT}, white_line: points 4 and 10 stand outside the wall. " in found
    assert found.startswith(f"{FIRST_LINE + 1}:")


def test_wall_and_white_line_swapped_are_told(tmp_path: Path) -> None:
    """Of many points the first ones are named."""
    (found,) = of(tmp_path, f"wall: {arc(220)}", f"white_line: {arc()}")

    assert "points 1, 2, 3, 4, 5, 6, 7, 8 and 8 more stand outside the wall. Look whether wall and white_line" in found


@pytest.mark.parametrize(("radius", "error", "problems"), [(255, 1.5, 0), (255, 0.5, 1), (262, 1.5, 1)])
def test_the_hand_may_err_at_the_white_line(tmp_path: Path, radius: int, error: float, problems: int) -> None:
    """A point may be off by 1.96 x sqrt(2) SD; at an image 1600 px wide, 1.5 px of error are 6.7 px of leeway."""
    line = arc(220)
    line[7] = arc(radius)[7]

    assert len(of(tmp_path, f"wall: {arc(number=41)}", f"white_line: {line}", hand_error=error)) == problems


def test_a_point_outside_is_found_in_px() -> None:
    """Further than the leeway from the nearest place of the outline."""
    points = [Spot(5, 5), Spot(12, 5), Spot(10, 5), Spot(5, -3)]

    assert outside(points, SQUARE, 1.9) == [1, 3]
    assert outside(points, SQUARE, 2) == [3]


@pytest.mark.parametrize(
    ("swapped", "said"),
    [
        (["frog_medial: [840, 800]", "frog_lateral: [760, 800]"], "frog_medial: frog_medial and frog_lateral lie"),
        (
            ["bar_medial: [[950, 820], [880, 720]]", "bar_lateral: [[650, 820], [720, 720]]"],
            "bar_medial: bar_medial and bar_lateral lie",
        ),
    ],
)
def test_swapped_sides_are_told(tmp_path: Path, swapped: list[str], said: str) -> None:
    """Frog, buttresses and bars must tell the same side as medial."""
    names = {mark.split(":")[0] for mark in swapped}
    rest = [mark for mark in SOLE if mark.split(":")[0] not in names]
    (line,) = of(tmp_path, *swapped, *rest)

    assert line.startswith(f"{FIRST_LINE}:9: error: {AT}, {said} the other way round than buttress_medial and")
    assert line.endswith("Look whether medial and lateral were swapped.")


def test_swapped_sides_in_a_front_view_are_told(tmp_path: Path) -> None:
    """The hairline's ends and the walls."""
    walls = ["medial_wall: [[900, 400], [910, 600], [930, 800]]", "lateral_wall: [[500, 400], [490, 600], [470, 800]]"]
    (line,) = of(tmp_path, "coronet_medial: [500, 390]", "coronet_lateral: [900, 390]", *walls, view="front")

    assert "medial_wall and lateral_wall lie the other way round than coronet_medial and coronet_lateral" in line


def test_a_wall_traced_from_the_ground_up_is_told(tmp_path: Path) -> None:
    """The upper third of a wall is looked at, so that its upper end must be known."""
    (line,) = of(tmp_path, SIDE[0], "dorsal_wall: [[260, 995], [330, 850], [400, 700]]", view="side")

    assert line == (
        f"{FIRST_LINE + 1}:9: error: {AT}, dorsal_wall: its first point is nearer to the ground than its last. "
        "Write its points from the hairline down."
    )


@pytest.mark.parametrize("degrees", [-70, -30, -8, 8, 30, 70])
def test_which_end_of_a_wall_is_up_is_told_however_the_picture_was_held(tmp_path: Path, degrees: float) -> None:
    """The same side, rolled: told where it was traced from the ground up, and not where it was not."""
    line = shapely.LineString([(100, 1000), (900, 1000), (400, 700), (330, 850), (260, 995)])
    rolled = shapely.affinity.translate(shapely.affinity.rotate(line, degrees, (500, 850)), 300, -150)
    spots = [[round(x, 1), round(y, 1)] for x, y in rolled.coords]
    found = [
        of(tmp_path, f"ground: {spots[:2]}", f"dorsal_wall: {wall}", view="side") for wall in (spots[2:], spots[:1:-1])
    ]

    assert found[0] == []
    assert ["its first point is nearer to the ground than its last" in line for line in found[1]] == [True]


def test_a_short_scale_is_asked_about(tmp_path: Path) -> None:
    """Under 2 % of the image's width the error of the hand is too much of it."""
    scale = "{from: [100, 100], to: [130, 100], length: 10}"

    assert of(tmp_path, "frog_apex: [1, 1]", scale=scale) == [
        f"9:9: warning: {AT}, scale: it is too short to scale by: 30 px of an image 1600 px wide. "
        "Take two points further apart."
    ]


@pytest.mark.parametrize(
    ("length", "said"),
    [
        (15, "error: {}: by it the sole is 19 mm from end to end; 30 to 250 mm is possible. Look at both ends of"),
        (400, "error: {}: by it the sole is 500 mm from end to end; 30 to 250 mm is possible. Look at both ends"),
        (150, "warning: {}: by it the sole is 188 mm from end to end, outside 50 to 170, so look again"),
    ],
)
def test_a_scale_that_makes_no_foot_is_told(tmp_path: Path, length: int, said: str) -> None:
    """The foot it makes must be possible, and is asked about where it is unusual."""
    (line,) = of(tmp_path, SOLE[0], scale=f"{{from: [100, 1100], to: [500, 1100], length: {length}}}")

    assert line.startswith(f"9:9: {said.format(f'{AT}, scale')}")


@pytest.mark.parametrize(
    ("animal", "length", "said"),
    [
        ("heavy: yes", 160, ""),
        ("heavy: yes", 190, "by it the sole is 238 mm from end to end, outside 105 to 230 for heavy horses, so look"),
        ("kind: pony", 125, "by it the sole is 156 mm from end to end, outside 55 to 150 for ponies, so look again"),
        ("kind: horse", 138, ""),
        ("kind: mule", 138, "by it the sole is 173 mm from end to end, outside 50 to 170, so look again"),
    ],
)
def test_a_scale_goes_by_the_class_of_the_animal(tmp_path: Path, animal: str, length: int, said: str) -> None:
    """From the least width to the greatest length that are likely for it, as for what is typed; else of any animal."""
    traced = text(SOLE[0], scale=f"{{from: [100, 1100], to: [500, 1100], length: {length}}}")
    horse = f"name: Bramble\nborn: 2015\n{animal}\n"
    lines = told(tmp_path, {VISIT_FILE: traced, "willowmere/bramble/horse.yaml": horse})

    assert len(lines) == bool(said)
    assert all(f"warning: {AT}, scale: {said}" in line for line in lines)


def test_a_scale_is_held_against_walls_too(tmp_path: Path) -> None:
    """In a side view the front wall is as long as a toe can be."""
    lines = of(tmp_path, *SIDE, view="side", scale="{from: [100, 1100], to: [500, 1100], length: 10 in}")

    assert "warning: left_fore, tracings, number 1, scale: by it the front wall is 207 mm from end to end" in lines[0]


def test_a_tracing_after_no_trim_is_told(tmp_path: Path) -> None:
    """Either it was trimmed or there is no after."""
    assert of(tmp_path, "frog_apex: [800, 600]", more="trimmed: no\n") == [
        f"6:9: error: {AT}, moment: it shows the foot after a trim, but the visit says trimmed: no. "
        "Take out trimmed: no, or write moment: before."
    ]
    assert of(tmp_path, "frog_apex: [800, 600]", more="trimmed: no\n", moment="before") == []


def test_a_photograph_that_is_not_there_is_asked_about(tmp_path: Path) -> None:
    """The points stand without it, so it is a warning."""
    assert of(tmp_path, file=PHOTO) == [
        f"10:9: warning: {AT}, file: there is no such photograph in the horse's folder photos. "
        "Put it there with recordgen photo, correct the name, or take out file."
    ]


@pytest.mark.parametrize(
    ("name", "problems"),
    [
        (PHOTO, 0),
        ("2026-10-14-left-fore-sole-after-2.jpg", 0),
        ("2026-10-14-left-fore-sole.jpg", 0),
        ("2026-10-14-left-fore-sole-before.jpg", 1),
        ("2026-10-14-right-fore-sole-after.jpg", 1),
        ("2026-10-13-left-fore-sole-after.jpg", 1),
        ("2026-10-14-left-fore-side-after.jpg", 1),
    ],
)
def test_the_photograph_is_the_one_of_the_foot(tmp_path: Path, name: str, problems: int) -> None:
    """By its name it shows the day, the foot, the view and the moment of the tracing."""
    files: dict[str, str | bytes | None] = {
        VISIT_FILE: text(file=name),
        f"willowmere/bramble/photos/{name}": file_of(drawn()),
    }
    lines = [line for line in told(tmp_path, files) if line.startswith(VISIT_FILE)]

    assert sum("another day, foot, view or moment" in line for line in lines) == problems


def swapped(marks: list[str]) -> list[str]:
    """The same places, but what was medial is called lateral."""
    names = str.maketrans({"<": "medial", ">": "lateral"})
    return [mark.replace("medial", ">").replace("lateral", "<").translate(names) for mark in marks]


FRONT = ["ground: [[300, 900], [1100, 900]]", "coronet_medial: [500, 390]", "coronet_lateral: [900, 390]"]
UPSIDE_DOWN = ["frog_apex: [800, 900]", "frog_medial: [840, 700]", "frog_lateral: [760, 700]"]


@pytest.mark.parametrize(
    ("marks", "values", "how"),
    [
        (swapped(SOLE), {}, "with the toe up"),
        (swapped(SOLE[5:7] + SOLE[:1]), {}, "with the toe up"),
        (swapped(SOLE[7:]), {}, "with the toe up"),
        (swapped(UPSIDE_DOWN), {}, "with the toe up"),
        (swapped(FRONT), {"view": "front"}, "from the front"),
    ],
)
def test_sides_that_do_not_fit_the_foot_are_told(
    tmp_path: Path, marks: list[str], values: dict[str, str], how: str
) -> None:
    """Every side swapped, another foot meant, or a mirrored picture: the lateral side lies as in the other foot."""
    (line,) = of(tmp_path, *marks, **values)

    assert f"error: {AT}: {how}, its lateral side lies as in a right foot. Look whether the foot was mistaken" in line


@pytest.mark.parametrize(
    ("marks", "values"), [(SOLE, {}), (UPSIDE_DOWN, {}), (FRONT, {"view": "front"}), (["frog_apex: [800, 600]"], {})]
)
def test_sides_that_fit_the_foot_are_not_asked_about(tmp_path: Path, marks: list[str], values: dict[str, str]) -> None:
    """However the picture was held; and nothing is told where nothing tells the sides."""
    assert of(tmp_path, *marks, **values) == []


@pytest.mark.parametrize(("foot", "expected"), [("left_fore", "left"), ("right_hind", "right")])
def test_the_shape_of_a_sole_tells_the_foot(foot: Foot, expected: str) -> None:
    """A left sole with its toe up has its lateral half, the wider one, on the right.

    Source: the lateral half of the sole is the wider one, Lungwitz & Adams 1913, A Text-Book of Horseshoeing, ch. I.
    From memory, not read.
    """
    sign = 1 if expected == "left" else -1
    spots = {"frog_apex": (0, -9), "frog_medial": (-3 * sign, 9), "frog_lateral": (4 * sign, 9)}

    assert side_of(foot) == expected
    assert traced_as("sole", {name: [Spot(*spot)] for name, spot in spots.items()}) == expected


def test_a_foot_that_was_only_traced_is_recorded(tmp_path: Path) -> None:
    """A tracing counts as something; the visit is not asked about as one without a foot."""
    assert of(tmp_path, "frog_apex: [800, 600]") == []


def test_form_and_meaning_are_told_in_one_run(tmp_path: Path) -> None:
    """A wrong landmark does not hide a crossed wall, a swapped side or a missing photograph."""
    marks = ["frog_apex: middle", f"wall: {CROSSED}", *SOLE[5:], "frog_medial: [9, 9]", "frog_lateral: [1, 9]"]
    lines = of(tmp_path, *marks, file=PHOTO)

    assert [int(line.split(":")[0]) for line in lines] == [10, 11, 12, 17]


SPOTS = st.tuples(st.integers(0, 20), st.integers(0, 15)).map(lambda spot: Spot(80 * spot[0], 80 * spot[1]))
OUTLINE = st.lists(SPOTS, min_size=12, max_size=14).filter(lambda points: len(set(points)) > 1)
PAIR = st.lists(SPOTS, min_size=2, max_size=2, unique=True)


def typed(points: list[Spot]) -> str:
    """Points as they are written."""
    return str([[x, y] for x, y in points])


@settings(max_examples=100, deadline=None, suppress_health_check=list(HealthCheck))
@given(wall=OUTLINE, line=OUTLINE, frog=PAIR, bars=st.tuples(PAIR, PAIR))
def test_points_at_random_are_looked_at_without_a_fall(
    tmp_path: Path, wall: list[Spot], line: list[Spot], frog: list[Spot], bars: tuple[list[Spot], list[Spot]]
) -> None:
    """Never a traceback, however the points lie."""
    file = tmp_path / "2026-10-14.yaml"
    marks = {"wall": wall, "white_line": line, "bar_medial": bars[0], "bar_lateral": bars[1]}
    corners = [f"frog_medial: {list(frog[0])}", f"frog_lateral: {list(frog[1])}"]
    file.write_text(text(*(f"{name}: {typed(points)}" for name, points in marks.items()), *corners))
    written, problems = read_partly(file, "file.yaml", Visit)

    assert problems == []
    assert written
    assert all(problem.as_line().isprintable() for problem in visit_problems(written, "2026-10-14", TODAY))


@settings(max_examples=200, deadline=None)
@given(points=st.lists(SPOTS, min_size=3, max_size=9).filter(lambda points: len(set(points)) > 2))
def test_an_outline_without_a_crossing_bounds_an_area(points: list[Spot]) -> None:
    """Told crossings are those that keep an outline from being a plain area."""
    assert (crossing(points) is None) == shapely.Polygon(points).is_valid
