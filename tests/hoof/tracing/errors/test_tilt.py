"""A camera that is not square to a foot moves its points, which is undone again."""

from __future__ import annotations

import numpy as np
import pytest

from recordgen.hoof.tracing.errors import tilt
from recordgen.hoof.tracing.errors.draws import frame
from recordgen.hoof.tracing.errors.standard import SCALE_FROM, SCALE_TO, TILT, standard_errors
from recordgen.hoof.tracing.foot_frame import Floats, Points
from tests.support.sole_shapes import FORE, turned

SPOTS = np.array([[-60.0, -50.0], [0.0, 70.0], [20.0, 0.0], [-20.0, 0.0], [0.0, -70.0], [60.0, 50.0]])


def tilted(spots: Floats, angle: float, way: Floats, away: float) -> Floats:
    """Points of a plane that falls away, as a pinhole shows them. Source: Hartley & Zisserman, ch. 6; from memory."""
    axis = np.array([-way[1], way[0]])
    near, side = spots @ way, spots @ axis
    seen = np.stack([near * np.cos(angle), side], axis=-1) * (away / (away + near * np.sin(angle)))[:, None]
    return np.asarray(seen[:, :1] * way + seen[:, 1:] * axis)


@pytest.mark.parametrize("number", [0, 1, 7])
def test_a_tilt_is_undone(number: int) -> None:
    """A picture taken with the tilt of a draw comes out of that draw as it was, to a thousandth of a mm."""
    lean = np.radians(tilt.TILT_DEG) * standard_errors(TILT, 100, 1)[number, 0] @ frame({"wall": SPOTS}, np.eye(2))
    angle = float(np.hypot(*lean))
    picture = tilted(SPOTS, angle, lean / angle, tilt.AWAY_MM)
    draws = {"wall": np.broadcast_to(picture, (100, *picture.shape))}

    centred = tilt.as_seen_square({"wall": SPOTS}, draws, 1.0)["wall"][number]
    assert centred == pytest.approx(SPOTS, abs=1e-3)


def found(scale_mm: float) -> Points:
    """Draws of a foot beside a scale of this length."""
    px = {"wall": SPOTS, SCALE_FROM: np.array([[-scale_mm / 2, 0.0]]), SCALE_TO: np.array([[scale_mm / 2, 0.0]])}
    return tilt.as_seen_square(px, {name: np.repeat(spots[None], 100, 0) for name, spots in px.items()}, 1.0)


def test_a_rule_that_lies_off_the_plane_makes_every_length_as_unsure() -> None:
    """By how far off it lies over how far the camera is, and a little by the tilt. Derived from: similar triangles."""
    seen = found(100.0)
    span = np.hypot(*(seen[SCALE_TO] - seen[SCALE_FROM])[:, 0].T)

    assert float(span.std()) / 100 == pytest.approx(tilt.OFF_PLANE_MM / tilt.AWAY_MM, rel=0.25)


@pytest.mark.parametrize("px", [{}, {"frog_apex": SPOTS[:1]}])
@pytest.mark.parametrize("mm_per_px", [None, 0.2])
def test_one_point_alone_has_no_tilt(px: Points, mm_per_px: float | None) -> None:
    """Nor has a picture on which nothing but the scale was marked."""
    draws = {name: np.repeat(spots[None], 100, 0) for name, spots in {**px, SCALE_FROM: SPOTS[:1]}.items()}

    seen = tilt.as_seen_square(px, draws, mm_per_px)

    assert {name: spots.tolist() for name, spots in seen.items()} == {k: v.tolist() for k, v in draws.items()}


@pytest.mark.parametrize("degrees", [30, 90, -140])
def test_a_camera_is_as_far_off_however_the_picture_is_turned(degrees: float) -> None:
    """Each draw of a turned picture is that of the picture, turned: to a millionth of a px."""
    px = {name: spots * [1, -1] * 4 for name, spots in FORE.points().items()}
    both = [px, {name: turned(spots, degrees) for name, spots in px.items()}]
    plain, other = (
        tilt.as_seen_square(one, {name: np.repeat(spots[None], 100, 0) for name, spots in one.items()}, 0.25)
        for one in both
    )

    # Each comes out about the middle of its own foot.
    assert other["wall"] == pytest.approx(turned(plain["wall"], degrees), abs=1e-6)
