"""The form of microchip and UELN in a horse's file; the figures from outside are in tests/published."""

from pathlib import Path

import pytest
from pydantic import ValidationError

from recordgen.records.models.horse import Horse, microchip_fault, ueln_fault
from recordgen.records.models.visit import Visit
from tests.support.practice_folders import lines_of


def test_what_is_wrong_with_a_microchip_is_told() -> None:
    """Letters, length, a start with 000 and a number that is too big each have their words."""
    assert microchip_fault("985A00004531234") == "a microchip number holds digits alone, 0 to 9"
    assert microchip_fault("98500000453123") == "a microchip number has 15 digits; this has 14"
    assert microchip_fault("000000004531234") == "a microchip number does not start with 000"
    assert "274877906943" in str(microchip_fault("985999999999999"))


def test_digits_of_other_scripts_are_no_microchip() -> None:
    """A reader knows 0 to 9."""
    assert microchip_fault("٩" * 15) == "a microchip number holds digits alone, 0 to 9"


def test_what_is_wrong_with_a_ueln_is_told() -> None:
    """Length and form each have their words."""
    assert ueln_fault("82603100123456") == "a UELN has 15 characters; this has 14"
    assert str(ueln_fault("GBR031001234567")).startswith("a UELN is 3 digits for the country")


def test_numbers_are_text_and_keep_their_zeros(tmp_path: Path) -> None:
    """A chip that begins with 0 keeps it, and spaces between groups are taken out."""
    horse = Horse.model_validate({"name": "Bramble", "microchip": "040 098 100 111 917", "ueln": "25000100155928m"})

    assert (horse.microchip, horse.ueln) == ("040098100111917", "25000100155928M")


def test_a_wrong_chip_is_a_problem_at_its_line(tmp_path: Path) -> None:
    """The line, what is wrong, and to compare it with the passport."""
    assert lines_of(tmp_path, "name: Bramble\nmicrochip: 12345\n", Horse) == [
        "file.yaml:2:1: error: microchip: a microchip number has 15 digits; this has 5. "
        "Compare it with the passport and scan again, or leave microchip out."
    ]


@pytest.mark.parametrize("typed", ["“Bramble”", "„Bramble“", "« Bramble »", " Bramble "])
def test_a_word_processors_quotes_around_a_name_are_none_of_it(typed: str) -> None:
    """Within it they stay."""
    assert Horse.model_validate({"name": typed}).name == "Bramble"
    assert Horse.model_validate({"name": "“Big” Bramble “B”"}).name == "“Big” Bramble “B”"


@pytest.mark.parametrize("typed", ["none", "No", "sound"])
def test_lameness_none_is_answered_with_the_line_to_write(typed: str) -> None:
    """Grade 0, of a scale: which one it was looked at on is for the trimmer to say."""
    with pytest.raises(ValidationError) as refused:
        Visit.model_validate({"date": "2026-10-14", "lameness": typed})

    (error,) = refused.value.errors()
    assert (error["ctx"]["code"], error["ctx"]["write"]) == ("grade-without-scale", "{scale: AAEP, grade: 0}")
