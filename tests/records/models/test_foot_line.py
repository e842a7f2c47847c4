"""A foot's measures typed in one line."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError

from recordgen.records.models.foot import FootVisit, Measures
from recordgen.records.models.foot_line import HELP, LETTERS, line_of
from tests.support.schema import complaints


def measures(line: Any) -> dict[str, Any]:
    """The meaning of a line, without what it leaves out."""
    found = FootVisit.model_validate({"before": line}).before
    assert found is not None
    return found.model_dump(exclude_none=True)


def test_a_line_is_what_the_long_form_is() -> None:
    """The same measures, whichever way they were typed."""
    long = {"toe_length": "96", "heel_height": {"medial": "42", "lateral": "41.5"}, "toe_angle": "48"}

    assert measures("96 h42/41.5 a48") == measures(long)


def test_a_line_takes_units_and_leaves_out_what_was_not_taken() -> None:
    """A unit stands right behind its number, and - stands for the side that nobody measured."""
    assert measures("8.2cm h-/36 s130/-") == {"toe_length": 82, "heel_height": {"lateral": 36}, "sole_length": 130}


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("90 q3", "'q3' is not understood"),
        ("h42", "'h42' wants two values"),
        ("a48/50", "'a48/50' wants one value"),
        ("90 91", "'toe length' stands twice"),
        ("h42/42 h43/43", "'heel height' stands twice"),
        ("3 1/4 in", "'1/4' wants one value"),
        ("900", "Input should be less than or equal to 250"),
        ("h4x/36", "is not"),
    ],
)
def test_what_is_not_understood_is_refused(line: str, message: str) -> None:
    """Nothing is guessed: a letter, a value or a measure too many is told, and the range holds as ever."""
    with pytest.raises(ValidationError, match=message):
        FootVisit.model_validate({"before": line})


def test_every_measure_has_its_letter_and_its_help() -> None:
    """A measure that is added cannot be forgotten in the line, nor a letter in what is told of it."""
    named = {name.partition(".")[0] for names in LETTERS.values() for name in names}

    assert named == set(Measures.model_fields)
    assert all(letter in HELP for letter in LETTERS)


@given(st.dictionaries(st.sampled_from([n for names in LETTERS.values() for n in names]), st.integers(60, 80)))
def test_a_line_reads_back(values: dict[str, int]) -> None:
    """A line is read as it was meant."""
    nested: dict[str, Any] = {}
    for name, value in values.items():
        measure, _, side = name.partition(".")
        (nested.setdefault(measure, {}) if side else nested)[side or measure] = value + (
            100 if measure[0] in "cs" else 0
        )
    line = line_of(nested)

    assert (measures(line) if line else {}) == nested


def test_an_editor_takes_the_line() -> None:
    """The schema allows a text where the measures may stand."""
    assert complaints("date: 2026-10-14\nfeet: {left_fore: {before: 96 h42/42 a48, after: 84 h36/36 a50}}\n") == []
