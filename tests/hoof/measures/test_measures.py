"""How measures are read from a visit, and how well they repeat."""

from __future__ import annotations

import math
from datetime import date
from typing import Any

import numpy as np
import pytest

from recordgen.hoof.measures.measures import measures_of, readings_at, smallest_real_change
from recordgen.hoof.measures.readings import Reading
from recordgen.records.models.names import ZONES
from recordgen.records.models.reference import Reference
from tests.support.horse_records import MEASURES, REFERENCE, WAYS, foot

DAY = date(2026, 10, 14)


def readings(**values: Any) -> dict[str, Reading]:
    """The readings of one foot at one visit."""
    return readings_at(WAYS.measures, foot(**values), DAY)


def sd_of(key: str, known: dict[str, float], **methods: str) -> float:
    """Standard deviation of a reading of a measure."""
    return MEASURES[key].sd(known, methods)


def test_every_entry_of_the_table_is_a_measure() -> None:
    """Those of the wall once for each zone, the others once."""
    names = [measure.name for measure in WAYS.measures]

    assert list(dict.fromkeys(names)) == list(REFERENCE.measures)
    assert all(names.count(name) in (1, len(ZONES)) for name in names)
    assert len(MEASURES) == len(WAYS.measures)


def test_every_measure_has_a_way_with_its_error_or_two_parts() -> None:
    """A measure is either taken, with an SD above zero and its source, or computed from two others."""
    taken = [measure for measure in WAYS.measures if not measure.parts]
    computed = [measure for measure in WAYS.measures if measure.parts]
    ways = [(measure.key, way) for measure in taken for way in measure.words.methods.values()]

    assert [measure.key for measure in computed if len(measure.parts) != 2 or measure.words.methods] == []
    assert [measure.key for measure in taken if not measure.words.methods] == []
    assert [(key, way) for key, way in ways if not (way.sd > 0 and way.source)] == []


def test_an_assumed_error_says_so() -> None:
    """A figure that nobody published is marked, and its source begins with that word."""
    ways = [(measure.key, way) for measure in WAYS.measures for way in measure.words.methods.values()]

    assert ways
    assert [(key, way) for key, way in ways if way.assumed != way.source.startswith("Assumed")] == []


def test_units_come_from_the_record() -> None:
    """Lengths in mm, angles in degrees, ratios without a unit."""
    keys = ("toe_length", "toe_angle", "flare_lateral_heel", "axis_difference", "frog_ratio")

    assert [MEASURES[key].unit for key in keys] == ["mm", "degrees", "mm", "degrees", "to 1"]


def test_a_path_that_leads_nowhere_is_told() -> None:
    """A practice's own table may be wrong; the message names the path."""
    words = REFERENCE.measures["toe_length"].model_copy(update={"path": "@.toe"})

    with pytest.raises(ValueError, match=r"no measure stands at @\.toe"):
        measures_of(Reference(measures={"toe": words}))


def test_a_measure_is_read_before_and_after() -> None:
    """A reading not taken at a moment is None; a measure never taken has no reading."""
    found = readings(before={"toe_length": 91, "toe_angle": 52}, after={"toe_length": 83})

    assert found == {"toe_length": Reading(DAY, 91, 83), "toe_angle": Reading(DAY, 52, None)}


def test_one_side_alone_is_read() -> None:
    """Without the other there is no difference of the two."""
    assert set(readings(after={"heel_height": {"medial": 35}})) == {"heel_height_medial"}


def test_what_is_taken_as_found_stands_before_the_trim() -> None:
    """Frog, sole, bars and wall are recorded once a visit."""
    found = readings(frog={"width": 50, "length": 80}, sole={"depth": 12}, bars={"medial": 60})

    assert found == {
        "frog_length": Reading(DAY, 80, None),
        "frog_width": Reading(DAY, 50, None),
        "frog_ratio": Reading(DAY, 0.625, None),
        "sole_depth": Reading(DAY, 12, None),
        "bar_medial": Reading(DAY, 60, None),
    }


def test_each_zone_of_the_wall_has_measures_of_its_own() -> None:
    """A zero that was measured is a reading."""
    found = readings(wall={"toe": {"flare": 0}, "medial heel": {"separation": {"length": 18, "depth": 3}}})

    assert {key: reading.before for key, reading in found.items()} == {
        "flare_toe": 0,
        "separation_length_medial_heel": 18,
        "separation_depth_medial_heel": 3,
    }


def test_computed_measures_take_both_parts_from_one_moment() -> None:
    """A heel before and the other after the trim make no difference."""
    both = {"medial": 38, "lateral": 34}

    assert readings(before={"heel_height": both})["heel_difference"] == Reading(DAY, -4, None)
    crossed = readings(before={"heel_height": {"medial": 36}}, after={"heel_height": {"lateral": 36}})
    assert "heel_difference" not in crossed


def test_nothing_divides_by_zero() -> None:
    """A ratio over nothing is no reading."""
    assert MEASURES["frog_ratio"].value(foot(), "before", {"frog_width": 50, "frog_length": 0}) is None


def test_a_foot_without_measures_has_no_reading() -> None:
    """It was looked at, and nothing was measured."""
    assert readings(landing="flat") == {}


def test_the_usual_way_is_the_first_of_the_table() -> None:
    """So it is where none is named, and where the one named is in no table."""
    assert sd_of("toe_length", {}) == 1
    assert sd_of("toe_length", {}, toe_length="photograph") == 2
    assert sd_of("toe_length", {}, toe_length="by eye") == 1


def test_both_heels_share_the_way_they_were_taken() -> None:
    """`heel_height` names it for the inner and the outer one."""
    assert sd_of("heel_height_medial", {}, heel_height="photograph") == 2
    assert sd_of("heel_height_lateral", {}, heel_height="photograph") == 2
    assert sd_of("heel_difference", {}, heel_height="photograph") == pytest.approx(math.sqrt(8))


def test_one_side_or_one_zone_may_be_taken_another_way() -> None:
    """The nearer name wins over that of both sides, or of all zones."""
    assert sd_of("heel_height_medial", {}, heel_height_medial="photograph") == 2
    assert sd_of("heel_height_lateral", {}, heel_height_medial="photograph") == 1
    assert sd_of("heel_height_medial", {}, heel_height="photograph", heel_height_medial="rule") == 1
    assert [sd_of(key, {}, flare_toe="photograph") for key in ("flare_toe", "flare_lateral_heel")] == [2, 1]
    assert sd_of("flare_lateral_heel", {}, flare="photograph") == 2


def test_the_error_of_a_difference_adds_variances() -> None:
    """Toe angle by gauge, pastern by protractor.

    Source: JCGM 100:2008 (GUM), section 5.1.
    """
    assert sd_of("axis_difference", {}, toe_angle="gauge") == pytest.approx((0.133**2 + 1.5**2) ** 0.5)


@pytest.mark.parametrize(("width", "length"), [(50, 80), (30, 60), (70, 70)])
def test_the_error_of_a_ratio_is_that_of_many_readings(width: float, length: float) -> None:
    """A quarter of a million pairs of readings, each out by its SD, scatter as the ratio's SD says, within 2 %."""
    draw = np.random.default_rng(20261014)
    widths, lengths = draw.normal(width, 1, 250_000), draw.normal(length, 1, 250_000)

    computed = sd_of("frog_ratio", {"frog_width": width, "frog_length": length})

    assert computed == pytest.approx(float(np.std(widths / lengths)), rel=0.02)


def test_smallest_real_change_of_one_way() -> None:
    """1.96 times the root of two times the SD.

    Source: Bland & Altman 1999, Statistical Methods in Medical Research 8:135-160.
    """
    assert smallest_real_change(1, 1) == pytest.approx(2.7718585823)
    assert smallest_real_change(2, 2) == 2 * smallest_real_change(1, 1)


def test_smallest_real_change_of_two_ways() -> None:
    """The variances of both add up; of one reading alone it is 1.96 SD."""
    assert smallest_real_change(0.133, 1) == pytest.approx(1.96 * (0.133**2 + 1) ** 0.5)
    assert smallest_real_change(1, 0) == 1.96


def test_one_change_in_twenty_that_is_only_error_passes_for_real() -> None:
    """Many pairs of readings of a foot that did not change go beyond it in five of a hundred."""
    draw = np.random.default_rng(7)
    changes = draw.normal(0, 0.133, 200_000) - draw.normal(0, 1, 200_000)

    share = float(np.mean(np.abs(changes) >= smallest_real_change(0.133, 1)))

    assert share == pytest.approx(0.05, abs=0.003)
