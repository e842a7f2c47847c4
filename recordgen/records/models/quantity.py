"""Typed quantities become numbers in one unit: `3 1/4 in` and `8.2 cm` are millimetres, `14.2 hh` is centimetres."""

from __future__ import annotations

import re

MILLIMETRES = {"": 1.0, "mm": 1.0, "cm": 10.0, "m": 1000.0, "in": 25.4, "inch": 25.4, "inches": 25.4, '"': 25.4}
CENTIMETRES = {"": 1.0, "cm": 1.0, "mm": 0.1, "m": 100.0, "in": 2.54, "inch": 2.54, "inches": 2.54, '"': 2.54}
DEGREES = {"": 1.0, "°": 1.0, "deg": 1.0, "degrees": 1.0}
NO_UNIT = {"": 1.0}

_NUMBER = re.compile(
    r"(?P<sign>[-+]?)(?:(?P<whole>[0-9]{1,9})(?: +|-))?"
    r"(?:(?P<top>[0-9]{1,9})/(?P<bottom>[0-9]{1,9})|(?P<plain>[0-9]{1,9}(?:\.[0-9]{1,20})?|\.[0-9]{1,20}))"
    r" *(?P<unit>[^\d\s]*)"
)
_HANDS = re.compile(r"(?P<hands>[0-9]{1,2})(?:\.(?P<inches>[0-9]+)(?P<half> 1/2)?)? *(?:hh|hands)")

# Signs that phones and word processors put in place of plain ones.
_PLAIN = str.maketrans(
    {"\u00a0": " ", "\u2009": " ", "\u202f": " ", "″": '"', "”": '"', "−": "-", "⁄": "/", "º": "°"}
    | {"¼": " 1/4", "½": " 1/2", "¾": " 3/4", "⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8"}
    | {"⅓": " 1/3", "⅔": " 2/3"}
)


class NotAQuantity(ValueError):
    """The text is no quantity in a known unit: why, and where there is a better way out than an example, that."""

    def __init__(self, why: str, way_out: str = "") -> None:
        super().__init__(why)
        self.way_out = way_out


def quantity(text: str, units: dict[str, float]) -> float:
    """The number that `text` means, in the unit whose factor is 1, to four decimals.

    units: factor by unit name; `''` is the unit meant where none is written.
    Raises NotAQuantity for text, an unknown unit, a decimal comma, a division by zero, NaN and the like.
    """
    match = _NUMBER.fullmatch(_plain(text))
    if not match:
        raise _not_a_number(text)
    unit = match["unit"].lower().rstrip(".")
    if unit not in units:
        raise _unknown_unit(match["unit"], units)
    value = _value(match) * units[unit]
    return round(-value if match["sign"] == "-" else value, 4)


def _plain(text: str) -> str:
    return (text if text.isascii() else text.translate(_PLAIN)).strip()


def _value(match: re.Match[str]) -> float:
    if match["plain"] is not None:
        if match["whole"] is not None:
            raise NotAQuantity("it reads as two numbers")
        return float(match["plain"])
    if int(match["bottom"]) == 0:
        raise NotAQuantity("it divides by zero")
    return int(match["whole"] or 0) + int(match["top"]) / int(match["bottom"])


def _not_a_number(text: str) -> NotAQuantity:
    if re.search(r"\d,\d", text):
        return NotAQuantity(
            "a comma stands in it", "Write a decimal with a point, like 8.2, and thousands without a sign"
        )
    return NotAQuantity("it is not a number")


def _unknown_unit(unit: str, units: dict[str, float]) -> NotAQuantity:
    if len(units) == 1:
        return NotAQuantity("a number alone is expected", f"Take out '{unit}'")
    return NotAQuantity(f"the unit '{unit}' is not known here")


def height_cm(text: str) -> float:
    """A horse's height in centimetres, from centimetres, inches or hands (`14.2 hh` is 14 hands 2 inches).

    Raises NotAQuantity. A hand is four inches. Source: Common practice, no source.
    """
    hands = _HANDS.fullmatch(_plain(text.lower()))
    if not hands:
        return quantity(text, CENTIMETRES)
    if hands["inches"] and int(hands["inches"][:4]) > 3:
        raise NotAQuantity("a hand has four inches", "Write 0, 1, 2 or 3 after the point, like 14.2 hh")
    inches = int(hands["inches"] or 0) + (0.5 if hands["half"] else 0)
    return round((int(hands["hands"]) * 4 + inches) * 2.54, 1)
