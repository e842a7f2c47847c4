"""Typed quantities become numbers in one unit: `3 1/4 in` and `8.2 cm` are millimetres, `14.2 hh` is centimetres."""

from __future__ import annotations

import re

from recordgen.problems import quoted
from recordgen.sentences import NOTHING, Said, say
from recordgen.units import HAND_IN, INCH_MM

INCHES = ("in", "ins", "inch", "inches", '"')
_MM_IN = {
    **dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), 1.0),
    **dict.fromkeys(("cm", "centimetre", "centimetres", "centimeter", "centimeters"), 10.0),
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), 1000.0),
    **dict.fromkeys(INCHES, INCH_MM),
}
MILLIMETRES = {"": 1.0, **_MM_IN}
CENTIMETRES = {"": 1.0, **{unit: millimetres / 10 for unit, millimetres in _MM_IN.items()}}
DEGREES = {"": 1.0, **dict.fromkeys(("°", "deg", "degree", "degrees"), 1.0)}
NO_UNIT = {"": 1.0}

_NUMBER = re.compile(
    r"(?P<sign>[-+]?)(?:(?P<whole>[0-9]{1,9})(?: +|-))?"
    r"(?:(?P<top>[0-9]{1,9})/(?P<bottom>[0-9]{1,9})|(?P<plain>[0-9]{1,9}(?:\.[0-9]{1,20})?|\.[0-9]{1,20}))"
    r" *(?P<unit>[^\d\s]*)"
)
_HANDS = re.compile(r"(?P<hands>[0-9]{1,2})(?:\.(?P<inches>[0-9]+)(?P<half> 1/2)?)? *(?:hh|hands?)")
# Words of doubt before a number; the doubt belongs in a note.
_ABOUT = re.compile(r"^ *(?:[~≈]|(?:ca|circa|about|approx|approximately|roughly|c)\b\.?) *", re.IGNORECASE)

# Signs that phones and word processors put in place of plain ones.
_PLAIN = str.maketrans(
    {"\u00a0": " ", "\u2009": " ", "\u202f": " ", "″": '"', "”": '"', "−": "-", "⁄": "/", "º": "°"}
    | {"¼": " 1/4", "½": " 1/2", "¾": " 3/4", "⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8"}
    | {"⅓": " 1/3", "⅔": " 2/3"}
)


class NotAQuantity(ValueError):
    """The text is no quantity in a known unit: why, and where there is a better way out than an example, that.

    write: what was probably meant, to be written instead; empty where that is not clear.
    """

    def __init__(self, why: Said, way_out: Said = NOTHING, write: str = "") -> None:
        super().__init__(why)
        self.way_out = way_out
        self.write = write


def quantity(text: str, units: dict[str, float]) -> float:
    """The number that `text` means, in the unit whose factor is 1, to four decimals.

    units: factor by unit name; `''` is the unit meant where none is written.
    Raises NotAQuantity for text, an unknown unit, a decimal comma, a division by zero, NaN and the like.
    """
    match = _NUMBER.fullmatch(_plain(text))
    if not match:
        raise _not_a_number(text, units)
    unit = match["unit"].lower().rstrip(".")
    if unit not in units:
        raise _unknown_unit(match["unit"], _plain(text).removesuffix(match["unit"]).strip(), units)
    value = _value(match) * units[unit]
    return round(-value if match["sign"] == "-" else value, 4)


def _plain(text: str) -> str:
    return (text if text.isascii() else text.translate(_PLAIN)).strip()


def _value(match: re.Match[str]) -> float:
    if match["plain"] is not None:
        if match["whole"] is not None:
            raise NotAQuantity(say("it reads as two numbers"))
        return float(match["plain"])
    if int(match["bottom"]) == 0:
        raise NotAQuantity(say("it divides by zero"))
    return int(match["whole"] or 0) + int(match["top"]) / int(match["bottom"])


def _not_a_number(text: str, units: dict[str, float]) -> NotAQuantity:
    if re.search(r"\d,\d", text):
        way_out = say("Write a decimal with a point, like 8.2, and thousands without a sign")
        return NotAQuantity(say("a comma stands in it"), way_out, _if_right(text.replace(",", "."), units))
    return NotAQuantity(say("it is not a number"), write=_if_right(_ABOUT.sub("", text), units))


def _if_right(text: str, units: dict[str, float]) -> str:
    """The text where it is a quantity, else nothing."""
    found = _NUMBER.fullmatch(_plain(text))
    return text if found and found["unit"].lower().rstrip(".") in units else ""


def _unknown_unit(unit: str, number: str, units: dict[str, float]) -> NotAQuantity:
    if len(units) == 1:
        return NotAQuantity(say("a number alone is expected"), say("Take out {unit}", unit=quoted(unit)), number)
    return NotAQuantity(say("the unit {unit} is not known here", unit=quoted(unit)))


def height_cm(text: str) -> float:
    """A horse's height in centimetres, from centimetres, inches or hands (`14.2 hh` is 14 hands 2 inches).

    Raises NotAQuantity. A hand is four inches. Source: Common practice, no source.
    """
    hands = _HANDS.fullmatch(_plain(text.lower()))
    if not hands:
        return quantity(text, CENTIMETRES)
    if hands["inches"] and int(hands["inches"][:4]) > 3:
        raise NotAQuantity(say("a hand has four inches"), say("Write 0, 1, 2 or 3 after the point, like 14.2 hh"))
    inches = int(hands["inches"] or 0) + (0.5 if hands["half"] else 0)
    return round((int(hands["hands"]) * HAND_IN + inches) * INCH_MM / 10, 1)
