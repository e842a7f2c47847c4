"""The wall rolled flat with what grows out of it."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import Any, get_args

import pytest

from recordgen.pictures.cache import PictureCache
from recordgen.pictures.feet.growing_out import GROUND, LEFT, RIGHT, WIDTH, Defect, growing_out, mark_key
from recordgen.pictures.feet.rolled_wall import RolledWall, middle_of, smooth, wall_heights
from recordgen.records.models.foot import MarkKind
from recordgen.records.models.names import FEET, ZONES, Foot, Zone
from tests.support.svg import SVG, group_titled, points_of, root_of, strokes_of, words_in
from tests.support.text_boxes import boxes_of, outside, touching

NAN = float("nan")
KINDS: tuple[MarkKind, ...] = get_args(MarkKind)
SIDES = {"inner": "inner", "toe": "toe", "outer": "outer"}
SLIT = Defect("toe", "abscess line", 30, None, (), None, "March 2027")
HEIGHTS: dict[Zone, float] = {"toe": 80.0, "medial heel": 36.0, "lateral heel": 40.0}
UNIT = 0.85


def drawn(*defects: Defect, heights: dict[Zone, float] = HEIGHTS, foot: Foot = "left_fore") -> str:
    """A wall with some defects."""
    return growing_out(defects, heights, SIDES, foot, "growing out")


def wall(foot: Foot = "left_fore", known: dict[Zone, float] = HEIGHTS) -> RolledWall:
    """The wall as it is laid on the sheet."""
    return RolledWall(foot, wall_heights(foot, known, {}), (LEFT, RIGHT), GROUND, UNIT)


def points_in(picture: str, label: str) -> list[tuple[float, float]]:
    """Every point drawn for one defect."""
    return [p for path in group_titled(picture, label).iter(f"{SVG}path") for p in points_of(path.attrib["d"])]


def mark_of(picture: str) -> tuple[float, float]:
    """The middle of the one filled slit."""
    (slit,) = strokes_of(picture, fill="var(--clay)")
    across, down = zip(*slit, strict=True)
    return (min(across) + max(across)) / 2, (min(down) + max(down)) / 2


def test_zones_stand_from_the_inner_heel_to_the_outer_one() -> None:
    """Walking round the foot one meets the zones from left to right, whichever foot it is."""
    for foot in FEET:
        places = [mark_of(drawn(replace(SLIT, zone=zone, below_hairline_mm=10), foot=foot))[0] for zone in ZONES]
        assert places == sorted(places)


def test_a_mark_stands_its_millimetres_below_the_hairline() -> None:
    """Thirty millimetres below the hairline of an 80 mm toe are 50 mm above the ground."""
    across, down = mark_of(drawn(SLIT))

    assert across == pytest.approx(WIDTH / 2, abs=0.1)
    assert (GROUND - down) / UNIT == pytest.approx(50, abs=0.6)


def test_a_deeper_mark_stands_lower() -> None:
    """Marks that have grown down further are nearer to the ground."""
    depths = [mark_of(drawn(replace(SLIT, below_hairline_mm=mm)))[1] for mm in (5, 20, 40, 79)]

    assert depths == sorted(set(depths))


def test_measured_heights_are_drawn_and_others_follow_in_proportion() -> None:
    """A foot with a lower toe is lower all round, but for what was measured there.

    Source: Stachurska et al. 2008, Arch. Tierz. 51:531: toe to heel about 2:1; Lungwitz & Adams, A Text-Book of
    Horseshoeing, ch. I F: toe to side wall about 3:2 in front hoofs, ch. II E: 4:3 in hind hoofs.
    """
    known = wall_heights("left_fore", {"toe": 90, "medial heel": 36}, {})
    hind = wall_heights("left_hind", {"toe": 80}, {})

    assert (known["toe"], known["medial heel"], known["lateral heel"]) == (90, 36, 45)
    assert (known["lateral quarter"], hind["lateral quarter"]) == (pytest.approx(60), pytest.approx(60))


def test_without_a_measured_toe_the_heels_tell_the_height() -> None:
    """Heels of 40 mm make a toe of 80; nothing measured makes the usual one.

    Derived from: Josseck et al. 1995, Equine Vet J 27(3):175-182: 7 mm in 28 days for 11 months are 84 mm.
    """
    assert wall_heights("left_fore", {"medial heel": 38, "lateral heel": 42}, {})["toe"] == 80
    assert wall_heights("left_fore", {}, {})["toe"] == 84


def test_the_hairline_is_highest_at_the_toe_and_smooth() -> None:
    """From either heel it rises to the toe without a step, and never above what was given."""
    heights = [wall().height(-1 + step / 100) for step in range(201)]

    assert heights[:101] == sorted(heights[:101])
    assert heights[100:] == sorted(heights[100:], reverse=True)
    assert max(heights) == heights[100] == 80
    assert max(abs(b - a) for a, b in pairwise(heights)) < 1.5


def test_a_curve_passes_through_its_points() -> None:
    """Where a height is given it is drawn."""
    assert [wall().height(middle_of(zone)) for zone in HEIGHTS] == pytest.approx(list(HEIGHTS.values()))
    assert smooth([(0, 1), (1, 5), (3, 2)], [0, 0, 0], 1) == 5


def test_the_wall_reaches_as_far_as_anything_seen_on_it() -> None:
    """A mark deeper than the wall is thought to be high does not hang below the ground."""
    assert wall_heights("left_fore", {"toe": 60}, {"toe": 70})["toe"] == 70
    assert all(y <= GROUND + 3 for _, y in points_in(drawn(replace(SLIT, below_hairline_mm=140)), "March 2027"))


@pytest.mark.parametrize("kind", KINDS)
def test_earlier_sightings_are_ghosts_above(kind: MarkKind) -> None:
    """Each place where it was seen before is lighter, higher, and joined by one thin line going down."""
    now = replace(SLIT, kind=kind)
    none, one, two = (drawn(replace(now, earlier_mm=earlier)) for earlier in ((), (22,), (22, 12)))
    ghosts = [len(strokes_of(picture, opacity="0.5")) for picture in (none, one, two)]
    ((start, end),) = strokes_of(two, stroke_width="0.9", opacity="0.7")

    assert (ghosts[0], ghosts[2]) == (0, 2 * ghosts[1])
    assert ghosts[1] > 0
    assert start == (pytest.approx(WIDTH / 2), pytest.approx(GROUND - 68 * UNIT, abs=0.1))
    assert end[1] == pytest.approx(GROUND - 50 * UNIT, abs=0.1)


def test_kinds_differ_without_colour() -> None:
    """Each kind has a form of its own, on the wall and in the legend."""
    key = mark_key({kind: f"a {kind}" for kind in KINDS})

    assert len({str(strokes_of(drawn(replace(SLIT, kind=kind)))) for kind in KINDS}) == 4
    assert len({str(strokes_of(picture)) for picture in key.values()}) == 4
    assert root_of(key["crack end"])[0].text == "a crack end"


def test_a_crack_runs_from_its_end_to_the_ground() -> None:
    """Below its upper end the crack is drawn all the way down, in place of the arrow."""
    picture = drawn(replace(SLIT, kind="crack end"))
    crack = strokes_of(picture, stroke="var(--clay)", stroke_linecap="round")[0]

    assert crack[-1] == (WIDTH / 2, GROUND)
    assert crack[0][1] == pytest.approx(GROUND - 50 * UNIT, abs=4)
    assert strokes_of(picture, stroke_dasharray="0.1,3.4") == []


def test_a_dotted_arrow_leads_to_the_ground() -> None:
    """Marks still to grow down point there, unless they are there already."""
    ((start, end),) = strokes_of(drawn(SLIT), stroke_dasharray="0.1,3.4")

    assert start[0] == end[0] == WIDTH / 2
    assert GROUND - 50 * UNIT < start[1] < end[1] < GROUND
    assert strokes_of(drawn(replace(SLIT, below_hairline_mm=79)), stroke_dasharray="0.1,3.4") == []


def test_a_recorded_length_widens_the_mark() -> None:
    """A longer line on the wall is drawn longer."""
    wide = [
        max(x for x, _ in points_in(drawn(replace(SLIT, length_mm=mm)), "March 2027")) for mm in (None, 30, 60, 900)
    ]

    assert wide == sorted(set(wide))
    assert wide[-1] <= RIGHT + 1


@pytest.mark.parametrize("expected", [(25, 34), (30, 30), (70, 200)])
def test_where_it_was_expected_is_a_soft_block(expected: tuple[int, int]) -> None:
    """The block spans the expected distances; one without height still shows, and none goes below the ground."""
    (block,) = strokes_of(drawn(replace(SLIT, expected_mm=expected)), fill="var(--moss)")
    middle = [y for x, y in block if abs(x - WIDTH / 2) < 0.2]

    assert min(middle) == pytest.approx(GROUND - (80 - expected[0]) * UNIT, abs=0.1)
    assert max(middle) == pytest.approx(min(GROUND - (80 - expected[1]) * UNIT, GROUND), abs=2.1)
    assert max(middle) > min(middle)


def test_marks_of_one_zone_stand_side_by_side() -> None:
    """Two marks at one place of the wall do not cover each other."""
    picture = drawn(SLIT, replace(SLIT, label="May 2027"))
    first, second = (points_in(picture, label) for label in ("March 2027", "May 2027"))

    assert max(x for x, _ in first) - min(x for x, _ in second) < 4


@pytest.mark.parametrize("count", range(8))
@pytest.mark.parametrize("zones", [ZONES, ("toe",), ("lateral quarter", "lateral heel"), ZONES[::-1]])
def test_words_never_touch_or_leave_the_sheet(count: int, zones: tuple[Zone, ...]) -> None:
    """From no defect to seven, spread or crowded, the words stand clear; those of a single one are shown."""
    defects = [replace(SLIT, zone=zones[n % len(zones)], label=f"about September 202{n}") for n in range(count)]
    picture = drawn(*defects)

    assert touching(picture) == outside(picture) == []
    assert len(boxes_of(picture)) == (4 if count == 1 else 3)


def test_words_of_the_sides_stand_clear_of_high_heels() -> None:
    """Words above the wall stay above its hair."""
    heights = dict.fromkeys(ZONES, 85.0)
    picture = growing_out([], heights, SIDES, "left_fore", "t")
    top = min(y for stroke in strokes_of(picture, stroke="var(--ink)") for _, y in stroke)

    assert all(bottom < top for _, (_, _, _, bottom) in boxes_of(picture))


def test_a_bare_wall_is_a_picture() -> None:
    """Nothing grows out, and the wall shows that."""
    picture = growing_out([], {}, {}, "right_hind", "nothing grows out")

    assert words_in(picture) == []
    assert root_of(picture)[0].text == "nothing grows out"


@pytest.mark.parametrize(
    "change",
    [
        {"below_hairline_mm": NAN},
        {"below_hairline_mm": -1},
        {"earlier_mm": (NAN,)},
        {"earlier_mm": (-2,)},
        {"length_mm": float("inf")},
        {"expected_mm": (30, 20)},
        {"expected_mm": (NAN, 20)},
    ],
)
def test_what_cannot_be_drawn_is_refused(change: dict[str, Any]) -> None:
    """Distances below zero, out of order or no number are told, not drawn."""
    with pytest.raises(ValueError, match=r"below zero|out of order|not a number"):
        drawn(replace(SLIT, **change))


@pytest.mark.parametrize("height", [0, -3, NAN])
def test_impossible_heights_are_refused(height: float) -> None:
    """A wall without height is no wall."""
    with pytest.raises(ValueError, match="height"):
        drawn(heights={"toe": height})


def test_words_are_shown_as_typed_and_the_picture_is_always_the_same() -> None:
    """Labels are escaped; the same wall gives the same bytes and one name, and can be kept by content."""
    odd = replace(SLIT, label="<i>May</i> & June")
    kept = PictureCache(None).picture(growing_out, [odd], HEIGHTS, SIDES, "left_fore", "growing out")

    assert "<i>May</i> & June" in words_in(drawn(odd))
    assert drawn(odd) == drawn(odd) == kept
    assert drawn(odd).count(' id="') == 1


def test_text_is_large_enough_on_a_phone() -> None:
    """Two abreast on a phone the text is 11 pixels or more."""
    assert float(root_of(drawn(SLIT)).attrib["font-size"]) * 160 / WIDTH >= 11
