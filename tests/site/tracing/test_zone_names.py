"""The zones of the wall named on the drawing of a sole, so that the figures told beside it are found."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest
from shapely import LineString, box

from recordgen.hoof.tracing.figures import Traced, traced
from recordgen.hoof.tracing.foot_frame import Floats
from recordgen.hoof.tracing.wall_thickness import in_zone
from recordgen.pictures.tracing.sole import extent_of, traced_sole
from recordgen.records.models.names import ZONES, Zone
from recordgen.site.tracing.soles import named_zones, sole_shape
from tests.support.horse_records import foot
from tests.support.photographed_soles import any_sole
from tests.support.sole_shapes import FORE, HIND, Sole
from tests.support.svg import group_titled, strokes_of
from tests.support.text_boxes import boxes_of, outside, touching
from tests.support.typed_tracings import typed

SHORT = dict(zip(ZONES, ("heel", "quarter", "toe quarter", "toe", "toe quarter", "quarter", "heel"), strict=True))
GERMAN = dict(zip(ZONES, ("Tracht", "Seite", "Zehen- seite", "Zehe", "Zehen- seite", "Seite", "Tracht"), strict=True))
LONG = dict.fromkeys(ZONES, "Trachtenwand") | {"toe": "Zehenwand"}
LABELS = {"inner": "innen", "outer": "außen", "bar": "20 mm"}
SHAPES = {
    "fore": FORE,
    "hind": HIND,
    "mule": replace(HIND, width=96.0, heels=60.0),
    "broad": replace(FORE, width=150.0, heels=100.0),
    "lopsided": Sole(lopsided=0.05, turn=6),
}


@cache
def told(name: str) -> Traced:
    """A sole with its figures."""
    return traced(foot(tracings=[typed(replace(SHAPES[name], picks=90))]), 1.5)[0]


def drawn(one: Traced, words: dict[Zone, str]) -> str:
    """A sole with its zones named."""
    named, shape = named_zones(one, {zone: (words[zone], f"whole {zone}") for zone in ZONES}), sole_shape(one, None)
    assert shape is not None
    return traced_sole(shape, extent_of([shape]), LABELS, "a sole", named)


def wall_of(picture: str) -> Floats:
    """The outer edge, on the sheet."""
    return np.array(max(strokes_of(picture, stroke="var(--ink)", stroke_width="2"), key=len))


@pytest.mark.parametrize("name", SHAPES)
@pytest.mark.parametrize("words", [SHORT, GERMAN])
def test_names_stand_clear_of_each_other_and_of_the_wall(name: str, words: dict[Zone, str]) -> None:
    """On narrow and broad feet, in English and German."""
    picture = drawn(told(name), words)
    wall = LineString(wall_of(picture))

    assert (touching(picture), outside(picture)) == ([], [])
    assert [text for text, bounds in boxes_of(picture) if box(*bounds).intersects(wall)] == []


@pytest.mark.parametrize("name", SHAPES)
def test_words_longer_than_ours_do_not_cover_each_other(name: str) -> None:
    """A language of twelve letters where ours has four."""
    picture = drawn(told(name), LONG)

    assert (touching(picture), outside(picture)) == ([], [])


def test_feet_of_all_kinds_have_room_for_their_names() -> None:
    """Thirty soles of usual and odd size and form."""
    lot, crowded = np.random.default_rng(3), []
    for number in range(30):
        one = traced(foot(tracings=[typed(replace(any_sole(lot, odd=number % 2 == 1), picks=60))]), 1.5)[0]
        picture = drawn(one, SHORT)
        crowded += [(number, *pair) for pair in touching(picture)] + [(number, word) for word in outside(picture)]

    assert crowded == []


def test_each_name_stands_at_its_zone_and_tells_it_whole() -> None:
    """The nearest place of the wall to the words lies in that zone; inner ones are at the left."""
    picture = drawn(told("fore"), SHORT)
    wall = wall_of(picture)
    middle = np.array([150.0, (wall[:, 1].min() + wall[:, 1].max()) / 2])

    for zone in ZONES:
        texts = [text.attrib for text in group_titled(picture, f"whole {zone}").iter() if text.tag.endswith("text")]
        spot = np.mean([(float(text["x"]), float(text["y"]) - 4) for text in texts], axis=0)
        nearest = wall[np.hypot(*(wall - spot).T).argmin()] - middle
        away = np.degrees(np.arctan2(nearest[0], -nearest[1]))

        assert in_zone(np.array([away]), zone).any(), zone


def test_strokes_across_the_wall_part_the_zones() -> None:
    """Six of them between seven zones, each as long as the wall is thick there or a little more."""
    named = named_zones(told("fore"), dict.fromkeys(ZONES, ("x", "x")))
    assert named is not None
    long = [np.hypot(*np.subtract(*bound)) for bound in named.bounds]

    assert len(named.zones) == 7
    assert long == pytest.approx([8.5, 9.2, 11.5, 11.5, 9.2, 8.5], abs=1.0)


@pytest.mark.parametrize("without", ["white_line", "scale"])
def test_where_no_zone_is_told_none_is_named(without: str) -> None:
    """No white line, or no scale."""
    tracing = typed(FORE, without=without) | ({"scale": None} if without == "scale" else {})
    one = traced(foot(tracings=[tracing]), 1.5)[0]

    assert named_zones(one, dict.fromkeys(ZONES, ("x", "x"))) is None
