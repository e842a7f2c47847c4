"""The form of a horse's numbers. They are text, since zeros in front count; a right form does not prove identity."""

from __future__ import annotations

import re

# The national code has 38 bits: 2**38 - 1. Source: ISO 11784 (bit layout).
LARGEST_CHIP_NUMBER = 274_877_906_943


def microchip_fault(text: str) -> str | None:
    """What is wrong with the form of a microchip number, or None.

    15 digits: 3 for a country or maker, 12 for the animal, which must fit into 38 bits.
    Source: ISO 11784; ICAR, code structure.
    """
    if not re.fullmatch(r"[0-9]*", text):
        return "a microchip number holds digits alone, 0 to 9"
    if len(text) != 15:
        return f"a microchip number has 15 digits; this has {len(text)}"
    if text.startswith("000"):
        return "a microchip number does not start with 000"
    if int(text[3:]) > LARGEST_CHIP_NUMBER:
        return f"the last 12 digits of a microchip number are {LARGEST_CHIP_NUMBER} at the most"
    return None


def ueln_fault(text: str) -> str | None:
    """What is wrong with the form of a UELN, or None.

    15 characters: 3 digits for the country, 3 for the database, 9 for the animal; the last two may hold letters.
    Source: Regulation (EU) 2021/963; ueln.net, structure of the number.
    """
    if len(text) != 15:
        return f"a UELN has 15 characters; this has {len(text)}"
    if not re.fullmatch(r"[0-9]{3}[0-9A-Z]{12}", text):
        return "a UELN is 3 digits for the country, then 12 digits or letters without other signs"
    return None
