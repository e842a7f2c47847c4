"""The rules of the cautions in one table, one shape each: key, what it looks at, and how it answers.

A rule is a function of what is seen (`cautions/context.py`). It answers with the facts of what was recorded (the
caution is raised), with `Cleared` (the same thing was recorded otherwise), or with None (nothing was recorded about
it). Rules record; their levels and words stand in `site_templates/words/cautions.yaml`; none of them is a diagnosis.
"""

from __future__ import annotations

from recordgen.hoof.cautions.context import Rule
from recordgen.hoof.cautions.rules import drift, foot, frog, history, horse, lameness, sole, wounds, young

SIGNS = ("stance", "severely-lame", "lame", "slightly-lame", "obel-high", "obel", "pulse", "heat")

# Asked in this order, each knowing what the ones before it have opened and ended on the day.
RULES: tuple[Rule, ...] = (
    Rule("signs-together", "horse", horse.signs_together, parts=SIGNS),
    Rule("stance", "horse", horse.stance),
    Rule("severely-lame", "horse", lameness.severely_lame),
    Rule("lame", "horse", lameness.lame),
    Rule("slightly-lame", "horse", lameness.slightly_lame),
    Rule("obel-high", "horse", lameness.obel_high),
    Rule("obel", "horse", lameness.obel),
    Rule("pain-face", "horse", lameness.pain_face),
    Rule("foal-lame", "horse", young.foal_lame),
    Rule("sore-after-trim", "horse", horse.sore_after_trim),
    Rule("sore-and-lame", "horse", lameness.sore_and_lame),
    Rule("heavy", "horse", horse.heavy),
    Rule("thin", "horse", horse.thin),
    Rule("crest", "horse", horse.crest),
    Rule("object-in-foot", "foot", wounds.object_in_foot),
    Rule("object-out-of-frog", "foot", wounds.object_out_of_frog),
    Rule("object-taken-out", "foot", wounds.object_taken_out),
    Rule("wound", "foot", wounds.wound),
    Rule("abscess-drained", "foot", wounds.abscess_drained),
    Rule("abscess", "foot", wounds.abscess),
    Rule("abscess-again", "foot", history.abscess_again),
    Rule("drew-blood", "foot", wounds.drew_blood),
    Rule("bears-no-weight", "foot", foot.bears_no_weight),
    Rule("bears-less", "foot", foot.bears_less),
    Rule("foal-spares", "foot", young.foal_spares),
    Rule("pulse", "foot", foot.pulse),
    Rule("heat", "foot", foot.heat),
    Rule("foal-hot", "foot", young.foal_hot),
    Rule("testers", "foot", foot.testers),
    Rule("frog-tissue", "foot", frog.frog_tissue),
    Rule("painful-infection", "foot", frog.painful_infection),
    Rule("painful-groove", "foot", frog.painful_groove),
    Rule("painful-frog", "foot", frog.painful_frog),
    Rule("groove-and-lame", "foot", frog.groove_and_lame),
    Rule("sole-sensitive", "foot", sole.sole_sensitive),
    Rule("sole-gives", "foot", sole.sole_gives),
    Rule("gives-and-warm", "foot", sole.gives_and_warm),
    Rule("sole-flat", "foot", sole.sole_flat),
    Rule("sole-bulging", "foot", sole.sole_bulging),
    Rule("hairline-dip", "foot", sole.hairline_dip),
    Rule("sole-shallow", "foot", sole.sole_shallow),
    Rule("groove-shallow", "foot", sole.groove_shallow),
    Rule("sole-thinner", "foot", history.sole_thinner),
    Rule("sole-falls", "foot", drift.sole_falls),
    Rule("groove-falls", "foot", drift.groove_falls),
    Rule("angle-sudden", "foot", history.angle_sudden),
    Rule("angle-climbs", "foot", drift.angle_climbs),
    Rule("deviation-short", "foot", young.deviation_short),
    Rule("deviation", "foot", young.deviation),
    Rule("crack-open", "zone", foot.crack_open),
    Rule("crack-and-lame", "zone", lameness.crack_and_lame),
    Rule("separation", "zone", foot.separation),
    Rule("separation-grows", "zone", history.separation_grows),
    Rule("white-line-blood", "zone", sole.white_line_blood),
    Rule("overdue", "day", horse.overdue),
)
