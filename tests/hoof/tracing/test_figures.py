"""Figures of a tracing in a record: figures with the error of the hand, and readings where nothing was typed."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest

from recordgen.hoof.tracing.errors.draws import redrawn
from recordgen.hoof.tracing.errors.twice import hand_error_px
from recordgen.hoof.tracing.figures import Traced, in_mm, plain_values, reckoned, tapped_points, traced
from recordgen.hoof.tracing.foot_frame import FROG
from recordgen.hoof.tracing.readings import stance_sd
from recordgen.hoof.tracing.sole import sole_figures
from recordgen.records.models.reference import TRACING
from recordgen.records.models.tracing import LANDMARKS, TracedView, Tracing
from tests.support.horse_records import MEASURES, foot, summary, visit
from tests.support.sole_shapes import FORE, Sole
from tests.support.typed_tracings import SINGLE, typed

BOUNDED = ("mirror_match", "best_mirror_match", "concentric_mm")


def told(hand: float = 1.5, **values: Any) -> Traced:
    """Figures of such a tracing."""
    return traced(foot(tracings=[typed(**values)]), hand)[0]


def test_a_tracing_gives_the_figures_of_its_shape() -> None:
    """Scale and the direction of y are seen to: the same as of the shape itself, in mm."""
    expected = {name: float(value) for name, value in sole_figures(FORE.points()).items()}
    found = told().figures

    assert {name: found[name].value for name in expected} == pytest.approx(expected, rel=1e-4, abs=0.02)


def test_a_landmark_that_is_missing_is_named_for_each_figure_that_lacks_it() -> None:
    """Nothing is guessed."""
    one = told(without="frog_apex")

    assert "mirror_match_percent" not in one.figures
    assert one.lacking["mirror_match_percent"] == ("frog_apex",)
    assert one.lacking["sole_length_mm"] == ("frog_apex",)


@pytest.mark.parametrize(("view", "name"), [(view, name) for view, marks in LANDMARKS.items() for name in marks])
@pytest.mark.parametrize("source", [{"of": "drawing"}, {"of": "photograph", "file": "2026-10-14.jpg"}])
def test_any_landmark_may_be_the_only_one(view: TracedView, name: str, source: dict[str, str]) -> None:
    """A ground line alone, say: the figures that lack others name them, and those that need it alone are told."""
    spots = [[300 + 25 * number, 400 + 10 * (number - 4) ** 2] for number in range(LANDMARKS[view][name].least)]
    usual = {key: value for key, value in typed().items() if key in ("moment", "image", "scale")}
    alone = usual | source | {"view": view, name: spots if len(spots) > 1 else spots[0]}
    one = traced(foot(tracings=[alone]), 1.5)[0]

    assert all(name not in lacking for lacking in one.lacking.values())
    assert one.figures.keys().isdisjoint(one.lacking)
    assert one.lacking


def test_errors_grow_with_the_error_of_the_hand() -> None:
    """Twice the error, twice the spread."""
    small, large = (told(hand=hand).figures["frog_length_mm"].sd for hand in (1.0, 2.0))

    assert large == pytest.approx(2 * small, rel=0.02)


@pytest.mark.parametrize("name", ["frog_length_mm", "frog_width_mm", "buttress_difference_mm", "bar_difference_deg"])
def test_the_draws_agree_with_the_delta_method(name: str) -> None:
    """On smooth figures: the root of the sum of squared slopes times the error of one pick.

    Source: propagation of independent errors, JCGM 100:2008 (GUM), section 5.1; draws, JCGM 101:2008.
    """
    tracing = Tracing.model_validate(typed())
    px, step = tapped_points(tracing), 0.01

    def figure(points: dict[str, Any]) -> float:
        return float(sole_figures(in_mm(points, tracing.scale.length))[name])

    slopes = []
    for mark, spots in px.items():
        for index in np.ndindex(*spots.shape):
            moved = spots.copy()
            moved[index] += step
            slopes.append((figure({**px, mark: moved}) - figure(px)) / step)
    delta = 1.8 * math.sqrt(math.fsum(slope**2 for slope in slopes))

    assert told(hand=1.5).figures[name].sd == pytest.approx(delta, rel=0.2)


def test_the_same_picks_give_the_same_draws_whatever_else_was_picked() -> None:
    """On every run, and in whatever order."""
    px = tapped_points(Tracing.model_validate(typed()))
    frog = {name: px[name] for name in FROG}

    assert np.array_equal(redrawn(dict(reversed(px.items())), 1.5)["frog_apex"], redrawn(frog, 1.5)["frog_apex"])


def test_plain_values_are_those_of_the_figures() -> None:
    """Without the draws, but for those that errors can only raise or lower, from which their part is taken."""
    values = {name: figure.value for name, figure in told().figures.items() if not name.startswith(BOUNDED)}
    plain = plain_values(Tracing.model_validate(typed()))

    assert {name: plain[name] for name in values} == pytest.approx(values)
    assert plain.keys() - values.keys() == {"mirror_match_percent", "best_mirror_match_percent", "concentric_mm"}


def test_a_picture_traced_twice_tells_the_error_of_the_hand() -> None:
    """Two hundred pairs with an error of 2 px: within a tenth. Source: Bland & Altman 1996, BMJ 312:1654."""
    hand = np.random.default_rng(7)
    errors = []
    for _ in range(25):
        pair = []
        for _ in range(2):
            one = typed()
            for name in SINGLE:
                one[name] = [value + float(hand.normal(0, 2)) for value in one[name]]
            pair.append(Tracing.model_validate({k: v for k, v in one.items() if k not in ("wall", "white_line")}))
        errors.append(hand_error_px(*pair) or 0.0)

    points, bars = 6 * 2, 4 * 2
    expected = 2 * math.sqrt(points / (points + bars))
    assert math.sqrt(np.mean(np.square(errors))) == pytest.approx(expected, rel=0.1)


def test_the_second_tracing_of_a_picture_makes_the_error_and_the_first_the_figures() -> None:
    """One of each view and moment comes out."""
    first, again = typed(), typed(shift=(603, 900))
    (one,) = traced(foot(tracings=[first, again]), 1.5)

    assert one.figures["frog_length_mm"].value == told().figures["frog_length_mm"].value
    assert one.hand_px == pytest.approx(hand_error_px(*(Tracing.model_validate(each) for each in (first, again))))


def test_what_was_traced_is_a_reading_where_nothing_was_typed() -> None:
    """And what was typed goes before it."""
    only = summary(visit("2026-10-14", left_fore={"tracings": [typed()]})).feet["left_fore"].measures
    both = summary(visit("2026-10-14", left_fore={"after": {"sole_length": 126}, "tracings": [typed()]}))

    assert only["sole_length"].after == pytest.approx(told().figures["sole_length_mm"].value)
    assert both.feet["left_fore"].measures["sole_length"].after == 126
    assert only["sole_ratio"].after == pytest.approx(told().figures["width_to_length"].value)


@pytest.mark.parametrize("of", ["drawing", "photograph"])
def test_the_reading_of_a_sole_has_the_error_of_its_figure(of: str) -> None:
    """Which knows the camera of a photograph; a drawing has none, and is surer."""
    tracing = Tracing.model_validate(typed(of=of))
    found = summary(visit("2026-10-14", left_fore={"tracings": [typed(of=of)]})).feet["left_fore"].measures
    sd = reckoned(tracing, tracing.error_px())["sole_length_mm"].sd

    assert found["sole_length"].smallest_real_change == pytest.approx(1.96 * math.sqrt(2) * sd)
    assert (sd > 1.2) == (of == "photograph")


@pytest.mark.parametrize("key", [key for key, measure in MEASURES.items() if TRACING in measure.words.methods])
def test_the_table_tells_what_is_added_to_the_error_of_a_tracing(key: str) -> None:
    """Of a sole, which is held up, nothing; of the other views the stance."""
    measure = MEASURES[key]
    added = stance_sd(measure, Tracing.model_construct(of="photograph", view=measure.words.view))
    source = measure.words.methods[TRACING].source

    assert ("what the stance adds" in source, "as a guide" in source) == (added > 0, added == 0)


def test_a_flare_that_went_down_is_a_change() -> None:
    """It stands among the changes of the page, typed and traced alike."""
    from tests.support.sole_shapes import Bulge

    days = {"2026-06-01": 6.0, "2026-10-14": 1.0}
    visits = [
        visit(day, left_fore={"tracings": [typed(sole=Sole(bulges=(Bulge(90, height),)))]})
        for day, height in days.items()
    ]
    found = summary(*visits)
    told = {one.of.measure.key: one for one in found.changes.real}

    assert told["ring_flare_lateral_quarter"].change < -1.5
    assert "ring_flare_medial_quarter" not in told


@pytest.mark.parametrize(("length", "said"), [(130, []), (150, ["sole_length"])])
def test_what_was_typed_and_traced_and_cannot_both_be_right_is_remarked(length: float, said: list[str]) -> None:
    """At the tracing, with both values."""
    found = summary(visit("2026-10-14", left_fore={"after": {"sole_length": length}, "tracings": [typed()]})).remarks
    traced_ones = [one for one in found if "tracings" in one.steps]

    assert len(traced_ones) == len(said)
    assert all(one.steps == ("feet", "left_fore", "tracings", 0) for one in traced_ones)
    assert all("150.0 mm as typed" in one.text for one in traced_ones)
