"""The thickness of the wall from heel round the toe to heel."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from recordgen.hoof.tracing.errors.spread import Draws
from recordgen.hoof.tracing.foot_frame import Floats, Points
from recordgen.hoof.tracing.wall_thickness import (
    NEEDS,
    ZONE_BOUNDS,
    WallRing,
    both_sides_bulge,
    in_zone,
    ring,
    ring_figures,
    told_ring,
)
from recordgen.records.models.names import ZONES, Zone
from tests.support.sole_shapes import (
    FORE,
    HIND,
    Bulge,
    Sole,
    ellipse,
    jittered,
    moved,
    other_foot,
    reversed_order,
    sides_swapped,
    with_frog,
)

FINE = replace(FORE, picks=90)
FLARED = replace(FINE, bulges=(Bulge(92, 5),))


def figures(points: Points) -> dict[str, float]:
    """The figures of one ring as plain numbers."""
    return {name: float(value) for name, value in ring_figures(points).items()}


def ring_of(sole: Sole) -> WallRing:
    """The ring of a sole that has one."""
    found = ring(sole.points())
    assert found is not None
    return found


def flares(found: dict[str, float]) -> dict[str, float]:
    """The flares alone, by zone."""
    return {name.removeprefix("flare_"): value for name, value in found.items() if name.startswith("flare_")}


def test_between_two_circles() -> None:
    """As thick everywhere as their radii differ; open lines, so that nothing is measured where the ends are."""
    points = with_frog(ellipse(60, 60, 720), white_line=ellipse(50, 50, 720).tolist())
    found = ring(points)

    assert found is not None
    assert found.thickness_mm == pytest.approx(np.full(len(found.angle_deg), 10), abs=1e-3)
    assert found.angle_deg.max() >= 177


def test_between_two_rectangles() -> None:
    """Straight out from the white line, not along the ray.

    Derived from: at 45 degrees the ray leaves the outer square in its corner, the root of 2 times 10 mm away.
    """
    wall, white = (np.array([[-a, -a], [-a, a], [a, a], [a, -a]], dtype=float) for a in (60, 50))
    found = ring(with_frog(wall, white_line=white.tolist()))

    assert found is not None
    by_angle = dict(zip(found.angle_deg, found.thickness_mm, strict=True))
    assert by_angle[30] == pytest.approx(10)
    assert by_angle[45] == pytest.approx(10 * 2**0.5)
    assert 132 <= max(by_angle) <= 135


@pytest.mark.parametrize("sole", [FINE, FLARED, replace(HIND, picks=90)], ids=["fore", "flared", "hind"])
def test_the_ring_is_the_wall_that_was_drawn(sole: Sole) -> None:
    """Within 0.3 mm at each angle, with many picks."""
    found = ring_of(sole)

    assert found.thickness_mm == pytest.approx(sole.thickness(found.angle_deg), abs=0.3)


def test_few_picks_make_the_ring_a_little_thicker() -> None:
    """A limit: with 18 picks of the white line by some 0.2 mm, as straight lines between them cut inside."""
    found = ring_of(FORE)
    over = found.thickness_mm - FORE.thickness(found.angle_deg)

    assert 0.1 < over.mean() < 0.3


def test_open_heels_are_left_out() -> None:
    """The ring ends where wall or white line end, the same on both sides."""
    found = ring_of(FORE)

    assert found.angle_deg[0] == -found.angle_deg[-1]
    assert 135 < found.angle_deg[-1] < 155
    assert set(np.diff(found.angle_deg)) == {3}


def test_every_figure_of_a_whole_sole() -> None:
    """All of the table, in its order."""
    assert list(figures(FORE.points())) == list(NEEDS)


@pytest.mark.parametrize("sole", [FORE, HIND, FINE], ids=["fore", "hind", "fine"])
def test_a_sound_ring_has_no_flare(sole: Sole) -> None:
    """A wall that thins from the toe is no flare at the toe."""
    assert flares(figures(sole.points())) == pytest.approx(dict.fromkeys(flares(figures(sole.points())), 0), abs=0.3)


@pytest.mark.parametrize(
    ("at", "zone"),
    [
        (92, "lateral_quarter_mm"),
        (-92, "medial_quarter_mm"),
        (48, "lateral_toe_quarter_mm"),
        (-130, "medial_heel_mm"),
    ],
)
@pytest.mark.parametrize("sole", [FORE, HIND], ids=["fore", "hind"])
def test_a_bulge_is_found_in_its_zone(sole: Sole, at: float, zone: str) -> None:
    """Its mean there within half a millimetre; next to nothing elsewhere."""
    bulge, angles = Bulge(at, 5, 40), ring_of(sole).angle_deg
    plain, pushed = figures(sole.points()), flares(figures(replace(sole, bulges=(bulge,)).points()))
    true = bulge.mm(angles)[in_zone(angles, named(zone))].mean()

    assert pushed.pop(zone) == pytest.approx(true + plain[f"flare_{zone}"], abs=0.4)
    assert max(map(abs, pushed.values())) < 0.5


def named(key: str) -> Zone:
    """The zone of a figure's name."""
    return next(zone for zone in ZONES if f"{zone.replace(' ', '_')}_mm" == key)


def test_the_sides_compared() -> None:
    """Lateral less medial, over the angles of both."""
    found = figures(FLARED.points())

    assert found["ring_difference_mm"] == pytest.approx(found["ring_lateral_mm"] - found["ring_medial_mm"])
    assert found["ring_difference_mm"] > 0.5
    assert figures(FINE.points())["ring_difference_mm"] == pytest.approx(0, abs=1e-6)


def test_the_toe_belongs_to_neither_side() -> None:
    """A bulge beside the middle of the toe makes no difference of the sides."""
    points = replace(FINE, bulges=(Bulge(13, 4, 22),)).points()

    assert figures(points)["ring_difference_mm"] == pytest.approx(0, abs=0.02)


def test_quarters_thicker_than_the_toe_of_a_hind_foot() -> None:
    """Broad bulges on both sides, too smooth to stand above the curve, still show against the toe."""
    sole = replace(HIND, picks=90, bulges=(Bulge(92, 4, 80), Bulge(-92, 4, 80)))

    assert max(flares(figures(sole.points())).values()) < 1
    assert both_sides_bulge(ring_of(sole))


@pytest.mark.parametrize(
    "change",
    [
        lambda points: moved(points, degrees=75, shift=(-30, 500)),
        other_foot,
        reversed_order,
        lambda points: {**points, "white_line": points["white_line"][::-1]},
    ],
    ids=["turned and shifted", "other foot", "reversed", "white line reversed"],
)
def test_the_same_sole_however_it_lies(change: Callable[[Points], Points]) -> None:
    """The same ring."""
    assert figures(change(FLARED.points())) == pytest.approx(figures(FLARED.points()), abs=1e-6)


def test_sides_called_by_the_other_name() -> None:
    """The flare changes sides."""
    one, other = figures(FLARED.points()), figures(sides_swapped(FLARED.points()))

    assert other["flare_medial_quarter_mm"] == pytest.approx(one["flare_lateral_quarter_mm"])
    assert other["ring_difference_mm"] == pytest.approx(-one["ring_difference_mm"])


@pytest.mark.parametrize("change", [dict, other_foot, lambda points: moved(points, degrees=120)])
def test_without_a_frog_the_ends_of_the_wall_tell_where_the_toe_is(change: Callable[[Points], Points]) -> None:
    """From the medial heel to the lateral one: nearly the same ring as with a frog."""
    lines = {name: FLARED.points()[name] for name in ("wall", "white_line")}

    assert figures(change(lines)) == pytest.approx(figures(FLARED.points()), abs=0.2)


@pytest.mark.parametrize("missing", ["wall", "white_line"])
def test_no_ring_without_both_lines(missing: str) -> None:
    """Each of them is needed."""
    points = {name: spots for name, spots in FORE.points().items() if name != missing}

    assert ring(points) is None
    assert ring_figures(points) == {}


def test_a_wall_in_one_place_has_no_ring() -> None:
    """Neither the frog nor the wall tells a direction."""
    assert ring({"wall": np.ones((12, 2)), "white_line": np.ones((8, 2))}) is None


def test_a_wall_that_ends_early() -> None:
    """Zones that were not traced are left out, and no flare is told from one side alone."""
    points = FORE.points() | {"wall": FORE.points()["wall"][:14]}
    found = figures(points)

    assert "ring_medial_quarter_mm" in found
    assert not {"ring_lateral_quarter_mm", "ring_lateral_heel_mm"} & found.keys()
    assert flares(found) == {}
    assert both_sides_bulge(WallRing(*ring_or_fail(points))).item() is False


def ring_or_fail(points: Points) -> tuple[Floats, Floats]:
    """The ring of points that have one."""
    found = ring(points)
    assert found is not None
    return found


def test_each_angle_belongs_to_one_zone() -> None:
    """The zones of the table, without a gap, the same on both sides."""
    angles = np.arange(-179.5, 180, 0.5)
    inside = np.stack([in_zone(angles, zone) for zone in ZONES])

    assert list(ZONE_BOUNDS) == list(ZONES)
    assert (inside.sum(axis=0) == 1).all()
    assert (inside[:, ::-1] == inside[::-1]).all()


@pytest.mark.parametrize(
    ("bulges", "expected"),
    [
        ((), False),
        ((Bulge(92, 5),), False),
        ((Bulge(92, 4), Bulge(-92, 4)), True),
        ((Bulge(92, 8, 90), Bulge(-92, 8, 90)), True),
        ((Bulge(92, 4, 80), Bulge(-92, 4, 80)), False),
    ],
    ids=["none", "one side", "both, narrow", "both, broad and high", "both, broad: not seen"],
)
def test_both_sides_pushed_out_alike(bulges: tuple[Bulge, ...], expected: bool) -> None:
    """Told where it shows; a broad and low pair passes for an even ring, as only an earlier visit can tell."""
    assert both_sides_bulge(ring_of(replace(FINE, bulges=bulges))).item() is expected


def test_all_draws_at_once() -> None:
    """One call for all draws gives what one call for each gives, where they cover the same angles."""
    draws = jittered(FLARED.points(), draws=5, sd=0.05)
    together = ring_figures(draws)

    for draw in range(5):
        alone = figures({name: spots[draw] for name, spots in draws.items()})
        assert {name: float(values[draw]) for name, values in together.items()} == pytest.approx(alone, abs=0.02)


def test_the_hand_hardly_moves_the_zones() -> None:
    """With 0.3 mm a pick a zone's flare holds to 0.25 mm, and the mean of the draws is the plain reading."""
    sole = replace(FORE, bulges=(Bulge(92, 5),))
    plain, draws = figures(sole.points()), ring_figures(jittered(sole.points()))

    for name, values in draws.items():
        assert values.mean() == pytest.approx(plain[name], abs=0.15)
        assert values.std() < 0.3


@pytest.mark.parametrize("kind", ["shaken", "strayed", "seen"])
def test_the_error_of_a_zone_is_that_of_all_three_kinds(kind: str) -> None:
    """Hand, lines and camera are drawn one after the other, and the last draws hold all of it.

    Derived from: a foot taken for one per cent larger and smaller by turns has a wall that is one per cent unsure.
    """
    plain = FINE.points()
    same = {name: np.repeat(spots[None], 10, 0) for name, spots in plain.items()}
    other = {name: spots * np.where(np.arange(10) % 2, 1.01, 0.99)[:, None, None] for name, spots in same.items()}
    order = ["shaken", "strayed", "seen"]
    draws = Draws(**{one: other if order.index(one) >= order.index(kind) else same for one in order})
    told = told_ring(plain, draws)["ring_toe_mm"]

    assert told.sd == pytest.approx(0.01 * told.value)
