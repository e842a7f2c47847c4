"""The record of one foot at one visit. A part not looked at is left out; it is never zero."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator

from recordgen.records.models import ranges as basis
from recordgen.records.models.fields import (
    Degrees,
    Millimetres,
    NamedKeys,
    OrText,
    Record,
    Text,
    YesNo,
    field,
    list_field,
    measured,
    spell_as,
    with_names,
)
from recordgen.records.models.foot_line import foot_line
from recordgen.records.models.names import ZONES, Zone, zone_named
from recordgen.records.models.tracing import Tracing

Landing = Literal["heel first", "flat", "toe first", "lateral first", "medial first"]
Infection = Literal["none", "surface", "deep groove", "painful or bleeding"]
OneZone = Annotated[Zone, spell_as(zone_named)]
AbscessPlace = Annotated[Literal[Zone, "sole", "frog", "coronet", "heel bulbs"], spell_as(zone_named)]
MarkKind = Literal["growth mark", "crack end", "abscess line", "event ring"]


class Sides(Record):
    """A length on the inner (medial) and the outer (lateral) side."""

    medial: Millimetres | None = measured("mm", (0, 200), (5, 110), "inner side", basis=basis.JUDGEMENT)
    lateral: Millimetres | None = measured("mm", (0, 200), (5, 110), "outer side", basis=basis.JUDGEMENT)


class AngleSides(Record):
    """An angle on the inner (medial) and the outer (lateral) side."""

    medial: Degrees | None = measured("degrees", (5, 90), (20, 70), "inner side", basis=basis.HEEL_ANGLE)
    lateral: Degrees | None = measured("degrees", (5, 90), (20, 70), "outer side", basis=basis.HEEL_ANGLE)


class Measures(Record):
    """Measures of one foot at one moment, before or after the trim."""

    toe_length: Millimetres | None = measured(
        "mm",
        (20, 250),
        (45, 120),
        "middle of the front wall, from the hairline to the ground",
        basis=basis.TOE_LENGTH,
        by_class=basis.TOE_LENGTHS,
    )
    heel_height: Sides | None = field("each heel, from the hairline straight down to the ground (mm)")
    wall_height: Sides | None = field(
        "the wall at its widest place, from the hairline straight down to the ground (mm)"
    )
    toe_angle: Degrees | None = measured(
        "degrees",
        (15, 90),
        (38, 70),
        "front wall to the ground",
        basis=basis.TOE_ANGLE,
        by_class=basis.TOE_ANGLES,
    )
    heel_angle: Degrees | None = measured(
        "degrees", (5, 90), (20, 70), "heel wall to the ground", basis=basis.HEEL_ANGLE
    )
    heel_angles: AngleSides | None = field("each heel wall to the ground, where the two differ (degrees)")
    pastern_angle: Degrees | None = measured(
        "degrees", (15, 90), (38, 70), "front of the pastern to the ground", basis=basis.PASTERN_ANGLE
    )
    breakover: Millimetres | None = measured(
        "mm", (0, 100), (0, 45), "from the tip of the toe back to where the foot rolls over", basis=basis.JUDGEMENT
    )
    sole_length: Millimetres | None = measured(
        "mm",
        (30, 250),
        (60, 170),
        "toe to the line across the heel buttresses, foot lifted",
        basis=basis.SOLE_LENGTH,
        by_class=basis.SOLE_LENGTHS,
    )
    sole_width: Millimetres | None = measured(
        "mm",
        (30, 250),
        (50, 170),
        "widest place of the sole, foot lifted",
        basis=basis.SOLE_WIDTH,
        by_class=basis.SOLE_WIDTHS,
    )
    circumference: Millimetres | None = measured(
        "mm",
        (100, 700),
        (180, 500),
        "tape around the hoof just below the hairline",
        basis=basis.JUDGEMENT,
        by_class=basis.CIRCUMFERENCES,
    )


TypedMeasures = Annotated[Measures, BeforeValidator(foot_line), OrText()]


class Again(Record):
    """The same measures taken again, the foot put down between: how well this practice's readings repeat."""

    before: tuple[TypedMeasures, ...] = list_field("further readings before the trim, each as before:")
    after: tuple[TypedMeasures, ...] = list_field("further readings after the trim, each as after:")


class Frog(Record):
    """The frog and its grooves, as found."""

    infection: Infection | None = field("how far an infection of the frog goes; an ordered list of our own")
    central_groove_depth: Millimetres | None = measured(
        "mm", (0, 60), (0, 30), "the middle groove, from the frog's edge", basis=basis.JUDGEMENT
    )
    groove_depth: Sides | None = field("the grooves beside the frog, at its point (mm)")
    length: Millimetres | None = measured(
        "mm", (10, 200), (40, 130), "point of the frog to its base", basis=basis.FROG_LENGTH
    )
    width: Millimetres | None = measured("mm", (5, 180), (20, 100), "the frog at its widest", basis=basis.FROG_WIDTH)
    tissue: Literal["usual", "proud", "creamy"] | None = field(
        "proud: grows over and bleeds easily; creamy: pale discharge"
    )
    painful: YesNo | None = field("whether it hurts when the groove is opened")


class Separation(Record):
    """A gap between wall and sole at the white line."""

    length: Millimetres | None = measured("mm", (0, 300), (1, 150), "along the white line", basis=basis.JUDGEMENT)
    depth: Millimetres | None = measured("mm", (0, 120), (1, 40), "how deep a blunt probe goes", basis=basis.JUDGEMENT)


class Crack(Record):
    """A crack of the wall."""

    length: Millimetres | None = measured("mm", (1, 200), (3, 110), "along the crack", basis=basis.JUDGEMENT)
    depth: Literal["surface", "full"] | None = field("surface, or through the whole thickness of the wall")
    direction: Literal["vertical", "horizontal"] | None = field("which way it runs")
    reaches: Literal["ground", "hairline", "both", "neither"] | None = field("which edges of the wall it reaches")
    blood: YesNo | None = field("whether blood was seen in it")
    moisture: YesNo | None = field("whether it was moist")


class WallZone(Record):
    """Findings of one zone of the wall, and what was taken from it."""

    flare: Millimetres | None = measured(
        "mm", (0, 60), (0, 20), "how far the wall stands out at the ground", basis=basis.JUDGEMENT
    )
    flare_after: Millimetres | None = measured(
        "mm", (0, 60), (0, 20), "how far it stands out after the trim", basis=basis.JUDGEMENT
    )
    taken: Millimetres | None = measured(
        "mm", (0, 60), (0, 20), "about how much of its height was taken", basis=basis.JUDGEMENT
    )
    taken_back: Millimetres | None = measured(
        "mm", (0, 60), (0, 20), "how far the wall was taken back from outside", basis=basis.JUDGEMENT
    )
    sound_connection: YesNo | None = field("whether the wall was sound and joined to the sole where that ended")
    separation: Separation | None = field("a gap at the white line")
    crack: Crack | None = field("a crack")
    chip: Millimetres | None = measured(
        "mm", (1, 150), (2, 80), "length of a broken piece of the edge", basis=basis.JUDGEMENT
    )
    thickness: Millimetres | None = measured(
        "mm", (1, 30), (4, 18), "the wall at the ground, to the white line", basis=basis.THICKNESS
    )
    bruise: YesNo | None = field("whether a bruise was seen")
    white_line_blood: YesNo | None = field("whether blood was seen in the white line")


class Sole(Record):
    """The sole, as found."""

    shedding: YesNo | None = field("whether old sole comes away by itself")
    toe_callus: Literal["left", "thinned", "not seen"] | None = field(
        "left: left in place; thinned: taken down a little"
    )
    depth: Millimetres | None = measured(
        "mm", (0, 60), (3, 35), "hollow of the sole beside the point of the frog", basis=basis.JUDGEMENT
    )
    against_wall: Literal["below", "level", "proud"] | None = field(
        "the sole's edge against the wall's: below it, level with it, or proud of it"
    )
    shape: Literal["hollow", "flat", "bulging"] | None = field("as seen from the side; bulging: below the wall's edge")
    bruise: YesNo | None = field("whether a bruise was seen")
    gives: YesNo | None = field("whether the sole gives under the thumbs")
    sensitive: YesNo | None = field("whether it hurts under thumb pressure")


class WhiteLine(Record):
    """The white line all around; gaps, blood and stones stand in their zones and places."""

    joint: Literal["tight", "stretched"] | None = field("stretched: wider than it was, or than on the other feet")
    colour: Literal["usual", "yellow", "grey", "black", "red"] | None = field("its colour where it was cut fresh")


HeelForm = Literal["upright", "usual", "low", "collapsed"]


class HeelForms(Record):
    """The stand of each heel, by eye: words of the trade without a published limit."""

    medial: HeelForm | None = field("inner heel; collapsed: the horn tubes lie along the ground")
    lateral: HeelForm | None = field("outer heel")


class Mark(Record):
    """Something on the wall that grows down with it."""

    kind: MarkKind = field("what it is", ...)
    zone: OneZone = field("where on the wall", "toe")
    below_hairline: Millimetres = measured(
        "mm", (0, 200), (0, 130), "along the wall, from the hairline to the mark", ..., basis=basis.BELOW_HAIRLINE
    )


class Wound(Record):
    """A wound of the foot."""

    where: Literal["coronet", "heel bulbs", "sole", "frog"] = field("where it is", ...)
    healed: YesNo = field("whether it was found healed", False)
    note: Text | None = field("what was seen")


class Abscess(Record):
    """An abscess that was seen, or that has drained since last time."""

    where: AbscessPlace = field("where it is or came out", ...)
    state: Literal["suspected", "draining", "drained"] | None = field("what was seen")


class Object(Record):
    """Something that stuck in the foot."""

    what: Text = field("what it was", ...)
    where: Literal["frog", "central groove", "medial groove", "lateral groove", "sole", "white line"] = field(
        "where", ...
    )
    still_in: YesNo = field("whether it is still in the foot", True)


class Testers(Record):
    """Answers to the hoof testers. There is no agreed scale, so only whether and where."""

    reaction: YesNo = field("whether the horse reacted", ...)
    where: Text | None = field("where")


def _several(value: Any) -> Any:
    return [value] if isinstance(value, str) else value


Done = Annotated[tuple[Text, ...], BeforeValidator(_several), OrText()]
Walls = Annotated[dict[Zone, WallZone], BeforeValidator(with_names(zone_named)), NamedKeys(*ZONES)]


class FootVisit(Record):
    """One foot at one visit."""

    landing: Landing | None = field("which part touches the ground first at a walk")
    landing_after: Landing | None = field("the same once more after the trim")
    before: TypedMeasures | None = field("measures before the trim; in one line as 96 h42/42 a48")
    after: TypedMeasures | None = field("measures after the trim, in the same way")
    repeat: Again | None = field(
        "readings taken again, such as {after: [{toe_length: 81}]}; they tell how well they repeat"
    )
    tracings: tuple[Tracing, ...] = list_field("landmarks traced on a photograph or a drawing, with a scale")
    frog: Frog | None = field("the frog and its grooves")
    wall: Walls | None = field("the wall by zone: toe, medial or lateral toe quarter, quarter, heel")
    bars: Sides | None = field("length of each bar along its crest (mm)")
    bar_height: Sides | None = field("how high each bar stands above the sole (mm)")
    heels: HeelForms | None = field("how each heel stands, by eye")
    white_line: WhiteLine | None = field("the white line all around")
    sole: Sole | None = field("the sole")
    marks: tuple[Mark, ...] = list_field("marks that grow down the wall")
    object: Object | None = field("something that stuck in the foot")
    wound: Wound | None = field("a wound")
    abscess: Abscess | None = field("an abscess seen or drained since last time")
    heat: YesNo | None = field("whether the hoof was warmer than the others")
    pulse: Literal["usual", "raised", "strong"] | None = field("the pulse at the fetlock")
    hairline_dip: YesNo | None = field("whether a finger finds a dip just above the hairline")
    testers: Testers | None = field("what hoof testers showed")
    bears_weight: Literal["fully", "less", "not"] | None = field("how the foot is loaded at rest")
    deviation: Text | None = field("a bend or turn of a young horse's limb, in words; none where it is straight")
    drew_blood: YesNo | None = field("whether this trim drew blood")
    done: Done = list_field(
        "what was done, such as [toe taken back, edge rounded]; one thing may stand without brackets"
    )
    note: Text | None = field("anything else about this foot, for the owner to read")

    @property
    def repeats(self) -> bool:
        """Tell whether it was measured again, or a picture of it traced again."""
        pictures = [(one.view, one.file, one.image) for one in self.tracings]
        return self.repeat is not None or len(pictures) > len(set(pictures))
