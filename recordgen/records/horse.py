"""Who is trimmed, where, and by whom: practice, stable, horse."""

from __future__ import annotations

from typing import Annotated, Literal, Self

from pydantic import AfterValidator, Field, model_validator

from recordgen.records import basis
from recordgen.records.fields import (
    Born,
    Country,
    Day,
    Days,
    Height,
    Microchip,
    Millimetres,
    Number,
    Record,
    Text,
    Ueln,
    Whole,
    YesNo,
    measured,
    refusal,
    several,
    spelled,
    told,
)
from recordgen.records.names import FindingKind, Foot, Kind, Zone, foot_named, zone_named
from recordgen.records.publish import Publish

Weekday = Literal["mon", "tue", "wed", "thu", "fri", "sat", "sun"]


class VetPlan(Record):
    """A plan that a vet made; it comes before the usual interval."""

    by: Text = told("which vet", ...)
    date: Day = told("the day of the plan", ...)
    words: Text = told("the plan in the vet's words", ...)
    weeks: Number | None = measured(
        "weeks", (0.5, 26), (2, 10), "longest time between visits under the plan", basis=basis.JUDGEMENT
    )
    until: Day | None = told("last day of the plan")


class Consent(Record):
    """What the owner agreed to share."""

    vet: YesNo = told("whether the record may be shared with the vet", ...)
    by: Text = told("who agreed", ...)
    date: Day = told("the day", ...)


class Aim(Record):
    """What the trim aims at: a measure of a foot, or of all feet, that shall come under or over a value."""

    measure: Text = told("name of a measure, such as toe_length, heel_difference or flare", ...)
    zone: Annotated[Zone, spelled(zone_named)] | None = told("zone of the wall, for measures of the wall")
    foot: Annotated[Foot, spelled(foot_named)] | None = told("which foot; all where left out")
    under: Number | None = told("it shall come to this or less; of a difference, to either side of nothing")
    over: Number | None = told("it shall come to this or more")
    note: Text | None = told("why, for the owner to read")

    @model_validator(mode="after")
    def _has_a_value(self) -> Self:
        if (self.under is None) == (self.over is None):
            raise refusal("an aim has either under or over", "Write one of them, such as under: 2")
        return self


class Left(Record):
    """The end of a horse's record here."""

    date: Day = told("the day", ...)
    why: Text | None = told("sold, moved, died")


class Contact(Record):
    """Somebody to reach at a stable."""

    name: Text = told("name", ...)
    role: Text | None = told("owner, manager, groom")
    phone: Text | None = told("telephone number, as dialled")
    email: Text | None = told("address")


class Horse(Record):
    """A horse, pony, donkey or mule."""

    name: Text = told("the name it is called by", ...)
    kind: Kind = told("horse, pony, donkey or mule", "horse")
    sex: Literal["mare", "gelding", "stallion", "filly", "colt", "jenny", "jack"] | None = told("sex")
    born: Born | None = told("day or year of birth")
    height: Height | None = measured(
        "cm", (50, 220), (70, 190), "at the withers; hands as 14.2 hh", basis=basis.JUDGEMENT
    )
    microchip: Microchip | None = told("15 digits")
    ueln: Ueln | None = told("15 characters from the passport")
    conformation: tuple[Text, ...] = several("leg shape that explains what the feet do")
    usual_weeks: Number | None = measured(
        "weeks", (1, 26), (3, 12), "usual interval of this horse", basis=basis.USUAL_WEEKS
    )
    vet: Contact | None = told("the horse's own vet, where it is not the stable's; shown to owners beside a call")
    vet_plan: VetPlan | None = told("a vet's plan in force")
    aims: tuple[Aim, ...] = several("what the trim aims at, such as {measure: flare, zone: lateral quarter, under: 2}")
    consent: Consent | None = told("what may be shared")
    left: Left | None = told("when and why the record ends")
    note: Text | None = told("about the horse, for the owner to read")
    private_note: Text | None = told("about the horse, for the trimmer alone")


class Stable(Record):
    """A stable that is visited."""

    name: Text = told("name of the stable", ...)
    contacts: tuple[Contact, ...] = several("people to reach; on the trimmer's site alone")
    near: tuple[Text, ...] = several("folders of stables that can be visited on the same day")
    vet: Contact | None = told("the stable's vet; shown to owners beside a call to the vet")
    publish: Publish | None = told("where and how its site is published")
    note: Text | None = told("a note for everybody at the stable")
    private_note: Text | None = told("a note for the trimmer alone, such as the gate's code")


class Weeks(Record):
    """Usual interval by class of animal, in weeks."""

    adult: Number = measured("weeks", (1, 26), (3, 12), "horses and ponies", 6, basis=basis.USUAL_WEEKS)
    donkey: Number = measured("weeks", (1, 26), (4, 14), "donkeys", 8, basis=basis.USUAL_WEEKS)
    foal: Number = measured("weeks", (1, 26), (2, 8), "foals, up to one year", 4, basis=basis.JUDGEMENT)


class Allowances(Record):
    """How much toe may grow from one trim to the next, by class of animal; left out, what grows in the usual weeks."""

    adult: Millimetres | None = measured("mm", (2, 40), (6, 16), "horses and ponies", basis=basis.GROWN)
    donkey: Millimetres | None = measured("mm", (2, 40), (6, 16), "donkeys", basis=basis.GROWN)
    foal: Millimetres | None = measured("mm", (2, 40), (6, 16), "foals, up to one year", basis=basis.JUDGEMENT)


class Sooner(Record):
    """A rule of the practice: after a finding, the next visit comes no later than so many weeks after the last."""

    finding: FindingKind = told("what was found on any foot", ...)
    from_mm: Millimetres | None = measured(
        "mm", (0, 200), (1, 60), "the least size of it that counts", basis=basis.JUDGEMENT
    )
    weeks: Number = measured(
        "weeks", (0.5, 26), (2, 8), "the longest time until the next visit", ..., basis=basis.JUDGEMENT
    )


def _month(number: int) -> int:
    if not 1 <= number <= 12:
        raise refusal(f"{number} is no month", "Write the months as numbers, from 1 for January to 12 for December")
    return number


Month = Annotated[Whole, AfterValidator(_month)]


class Seasons(Record):
    """The months by which care notes go here; what is left out, the country tells."""

    wet_months: tuple[Month, ...] | None = told(
        "months of wet ground, such as [10, 11, 12, 1, 2, 3]; the others are dry"
    )
    warm_months: tuple[Month, ...] | None = told("months of warmth, such as [4, 5, 6, 7, 8, 9]; the others are cold")


class PracticeFile(Record):
    """Who trims, and the ways of the practice."""

    name: Text = told("name of the practice", ...)
    trimmer: Text = told("who trims", ...)
    phone: Text | None = told("telephone number, as dialled")
    email: Text | None = told("address")
    country: Country | None = told("two letters, such as GB; local law decides")
    feet: Literal["left and right", "near and off"] = told("how feet are named on the pages", "left and right")
    usual_weeks: Weeks = Field(default_factory=Weeks.model_construct, description="usual interval by class")
    allowances: Allowances = Field(default_factory=Allowances.model_construct, description="growth by class")
    sooner: tuple[Sooner, ...] = several("findings after which this practice comes sooner")
    leeway_days: Whole = measured("days", (0, 28), (0, 14), "before and after the best day", 7, basis=basis.JUDGEMENT)
    working_days: tuple[Weekday, ...] = told("days of work", ("mon", "tue", "wed", "thu", "fri"))
    holidays: tuple[Days, ...] = several("days nobody works, such as 2026-12-24 to 2027-01-02")
    horses_a_day: Whole = measured("horses", (1, 40), (2, 16), "most horses in one day", 8, basis=basis.COMMON_PRACTICE)
    seasons: Seasons | None = told(
        "which months are wet and which are warm, where the country does not tell it rightly"
    )
    methods: dict[str, Text] = told("how each measure is usually taken, such as toe_angle: gauge", {})
    hand_error: Number | None = measured(
        "px",
        (0.1, 30),
        (0.3, 6),
        "SD of one point picked on a picture, at an image 1000 px wide",
        basis=basis.JUDGEMENT,
    )
