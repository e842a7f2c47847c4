"""Who is trimmed, where, and by whom: practice, stable, horse."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from recordgen.records.fields import (
    Born,
    Country,
    Day,
    Height,
    Microchip,
    Number,
    Record,
    Text,
    Ueln,
    Whole,
    YesNo,
    measured,
    several,
    told,
)

Weekday = Literal["mon", "tue", "wed", "thu", "fri", "sat", "sun"]


class VetPlan(Record):
    """A plan that a vet made; it comes before the usual interval."""

    by: Text = told("which vet", ...)
    date: Day = told("the day of the plan", ...)
    words: Text = told("the plan in the vet's words", ...)
    weeks: Number | None = measured("weeks", (0.5, 26), (2, 10), "longest time between visits under the plan")
    until: Day | None = told("last day of the plan")


class Consent(Record):
    """What the owner agreed to share."""

    vet: YesNo = told("whether the record may be shared with the vet", ...)
    by: Text = told("who agreed", ...)
    date: Day = told("the day", ...)


class Left(Record):
    """The end of a horse's record here."""

    date: Day = told("the day", ...)
    why: Text | None = told("sold, moved, died")


class Horse(Record):
    """A horse, pony, donkey or mule."""

    name: Text = told("the name it is called by", ...)
    kind: Literal["horse", "pony", "donkey", "mule"] = told("horse, pony, donkey or mule", "horse")
    sex: Literal["mare", "gelding", "stallion", "filly", "colt", "jenny", "jack"] | None = told("sex")
    born: Born | None = told("day or year of birth")
    height: Height | None = measured("cm", (50, 220), (70, 190), "at the withers; hands as 14.2 hh")
    microchip: Microchip | None = told("15 digits")
    ueln: Ueln | None = told("15 characters from the passport")
    conformation: tuple[Text, ...] = several("leg shape that explains what the feet do")
    usual_weeks: Number | None = measured("weeks", (1, 26), (3, 12), "usual interval of this horse")
    vet_plan: VetPlan | None = told("a vet's plan in force")
    consent: Consent | None = told("what may be shared")
    left: Left | None = told("when and why the record ends")
    note: Text | None = told("about the horse, for the owner to read")
    private_note: Text | None = told("about the horse, for the trimmer alone")


class Contact(Record):
    """Somebody to reach at a stable."""

    name: Text = told("name", ...)
    role: Text | None = told("owner, manager, groom")
    phone: Text | None = told("telephone number, as dialled")
    email: Text | None = told("address")


class Stable(Record):
    """A stable that is visited."""

    name: Text = told("name of the stable", ...)
    contacts: tuple[Contact, ...] = several("people to reach; on the trimmer's site alone")
    vet: Contact | None = told("the stable's vet; shown to owners beside a call to the vet")
    note: Text | None = told("a note for everybody at the stable")
    private_note: Text | None = told("a note for the trimmer alone, such as the gate's code")


class Weeks(Record):
    """Usual interval by class of animal, in weeks."""

    adult: Number = measured("weeks", (1, 26), (3, 12), "horses and ponies", 6)
    donkey: Number = measured("weeks", (1, 26), (4, 14), "donkeys", 8)
    foal: Number = measured("weeks", (1, 26), (2, 8), "foals, up to one year", 4)


class PracticeFile(Record):
    """Who trims, and the ways of the practice."""

    name: Text = told("name of the practice", ...)
    trimmer: Text = told("who trims", ...)
    phone: Text | None = told("telephone number, as dialled")
    email: Text | None = told("address")
    country: Country | None = told("two letters, such as GB; local law decides")
    feet: Literal["left and right", "near and off"] = told("how feet are named on the pages", "left and right")
    usual_weeks: Weeks = Field(default_factory=Weeks.model_construct, description="usual interval by class")
    leeway_days: Whole = measured("days", (0, 28), (0, 14), "before and after the best day", 7)
    working_days: tuple[Weekday, ...] = told("days of work", ("mon", "tue", "wed", "thu", "fri"))
    methods: dict[str, Text] = told("how each measure is usually taken, such as toe_angle: gauge", {})
