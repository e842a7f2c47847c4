"""The feet that were drawn and traced in the demo tell the same stories as what was typed."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

import pytest

from recordgen.hoof.tracing.errors.twice import hand_error_px
from recordgen.hoof.tracing.figures import Traced, traced
from recordgen.hoof.tracing.side import side_figures
from recordgen.records.models.foot import FootVisit
from recordgen.records.models.names import Foot
from recordgen.records.models.tracing import HAND_ERROR, LANDMARKS, Tracing
from tests.demo.tracings import SoleFoot, drawn, tracing, with_tracings
from tests.support.demo_tracings import feet
from tests.support.reckoned import reckoned_once
from tests.support.side_shapes import FrontFoot, SideFoot
from tests.support.sole_shapes import Bulge

HORSES = {"bramble": 9, "dunlin": 6, "pippin": 6, "teasel": 1}


def tracings() -> list[Tracing]:
    """Every tracing of the demo."""
    return [one for *_, found in feet() for one in found.tracings]


def of(slug: str, foot: Foot, view: str, moment: str) -> Iterator[tuple[FootVisit, Traced]]:
    """The tracings of one foot from one side at one moment, oldest first, and what was typed beside each."""
    for horse, _, which, found in feet():
        if (horse, which) == (slug, foot):
            alike = [one for one in found.tracings if (one.view, one.moment) == (view, moment)]
            if alike:
                yield found, next(one for one in traced(found, HAND_ERROR, reckoned_once) if one.tracing == alike[0])


def course(name: str, *which: str) -> list[float]:
    """One figure of such tracings, oldest first."""
    slug, foot, view, moment = which
    return [one.figures[name].value for _, one in of(slug, foot, view, moment)]  # type: ignore[arg-type]


def test_four_horses_are_traced() -> None:
    """Three over many visits, one pair of feet at a single one."""
    days = {(slug, day) for slug, day, *_ in feet()}

    assert {slug: sum(one == slug for one, _ in days) for slug in HORSES} == HORSES
    assert {slug for slug, _ in days} == set(HORSES)


def test_every_tracing_is_whole_and_says_that_it_is_of_a_drawing() -> None:
    """All landmarks of its view; nobody shall take an invented foot for a real one."""
    assert {one.of for one in tracings()} == {"drawing"}
    assert [one.missing() for one in tracings()] == [()] * len(tracings())


def test_sole_side_and_front_are_there_before_and_after() -> None:
    """Each view; of the front only what was found."""
    seen = {(one.view, one.moment) for one in tracings()}

    assert seen == {(view, moment) for view in ("sole", "side") for moment in ("before", "after")} | {
        ("front", "before")
    }


@pytest.mark.parametrize(
    ("slug", "view", "left", "right"),
    [("bramble", "sole", "left_hind", "right_hind"), ("teasel", "side", "left_fore", "right_fore")],
)
def test_a_left_and_a_right_foot_are_traced_at_one_visit(slug: str, view: str, left: Foot, right: Foot) -> None:
    """From the same side, before or after alike, so that they can be held against each other."""
    seen = {
        (day, foot, one.moment)
        for who, day, foot, found in feet()
        for one in found.tracings
        if one.view == view
        if who == slug
    }

    assert any((day, left, moment) in seen and (day, right, moment) in seen for day, _, moment in seen)


def test_brambles_flare_grows_out_of_the_ring() -> None:
    """From nothing in December to about 5 mm in February, and visit by visit back to next to nothing."""
    flares = course("flare_medial_toe_quarter_mm", "bramble", "right_hind", "sole", "before")

    assert (flares[0] < 1, 4.5 < max(flares) < 6, flares[-1] < 1.5) == (True, True, True)
    assert flares[1:] == sorted(flares[1:], reverse=True)


def test_brambles_flare_is_typed_as_high_as_its_bulge() -> None:
    """The ring tells the mean of the zone, which is less than the typed height and more than two fifths of it."""
    pairs = [
        (found.wall["medial toe quarter"].flare, one.figures["flare_medial_toe_quarter_mm"].value)
        for found, one in of("bramble", "right_hind", "sole", "before")
        if found.wall and found.wall["medial toe quarter"].flare
    ]

    assert len(pairs) == 8
    assert all(typed and 0.4 * typed < mean < typed for typed, mean in pairs)


def test_each_trim_takes_a_little_of_brambles_flare() -> None:
    """By more than the hand's error, where both moments were traced."""
    both = [
        {
            one.tracing.moment: one.figures["flare_medial_toe_quarter_mm"].value
            for one in traced(found, HAND_ERROR, reckoned_once)
            if one.tracing.view == "sole"
        }
        for slug, _, foot, found in feet()
        if (slug, foot) == ("bramble", "right_hind")
    ]
    taken = [one["before"] - one["after"] for one in both if len(one) == 2]

    assert [0.2 < one < 2.5 for one in taken] == [True] * 3


def test_pippins_toe_comes_back() -> None:
    """After each trim of the vet's plan: steeper, shorter on the ground, straighter, and it rolls over further back."""
    which = ("pippin", "left_fore", "side", "after")
    angles, support, gaps, breakover = (
        course(name, *which)[1:]
        for name in ("toe_angle_deg", "support_length_mm", "dorsal_gap_mm", "side_breakover_mm")
    )

    assert angles == sorted(angles)
    assert (angles[-1] - angles[0] > 3, support[0] - support[-1] > 2, gaps[0] - gaps[-1] > 1) == (True, True, True)
    assert breakover[-1] - breakover[0] > 2
    assert course("sole_breakover_mm", "pippin", "left_fore", "sole", "after") == pytest.approx([7, 9, 10], abs=0.8)


@pytest.mark.parametrize(
    ("slug", "foot", "moment", "visits"),
    [
        ("pippin", "left_fore", "before", 6),
        ("pippin", "left_fore", "after", 6),
        ("teasel", "left_fore", "after", 1),
        ("teasel", "right_fore", "after", 1),
    ],
)
def test_toes_are_traced_as_they_are_typed(slug: str, foot: Foot, moment: str, visits: int) -> None:
    """Length within 1.5 mm and angle within 1.5 degrees, about what rule and protractor are out by."""
    pairs = list(of(slug, foot, "side", moment))

    assert len(pairs) == visits
    for found, one in pairs:
        typed = found.before if moment == "before" else found.after
        assert typed is not None
        assert one.figures["toe_length_mm"].value == pytest.approx(typed.toe_length, abs=1.5)
        assert one.figures["toe_angle_deg"].value == pytest.approx(typed.toe_angle, abs=1.5)


def test_dunlins_foot_is_turned_and_stays_so() -> None:
    """About 5 degrees at each visit; no two of them differ by more than the hand's error."""
    turns = course("turn_deg", "dunlin", "left_fore", "sole", "before")
    match = course("mirror_match_percent", "dunlin", "left_fore", "sole", "before")

    assert turns == pytest.approx([4.8] * 6, abs=0.5)
    assert max(match) < 97


def test_a_drawing_traced_twice_tells_the_hands_error() -> None:
    """Both tracings of Dunlin's last visit name one drawing; the error is near the one they were made with."""
    (twice,) = [
        [one for one in found.tracings if one.moment == "before"]
        for slug, day, _, found in feet()
        if (slug, day) == ("dunlin", date(2026, 11, 6))
    ]

    assert len({one.file for one in twice}) == 1
    assert hand_error_px(*twice) == pytest.approx(twice[0].error_px(), rel=0.3)


@pytest.mark.parametrize(
    "shape", [SoleFoot(), SideFoot(), FrontFoot(flares=(0, 4)), SoleFoot(bulges=(Bulge(92, 7, 80),), turn=5)]
)
@pytest.mark.parametrize("foot", ["left_fore", "right_hind"])
def test_any_shape_becomes_a_tracing_that_can_be_read(shape: SoleFoot | SideFoot | FrontFoot, foot: str) -> None:
    """The same each time, inside its picture, with all landmarks."""
    (one,) = drawn("2026-10-14", foot, before=shape)
    values = tracing(one, "a seed")

    assert tracing(one, "a seed") == values != tracing(one, "another")
    assert list(Tracing.model_validate(values).named()) == list(LANDMARKS[one.view])


def test_a_foot_that_was_not_measured_cannot_be_drawn() -> None:
    """A story that tells of a trim that was not is refused."""
    visit = {"date": date(2026, 10, 14), "feet": {"left_fore": {"before": {"toe_length": 80}}}}

    with pytest.raises(ValueError, match="left_fore was not measured after the trim"):
        with_tracings(visit, drawn("2026-10-14", "left_fore", after=SideFoot()), "moss")


def test_a_side_shape_has_the_figures_it_was_told() -> None:
    """Without a flare to the last digit; with one the lower wall runs out by as much."""
    plain = side_figures(SideFoot(toe_length=82, toe_angle=50, heel_angle=43, breakover=9).points())
    flaring = side_figures(SideFoot(flare=8).points())
    told = {
        "toe_length_mm": 82,
        "toe_angle_deg": 50,
        "heel_angle_deg": 43,
        "heel_height_mm": 36,
        "side_breakover_mm": 9,
    }

    assert {name: float(plain[name]) for name in told} == pytest.approx(told)
    assert float(plain["support_length_mm"]) == pytest.approx(SideFoot().support)
    assert float(flaring["dorsal_flare_deg"]) == pytest.approx(8, abs=0.1)
