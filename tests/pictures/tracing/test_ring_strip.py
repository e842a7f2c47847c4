"""The ring unrolled."""

from __future__ import annotations

import math

import pytest

from recordgen.hoof.tracing.wall_thickness import ZONE_BOUNDS
from recordgen.pictures.tracing.ring_axes import BOX
from recordgen.pictures.tracing.ring_strip import RingForm, RingLine, RingZone, ring_key, ring_strip
from tests.support.svg import root_of, strokes_of, words_in
from tests.support.text_boxes import boxes_of, outside, touching

LEFT, _, RIGHT, BOTTOM = BOX
LABELS = {"inner": "inner", "outer": "outer", "unit": "mm"}
NAMES = {zone: zone.removeprefix("medial ").removeprefix("lateral ") for zone in ZONE_BOUNDS}
ZONES = [RingZone(NAMES[zone], *bounds) for zone, bounds in ZONE_BOUNDS.items()]


def ring(add: float = 0.0, reach: int = 150) -> tuple[tuple[float, float], ...]:
    """A ring that thins from the toe to the heels."""
    return tuple((float(turn), 9 + add + 3 * math.cos(math.radians(turn))) for turn in range(-reach, reach + 1, 3))


def drawn(*lines: RingLine) -> str:
    """A strip with some lines."""
    return ring_strip(lines or [RingLine("latest", (ring(),))], ZONES, LABELS, "a ring")


def latest_of(picture: str) -> list[tuple[float, float]]:
    """The points of the line told of."""
    (found,) = strokes_of(picture, stroke_width="2.4")
    return found


def axis_of(picture: str) -> dict[float, float]:
    """The number beside each line across, and where that stands."""
    return {float(text): (box[1] + box[3]) / 2 for text, box in boxes_of(picture) if text.isdigit()}


def test_the_same_ring_gives_the_same_bytes_and_is_named() -> None:
    """A picture tells its title."""
    assert drawn() == drawn()
    assert root_of(drawn())[0].text == "a ring"
    assert drawn().count(' id="') == 1


def test_millimetres_stand_on_their_axis() -> None:
    """From 0 at the bottom, evenly: the toe's 12 mm stand a fifth further up than 10 mm."""
    picture = drawn()
    heights = axis_of(picture)
    per_mm = (heights[0] - heights[10]) / 10

    assert min(y for _, y in latest_of(picture)) == pytest.approx(BOTTOM - 12 * per_mm, abs=0.1)


def test_every_place_stands_at_its_angle() -> None:
    """Evenly from the inner heel at the left to the outer one at the right."""
    for (x, _), (turn, _) in zip(latest_of(drawn()), ring(), strict=True):
        assert x == pytest.approx(LEFT + (RIGHT - LEFT) * (turn + 150) / 300, abs=0.06)


def test_a_thicker_ring_stands_above_a_thinner_one() -> None:
    """Before, after and an earlier one lie over each other on one axis, and can be told apart without colour."""
    forms: dict[RingForm, float] = {"latest": 0.0, "other": 2.0, "earlier": 4.0}
    picture = drawn(*(RingLine(form, (ring(add),)) for form, add in forms.items()))
    tops = [
        min(y for _, y in found)
        for width in ("2.4", "1.4", "0.9")
        for found in strokes_of(picture, stroke_width=width)
        if len(found) > 50
    ]

    assert len(tops) == 3
    assert tops == sorted(tops, reverse=True)
    assert strokes_of(picture, stroke_width="1.4", stroke_dasharray="5,3")


def test_gaps_are_not_bridged() -> None:
    """Where the wall was not traced no line is drawn."""
    whole = ring()
    picture = drawn(RingLine("latest", (whole[:30], whole[60:])))

    assert [len(found) for found in strokes_of(picture, stroke_width="2.4")] == [30, len(whole) - 60]


def test_what_stands_above_the_curve_is_shaded() -> None:
    """A closed form; without one nothing is shaded."""
    hill = (*((float(turn), 12.0) for turn in (80, 90, 100)), (100.0, 9.0), (80.0, 9.0))
    (shade,) = strokes_of(drawn(RingLine("latest", (ring(),)), RingLine("above", (hill,))), fill="var(--moss)")

    assert min(x for x, _ in shade) > (LEFT + RIGHT) / 2
    assert strokes_of(drawn(), fill="var(--moss)") == []


@pytest.mark.parametrize("reach", [60, 90, 123, 150, 177])
@pytest.mark.parametrize("add", [-5, 0, 3, 20])
def test_words_stand_clear(reach: int, add: int) -> None:
    """Every zone is named once, in order, and no word covers another or leaves the sheet."""
    picture = drawn(RingLine("latest", (ring(add, reach),)))
    named = [word for word in words_in(picture) if not word.isdigit() and word not in LABELS.values()]

    assert named == " ".join(NAMES.values()).split(" ")
    assert (touching(picture), outside(picture)) == ([], [])


def test_text_is_large_enough_on_a_phone() -> None:
    """Eleven pixels or more at 310 CSS px."""
    root = root_of(drawn())

    assert float(root.attrib["font-size"]) * 310 / float(root.attrib["viewBox"].split()[2]) >= 11


def test_lines_differ_without_colour() -> None:
    """By width and dashes."""
    key = ring_key({form: form for form in ("latest", "other", "earlier", "baseline", "above")})
    shown = {
        str(
            [
                (path.get("stroke-width"), path.get("stroke-dasharray"), path.get("fill") == "none")
                for path in root_of(one)
            ]
        )
        for one in key.values()
    }

    assert len(shown) == len(key) == 5


def test_what_cannot_be_drawn_is_refused() -> None:
    """No point, or one that is no number."""
    with pytest.raises(ValueError, match="no ring"):
        drawn(RingLine("latest", ()))
    with pytest.raises(ValueError, match="not a number"):
        drawn(RingLine("latest", (((0.0, float("nan")),),)))
