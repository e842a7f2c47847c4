"""Pictures traced twice, and two pictures of one visit."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from recordgen.hoof.context import Context, hand_error_of
from recordgen.hoof.tracing.errors import twice
from recordgen.hoof.tracing.errors.told import told_hand
from recordgen.hoof.tracing.errors.twice import (
    FEWEST_PICTURES,
    hand_again,
    hand_error_px,
    hand_error_within,
    own_hand_times,
    pooled,
    same_picture,
)
from recordgen.records.load.tables import read_reference
from recordgen.records.models.tracing import HAND_ERROR, Tracing
from recordgen.records.models.visit import Visit
from tests.support.horse_records import REFERENCE, practice, summary, visit
from tests.support.sole_shapes import FORE, HIND
from tests.support.typed_tracings import SINGLE, typed


def once(lot: np.random.Generator, hand_px: float, file: str, told_px: float | None) -> dict[str, Any]:
    """The frog, heels and breakover of a sole, tapped by a hand that tells such an error, or none."""
    marks = {name: value for name, value in typed().items() if name in SINGLE}
    shaken = {name: [side + float(lot.normal(0, hand_px)) for side in spot] for name, spot in marks.items()}
    told = {name: value for name, value in typed().items() if name in ("view", "moment", "image")}
    return told | {"file": file} | ({"hand_error": told_px} if told_px else {}) | shaken


def visits(pictures: int, hand_px: float, told_px: float | None = 1.5, times: int = 2) -> list[Visit]:
    """So many visits, each with one picture that was traced twice, or so many times."""
    lot = np.random.default_rng(3)
    names = [f"2026-10-{day:02}.jpg" for day in range(1, pictures + 1)]
    groups = [[once(lot, hand_px, name, told_px) for _ in range(times)] for name in names]
    return [visit("2026-10-14", left_fore={"tracings": group}) for group in groups]


@pytest.mark.parametrize("times", [0.5, 1.0, 3.0])
def test_pictures_traced_twice_tell_the_hands_of_a_practice(times: float) -> None:
    """Against what its tracings tell, within a sixth over twenty. Source: Bland & Altman 1996, BMJ 312:1654."""
    told_px = 1.5 * 1200 / 1000

    assert own_hand_times(visits(20, times * told_px), HAND_ERROR) == pytest.approx(times, rel=1 / 6)


def test_hands_are_held_against_what_the_practice_says_where_a_tracing_tells_none() -> None:
    """A practice that knows its error of 3 px is not told twice that; what a tracing tells goes before."""
    hand_px = 3.0 * 1200 / 1000
    own = practice(hand_error=3.0)

    assert own_hand_times(visits(20, hand_px, told_px=None), hand_error_of(own)) == pytest.approx(1, rel=1 / 6)
    assert own_hand_times(visits(20, hand_px), hand_error_of(own)) == pytest.approx(2, rel=1 / 6)
    assert Context.of(own, REFERENCE, visits(20, hand_px, told_px=None)).hand_times == pytest.approx(1, rel=1 / 6)


def test_a_few_pictures_tell_nothing_of_the_hands() -> None:
    """Below five the error stays as it is told."""
    assert own_hand_times(visits(FEWEST_PICTURES - 1, 9), HAND_ERROR) == 1.0


def test_tracings_with_nothing_in_common_tell_nothing_of_the_hand() -> None:
    """The frog on one and the breakover on the other: as many pictures as would count leave the error as it is told."""
    frog, rest = {"frog_apex", "frog_medial", "frog_lateral"}, {"buttress_medial", "buttress_lateral", "breakover"}
    whole = once(np.random.default_rng(3), 5.0, "2026-10-01.jpg", 1.5)
    parts = [{name: value for name, value in whole.items() if name not in left} for left in (frog, rest)]
    made = [visit("2026-10-14", left_fore={"tracings": parts}) for _ in range(FEWEST_PICTURES)]

    assert hand_error_within(made[0].feet["left_fore"].tracings) is None
    assert hand_again(made, HAND_ERROR) == []
    assert own_hand_times(made, HAND_ERROR) == 1


def test_a_picture_traced_thrice_is_one_picture_with_two_degrees_of_freedom() -> None:
    """Its variance is that of three numbers, not of three pairs as if each stood alone. Source: numpy, ddof 1."""
    (found,) = visits(1, 4, times=3)
    alike = found.feet["left_fore"].tracings
    spots = np.array([[point for points in one.named().values() for point in points] for one in alike])
    (again,) = hand_again([found], HAND_ERROR)

    assert again.freedom == 2
    assert again.variance * alike[0].error_px() ** 2 == pytest.approx(spots.var(axis=0, ddof=1).mean())
    assert hand_error_within(alike) == pytest.approx(np.sqrt(spots.var(axis=0, ddof=1).mean()))
    assert own_hand_times(visits(2, 9, times=3), HAND_ERROR) == 1.0


def test_pictures_are_pooled_by_their_degrees_of_freedom() -> None:
    """Five traced twice by a steady hand and five four times by another. Source: ISO 5725-2:2019, 7.4; from memory."""
    steady, other = hand_again(visits(5, 2), HAND_ERROR), hand_again(visits(5, 6, times=4), HAND_ERROR)
    expected = np.average([one.variance for one in (*steady, *other)], weights=[1] * 5 + [3] * 5)

    assert pooled([*steady, *other]) == pytest.approx(np.sqrt(expected))


@pytest.mark.parametrize("times", [2, 3, 5])
def test_however_often_each_picture_is_traced_the_hand_is_the_same(times: int) -> None:
    """Thirty pictures by a hand of twice the told error: within a tenth."""
    told_px = 1.5 * 1200 / 1000

    assert own_hand_times(visits(30, 2 * told_px, times=times), HAND_ERROR) == pytest.approx(2, rel=0.1)


def test_the_hand_is_told_with_the_pictures_it_was_reckoned_from(monkeypatch: pytest.MonkeyPatch) -> None:
    """As an error that counts from five pictures on; each pair is held against each other once."""
    reckoned = []
    monkeypatch.setattr(twice, "hand_error_px", lambda *pair: reckoned.append(pair) or hand_error_px(*pair))
    own = told_hand(visits(FEWEST_PICTURES, 3.6), HAND_ERROR, REFERENCE.phrases)
    few = told_hand(visits(FEWEST_PICTURES - 1, 3.6), HAND_ERROR, REFERENCE.phrases)

    assert len(reckoned) == 2 * FEWEST_PICTURES - 1
    assert own.source.endswith(f": {FEWEST_PICTURES} pictures traced twice")
    assert own.sd == HAND_ERROR * own_hand_times(visits(FEWEST_PICTURES, 3.6), HAND_ERROR)
    assert (own.assumed, few.assumed, few.sd) == (False, True, HAND_ERROR)


@pytest.mark.parametrize("other", [{"file": "b.jpg"}, {"image": [1300, 1000]}, {"moment": "before"}])
def test_another_photograph_is_not_the_same_picture(other: dict[str, Any]) -> None:
    """Whose points lie elsewhere, and tell nothing of the hand."""
    one, again = (Tracing.model_validate(typed(file="a.jpg") | more) for more in ({}, other))

    assert same_picture(one, one)
    assert not same_picture(one, again)


def remarks(*tracings: dict[str, Any]) -> list[tuple[tuple[str | int, ...], str, str]]:
    """The remarks on one visit with these tracings."""
    found = summary(visit("2026-10-14", left_fore={"tracings": list(tracings)})).remarks
    return [(one.steps, one.code, one.text) for one in found if one.code == "traced-pictures-differ"]


def test_two_pictures_of_a_visit_that_cannot_both_be_right_are_asked_about_once() -> None:
    """At the second of them, by the measure that differs the most, with both values and names."""
    ((steps, _, text),) = remarks(typed(FORE, file="a.jpg"), typed(HIND, file="b.jpg"))

    assert steps == ("feet", "left_fore", "tracings", 1)
    assert "in tracing a.jpg and" in text
    assert "in tracing b.jpg of this visit" in text


def test_two_pictures_are_asked_about_in_the_words_of_the_language() -> None:
    """Its unit too: an angle is told in Grad, as the trimmer's own site has it."""
    by = Context.of(practice(language="de"), read_reference(None, "de")[0])
    sides = [
        {"view": "side", "moment": "after", "of": "drawing", "image": [1000, 1000], "dorsal_wall": wall}
        | {"scale": {"from": [100, 950], "to": [700, 950], "length": 100}, "ground": [[100, 900], [900, 900]]}
        for wall in ([[500, 300], [700, 600], [900, 900]], [[500, 300], [600, 600], [700, 900]])
    ]
    (remark,) = summary(visit("2026-10-14", left_fore={"tracings": sides}), by=by).remarks

    assert remark.code == "traced-pictures-differ"
    assert " Grad " in remark.text
    assert "degrees" not in remark.text


def test_pictures_that_agree_are_not_asked_about() -> None:
    """Nor those of two moments, or from two sides."""
    again = typed(shift=(630, 880), file="b.jpg")

    assert remarks(typed(file="a.jpg"), again) == []
    assert remarks(typed(FORE, file="a.jpg"), typed(HIND, moment="before", file="b.jpg")) == []
