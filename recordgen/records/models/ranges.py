"""Where the ranges come from outside which a value is asked about: a source, common practice, or a judgement."""

from __future__ import annotations

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
