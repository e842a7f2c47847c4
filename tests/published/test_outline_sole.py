"""Outlines of soles against published sizes, areas and thicknesses."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from recordgen.hoof.tracing.mirror import mirror_figures
from recordgen.hoof.tracing.sole import sole_figures
from recordgen.hoof.tracing.wall_thickness import both_sides_bulge, ring, ring_figures
from tests.support.sole_shapes import FORE, HIND, Sole, ellipse, with_frog

# Thickness of the wall, mm, at toe, quarter and heel: thick, middling and thin feet. The heel is set a little thinner.
WALLS = [(15.9, 10.2, 9.5), (12.7, 7.6, 7.0), (9.5, 5.1, 4.8)]


@pytest.mark.parametrize(
    ("sole", "length", "width", "printed"),
    [(replace(FORE, picks=120), 120, 130, 133), (replace(HIND, roundness=2.1, picks=120), 120, 120, 122)],
    ids=["front", "hind"],
)
def test_area_of_a_sole_of_published_size(sole: Sole, length: float, width: float, printed: float) -> None:
    """The area of a sole is about 0.85 of its length times its width; a drawn sole comes within 5 % of the printed cm².

    Source: Pares i Casanova & Oosterlinck 2012, J. Equine Vet. Sci. 32:231-234, rounded, as reported in American
    Farriers Journal article 394. Derived from: 133 / (12 x 13) = 0.853, 122 / (12 x 12) = 0.847.
    """
    found = sole_figures(replace(sole, length=length - 2.4, width=width).points())

    assert float(found["sole_length_mm"]) == pytest.approx(length, rel=0.02)
    assert float(found["sole_area_mm2"]) == pytest.approx(100 * printed, rel=0.05)
    assert float(found["sole_area_mm2"] / found["sole_length_mm"] / found["sole_width_mm"]) == pytest.approx(
        0.85, abs=0.03
    )


@pytest.mark.parametrize(("length", "width", "printed"), [(120, 130, 122.5), (120, 120, 113.1)])
def test_an_ellipse_of_that_size_is_smaller(length: float, width: float, printed: float) -> None:
    """Heels are broader than the end of an ellipse: the printed areas are 1.08 times it.

    Derived from: pi / 4 times length times width.
    """
    found = sole_figures(with_frog(ellipse(width / 2, length / 2, 720)))

    assert float(found["sole_area_mm2"]) == pytest.approx(100 * printed, rel=1e-3)


def test_a_hind_foot_is_widest_between_its_middle_and_hind_thirds() -> None:
    """Near two thirds from the toe; the drawn front foot is widest before that.

    Source: Lungwitz & Adams 1913, A Text-Book of Horseshoeing, ch. II E.
    """
    place = {name: float(sole_figures(sole.points())["widest_from_toe_percent"]) for name, sole in SOLES.items()}

    assert place["hind"] == pytest.approx(100 * 2 / 3, abs=6)
    assert place["fore"] < place["hind"]


SOLES = {"fore": FORE, "hind": HIND}


@pytest.mark.parametrize(("width", "contracted"), [(66.9, True), (67.0, False), (70.0, False)])
def test_frogs_narrower_than_67_of_100(width: float, contracted: bool) -> None:
    """Traced as measured: below 0.67 of its length a frog has been called contracted.

    Source: Turner, Objective Assessment of Hoof Balance; Turner 2010, Proc. 16th Congress of SIVE.
    """
    corners = {"frog_medial": [[-width / 2, 0.0]], "frog_lateral": [[width / 2, 0.0]]}
    found = sole_figures(with_frog(ellipse(60, 65), frog_apex=[[0.0, 100.0]], **corners))

    assert float(found["frog_width_to_length"]) == pytest.approx(width / 100)
    assert bool(round(float(found["frog_width_to_length"]), 6) < 0.67) is contracted


@pytest.mark.parametrize("wall", WALLS, ids=["thick", "middling", "thin"])
def test_a_sound_front_wall_is_not_called_flared_at_its_toe(wall: tuple[float, float, float]) -> None:
    """Front feet are thickest at the toe and thin toward the quarters: no zone stands half a millimetre off the curve.

    Source: Lungwitz & Adams 1913, A Text-Book of Horseshoeing, p. 47 (toe 9.5 to 15.9 mm, quarters 5.1 to 10.2 mm).
    """
    found = ring_figures(replace(FORE, wall=wall, picks=60).points())
    flares = [float(value) for name, value in found.items() if name.startswith("flare")]

    assert len(flares) == 7
    assert np.abs(flares).max() < 0.5
    assert (
        float(found["ring_toe_mm"])
        > float(found["ring_medial_toe_quarter_mm"])
        > float(found["ring_medial_quarter_mm"])
    )


@pytest.mark.parametrize("thickness", [8.0, 10.0])
def test_a_sound_hind_wall_hardly_thins(thickness: float) -> None:
    """The same from toe to quarters: no flare, and nothing that would pass for both sides pushed out.

    Source: Lungwitz & Adams 1913, A Text-Book of Horseshoeing, p. 47.
    """
    sole = replace(HIND, wall=(thickness, thickness, thickness), picks=60)
    found, traced = ring_figures(sole.points()), ring(sole.points())

    assert traced is not None
    assert max(abs(float(value)) for name, value in found.items() if name.startswith("flare")) < 0.5
    assert not both_sides_bulge(traced)


def test_half_a_hoof_that_is_more_slanting_is_thicker() -> None:
    """The more slanting half is always the thicker: the difference of the sides tells it, in millimetres.

    Source: Lungwitz & Adams 1913, A Text-Book of Horseshoeing, p. 47.
    """
    points = FORE.points()
    lateral = points["wall"][:, 0] > 5
    points["wall"] = points["wall"] + np.where(lateral, 2.0, 0)[:, None] * [1, 0]

    assert 0.8 < float(ring_figures(points)["ring_difference_mm"]) < 2


def test_bars_from_the_frogs_front_third_to_the_buttresses() -> None:
    """Straight bars come nearer to the axis toward the toe, alike on both sides.

    Source: Lungwitz & Adams 1913, A Text-Book of Horseshoeing, chs. II and III.
    """
    found = sole_figures(FORE.points())

    assert 5 < float(found["bar_medial_deg"]) < 45
    assert float(found["bar_difference_deg"]) == pytest.approx(0, abs=1e-9)


def test_the_match_tells_two_halves_of_unlike_slant() -> None:
    """One half 2 mm farther out over its whole length is seen in the match and in the shares of the area."""
    points = FORE.points()
    points["wall"] = points["wall"] + np.where(points["wall"][:, 0] > 0, 2.0, 0)[:, None] * [1, 0]
    shares = sole_figures(points)

    assert float(mirror_figures(points)["mirror_match_percent"]) == pytest.approx(97, abs=2)
    assert float(shares["lateral_area_percent"]) == pytest.approx(50.8, abs=0.3)
