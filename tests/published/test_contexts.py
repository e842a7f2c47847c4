"""The published figures that pages tell as context: each number is the one that was published."""

from statistics import NormalDist

import pytest

from recordgen.records.models.quantity import MILLIMETRES, quantity
from tests.support.horse_records import REFERENCE


def context(key: str) -> str:
    """The context of a measure."""
    return " ".join(f"{one.text} {one.source}" for one in REFERENCE.measures[key].context)


@pytest.mark.parametrize(
    ("key", "numbers"),
    [
        pytest.param("toe_length", ["95 mm", "100 mm", "145 cm", "2.3.1"], id="FEIF 2010"),
        pytest.param("heel_difference", ["5 mm or more", "15.5 %", "58 roping"], id="Turner 2010; BJVM 421"),
        pytest.param("toe_angle", ["225 horses", "51.8", "50.9", "45 and 60"], id="n = 225; AFJ 686"),
        pytest.param("toe_heel_difference", ["5 degrees", "225", "11.7", "14.5"], id="Turner; n = 225"),
        pytest.param(
            "frog_ratio", ["0.67", "64 % of 50 horses", "of 44", "0.5 to 0.7"], id="Turner; Schade 2013; O'Grady"
        ),
        pytest.param("sole_ratio", ["1.08", "1.0 behind"], id="Pares & Oosterlinck 2012"),
        pytest.param("wall_thickness", ["9.5 to 15.9", "5.1 to 10.2"], id="Mayer, in Lungwitz & Adams"),
    ],
)
def test_the_numbers_of_each_context(key: str, numbers: list[str]) -> None:
    """They stand in its text.

    Source: FEIF, 26 April 2010; Turner 2010, Proc. 16th Congress of SIVE; Braz. J. Vet. Med. article 421; An
    investigation of the shape of the lateral aspect of the hoof capsule (n = 225); Schade et al. 2013, Ciencia Rural
    43(3):456-461; Lungwitz & Adams, p. 47. As reported in AFJ 686 and AFJ 394: textbooks of toe angles; Pares i
    Casanova & Oosterlinck 2012.
    """
    assert [number for number in numbers if number not in context(key)] == []


def test_every_measure_with_figures_is_looked_at() -> None:
    """A new context needs a check here: seven hold figures, seven a rule without one.

    Derived from: the table itself.
    """
    told = {key for key, words in REFERENCE.measures.items() if words.context}
    without = {"wall_difference", "axis_difference", "flare", "ring_flare", "concentric"}
    without |= {"toe_gap", "wall_gap_medial", "wall_gap_lateral"}

    assert all(not any(sign.isdigit() for sign in REFERENCE.measures[key].context[0].text) for key in without)
    assert len(told - without) == 7


@pytest.mark.parametrize(("inches", "mm"), [("3/8", 9.5), ("5/8", 15.9), ("1/5", 5.1), ("2/5", 10.2)])
def test_wall_thickness_in_inches(inches: str, mm: float) -> None:
    """Toe 3/8 to 5/8 in, quarters 1/5 to 2/5 in.

    Source: Mayer, in Lungwitz & Adams, A Text-Book of Horseshoeing, p. 47.
    """
    assert round(quantity(f"{inches} in", MILLIMETRES), 1) == mm


@pytest.mark.parametrize("sd", [3.9, 3.7], ids=["fore", "hind"])
def test_two_thirds_of_toe_angles_lie_within_four_degrees(sd: float) -> None:
    """About one SD on each side of the mean, if they scatter evenly.

    Source: An investigation of the shape of the lateral aspect of the hoof capsule, n = 225 (abstract). Derived from:
    a normal spread.
    """
    share = 2 * NormalDist(0, sd).cdf(4) - 1

    assert "two thirds of them within 4 degrees" in context("toe_angle")
    assert share == pytest.approx(2 / 3, abs=0.06)


def test_heights_of_both_walls_by_stance() -> None:
    """Regular: equal; base-wide: the outer, base-narrow: the inner a little higher.

    Source: Lungwitz & Adams, A Text-Book of Horseshoeing, 11th ed. 1913, ch. III.
    """
    text = context("wall_difference")

    assert "base-wide stance the outer, in a base-narrow stance the inner is a little higher" in text


def test_the_frog_rule_is_never_told_without_how_many_it_flags() -> None:
    """Nor are heels and angles: a threshold stands beside the horses that exceed it.

    Derived from: the surveys named in each source.
    """
    for key in ("frog_ratio", "heel_difference", "toe_heel_difference"):
        assert "has been called" in context(key)
        assert any(word in context(key) for word in ("%", "average horse"))


def test_the_error_of_tapes_is_given_to_the_study_that_found_it() -> None:
    """Of the two studies by the same authors it is not the one of draft and warmblood horses, 39:38-43.

    Source: Catalano et al., Estimation of Actual and Ideal Bodyweight Using Morphometric Measurements of Miniature,
    Saddle-Type, and Thoroughbred Horses, abstract (5 to 25 %).
    """
    words = REFERENCE.safety["by-tape"]

    assert "5 to 25 %" in words.source
    assert "Thoroughbred" in words.source
    assert "39:38" not in words.source
