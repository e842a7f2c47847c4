"""The usual outlines of a sole by angle: ours, made by `python -m tests.shape_model`, and a practice's own.

A tracing tells the version that it was drawn by, so that a table made anew does not move what was traced before. A
practice's own is named by the hash of its numbers: what is known under a name can be no other table.
"""

from __future__ import annotations

import hashlib
import textwrap
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

VERSION = 1
# The first angle from the toe and the step to the next, degrees; inner side below 0.
FIRST_DEG, STEP_DEG = -160, 8
ANGLES = 41

# So many numbers are the mean, each further row of as many a mode; in ten thousandths of the sole's size.
_WALL = """
15399 14471 13754 13110 12498 11905 11343 10862 10478 10161 9900 9689 9520 9386 9280 9197 9133 9084 9048 9024 9015
9024 9048 9084 9133 9197 9280 9386 9520 9689 9900 10161 10478 10862 11343 11905 12498 13110 13754 14471 15399 946 636
373 138 -57 -197 -270 -290 -284 -254 -201 -132 -49 42 135 227 313 387 445 481 493 481 445 387 313 227 135 42 -49 -132
-201 -254 -284 -290 -270 -197 -57 138 373 636 946 270 238 233 225 212 195 175 150 109 61 12 -32 -72 -104 -129 -145
-155 -158 -155 -150 -147 -150 -155 -158 -155 -145 -129 -104 -72 -32 12 61 109 150 175 195 212 225 233 238 270 86 38 20
11 6 -5 -30 -65 -95 -119 -137 -150 -159 -163 -159 -147 -127 -100 -68 -33 0 33 68 100 127 147 159 163 159 150 137 119
95 65 30 5 -6 -11 -20 -38 -86 180 45 -38 -92 -114 -104 -69 -20 37 86 116 128 122 102 69 29 -15 -59 -98 -125 -136 -125
-98 -59 -15 29 69 102 122 128 116 86 37 -20 -69 -104 -114 -92 -38 45 180 109 84 81 86 98 115 125 119 102 75 46 18 -6
-23 -33 -36 -33 -27 -19 -9 0 9 19 27 33 36 33 23 6 -18 -46 -75 -102 -119 -125 -115 -98 -86 -81 -84 -109 -136 -82 -58
-40 -21 2 28 53 63 56 38 15 -10 -32 -50 -61 -63 -57 -43 -23 0 23 43 57 63 61 50 32 10 -15 -38 -56 -63 -53 -28 -2 21 40
58 82 136 -56 10 52 73 68 36 -9 -46 -60 -50 -24 12 46 71 80 70 43 5 -33 -64 -76 -64 -33 5 43 70 80 71 46 12 -24 -50
-60 -46 -9 36 68 73 52 10 -56 50 28 16 3 -15 -39 -56 -49 -14 28 58 66 53 27 -4 -32 -52 -58 -50 -29 0 29 50 58 52 32 4
-27 -53 -66 -58 -28 14 49 56 39 15 -3 -16 -28 -50 -32 8 30 37 25 -7 -39 -42 -10 32 55 51 28 -1 -23 -32 -25 -7 15 33 40
33 15 -7 -25 -32 -23 -1 28 51 55 32 -10 -42 -39 -7 25 37 30 8 -32
"""
_RING = """
1503 1466 1485 1514 1549 1582 1595 1592 1610 1637 1669 1703 1739 1773 1805 1833 1856 1873 1885 1891 1892 1891 1885
1873 1856 1833 1805 1773 1739 1703 1669 1637 1610 1592 1595 1582 1549 1514 1485 1466 1503 103 93 97 100 102 100 96 96
100 106 115 125 136 145 154 162 169 175 178 180 181 180 178 175 169 162 154 145 136 125 115 106 100 96 96 100 102 100
97 93 103 84 81 88 95 104 115 125 128 113 87 58 30 1 -26 -51 -73 -92 -107 -117 -123 -125 -123 -117 -107 -92 -73 -51
-26 1 30 58 87 113 128 125 115 104 95 88 81 84 2 0 0 -1 -4 -13 -27 -44 -59 -70 -79 -87 -95 -100 -102 -98 -88 -72 -51
-26 0 26 51 72 88 98 102 100 95 87 79 70 59 44 27 13 4 1 0 0 -2 0 0 0 2 11 36 70 97 103 89 64 33 1 -28 -50 -63 -66 -60
-45 -24 0 24 45 60 66 63 50 28 -1 -33 -64 -89 -103 -97 -70 -36 -11 -2 0 0 0 -69 -55 -48 -41 -35 -27 -17 -1 25 50 69 78
78 71 56 34 6 -24 -50 -68 -75 -68 -50 -24 6 34 56 71 78 78 69 50 25 -1 -17 -27 -35 -41 -48 -55 -69 81 62 50 37 16 -17
-53 -73 -69 -46 -15 14 35 44 40 27 7 -15 -34 -47 -51 -47 -34 -15 7 27 40 44 35 14 -15 -46 -69 -73 -53 -17 16 37 50 62
81 1 0 0 2 13 39 65 65 31 -16 -51 -64 -56 -33 -4 23 44 51 44 26 0 -26 -44 -51 -44 -23 4 33 56 64 51 16 -31 -65 -65 -39
-13 -2 0 0 -1 27 18 11 2 -14 -37 -50 -34 7 45 59 45 14 -19 -42 -48 -36 -12 15 36 43 36 15 -12 -36 -48 -42 -19 14 45 59
45 7 -34 -50 -37 -14 2 11 18 27
"""


Version = int | str
OWN = "own-"
DIGITS = 8
UNIT = 10_000


@dataclass(frozen=True, eq=False)
class ShapeTable:
    """A table of usual outlines: of the wall and of the ring the mean and then the modes, (1 + modes, angles).

    In shares of the sole's size; each mode is as large as its SD. wall_text, ring_text: the numbers as they are kept,
    read once a line is drawn: most commands draw none.
    """

    version: Version
    wall_text: str
    ring_text: str

    @cached_property
    def wall(self) -> NDArray[np.float64]:
        """Rows of the wall."""
        return rows_of(self.wall_text)

    @cached_property
    def ring(self) -> NDArray[np.float64]:
        """Rows of the ring."""
        return rows_of(self.ring_text)


def rows_of(text: str) -> NDArray[np.float64]:
    """The rows that a text of numbers tells. Raises ValueError where it holds other signs, or another count of them."""
    import numpy as np

    return np.array([int(one) for one in text.split()], dtype=np.float64).reshape(-1, ANGLES) / UNIT


def text_of(rows: NDArray[np.float64]) -> str:
    """The same as text: ten thousandths in lines of 118 signs."""
    return textwrap.fill(" ".join(str(round(UNIT * value)) for value in rows.ravel()), 118)


def own_table(wall: str, ring: str) -> ShapeTable:
    """A practice's own table by its texts, under the name that its numbers give it. Raises ValueError as `rows_of`."""
    told = " ".join([*wall.split(), "|", *ring.split()])
    name = f"{OWN}{hashlib.sha256(told.encode()).hexdigest()[:DIGITS]}"
    for text in (wall, ring):
        rows_of(text)
    return ShapeTable(name, wall, ring)


SHIPPED = ShapeTable(VERSION, _WALL, _RING)
_known: dict[Version, ShapeTable] = {VERSION: SHIPPED}


def make_known(*tables: ShapeTable) -> None:
    """Let tracings be drawn by these tables of a practice's own and by ours, by name; by none that was known before."""
    _known.clear()
    _known.update({table.version: table for table in (SHIPPED, *tables)})


def known_table(version: Version | None) -> ShapeTable | None:
    """The table of a version; None where there is none of it here."""
    return None if version is None else _known.get(version)


def known_versions() -> tuple[str, ...]:
    """The versions there are here, in order."""
    return tuple(sorted(map(str, _known)))
