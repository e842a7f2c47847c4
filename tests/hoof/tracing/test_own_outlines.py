"""A practice's own table of usual outlines: when there is one, what it draws better, and that old tracings stay."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest
import shapely

from recordgen.hoof.tracing.figures import tapped_points
from recordgen.hoof.tracing.own_outlines import FEWEST, mixed, own_outlines, traced_soles
from recordgen.problems import Trouble
from recordgen.records.models.foot import FootVisit
from recordgen.records.models.lines.drawn import drawn_lines
from recordgen.records.models.lines.shape_table import SHIPPED, ShapeTable, make_known, own_table, text_of
from recordgen.records.models.tracing import Tracing
from recordgen.records.models.visit import Visit
from tests.support.sole_shapes import Sole
from tests.support.typed_tracings import tapped

PX = 2.4


def pointed(seed: int, wall: int = 11, line: int = 9, model: int | str = 1) -> tuple[Sole, Tracing]:
    """A sole of a practice with narrow, pointed feet, of a kind that our table hardly knows, and its tracing."""
    lot = np.random.default_rng(seed)
    sole = Sole(float(lot.normal(135, 5)), float(lot.normal(102, 4)), 60, float(lot.normal(1.75, 0.04)), 66)
    values = tapped(sole, wall, line, hand_px=PX, seed=seed, model=model, hand_error=2.0)
    return sole, Tracing.model_validate(values)


@cache
def made() -> ShapeTable:
    """The table of fifty of them."""
    return own_outlines([pointed(seed)[1] for seed in range(FEWEST)])


def own() -> ShapeTable:
    """The same, known to tracings."""
    make_known(made())
    return made()


def _area(tracing: Tracing) -> float:
    return float(shapely.Polygon(drawn_lines(tapped_points(tracing), tracing)["wall"]).area)


def test_with_too_few_there_is_none() -> None:
    """It says how many there are and how many are needed."""
    with pytest.raises(
        Trouble, match="49 traced soles with wall, white line and frog are here, 50 are needed"
    ) as refused:
        own_outlines([pointed(seed)[1] for seed in range(FEWEST - 1)])

    assert refused.value.way_out.startswith("Trace 1 more;")


def test_it_draws_feet_of_that_practice_nearer_to_the_truth() -> None:
    """Others than it was made of, through seven taps and five: the area is nearer than by our table."""
    off: dict[int | str, list[float]] = {1: [], own().version: []}
    for seed in range(500, 512):
        for version, found in off.items():
            sole, tracing = pointed(seed, 7, 5, version)
            true = Tracing.model_validate(tapped(sole, 61, 61))
            found.append(abs(_area(tracing) / _area(true) - 1))

    assert np.mean(off[own().version]) < 0.85 * np.mean(off[1])


def test_a_tracing_is_drawn_by_the_table_that_it_names() -> None:
    """Whatever table came later; and by ours where it names ours."""
    ours, theirs = pointed(7)[1], pointed(7, model=own().version)[1]
    before = [drawn_lines(tapped_points(one), one)["wall"] for one in (ours, theirs)]
    make_known(own(), own_outlines([pointed(seed)[1] for seed in range(100, 100 + FEWEST)]))
    after = [drawn_lines(tapped_points(one), one)["wall"] for one in (ours, theirs)]

    assert np.array_equal(before, after)
    assert np.abs(before[0] - before[1]).max() > 0.2


def test_the_same_soles_give_the_same_table_and_its_name() -> None:
    """And what is written down is that table."""
    again = own_table(text_of(own().wall), text_of(own().ring))

    assert own_outlines([pointed(seed)[1] for seed in range(FEWEST)]).version == own().version == again.version
    assert np.array_equal(again.wall, own().wall)


def test_a_crowd_like_ours_leaves_ours_as_it_is() -> None:
    """Mean and covariance of as many drawn by our table, mixed with it. Source: law of total variance."""
    lot = np.random.default_rng(3)
    modes = SHIPPED.wall[1:]
    held = SHIPPED.wall[0] + lot.standard_normal((4000, len(modes))) @ modes
    found = mixed(held, SHIPPED.wall, len(modes))

    assert found[0] == pytest.approx(SHIPPED.wall[0], abs=2e-3)
    assert found[1:].T @ found[1:] == pytest.approx(modes.T @ modes, abs=3e-4)


def test_a_foot_counts_once_in_a_visit_after_the_trim() -> None:
    """And only where wall and white line were traced, and a frog that gives an axis."""
    values = [tapped(moment=moment) for moment in ("before", "after")]
    feet = {"left_fore": FootVisit.model_validate({"tracings": values})}
    lacking = {name: value for name, value in tapped().items() if name != "white_line"}
    feet["right_fore"] = FootVisit.model_validate({"tracings": [lacking]})
    askew = tapped(frog_medial=[700, 700], frog_lateral=[700, 700])
    feet["left_hind"] = FootVisit.model_validate({"tracings": [askew]})
    visit = Visit.model_validate({"date": "2026-10-14", "feet": feet})

    assert [one.moment for one in traced_soles([visit])] == ["after"]
