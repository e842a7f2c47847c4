"""A camera that is not square to a foot moves its points, which is undone again."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.stats import rayleigh

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
@pytest.mark.parametrize(
    ("mm_per_px", "away_px"), [(1.0, 450.0), (0.5, 900.0), (None, 450 / 130 * float(np.hypot(120, 140)))]
)
def test_a_tilt_is_undone(number: int, mm_per_px: float | None, away_px: float) -> None:
    """A picture taken with the tilt of a draw comes out of that draw as it was, to a thousandth of a px.

    From 450 mm away, as the scale tells; without one 130 mm lie across the foot, wherever it lies. Both: Judgement.
    """
    place = np.array([900.0, 400.0])
    foot = {"wall": SPOTS + place}
    lean = np.radians(tilt.TILT_DEG) * standard_errors(TILT, 100, 1)[number, 0] @ frame(foot, np.eye(2))
    angle = float(np.hypot(*lean))
    picture = tilted(SPOTS, angle, lean / angle, away_px) + place
    draws = {"wall": np.broadcast_to(picture, (100, *picture.shape))}

    centred = tilt.as_seen_square(foot, draws, mm_per_px)["wall"][number]
    assert centred == pytest.approx(SPOTS, abs=1e-3)


def test_a_rule_that_lies_off_the_plane_makes_every_length_as_unsure() -> None:
    """By how far off it lies, 2.5 mm, over how far the camera is, 450 mm: against two points of the foot beside it.

    Derived from: similar triangles. Both figures: Judgement.
    """
    ends = np.array([[-50.0, 0.0], [50.0, 0.0]])
    px = {"wall": SPOTS, "beside": ends, SCALE_FROM: ends[:1], SCALE_TO: ends[1:]}
    seen = tilt.as_seen_square(px, {name: np.repeat(spots[None], 100, 0) for name, spots in px.items()}, 1.0)
    rule, foot = seen[SCALE_TO] - seen[SCALE_FROM], seen["beside"][:, 1:] - seen["beside"][:, :1]

    lengths = np.linalg.norm(rule, axis=-1) / np.linalg.norm(foot, axis=-1)
    assert float(lengths.mean()) == pytest.approx(1)
    assert float(lengths.std(ddof=1)) == pytest.approx(2.5 / 450)


def test_five_of_a_hundred_cameras_are_more_than_nine_degrees_off() -> None:
    """Nearly: 8.6, by two normal errors of 3.5 degrees. Source: the Rayleigh distribution, scipy.stats.rayleigh."""
    assert rayleigh.isf(0.05, scale=tilt.TILT_DEG) == pytest.approx(8.6, abs=0.05)


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
