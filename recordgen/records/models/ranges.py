"""Tell where the ranges come from outside which a value is asked about: a source, common practice, or a judgement."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from recordgen.records.models.names import SizeClass

JUDGEMENT = "Judgement"
COMMON_PRACTICE = "Common practice, no source"
BY_DEFINITION = "By definition"

TOE_LENGTH = (
    "Derived from: 92 mm (SD 9) in 58 horses (Braz J Vet Med, article 421). "
    "The low end, for foals and ponies: Judgement"
)
TOE_ANGLE = (
    "Derived from: 52 degrees in front and 51 behind (SD 4) in 225 horses (An investigation of the shape of the "
    "lateral aspect of the hoof capsule in hindlimbs, abstract); about 62 in 157 donkeys, as reported in AFJ 601. "
    "How far beyond: Judgement"
)
PASTERN_ANGLE = f"As for the toe angle, since foot and pastern go together: Judgement. {TOE_ANGLE}"
HEEL_ANGLE = (
    "Derived from: 40 degrees in front and 36 behind (SD 9 to 10) in 225 horses (An investigation of the shape of the "
    "lateral aspect of the hoof capsule in hindlimbs, abstract). The upper end: Judgement"
)
SOLE_LENGTH = (
    "Derived from: 137 mm (SD 9) before a trim in 10 horses (Iran J Vet Surg, article 79374). "
    "The low end, for foals and ponies: Judgement"
)
SOLE_WIDTH = (
    "Derived from: about 130 mm in front and 120 behind in 32 horses (Pares i Casanova & Oosterlinck 2012, as reported "
    "in AFJ 394). Both ends: Judgement"
)
FROG_LENGTH = (
    "Derived from: two thirds of the length of the sole (Common practice, no source). The upper end: Judgement"
)
FROG_WIDTH = "Derived from: 0.5 to 0.7 of the length of the frog (O'Grady; the lower: Common practice, no source)"
THICKNESS = (
    "Derived from: 5 to 16 mm from quarter to toe (Lungwitz & Adams, A Text-Book of Horseshoeing, p. 47). "
    "How far beyond: Judgement"
)
BELOW_HAIRLINE = "Derived from: the length of the toe. The upper end: Judgement"
USUAL_WEEKS = (
    "Derived from: 4 to 8 weeks for horses (UK welfare code, hoofcare, 2008 consultation), 6 to 10 for donkeys "
    "(The Donkey Sanctuary, Notes for farriers, 2016). How far beyond: Judgement"
)
GROWN = (
    "Derived from: 0.26 mm a day (Josseck et al. 1995 and Lungwitz & Adams, among others) over 4 to 8 weeks. "
    "Both ends: Judgement"
)
GROWTH = (
    "Derived from: 0.14 to 0.42 mm a day in grown horses (Lungwitz & Adams, A Text-Book of Horseshoeing). "
    "Up to 0.6 in foals: Judgement"
)


class Likely(NamedTuple):
    """The range that is likely for one class of animals, in the unit of its field, and where it comes from."""

    low: float
    high: float
    basis: str


def _judged(ranges: Mapping[SizeClass, tuple[float, float]]) -> dict[SizeClass, Likely]:
    return {name: Likely(low, high, JUDGEMENT) for name, (low, high) in ranges.items()}


# By class of animal. Where no width of the spread is published, it is a judgement.
TOE_LENGTHS: dict[SizeClass, Likely] = {
    **_judged({"foal": (25, 90), "yearling": (40, 110), "donkey": (40, 100), "pony": (45, 105), "heavy": (70, 150)}),
    "horse": Likely(
        60,
        120,
        "Derived from: 92 mm (SD 9) in 58 horses (Braz J Vet Med, article 421), 3 SD and some more to both sides",
    ),
}
TOE_ANGLES: dict[SizeClass, Likely] = {
    **_judged({"foal": (40, 75), "yearling": (38, 72), "pony": (38, 70)}),
    "donkey": Likely(
        46, 78, "Derived from: about 62 degrees in 157 donkeys, as reported in AFJ 601, 4 SD of horses to both sides"
    ),
    "heavy": Likely(
        34,
        66,
        "Derived from: 49 degrees in front (SD 5) and 52 behind (SD 4) in 44 draught horses (Schade et al. 2013, Cienc "
        "Rural 43(3):456-461), 3 SD to both sides",
    ),
    "horse": Likely(
        38,
        67,
        "Derived from: 52 degrees in front and 51 behind (SD 4) in 225 horses (An investigation of the shape of the "
        "lateral aspect of the hoof capsule in hindlimbs, abstract), 3 to 4 SD to both sides",
    ),
}
SOLE_LENGTHS: dict[SizeClass, Likely] = {
    **_judged({"foal": (40, 110), "yearling": (65, 150), "donkey": (60, 140), "pony": (70, 150), "heavy": (115, 230)}),
    "horse": Likely(
        95,
        175,
        "Derived from: 137 mm (SD 9) before a trim in 10 horses (Iran J Vet Surg, article 79374), 4 SD and some",
    ),
}
SOLE_WIDTHS: dict[SizeClass, Likely] = {
    **_judged({"foal": (35, 105), "yearling": (55, 150), "donkey": (45, 115), "pony": (55, 145), "heavy": (105, 230)}),
    "horse": Likely(
        85,
        170,
        "Derived from: about 130 mm in front and 120 behind in 32 horses (Pares i Casanova & Oosterlinck 2012, as "
        "reported in AFJ 394). How far beyond: Judgement",
    ),
}
CIRCUMFERENCES: dict[SizeClass, Likely] = _judged(
    {
        "foal": (110, 320),
        "yearling": (180, 430),
        "donkey": (170, 360),
        "pony": (190, 420),
        "heavy": (330, 650),
        "horse": (260, 480),
    }
)
