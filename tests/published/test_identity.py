"""Forms of microchip and UELN against what is published about them."""

import pytest

from recordgen.records.models.horse import LARGEST_CHIP_NUMBER, microchip_fault, ueln_fault


@pytest.mark.parametrize("number", ["968000004531234", "040098100111917"])
def test_printed_microchip_numbers_have_the_right_form(number: str) -> None:
    """Fifteen digits; a zero in front counts.

    Source: ISO 11784:2024, structure of the code, 3 digits and 12 digits.
    """
    assert microchip_fault(number) is None


def test_the_largest_microchip_number_fills_38_bits() -> None:
    """The animal's part has 38 bits, so one more is refused.

    Source: ICAR, code structure of ISO 11784. Derived from: 2**38 - 1.
    """
    assert LARGEST_CHIP_NUMBER == 2**38 - 1
    assert microchip_fault("985274877906943") is None
    assert microchip_fault("985274877906944") is not None


@pytest.mark.parametrize("number", ["98500000453123", "9680000045312345", "985A00004531234", "000000004531234"])
def test_microchip_numbers_of_the_wrong_form_are_refused(number: str) -> None:
    """14 and 16 digits, a letter, and a code of 000.

    Derived from: ISO 11784:2024, 15 digits, a country or maker from 001 on.
    """
    assert microchip_fault(number) is not None


def test_a_printed_number_is_its_code_and_its_bits() -> None:
    """Decimal 999123456789012 is hexadecimal 3E7.1CBE991A14, which fits into 10 and 38 bits.

    Source: ISO 11784, bit layout. Derived from: conversion of the printed number.
    """
    code, number = int("3E7", 16), int("1CBE991A14", 16)

    assert f"{code:03d}{number:012d}" == "999123456789012"
    assert microchip_fault("999123456789012") is None


@pytest.mark.parametrize("number", ["25000100155928M", "372414001234567", "1212120078M0234"])
def test_printed_uelns_have_the_right_form(number: str) -> None:
    """Country, database and animal, filled up with zeros to 15 characters.

    Source: ueln.net, structure of the number, examples.
    """
    assert len(number) == 15
    assert ueln_fault(number) is None


@pytest.mark.parametrize("number", ["82603100123456", "8260310012345678", "GBR031001234567", "826031/01234567"])
def test_uelns_of_the_wrong_form_are_refused(number: str) -> None:
    """14 and 16 characters, letters for the country, a sign inside.

    Derived from: Regulation (EU) 2021/963, articles 2, 5 and 6; ueln.net, structure of the number.
    """
    assert ueln_fault(number) is not None
