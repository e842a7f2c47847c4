"""Feet from below and the drawings that explain the words."""

from __future__ import annotations

import re
from collections.abc import Callable
from itertools import pairwise, product
from typing import Any

import pytest

from recordgen.hoof.observations import Finding
from recordgen.pictures.feet.explained import (
    MEASURES,
    PARTS,
    STEPS,
    TOE_HAIR,
    TOE_TIP,
    plain_foot,
    side_view,
    wall_growth,
)
from recordgen.pictures.feet.foot import WIDTH, foot_from_below
from recordgen.pictures.feet.sole_form import FORE, HIND, SoleForm, half_wall, zone_shares
from recordgen.records.models.names import FEET, PLACES, ZONES, Foot, Place, is_left
from tests.support.svg import SVG, group_titled, middle_of, root_of, strokes_of, words_in

LABELS = {"outer": "outer", "inner": "inner"}
MIDDLE = WIDTH / 2


def drawn(foot: Foot, *findings: tuple[Place, Any, int | None]) -> str:
    """A foot with findings given as place, kind and size."""
    found = [Finding(foot, place, kind, f"{place} {kind}", size) for place, kind, size in findings]
    return foot_from_below(foot, found, LABELS, "a foot")


def reach(picture: str, title: str) -> float:
    """How far a marked finding reaches from the middle of the drawing's width."""
    group = group_titled(picture, title)
    return abs(middle_of(group)[0] - MIDDLE)


@pytest.mark.parametrize("foot", FEET)
def test_the_outer_side_is_on_the_right_of_a_left_foot(foot: Foot) -> None:
    """Seen from below with the toe up, a left foot's outer edge is right and a right foot's is left."""
    texts = {text.text: float(text.attrib["x"]) for text in root_of(drawn(foot)).iter(f"{SVG}text")}

    assert (texts["outer"] > texts["inner"]) == is_left(foot)


@pytest.mark.parametrize("kind", ["flare", "separation", "crack", "infection", "bar", "something"])
def test_findings_land_on_their_side(kind: str) -> None:
    """Whatever its kind, a lateral finding is on the outer half and a medial one on the inner half."""
    places = [place for place in PLACES if "lateral" in place or "medial" in place]
    across = {
        (foot, place): middle_of(group_titled(drawn(foot, (place, kind, None)), f"{place} {kind}"))[0]
        for foot, place in product(FEET, places)
    }
    outer = {(foot, place): ("lateral" in place) == is_left(foot) for foot, place in across}

    assert {where: middle > MIDDLE for where, middle in across.items()} == outer


def test_findings_land_from_toe_to_heel_in_the_order_of_their_zones() -> None:
    """The toe is at the top of the drawing and the heels at its bottom."""
    places: tuple[Place, ...] = ("toe", "lateral toe quarter", "lateral quarter", "lateral heel")
    heights = [middle_of(group_titled(drawn("left_hind", (p, "flare", 5)), f"{p} flare"))[1] for p in places]

    assert heights == sorted(heights)


def test_a_larger_flare_bulges_further() -> None:
    """A flare grows with its size."""
    pictures = [drawn("left_fore", ("lateral quarter", "flare", size)) for size in (3, 6, 12)]
    reaches = [reach(picture, "lateral quarter flare") for picture in pictures]

    assert reaches == sorted(set(reaches))


def test_kinds_differ_without_colour() -> None:
    """At one place each kind has a form of its own, so that a grey print tells them apart."""
    kinds = ["flare", "separation", "crack", "something"]
    pictures = [drawn("left_fore", ("lateral quarter", kind, 4)) for kind in kinds]

    assert len({str(strokes_of(picture)) for picture in pictures}) == len(kinds)


def test_a_kind_never_heard_of_is_a_ring_at_its_place() -> None:
    """An unknown kind is still marked, and told in its own words."""
    group = group_titled(drawn("left_fore", ("sole", "odd <thing>", None)), "sole odd <thing>")

    assert middle_of(group)[0] == pytest.approx(MIDDLE, abs=0.1)
    assert [path.attrib.get("fill") for path in group.iter(f"{SVG}path")] == ["var(--card)", "none"]


def test_two_rings_at_one_place_stand_beside_each_other() -> None:
    """Two findings at one place are two marks."""
    picture = drawn("left_fore", ("sole", "bruise", None), ("sole", "abscess", None))
    apart = [middle_of(group_titled(picture, f"sole {kind}"))[0] for kind in ("abscess", "bruise")]

    assert apart[1] - apart[0] > 10


def test_findings_of_other_feet_are_left_out() -> None:
    """The list of a whole horse may be given for each foot."""
    other = Finding("right_fore", "toe", "crack", "a crack")

    assert foot_from_below("left_fore", [other], LABELS, "t") == foot_from_below("left_fore", [], LABELS, "t")


@pytest.mark.parametrize("foot", FEET)
def test_every_place_can_be_marked_inside_the_drawing(foot: Foot) -> None:
    """Marks of every kind at every place stay on the sheet."""
    kinds = ["flare", "separation", "crack", "infection", "bar", "odd"]
    picture = drawn(foot, *((place, kind, 20) for place in PLACES for kind in kinds))
    points = [point for stroke in strokes_of(picture) for point in stroke]

    assert all(0 <= x <= WIDTH and 0 <= y <= 158 for x, y in points)


def test_fore_feet_are_wider_and_hind_feet_pointed_with_the_widest_point_further_back() -> None:
    """A hind foot is widest between the middle and the last third of the sole.

    Source: Lungwitz & Adams, A Text-Book of Horseshoeing, ch. II E.
    """
    walls = {form: [half_wall(form, step / 200) for step in range(201)] for form in (FORE, HIND)}
    widest = {form: max(wall, key=lambda point: point[0]) for form, wall in walls.items()}

    assert widest[FORE][0] > widest[HIND][0]
    assert 1 / 2 < widest[HIND][1] / HIND.length < 2 / 3
    assert widest[FORE][1] / FORE.length < widest[HIND][1] / HIND.length
    assert half_wall(HIND, 0.2)[0] / HIND.half_width < half_wall(FORE, 0.2)[0] / FORE.half_width


def test_the_wall_thins_more_in_a_fore_foot() -> None:
    """A fore foot's wall is thickest at the toe; a hind foot's differs little.

    Source: Lungwitz & Adams, A Text-Book of Horseshoeing, p. 47.
    """
    fore, hind = SoleForm("left_fore", 0, 0), SoleForm("left_hind", 0, 0)

    assert fore.thickness(0) / fore.thickness(1) > 1.4
    assert hind.thickness(0) / hind.thickness(1) < 1.2


def test_zones_follow_each_other_round_the_wall() -> None:
    """From the inner heel to the outer one there is neither gap nor overlap."""
    shares = [zone_shares(zone) for zone in ZONES]

    assert (shares[0][0], shares[-1][1]) == (-1, 1)
    assert all(end == start for (_, end), (start, _) in pairwise(shares))


def test_text_is_large_enough_at_160_pixels() -> None:
    """On a phone a foot's words are 11 pixels or more."""
    assert float(root_of(drawn("left_fore")).attrib["font-size"]) * 160 / WIDTH >= 11


@pytest.mark.parametrize(("draw", "keys"), [(plain_foot, PARTS), (side_view, MEASURES), (wall_growth, STEPS)])
def test_explaining_drawings_show_the_words_given_and_no_others(
    draw: Callable[[dict[str, str], str], str], keys: dict[str, object]
) -> None:
    """Every part with a word is named, one without is not, and no colour is left that the page does not set."""
    words = {key: f"w{count}" for count, key in enumerate(keys)}
    picture = draw(words, "explained")

    assert sorted(words_in(picture)) == sorted(words.values())
    assert words_in(draw({}, "explained")) == []
    assert not re.search(r"#[0-9a-f]{6}", picture)


def test_the_toe_wall_stands_at_fifty_degrees() -> None:
    """The foot from the side has the toe angle that fore feet are often found with."""
    across, up = TOE_HAIR[0] - TOE_TIP[0], TOE_TIP[1] - TOE_HAIR[1]

    assert up / across == pytest.approx(1.1918, abs=1e-3)


def test_long_words_are_broken_at_spaces() -> None:
    """A long label takes several lines, and a long word stays whole."""
    assert words_in(plain_foot({"frog": "collateral grooves of the frog"}, "t")) == [
        "collateral",
        "grooves of",
        "the frog",
    ]
    assert words_in(plain_foot({"frog": "Strahlfurchenwinkel"}, "t")) == ["Strahlfurchenwinkel"]
