"""Plain text is read back as it was meant."""

from __future__ import annotations

from datetime import date

import pytest

from recordgen.records.yaml.tree import document
from recordgen.records.yaml.write import as_yaml, scalar


@pytest.mark.parametrize(
    "text",
    [
        "plain",
        "Mum & Jo",
        "it's dry",
        "feet | dry",
        "boots_on: yes",
        "a, b",
        "'L_F | R_F', said",
        "- no",
        "#5",
        'say "it\'s: so"',
        "~",
        "null",
        "<<",
        "ends with a colon:",
        "two\nlines",
        "two\n\n  lines, the second pushed in",
        "a tab\there",
        "well-kept " * 20 + "end",
        "two  blanks " * 12 + "end",
        "half a horse 🐴",
        "x" * 300,
    ],
)
def test_text_is_read_back_as_typed(text: str) -> None:
    """Signs that mean something to YAML survive, alone and inside a group."""
    found = document("note.yaml", as_yaml({"note": text, "group": {"note": text}, "list": [text]}).encode())

    assert found.problems == []
    assert found.values == {"note": text, "group": {"note": text}, "list": [text]}


def test_lines_stay_lines() -> None:
    """Dictated lines stand so in the file."""
    text = as_yaml({"note": "Stiff at first.\n\nBetter after ten minutes."})

    assert text == "note: |-\n  Stiff at first.\n\n  Better after ten minutes.\n"


def test_numbers_keep_four_decimals_and_no_power_of_ten() -> None:
    """As many as a quantity is read with."""
    assert [scalar(value) for value in (1234.5678, 0.0001, 1600000.0, 20.0)] == ["1234.5678", "0.0001", "1600000", "20"]


def test_a_key_that_is_no_word_is_quoted() -> None:
    """A key may be any text."""
    text = as_yaml({"a: b": {"[c]": "d", "~": 1}, "[": []})

    assert document("x.yaml", text.encode()).values == {"a: b": {"[c]": "d", "~": "1"}, "[": []}


def test_groups_with_nothing_in_them_stay() -> None:
    """A gap that was seen and not measured."""
    text = as_yaml({"wall": {"toe": {"separation": {}}}, "feet": {}, "done": []})

    assert document("x.yaml", text.encode()).values == {"wall": {"toe": {"separation": {}}}, "feet": {}, "done": []}


def test_long_text_is_folded_and_read_back() -> None:
    """A long note runs over several lines and is one sentence again when read."""
    words = (
        "Keep to the lanes until the next visit and look at the outer wall of the left fore on coming in, please. " * 2
    )
    text = as_yaml({"note": words.strip()})

    assert max(map(len, text.splitlines())) <= 112
    assert document("note.yaml", text.encode()).values["note"].strip() == words.strip()


def test_before_and_after_line_up() -> None:
    """Both braces stand in one column, as in a visit typed by hand."""
    text = as_yaml({"before": {"toe_length": 86}, "after": {"toe_length": 78.5}})

    assert text == "before: {toe_length: 86}\nafter:  {toe_length: 78.5}\n"


def test_small_values_are_typed_briefly() -> None:
    """Yes and no, whole numbers without a point, days as in the calendar."""
    assert [scalar(value) for value in (True, False, 36.0, 2.5, date(2026, 11, 25))] == [
        "yes",
        "no",
        "36",
        "2.5",
        "2026-11-25",
    ]


def test_points_stand_beside_each_other_and_are_read_back() -> None:
    """As many as a line holds, like words of a sentence."""
    points = [[100 + number + 0.5, 20.0] for number in range(30)]
    text = as_yaml({"wall": points, "frog_apex": [480.2, 400.1]})

    assert (max(map(len, text.splitlines())) <= 112, len(text.splitlines()) <= 6) == (True, True)
    assert text.splitlines()[-1] == "frog_apex: [480.2, 400.1]"
    assert document("visit.yaml", text.encode()).problems == []
    assert len(document("visit.yaml", text.encode()).values["wall"]) == 30
