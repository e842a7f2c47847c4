"""Published classes are reckoned, told with their share, and never become a verdict."""

from __future__ import annotations

from datetime import date

import pytest

from recordgen.hoof.measures.published_classes import ClassReading
from tests.support.horse_records import REFERENCE, summary, visit


def classed(key: str, **values: object) -> tuple[ClassReading, ...]:
    """Data of a horse with one visit of one class."""
    name = REFERENCE.published[key].name
    told = {one.words.name: one.found for one in summary(visit("2026-10-14", **values)).published}
    return told.get(name, ())


@pytest.mark.parametrize(
    ("key", "after", "taken_in"),
    [
        ("underrun", {"toe_angle": 50, "heel_angle": 40}, True),
        ("underrun", {"toe_angle": 50, "heel_angle": 49}, False),
        ("broken-back", {"toe_angle": 45, "pastern_angle": 55}, True),
        ("broken-forward", {"toe_angle": 45, "pastern_angle": 55}, False),
        ("broken-forward", {"toe_angle": 58, "pastern_angle": 45}, True),
        ("sheared", {"heel_height": {"medial": 40, "lateral": 30}}, True),
        ("sheared", {"heel_height": {"medial": 30, "lateral": 40}}, True),
        ("sheared", {"heel_height": {"medial": 36, "lateral": 36}}, False),
    ],
)
def test_a_foot_falls_in_a_class_or_does_not(key: str, after: dict[str, object], taken_in: bool) -> None:
    """By the rule as it was printed.

    Source: Turner, Objective Assessment of Hoof Balance, and SIVE congress 2010; USDA, Special Report on Diseases of
    the Horse.
    """
    (one,) = classed(key, left_fore={"after": after})

    assert (one.where, one.day, one.taken_in) == ("left_fore", date(2026, 10, 14), taken_in)


@pytest.mark.parametrize(("width", "taken_in"), [(33.4, True), (33.5, False)])
def test_two_thirds_of_a_frog(width: float, taken_in: bool) -> None:
    """Below 0.67 and not at it. Source: Turner 2010, SIVE congress."""
    words = REFERENCE.published["contracted"]

    assert words.takes_in(width / 50) == taken_in


@pytest.mark.parametrize(("value", "taken_in"), [(5.0, True), (-5.0, True), (4.999, False)])
def test_five_millimetres_exactly_is_sheared(value: float, taken_in: bool) -> None:
    """The rule says 0.5 cm or more. Source: Turner 2010, SIVE congress."""
    assert REFERENCE.published["sheared"].takes_in(value) == taken_in


def test_a_pair_is_compared_left_with_right() -> None:
    """More than 5 degrees. From memory, not read: Turner 1992, Proc. AAEP."""
    feet = {"left_fore": {"after": {"toe_angle": 56}}, "right_fore": {"after": {"toe_angle": 48}}}
    (one,) = classed("mismatched", **feet)

    assert (one.where, one.value, one.taken_in) == ("fore", 8, True)


def test_small_feet_are_the_published_pounds_to_the_square_inch() -> None:
    """78 lb/in2 in kg/cm2. Source: Turner 2010, SIVE congress; the pound and the inch by definition."""
    words = REFERENCE.published["small"]

    assert words.over == pytest.approx(78 * 0.45359237 / 2.54**2, abs=0.0005)


def test_a_reading_near_the_line_is_told_as_near() -> None:
    """Its error may decide."""
    (one,) = classed("sheared", left_fore={"after": {"heel_height": {"medial": 30, "lateral": 35}}})

    assert one.within_error


def test_every_class_tells_how_many_it_takes_in_and_where_that_stands() -> None:
    """Seven classes, six kinds."""
    assert len(REFERENCE.published) == 7
    assert all(words.share and words.source for words in REFERENCE.published.values())


@pytest.mark.parametrize(("kind", "told"), [("horse", 1), ("pony", 1), ("donkey", 0), ("mule", 0)])
def test_a_class_published_for_horses_is_not_held_against_a_donkey(kind: str, told: int) -> None:
    """A forward axis is the commonest one of sound donkeys.

    Source: a radiographic study of 157 donkeys, as reported in American Farriers Journal, article 601.
    """
    found = summary(visit("2026-10-14", left_fore={"after": {"toe_angle": 62, "pastern_angle": 55}}), kind=kind)

    assert len([one for one in found.published if one.words.name == "broken forward axis"]) == told
    assert bool(found.published) == bool(told)


def test_five_degrees_to_the_point_are_marked_as_a_judgement() -> None:
    """The page says 5 degrees less, and not whether exactly 5 counts.

    Source: Turner, Objective Assessment of Hoof Balance, equipodiatry.com.
    """
    words = REFERENCE.published["underrun"]

    assert words.takes_in(5)
    assert "is a judgement" in words.source


def test_what_was_not_measured_is_in_no_class() -> None:
    """Nothing is guessed."""
    assert summary(visit("2026-10-14", left_fore={"after": {"toe_length": 80}})).published == ()
