"""The foot from below against what is published of its form."""

from __future__ import annotations

import pytest

from recordgen.pictures.feet.foot import HEIGHT, WIDTH, foot_from_below, frog_form
from recordgen.pictures.feet.sole_form import BULB, CENTRAL_GROOVE, FORE, FROG, FROG_NOTCH, HIND, SoleForm
from recordgen.records.models.names import FEET, Foot
from tests.support.svg import root_of, strokes_of, words_in

LABELS = {"outer": "outer", "inner": "inner"}


def test_a_fore_foot_is_wider_than_long_and_a_hind_foot_about_as_wide_as_long() -> None:
    """Fore 13 cm wide and 12 long, hind 12 by 12, each rounded.

    Source: Pares i Casanova & Oosterlinck 2012, J. Equine Vet. Sci. 32:231-234 (second-hand). Judgement: within 4 %,
    which is what rounding to a centimetre leaves open.
    """
    fore, hind = (2 * form.half_width / form.length for form in (FORE, HIND))

    assert fore == pytest.approx(13 / 12, rel=0.04)
    assert hind == pytest.approx(12 / 12, rel=0.04)


def test_a_hind_foot_comes_to_more_of_a_point() -> None:
    """A tenth of the length behind the toe a hind foot is narrower for its width than a fore foot.

    Source: Lungwitz & Adams, A Text-Book of Horseshoeing, ch. II E: hind hoofs are pointed at the toe.
    """
    shares = {}
    for foot in ("left_fore", "left_hind"):
        sole = SoleForm(foot, 0, 0)
        wall = [sole.wall(share / 200) for share in range(201)]
        across = max(x for x, y in wall if y <= sole.form.length / 10)
        shares[foot] = across / sole.form.half_width

    assert shares["left_hind"] < 0.9 * shares["left_fore"]


@pytest.mark.parametrize("foot", FEET)
def test_the_frog_takes_two_thirds_of_the_sole_and_is_half_to_six_tenths_as_wide_as_long(foot: Foot) -> None:
    """Common practice, no source: barefoot schools give these shares."""
    points = frog_form(SoleForm(foot, 0, 0)).points
    across, back = zip(*points, strict=True)
    long, wide = max(back) - min(back), max(across) - min(across)
    length = SoleForm(foot, 0, 0).form.length

    assert 0.6 <= (length - min(back)) / length <= 0.7
    assert 0.5 <= wide / long <= 0.62


def test_the_frog_parts_into_two_branches_with_the_central_groove_between_them() -> None:
    """Its middle ends in front of where both branches end, the groove lies before that, and the bulbs behind."""
    branches_end = max(back for _, back in FROG)

    assert FROG_NOTCH[1] < branches_end - 0.1
    assert FROG[0][1] < CENTRAL_GROOVE[0][1] < CENTRAL_GROOVE[-1][1] <= FROG_NOTCH[1] + 0.01
    assert max(back for _, back in BULB) > branches_end


@pytest.mark.parametrize("foot", FEET)
def test_both_halves_of_a_foot_are_alike(foot: Foot) -> None:
    """Without findings a foot is its own mirror image, to less than a pixel."""
    points = {(x, y) for stroke in strokes_of(foot_from_below(foot, [], LABELS, "t")) for x, y in stroke}
    mirrored = [(WIDTH - x, y) for x, y in points]

    assert all(min(abs(x - a) + abs(y - b) for a, b in points) < 0.7 for x, y in mirrored)


def test_a_large_foot_has_the_same_form_and_words_no_larger() -> None:
    """At twice the width all points stand twice as far out, and the words keep their size."""
    small, large = (foot_from_below("left_fore", [], LABELS, "t", one) for one in (False, True))
    pairs = zip(strokes_of(small), strokes_of(large), strict=True)

    assert root_of(large).attrib["viewBox"] == f"0 0 {2 * WIDTH:g} {2 * HEIGHT:g}"
    assert root_of(large).attrib["font-size"] == root_of(small).attrib["font-size"]
    assert words_in(large) == words_in(small)
    assert all(
        b == pytest.approx(2 * a, abs=0.2)
        for one, other in pairs
        for p, q in zip(one, other, strict=True)
        for a, b in zip(p, q, strict=True)
    )
