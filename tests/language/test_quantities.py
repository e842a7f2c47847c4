"""Units as languages write them, held against Unicode's CLDR, and the one way in which differences are told."""

import pytest
from babel.units import format_unit, get_unit_name
from hypothesis import given
from hypothesis import strategies as st

from recordgen.language.quantities import Quantities
from recordgen.language.spoken import ENGLISH, OtherLanguage
from recordgen.units import UNITS

GERMAN = OtherLanguage("de")
INCHES = UNITS["inches"]


@pytest.mark.parametrize(("ours", "cldr"), [("in", "length-inch"), ("lb", "mass-pound"), ("in²", "area-square-inch")])
def test_english_units_are_those_of_cldr(ours: str, cldr: str) -> None:
    """English needs no library, and writes what CLDR has as its short form."""
    assert ENGLISH.with_unit("3", ours) == format_unit(3, cldr, "short", locale="en")


def test_a_sentence_names_the_inch_in_words() -> None:
    """Within a sentence, where in is another word, a unit is CLDR's long name; millimetres keep their sign."""
    named = {code: get_unit_name("length-inch", "long", code) for code in ("en", "de")}
    told = {one.code: Quantities(one, INCHES).unit_in_words("mm") for one in (ENGLISH, GERMAN)}

    assert told == named
    assert Quantities().unit_in_words("mm") == "mm"


def test_german_reads_zoll() -> None:
    """German has a word for the inch, and a comma; a fraction stands as on the rule. Source: CLDR."""
    written = Quantities(GERMAN, INCHES)

    assert written.unit("mm") == get_unit_name("length-inch", "long", "de") == "Zoll"
    assert (written.length(80.9625), written.span(4.2, 1)) == ("3 3/16 Zoll", "0,17 Zoll")
    assert (written.weight(480), written.unit("kg/cm²")) == ("1058 lb", "lb/Quadratzoll")


@pytest.mark.parametrize(
    ("mm", "told"), [(0, "0 in"), (0.3, "0.01 in"), (0.8, "1/16 in"), (1.5875, "1/16 in"), (81, "3 3/16 in")]
)
def test_a_small_length_is_never_nothing(mm: float, told: str) -> None:
    """A length less than half a sixteenth is a decimal, and only nothing is nought."""
    assert Quantities(units=INCHES).length(mm) == told


@given(st.floats(0, 60), st.floats(0, 60))
def test_a_change_never_seems_less_than_its_bound(one: float, other: float) -> None:
    """A change, its interval and the error it is held against are told in one way, which keeps their order."""
    written, (bound, change) = Quantities(units=INCHES), sorted((one, other))

    assert float(written.span_figure(bound, 1)) <= float(written.span_figure(change, 1))


def test_hands_go_without_inches() -> None:
    """A practice may measure feet in millimetres and horses in hands."""
    written = Quantities(units=UNITS["metric and hands"])

    assert (written.height(147.3), written.length(81), written.about_weight(478)) == ("14.2 hh", "81 mm", "480 kg")


def test_an_estimated_weight_is_no_closer_than_it_is_known() -> None:
    """To five kilograms, or to ten pounds."""
    assert Quantities(units=INCHES).about_weight(478) == "1050 lb"
