"""The tracing of a foot on a photograph or a drawing: landmarks as points of the picture, and a scale beside them.

A point is `[x, y]` in px, from the top left corner, y down. Which names belong to which view, and how many points each
takes, is the table LANDMARKS; the models below refuse the rest at the line where it stands.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Iterator
from typing import Annotated, Any, Literal, NamedTuple

from pydantic import (
    AfterValidator,
    Field,
    PlainValidator,
    ValidationError,
    ValidationInfo,
    WithJsonSchema,
    field_validator,
    model_validator,
)
from pydantic_core import InitErrorDetails, PydanticCustomError

from recordgen.nearest import did_you_mean
from recordgen.problems import Step, quoted
from recordgen.records.models import ranges as basis
from recordgen.records.models.fields import Millimetres, Number, Record, Text, field, list_field, measured, refusal
from recordgen.records.models.lines.points import Image, Line, Point, Size, Spot
from recordgen.records.models.lines.shape_table import DIGITS, OWN, Version
from recordgen.sentences import Said, counted, say, say_counted

TracedView = Literal["side", "front", "sole"]
TracedMoment = Literal["before", "after"]
Drawn = Literal["straight", "smooth"]

# SD of one picked point, in px of an image 1000 px wide, where nobody told another. Assumed, no source.
HAND_ERROR = 1.5
MOST_HAND_ERROR = 30


class Takes(NamedTuple):
    """The number of points that a landmark takes: at least, and whether no more than that."""

    least: int
    exactly: bool = False

    @property
    def words(self) -> str:
        """The same in words: `2 points`, `12 points or more`."""
        return counted(self.least, "point") + ("" if self.exactly else " or more")


ONE, TWO = Takes(1, exactly=True), Takes(2, exactly=True)

LANDMARKS: dict[TracedView, dict[str, Takes]] = {
    "side": {
        "ground": TWO,
        "dorsal_wall": Takes(3),
        "heel_wall": Takes(2),
        "pastern": TWO,
        **dict.fromkeys(("coronet_toe", "coronet_heel", "toe_tip", "breakover", "heel_contact"), ONE),
    },
    "front": {
        "ground": TWO,
        "medial_wall": Takes(3),
        "lateral_wall": Takes(3),
        **dict.fromkeys(("coronet_medial", "coronet_lateral"), ONE),
    },
    "sole": {
        "wall": Takes(12),
        "white_line": Takes(8),
        **dict.fromkeys(("frog_apex", "frog_medial", "frog_lateral", "buttress_medial", "buttress_lateral"), ONE),
        **dict.fromkeys(("bar_medial", "bar_lateral"), TWO),
        "breakover": ONE,
    },
}
TAKES = {name: takes for marks in LANDMARKS.values() for name, takes in marks.items()}
# The outlines of a sole, and how many points each takes where it is drawn smooth through them. Fewer are worse than
# careful straight ones: with 5 taps the width of simulated soles was off by 8 mm. Judgement.
OUTLINES = {"wall": Takes(7), "white_line": Takes(5)}
# At so many places along the white line is told how far the picture's ridge lies from it, px, and no further than this
# share of the picture's width. Judgement.
RIDGE_PLACES, FURTHEST_RIDGE = 25, 0.05

Fault = tuple[tuple[Step, ...], PydanticCustomError]


def _together(faults: Iterable[Fault]) -> None:
    """Raises all faults at once, each at its own place inside the value that is looked at; nothing where none is."""
    lines = [InitErrorDetails(type=fault, loc=at, input=None) for at, fault in faults]
    if lines:
        raise ValidationError.from_exception_data("Tracing", lines)


def _checksum(text: str) -> str:
    if not re.fullmatch("[0-9a-f]{64}", text):
        raise refusal(
            "tracing-checksum-form", say("a checksum is 64 digits and letters from a to f"), say("Take it out")
        )
    return text


Checksum = Annotated[str, AfterValidator(_checksum), WithJsonSchema({"type": "string", "pattern": "^[0-9a-f]{64}$"})]


def _version(value: Any) -> Version:
    text = str(value).strip()
    if re.fullmatch("[0-9]{1,6}", text):
        return int(text)
    if not re.fullmatch(f"{OWN}[0-9a-f]{{{DIGITS}}}", text):
        message = say("{text} is no version of a table of outlines", text=quoted(text))
        raise refusal("tracing-model-form", message, say("Take it out, or copy the name of a file in outlines"))
    return text


Model = Annotated[
    Version,
    PlainValidator(_version),
    WithJsonSchema({"type": ["integer", "string"], "pattern": f"^{OWN}[0-9a-f]{{{DIGITS}}}$"}),
]
_SCALE_KEYS = ("from", "to", "length", "lay")


def _nearest(typed: str) -> Said:
    """The way out for a key of a scale that is not known; told here, as a field cannot be named `from` in Python."""
    return did_you_mean(typed, _SCALE_KEYS, say("Known here are {scale_keys}", scale_keys=", ".join(_SCALE_KEYS)))


class Scale(Record):
    """Two points of the picture, and how far apart they truly are."""

    from_: Point = Field(alias="from", description="one end of the scale, [x, y] in px")
    to: Point = field("its other end, [x, y] in px", ...)
    length: Millimetres = measured(
        "mm", (1, 2000), (10, 500), "true length from one end to the other", ..., basis=basis.JUDGEMENT
    )
    lay: Literal["on foot", "on ground", "unknown"] = field(
        "where it lay: on the foot that is measured, or on the ground, whence no length is told", "on foot"
    )

    @model_validator(mode="before")
    @classmethod
    def _known_keys(cls, value: Any) -> Any:
        strange = [key for key in value if key not in _SCALE_KEYS] if isinstance(value, dict) else []
        _together(((key,), refusal("key-unknown", say("it is not a known key here"), _nearest(key))) for key in strange)
        return value

    @field_validator("to")
    @classmethod
    def _apart(cls, to: Spot, info: ValidationInfo) -> Spot:
        if to == info.data.get("from_"):
            raise refusal(
                "tracing-scale-without-length",
                say("both ends of the scale are the same point"),
                say("Write the point where the scale ends"),
            )
        return to

    @property
    def ends(self) -> tuple[Spot, Spot]:
        """Both ends."""
        return self.from_, self.to

    @property
    def length_px(self) -> float:
        """The length of the scale in the picture, in px."""
        return math.dist(*self.ends)

    @property
    def mm_per_px(self) -> float:
        """Millimetres in one px."""
        return self.length / self.length_px


def _outside(image: Size | None, spots: Iterable[tuple[Step, Spot]]) -> Iterator[Fault]:
    """A fault for each point outside the picture; none where the picture's size was not read."""
    if image is None:
        return
    for step, (x, y) in spots:
        if not (0 <= x <= image.width and 0 <= y <= image.height):
            way_out = say(
                "Type it anew; x runs from 0 to {width}, y from 0 at the top to {height}",
                width=image.width,
                height=image.height,
            )
            yield (
                (step,),
                refusal("tracing-point-outside", say("[{x:g}, {y:g}] stands outside the image", x=x, y=y), way_out),
            )


def _count_fault(takes: Takes, spots: tuple[Spot, ...]) -> Iterator[Fault]:
    """A fault where there are too few or too many points, or all of them are the same."""
    number = len(spots)
    if number < takes.least or (takes.exactly and number > takes.least):
        written = say_counted("{count} is written", "{count} are written", number) if number else say("none is written")
        yield (
            (),
            refusal(
                "tracing-point-count",
                say("it needs {words}, {written}", words=takes.words, written=written),
                say("Trace it anew, or leave it out"),
            ),
        )
    elif number > 1 and len(set(spots)) == 1:
        yield (
            (),
            refusal(
                "tracing-points-same", say("all its points are the same point"), say("Trace it anew, or leave it out")
            ),
        )


class Tracing(Record):
    """Landmarks of one foot, traced on one picture."""

    view: TracedView = field("from where the foot is seen", ...)
    moment: TracedMoment = field("before or after the trim", ...)
    of: Literal["photograph", "drawing"] = field("what it was traced from", "photograph")
    file: Text | None = field("name of the photograph in the horse's folder photos")
    sha256: Checksum | None = field("checksum of the photograph's file, by which a changed picture is known")
    image: Image = field("size of the picture, [width, height] in px", ...)
    scale: Scale | None = field(
        "a length in the picture, such as {from: [100, 1100], to: [500, 1100], length: 100}; without one, no lengths"
    )
    drawn: Drawn = field("sole: how wall and white line run between their points; smooth takes 7 and 5", "straight")
    model: Model | None = field("where smooth: the version of the table of usual outlines that the lines follow")
    hand_error: Number | None = measured(
        "px",
        (0.1, MOST_HAND_ERROR),
        (0.3, 20),
        "SD of one picked point at an image 1000 px wide, where it is not the practice's",
        basis=basis.JUDGEMENT,
    )
    hand_errors: dict[str, Number] | None = field(
        "the same of landmarks that were picked otherwise, such as {frog_apex: 15}; scale stands for both its ends"
    )
    ground: Line = list_field("side, front: two points on the ground")
    dorsal_wall: Line = list_field("side: the front wall from the hairline down, 3 points or more")
    heel_wall: Line = list_field("side: the heel wall from the hairline down, 2 points or more")
    pastern: Line = list_field("side: two points along the front of the pastern")
    coronet_toe: Point | None = field("side: the hairline at the toe")
    coronet_heel: Point | None = field("side: the hairline at the heel")
    toe_tip: Point | None = field("side: the tip of the toe")
    breakover: Point | None = field("side, sole: where the foot rolls over")
    heel_contact: Point | None = field("side: the hindmost point that bears weight")
    medial_wall: Line = list_field("front: the inner wall from the hairline down, 3 points or more")
    lateral_wall: Line = list_field("front: the outer wall from the hairline down, 3 points or more")
    coronet_medial: Point | None = field("front: the hairline on the inner side")
    coronet_lateral: Point | None = field("front: the hairline on the outer side")
    wall: Line = list_field(
        "sole: outer edge of the wall, medial heel round the toe to lateral heel, 12 points or more, 7 where smooth"
    )
    white_line: Line = list_field("sole: the white line, the same way round, 8 points or more, 5 where smooth")
    ridge: tuple[Number, ...] | None = field(
        f"sole, smooth: how far the white line was drawn to the picture's ridge, px outwards, at {RIDGE_PLACES} places"
    )
    frog_apex: Point | None = field("sole: the point of the frog")
    frog_medial: Point | None = field("sole: the inner corner of the frog's base")
    frog_lateral: Point | None = field("sole: the outer corner of the frog's base")
    buttress_medial: Point | None = field("sole: the inner heel buttress")
    buttress_lateral: Point | None = field("sole: the outer heel buttress")
    bar_medial: Line = list_field("sole: the inner bar, two points from the buttress forward")
    bar_lateral: Line = list_field("sole: the outer bar, two points from the buttress forward")

    @field_validator("file")
    @classmethod
    def _name_alone(cls, name: str | None) -> str | None:
        if name and {"/", "\\"} & set(name):
            raise refusal(
                "tracing-file-folder",
                say("a folder stands before the name"),
                say("Write the name of the file alone; it lies in photos"),
            )
        return name

    @field_validator("scale")
    @classmethod
    def _scale_in_image(cls, scale: Scale | None, info: ValidationInfo) -> Scale | None:
        ends = zip(("from", "to"), scale.ends, strict=True) if scale else ()
        _together(_outside(info.data.get("image"), ends))
        return scale

    @field_validator("drawn")
    @classmethod
    def _smooth_is_a_sole(cls, drawn: Drawn, info: ValidationInfo) -> Drawn:
        if drawn == "smooth" and info.data.get("view") in ("side", "front"):
            message = say("a line is drawn smooth in a sole view alone; walls from the side and the front are straight")
            raise refusal("tracing-drawn-not-sole", message, say("Take out drawn"))
        return drawn

    @field_validator("model")
    @classmethod
    def _of_smooth_lines(cls, model: Version | None, info: ValidationInfo) -> Version | None:
        if model is not None and info.data.get("drawn") != "smooth":
            raise refusal("tracing-model-not-smooth", say("only smooth lines follow a model"), say("Take it out"))
        return model

    @field_validator("ridge")
    @classmethod
    def _of_a_smooth_line(cls, ridge: tuple[float, ...] | None, info: ValidationInfo) -> tuple[float, ...] | None:
        if ridge is None:
            return None
        if info.data.get("drawn") != "smooth" or not info.data.get("white_line"):
            message = say("only a smooth white line is drawn to a ridge")
            raise refusal("tracing-ridge-without-line", message, say("Take it out"))
        if len(ridge) != RIDGE_PLACES:
            message = say(
                "it needs {ridge_places} numbers, {ridge} are written", ridge_places=RIDGE_PLACES, ridge=len(ridge)
            )
            raise refusal("tracing-ridge-count", message, say("Trace it anew, or take it out"))
        image = info.data.get("image")
        furthest = max(map(abs, ridge))
        if image and furthest > FURTHEST_RIDGE * image.width:
            message = say(
                "{furthest:g} px is too far; {furthest_ridge:g} px is possible",
                furthest=furthest,
                furthest_ridge=FURTHEST_RIDGE * image.width,
            )
            raise refusal("tracing-ridge-far", message, say("Trace it anew, or take it out"))
        return ridge

    @field_validator("hand_errors")
    @classmethod
    def _of_known_landmarks(cls, found: dict[str, float] | None, info: ValidationInfo) -> dict[str, float] | None:
        known = ["scale", *LANDMARKS.get(info.data.get("view", "sole"), TAKES)]
        for name, error in (found or {}).items():
            if name not in known:
                raise refusal(
                    "key-unknown",
                    say("{name} is not a known key here", name=name),
                    did_you_mean(name, known, say("Take it out")),
                )
            if not 0.1 <= error <= MOST_HAND_ERROR:
                message = say(
                    "{error:g} px is not possible; 0.1 to {most_hand_error} px is",
                    error=error,
                    most_hand_error=MOST_HAND_ERROR,
                )
                raise refusal(
                    "tracing-hand-error", say("{name}: {message}", name=name, message=message), say("Take it out")
                )
        return found

    @field_validator(*TAKES, mode="before")
    @classmethod
    def _of_its_view(cls, value: Any, info: ValidationInfo) -> Any:
        view = info.data.get("view")
        if view and info.field_name not in LANDMARKS[view]:
            traced = ", ".join(LANDMARKS[view])
            raise refusal(
                "tracing-not-of-view",
                say("it is not traced in a {view} view", view=view),
                say("Traced there are {traced}", traced=traced),
            )
        return value

    @field_validator(*TAKES)
    @classmethod
    def _whole_and_inside(cls, found: Any, info: ValidationInfo) -> Any:
        image, name = info.data.get("image"), str(info.field_name)
        if isinstance(found, Spot):
            _together(((), fault) for _, fault in _outside(image, [(0, found)]))
        elif found is not None:
            takes = OUTLINES.get(name, TAKES[name]) if info.data.get("drawn") == "smooth" else TAKES[name]
            _together([*_count_fault(takes, found), *_outside(image, enumerate(found))])
        return found

    def named(self) -> dict[str, tuple[Spot, ...]]:
        """The points of each landmark that was traced, in px, in the order of the table; a single point as one."""
        written = ((name, getattr(self, name)) for name in LANDMARKS[self.view])
        return {name: (found,) if isinstance(found, Spot) else found for name, found in written if found}

    def missing(self) -> tuple[str, ...]:
        """The landmarks of its view that were not traced, in the order of the table."""
        named = self.named()
        return tuple(name for name in LANDMARKS[self.view] if name not in named)

    @property
    def tells_lengths(self) -> bool:
        """Tell whether its scale lay where the foot was measured; without one, shares and angles alone are known."""
        return self.scale is not None and self.scale.lay == "on foot"

    def by_hand_of(self, usual: float) -> Tracing:
        """The same with its hand's error told. usual: of a hand where the tracing tells none, px at 1000 px wide."""
        return self if self.hand_error is not None else self.model_copy(update={"hand_error": usual})

    def error_times(self) -> dict[str, float]:
        """Tell how much larger than usual in this tracing the error of a landmark is that was picked otherwise."""
        usual = HAND_ERROR if self.hand_error is None else self.hand_error
        return {name: error / usual for name, error in (self.hand_errors or {}).items()}

    def error_px(self, usual: float = HAND_ERROR) -> float:
        """SD of one picked point in px of this image. usual: at an image 1000 px wide, where the tracing tells none."""
        return (usual if self.hand_error is None else self.hand_error) * self.image.width / 1000
