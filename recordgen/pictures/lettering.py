"""How much room words take, as an ample estimate: the page's font is not known when a picture is drawn."""

from __future__ import annotations

import unicodedata

from recordgen.pictures.canvas import printable

ELLIPSIS = "…"

# Widths as shares of the font size, those of a wide font, so that most others take less.
NARROW, SLIM, USUAL, TALL, WIDE = 0.33, 0.42, 0.64, 0.8, 1.0
LETTERS = {
    **dict.fromkeys("ijlIJ.,:;'!| ", NARROW),
    **dict.fromkeys("frt()[]-/*", SLIM),
    **dict.fromkeys("mwMW@%&…—", WIDE),
}


def width_of(words: str, font_size: float) -> float:
    """About how wide the words stand, in picture units; rather too much than too little."""
    return font_size * sum(_share(letter) for letter in printable(words))


def _share(letter: str) -> float:
    if unicodedata.combining(letter):
        return 0.0
    if unicodedata.east_asian_width(letter) in "WF":
        return WIDE
    return LETTERS.get(letter, TALL if letter.isupper() else USUAL)


def shortened(words: str, room: float, font_size: float) -> str:
    """The words, or their beginning with an ellipsis where they take more than the room."""
    if width_of(words, font_size) <= room:
        return words
    kept = words
    while kept and width_of(kept.rstrip() + ELLIPSIS, font_size) > room:
        kept = kept[:-1]
    return kept.rstrip() + ELLIPSIS
