"""One visit to one horse: what a trimmer writes down after looking, trimming and looking again."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Annotated, Any, Literal, Self, get_args

from pydantic import BeforeValidator, ValidationInfo, WithJsonSchema, field_validator, model_validator

from recordgen.records.models import ranges as basis
from recordgen.records.models.fields import (
    Centimetres,
    Day,
    NamedKeys,
    Number,
    OneLine,
    OrText,
    Record,
    Text,
    Whole,
    YesNo,
    field,
    list_field,
    measured,
    refusal,
    spell_as,
    with_names,
)
from recordgen.records.models.foot import FootVisit
from recordgen.records.models.names import FEET, Foot, foot_named, typed_foot
from recordgen.records.models.stable import SEEN, SeenEntry
from recordgen.sentences import say

Sign = Literal[
    "shifts weight", "leans back", "reluctant to walk", "reluctant to turn", "lies down more", "pottery gait"
]

# In `care_ends`: all care notes in force.
ALL = "all"

# Lowest and highest grade by scale. Sources: AAEP scale as reproduced in teaching texts; Vet Times, 7 Dec 2015 (0-10);
# Meier et al. 2021, BMC Vet Res 17:16, Table 1 (Obel, 0 for sound); Meier et al. 2019, PeerJ 7:e7084 (modified Obel);
# Dalla Costa et al. 2014, PLoS ONE 9(3):e92281 (grimace: six items of 0-2).
LAMENESS_SCALES: dict[str, tuple[int, int]] = {
    "AAEP": (0, 5),
    "0-10": (0, 10),
    "Obel": (0, 4),
    "modified Obel": (0, 12),
    "Horse Grimace": (0, 12),
}
# On these, people write halves between two grades. Common practice, no source.
IN_HALVES = ("AAEP", "0-10", "body condition", "crest")


def _step(scale: str, grade: float) -> None:
    """Refuses a grade between the steps of its scale."""
    step = 0.5 if scale in IN_HALVES else 1
    if grade % step:
        low = grade // step * step
        steps = "whole and half numbers" if step < 1 else "whole numbers"
        raise refusal(
            "grade-step",
            say("the {scale} scale has no {grade:g}, only {steps}", scale=scale, grade=grade, steps=steps),
            say("Write {low:g} or {high:g}", low=low, high=low + step),
        )


# Typed for a horse that showed no lameness; on which scale it was looked at is not told by that.
_SOUND = ("none", "no", "sound")


def _with_scale(typed: Any) -> str:
    """The scale and the grade of a text such as AAEP 2 or none, as a record; empty where both cannot be told."""
    if str(typed).strip().lower() in _SOUND:
        return "{scale: AAEP, grade: 0}"
    words = str(typed).split()
    scale = next((one for one in LAMENESS_SCALES if words[:-1] == one.split()), None)
    return f"{{scale: {scale}, grade: {words[-1]}}}" if scale and words[-1].replace(".", "", 1).isdigit() else ""


class Lameness(Record):
    """A grade, never without the name of its scale."""

    scale: Literal["AAEP", "0-10", "Obel", "modified Obel", "Horse Grimace"] = field("name of the scale", ...)
    grade: Number = field("grade on that scale", ...)
    note: Text | None = field("which foot, which surface, which gait")

    @model_validator(mode="before")
    @classmethod
    def _scale_named(cls, value: Any) -> Any:
        if isinstance(value, str | int | float) or (isinstance(value, dict) and value.get("scale") is None):
            way_out = say(
                "Write it like {{scale: AAEP, grade: 2}}; the scales are {scales}", scales=", ".join(LAMENESS_SCALES)
            )
            message = say("a grade tells nothing without the name of its scale")
            raise refusal("grade-without-scale", message, way_out, _with_scale(value))
        return value

    @field_validator("grade")
    @classmethod
    def _on_its_scale(cls, grade: float, info: ValidationInfo) -> float:
        low, high = LAMENESS_SCALES.get(info.data.get("scale", ""), (grade, grade))
        if not low <= grade <= high:
            scale = info.data["scale"]
            raise refusal(
                "grade-off-scale",
                say("{grade:g} is not on the {scale} scale", grade=grade, scale=scale),
                say("That scale runs from {low} to {high}", low=low, high=high),
            )
        _step(info.data.get("scale", ""), grade)
        return grade


class Keeping(Record):
    """The keeping of the horse since last time: what changes feet."""

    ground: Text | None = field("ground it moves on")
    turnout: Text | None = field("how long and where it is out")
    bedding: Text | None = field("what it stands on indoors")
    work: Text | None = field("work, and on what")
    weather: Text | None = field("weather since last time")
    feed_change: Text | None = field("a change of feed or grazing; marked on the charts")
    boots: Text | None = field("boots or shoes worn since last time; marked on the charts")


class Condition(Record):
    """Body condition, with its scales."""

    henneke: Number | None = measured("points", (1, 9), (3, 8), "body condition, 1 to 9", basis=basis.JUDGEMENT)
    crest: Number | None = measured("points", (0, 5), (0, 4), "crest of the neck, 0 to 5", basis=basis.JUDGEMENT)
    girth: Centimetres | None = measured(
        "cm", (50, 280), (90, 230), "around the chest behind the withers", basis=basis.JUDGEMENT
    )
    length: Centimetres | None = measured(
        "cm", (40, 280), (80, 200), "point of shoulder to point of buttock", basis=basis.JUDGEMENT
    )
    neck: Centimetres | None = measured(
        "cm", (25, 200), (50, 150), "around the middle of the neck", basis=basis.JUDGEMENT
    )

    @field_validator("henneke", "crest")
    @classmethod
    def _in_steps(cls, score: float | None, info: ValidationInfo) -> float | None:
        if score is not None:
            _step("crest" if info.field_name == "crest" else "body condition", score)
        return score


class Handling(Record):
    """The behaviour of the horse at the trim and was held: what the next trim, and its length, go by."""

    stood: tuple[Literal["calm", "took a foot away", "leaned", "restless", "tired"], ...] = list_field(
        "how it stood, such as [calm] or [leaned, tired]"
    )
    sedated: YesNo | None = field("whether a vet had sedated it")
    note: Text | None = field("who held it, and what helped")


class CautionEnd(Record):
    """A caution that a vet's finding ends."""

    caution: Text = field("name of the caution as the site prints it in brackets", ...)
    foot: Annotated[Foot, spell_as(foot_named)] | None = field("which foot; all where left out")


def _caution_end(value: Any) -> Any:
    return {"caution": value} if isinstance(value, str) else value


EndsCaution = Annotated[CautionEnd, BeforeValidator(_caution_end), OrText()]


class VetEntry(Record):
    """Words or findings of a vet, in the vet's words as far as known."""

    date: Day = field("the day", ...)
    by: OneLine = field("which vet", ...)
    kind: Literal["advised", "seen"] = field("asked for by us, or seen by the vet", ...)
    words: Text | None = field("what was said or found")
    trim_agreed: YesNo | None = field("whether the vet agrees to a trim")
    ends: tuple[EndsCaution, ...] = list_field("cautions that the vet's finding ends, by name or with their foot")

    @model_validator(mode="after")
    def _ended_by_one_who_saw(self) -> Self:
        if self.ends and self.kind != "seen":
            raise refusal(
                "vet-ends-unseen",
                say("a vet ends a caution only after seeing the horse"),
                say("Write kind: seen, or take out ends"),
            )
        return self


class Resolved(Record):
    """The end of a caution: which one, when, and who says so. One to call the vet now for ends by the vet alone."""

    caution: Text = field("name of the caution as the site prints it in brackets", ...)
    foot: Annotated[Foot, spell_as(foot_named)] | None = field("which foot; all where left out")
    date: Day = field("the day, after the one on which it was recorded", ...)
    by: OneLine = field("who says so", ...)


class Care(Record):
    """A care note written for this horse alone."""

    what: Text = field("what to do", ...)
    how_often: Text | None = field("how often")
    until: Text | None = field("until when")
    why: Text | None = field("why")
    stop_if: Text | None = field("what to stop at")
    times_a_week: Whole | None = measured(
        "days", (1, 7), (1, 7), "on how many days of a week, for the list of ticks", basis=basis.BY_DEFINITION
    )


def _care(value: Any) -> Any:
    return {"what": value} if isinstance(value, str) else value


class Next(Record):
    """The trimmer's word on the next visit: weeks, or a day."""

    weeks: Number | None = measured("weeks", (0.5, 52), (2, 12), "weeks from this visit", basis=basis.USUAL_WEEKS)
    date: Day | None = field("the day itself")
    reason: Text | None = field("why, for the owner")

    @model_validator(mode="after")
    def _one_of_two(self) -> Next:
        if (self.weeks is None) == (self.date is None):
            raise refusal(
                "next-one-of-two",
                say("it holds either weeks or a date"),
                say("Write next: {{weeks: 6}} or next: {{date: 2026-11-25}}"),
            )
        return self


def _ended(value: Any) -> Any:
    if isinstance(value, bool):
        return (ALL,) if value else ()
    if not isinstance(value, str):
        return value
    word = value.strip().lower()
    return () if word in ("no", "false") else (ALL,) if word in ("yes", "true", ALL) else (value,)


def _no_signs(value: Any) -> Any:
    return () if isinstance(value, str) and value.strip().lower() in ("none", "no") else value


Signs = Annotated[
    tuple[Sign, ...],
    BeforeValidator(_no_signs),
    WithJsonSchema(
        {"anyOf": [{"enum": ["none", "no", False]}, {"type": "array", "items": {"enum": [*get_args(Sign)]}}]}
    ),
]
Feet = Annotated[dict[Foot, FootVisit], BeforeValidator(with_names(foot_named)), NamedKeys(*FEET)]
CareNote = Annotated[Care, BeforeValidator(_care), OrText()]
Ended = Annotated[
    tuple[Text, ...],
    BeforeValidator(_ended),
    WithJsonSchema(
        {"anyOf": [{"enum": [True, False]}, {"type": "string"}, {"type": "array", "items": {"type": "string"}}]}
    ),
]


# Keys of a visit's file that tell nothing of the visit: which warnings about it may stand.
BESIDE_THE_VISIT = {"seen"}


class Visit(Record):
    """One visit: the horse as found, each foot before and after, what to do until next time, and when that is."""

    date: Day = field("day of the visit", ...)
    by: OneLine | None = field("who trimmed, where it was not the practice's own trimmer")
    since_last: Text | None = field("what happened since last time, in a sentence")
    keeping: Keeping | None = field("how the horse was kept since last time")
    lameness: Lameness | None = field("lameness, with its scale")
    signs: Signs = list_field("how the horse stood and moved; none where it was looked at and showed no sign")
    sore_after_last_trim: YesNo | None = field("whether it was sore after the trim before this")
    condition: Condition | None = field("body condition and girth")
    handling: Handling | None = field("how it stood for the trim and was held")
    trimmed: YesNo = field("no where the feet were only looked at", True)
    feet: Feet = field("the feet that were looked at", {})
    care: tuple[CareNote, ...] = list_field("care notes by name, or written out; they replace the earlier ones")
    care_ends: Ended = list_field("care notes that end, as they were named, such as [dry-bed]; yes ends them all")
    vet: tuple[VetEntry, ...] = list_field("what a vet advised or found")
    resolved: tuple[Resolved, ...] = list_field("cautions that are over")
    next: Next | None = field("the trimmer's word on the next visit")
    note: Text | None = field("a note for the owner")
    private_note: Text | None = field("a note for the trimmer alone; on no stable's site")
    methods: dict[str, Text] = field("how a measure was taken, where it differs from the practice's way", {})
    seen: tuple[SeenEntry, ...] = list_field(SEEN)

    @property
    def showed_no_sign(self) -> bool:
        """Tell whether it was looked at how the horse stood and moved, and it showed no sign."""
        return "signs" in self.model_fields_set and not self.signs

    @property
    def is_blank(self) -> bool:
        """Tell whether nothing but the day is filled in, as when the file was only begun."""
        return self.model_fields_set <= {"date", *BESIDE_THE_VISIT}

    def tells_the_same(self, other: Visit) -> bool:
        """Tell whether another says the same of the horse, whatever of it is said outright or was seen of it."""
        return self.model_dump(exclude=BESIDE_THE_VISIT) == other.model_dump(exclude=BESIDE_THE_VISIT)


def alike(name: str) -> str:
    """A care note's name or words, less what does not tell two notes apart: capital letters and blanks."""
    return " ".join(name.lower().split())


@dataclass(frozen=True)
class StillOpen:
    """A caution that is open: its name, its foot (None for the horse), what was seen, and whether it takes a vet."""

    caution: str
    foot: Foot | None
    seen: str
    needs_a_vet: bool

    def typed(self, near_and_off: bool) -> str:
        """Its name and its foot as a record holds them."""
        foot = f", foot: {typed_foot(self.foot, near_and_off)}" if self.foot else ""
        return f"caution: {self.caution}{foot}"


@dataclass(frozen=True)
class Ending:
    """One caution that may be over: its name and foot as typed, and what was seen."""

    typed: str
    seen: str


def endings(cautions: Sequence[StillOpen], near_and_off: bool) -> dict[bool, list[Ending]]:
    """Cautions that may be over, by whether it takes a vet; each name and foot once, with all that was seen of it."""
    found: dict[bool, dict[str, list[str]]] = {False: {}, True: {}}
    for one in cautions:
        found[one.needs_a_vet].setdefault(one.typed(near_and_off), []).append(one.seen)
    return {needs: [Ending(name, " ".join(seen)) for name, seen in by_name.items()] for needs, by_name in found.items()}
