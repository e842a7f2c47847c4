"""The changes that are told first, once for all feet."""

from __future__ import annotations

from datetime import date

from recordgen.hoof.claims.claims import Claim, Claims
from recordgen.hoof.measures.changes import FootMeasure
from recordgen.hoof.measures.leading_changes import LEADING, SAME_THING, LeadingChange, leading_changes
from recordgen.records.models.names import Foot
from recordgen.records.models.visit import Visit
from tests.support.horse_records import MEASURES, NAMING, REFERENCE, summary, visit

DAYS = [f"2026-{month:02}-10" for month in range(1, 8)]
STEP = (80, 80, 81, 80, 86, 85, 86)


def told(*visits: Visit) -> list[LeadingChange]:
    """The leading changes of a horse."""
    return list(leading_changes(summary(*visits).changes))


def toes_of(*feet: Foot) -> list[Visit]:
    """Visits at which the toes of these feet went up between April and May."""
    return [
        visit(day, **{foot: {"after": {"toe_length": long}} for foot in feet})
        for day, long in zip(DAYS, STEP, strict=True)
    ]


def gap(length: float, depth: float) -> dict[str, object]:
    """A foot with a gap at the toe."""
    return {"wall": {"toe": {"separation": {"length": length, "depth": depth}}}}


def test_feet_that_changed_alike_are_told_together() -> None:
    """In their order, with the smallest and the largest size."""
    (found,) = told(*toes_of("right_fore", "left_fore"))

    assert (found.name, found.up, found.feet) == ("toe_length", True, ("left_fore", "right_fore"))
    assert 4 < found.sizes[0] <= found.sizes[1] < 7


def test_a_change_is_up_where_it_is_above_nothing_however_small() -> None:
    """Half a millimetre up of one foot and down of the other are two changes."""
    days = (date(2026, 4, 10), date(2026, 5, 10), date(2026, 7, 10))
    sizes: dict[Foot, float] = {"left_fore": 0.5, "right_fore": -0.5}
    toe = MEASURES["toe_length"]
    real = [
        Claim(FootMeasure(foot, toe, 80), "step", *days, size, size - 0.1, size + 0.1, chance=0.001, real=True)
        for foot, size in sizes.items()
    ]
    found = leading_changes(Claims(tuple(real)))

    assert {one.feet: one.up for one in found} == {("left_fore",): True, ("right_fore",): False}


def test_a_step_is_told_between_the_two_visits_it_lies_between() -> None:
    """So that a change of the last visit is not dated by that visit alone."""
    (found,) = told(*toes_of("left_hind"))

    assert found.days == (date(2026, 4, 10), date(2026, 5, 10))


def test_length_and_depth_of_one_gap_are_one_change() -> None:
    """Told by its length, once."""
    visits = [visit(day, left_fore=gap(60 - 8 * count, 14 - 2 * count)) for count, day in enumerate(DAYS)]

    assert [(one.name, one.zone, one.up) for one in told(*visits)] == [("separation_length", "toe", False)]


def test_what_was_found_stands_before_how_it_is_trimmed() -> None:
    """A gap before a toe, though the toe changed later and more surely."""
    toes = toes_of("left_fore")
    visits = [
        one.model_copy(update={"feet": {"left_fore": one.feet["left_fore"].model_copy(update={"wall": found.wall})}})
        for count, one in enumerate(toes)
        for found in [visit(DAYS[count], left_fore=gap(60 - 8 * count, 14 - 2 * count)).feet["left_fore"]]
    ]

    assert [one.name for one in told(*visits)] == ["separation_length", "toe_length"]


def test_each_has_words_for_both_directions() -> None:
    """Every name is one of the table, and what is measured twice leads to a leading one."""
    words = [f"told_{name}_{way}" for name in LEADING for way in ("up", "down")]

    assert [key for key in words if key not in NAMING.phrases] == []
    assert set(LEADING) | set(SAME_THING) <= set(REFERENCE.measures)
    assert set(SAME_THING.values()) <= set(LEADING)
    assert all(
        not one.words.detail or one.name in ("breakover", *SAME_THING)
        for one in MEASURES.values()
        if one.name in LEADING
    )
