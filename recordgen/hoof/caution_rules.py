"""The rules of the cautions in one table, one shape each: key, what it looks at, and how it answers.

A rule is a function of what is seen (`caution_seen.py`). It answers with the facts of what was recorded (the caution is
raised), with `Cleared` (the same thing was recorded otherwise), or with None (nothing was recorded about it). Rules
record; their levels and words stand in `site_templates/words/cautions.yaml`, and none of them is a diagnosis.
"""

from __future__ import annotations

from recordgen.hoof import caution_foot as foot
from recordgen.hoof import caution_history as history
from recordgen.hoof import caution_horse as horse
from recordgen.hoof.caution_seen import Rule

RULES: tuple[Rule, ...] = (
    Rule("signs-together", "horse", horse.signs_together, parts=("stance", "pulse", "heat")),
    Rule("stance", "horse", horse.stance),
    Rule("severely-lame", "horse", horse.severely_lame),
    Rule("lame", "horse", horse.lame),
    Rule("slightly-lame", "horse", horse.slightly_lame),
    Rule("pain-face", "horse", horse.pain_face),
    Rule("sore-after-trim", "horse", horse.sore_after_trim),
    Rule("sore-and-lame", "horse", horse.sore_and_lame),
    Rule("heavy", "horse", horse.heavy),
    Rule("thin", "horse", horse.thin),
    Rule("crest", "horse", horse.crest),
    Rule("object-in-foot", "foot", foot.object_in_foot),
    Rule("object-taken-out", "foot", foot.object_taken_out),
    Rule("bears-no-weight", "foot", foot.bears_no_weight),
    Rule("bears-less", "foot", foot.bears_less),
    Rule("wound", "foot", foot.wound),
    Rule("abscess", "foot", foot.abscess),
    Rule("abscess-again", "foot", history.abscess_again),
    Rule("frog-tissue", "foot", foot.frog_tissue),
    Rule("painful-infection", "foot", foot.painful_infection),
    Rule("painful-groove", "foot", foot.painful_groove),
    Rule("groove-and-lame", "foot", horse.groove_and_lame),
    Rule("pulse", "foot", foot.pulse),
    Rule("heat", "foot", foot.heat),
    Rule("testers", "foot", foot.testers),
    Rule("sole-sensitive", "foot", foot.sole_sensitive),
    Rule("sole-gives", "foot", foot.sole_gives),
    Rule("sole-thinner", "foot", history.sole_thinner),
    Rule("angle-sudden", "foot", history.angle_sudden),
    Rule("deviation", "foot", foot.deviation),
    Rule("crack-open", "zone", foot.crack_open),
    Rule("crack-and-lame", "zone", horse.crack_and_lame),
    Rule("separation", "zone", foot.separation),
    Rule("separation-grows", "zone", history.separation_grows),
    Rule("overdue", "day", horse.overdue),
)
