"""Tell who is trimmed: the animal, the vet's plan, its aims, and whom its record was shared with."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Callable, Iterator
from typing import Annotated, Any, Literal, Self, get_args

from pydantic import AfterValidator, BeforeValidator, WithJsonSchema, model_validator

from recordgen.problems import Problem, quoted
from recordgen.records.models import ranges as basis
from recordgen.records.models.fields import (
    Born,
    Day,
    Height,
    Number,
    OfAnyMeasure,
    OneLine,
    Record,
    Text,
    YesNo,
    field,
    list_field,
    measured,
    refusal,
    spell_as,
    stripped_text,
)
from recordgen.records.models.names import Foot, Kind, SizeClass, Zone, foot_named, zone_named
from recordgen.records.models.stable import SEEN, Contact, Left, SeenEntry
from recordgen.records.yaml.read import Written
from recordgen.sentences import Said, say

# The national code has 38 bits: 2**38 - 1. Source: ISO 11784 (bit layout).
LARGEST_CHIP_NUMBER = 274_877_906_943


def microchip_fault(text: str) -> Said | None:
    """The mistake in the form of a microchip number, or None.

    15 digits: 3 for a country or maker, 12 for the animal, which must fit into 38 bits.
    Source: ISO 11784; ICAR, code structure.
    """
    if not re.fullmatch(r"[0-9]*", text):
        return say("a microchip number holds digits alone, 0 to 9")
    if len(text) != 15:
        return say("a microchip number has 15 digits; this has {digits}", digits=len(text))
    if text.startswith("000"):
        return say("a microchip number does not start with 000")
    if int(text[3:]) > LARGEST_CHIP_NUMBER:
        return say(
            "the last 12 digits of a microchip number are {largest} at the most",
            largest=LARGEST_CHIP_NUMBER,
        )
    return None


def ueln_fault(text: str) -> Said | None:
    """The mistake in the form of a UELN, or None.

    15 characters: 3 digits for the country, 3 for the database, 9 for the animal; the last two may hold letters.
    Source: Regulation (EU) 2021/963; ueln.net, structure of the number.
    """
    if len(text) != 15:
        return say("a UELN has 15 characters; this has {letters}", letters=len(text))
    if not re.fullmatch(r"[0-9]{3}[0-9A-Z]{12}", text):
        return say("a UELN is 3 digits for the country, then 12 digits or letters without other signs")
    return None


def _identity_parser(fault: Callable[[str], Said | None], name: str, example: str) -> Callable[[Any], str]:
    def parse(value: Any) -> str:
        text = stripped_text(value, say("a number as text"), example).replace(" ", "").upper()
        if why := fault(text):
            raise refusal(
                "identity-number",
                why,
                say("Compare it with the passport and scan again, or leave {name} out", name=name),
            )
        return text

    return parse


_CHIP = BeforeValidator(_identity_parser(microchip_fault, "microchip", "968000004531234"))
_UELN = BeforeValidator(_identity_parser(ueln_fault, "ueln", "372414001234567"))
Microchip = Annotated[str, _CHIP, WithJsonSchema({"type": ["string", "integer"]})]
Ueln = Annotated[str, _UELN, WithJsonSchema({"type": ["string", "integer"]})]


class VetPlan(Record):
    """A plan that a vet made; it comes before the usual interval."""

    by: OneLine = field("which vet", ...)
    date: Day = field("the day of the plan", ...)
    words: Text = field("the plan in the vet's words", ...)
    weeks: Number | None = measured(
        "weeks", (0.5, 26), (2, 10), "longest time between visits under the plan", basis=basis.JUDGEMENT
    )
    until: Day | None = field("last day of the plan")


class Consent(Record):
    """The owner's agreement to share."""

    vet: YesNo = field("whether the record may be shared with the vet", ...)
    by: OneLine = field("who agreed", ...)
    date: Day = field("the day", ...)


class Aim(Record):
    """An aim of the trim: a measure of a foot, or of all feet, that shall come under or over a value."""

    measure: Text = field("name of a measure, such as toe_length, heel_difference or flare", ...)
    zone: Annotated[Zone, spell_as(zone_named)] | None = field("zone of the wall, for measures of the wall")
    foot: Annotated[Foot, spell_as(foot_named)] | None = field("which foot; all where left out")
    under: OfAnyMeasure | None = field("it shall come to this or less; of a difference, to either side of nothing")
    over: OfAnyMeasure | None = field("it shall come to this or more")
    note: Text | None = field("why, for the owner to read")

    @model_validator(mode="after")
    def _has_a_value(self) -> Self:
        if (self.under is None) == (self.over is None):
            raise refusal(
                "aim-one-of-two", say("an aim has either under or over"), say("Write one of them, such as under: 2")
            )
        return self


def _kind(typed: Any) -> Any:
    return "horse" if typed == FOAL else typed


FOAL = "foal"
TypedKind = Annotated[Kind, BeforeValidator(_kind), WithJsonSchema({"enum": [*get_args(Kind), FOAL]})]


class Horse(Record):
    """A horse, pony, donkey or mule."""

    name: OneLine = field("the name it is called by", ...)
    kind: TypedKind = field("horse, pony, donkey or mule; foal where it is a young horse, with its birth", "horse")
    sex: Literal["mare", "gelding", "stallion", "filly", "colt", "jenny", "jack"] | None = field("sex")
    born: Born | None = field("day, month or year of birth")
    heavy: YesNo | None = field("whether it is of a heavy breed, such as a Shire; its feet are larger")
    height: Height | None = measured(
        "cm", (50, 220), (70, 190), "at the withers; hands as 14.2 hh", basis=basis.JUDGEMENT
    )
    microchip: Microchip | None = field("15 digits")
    ueln: Ueln | None = field("15 characters from the passport")
    conformation: tuple[Text, ...] = list_field("leg shape that explains what the feet do")
    usual_weeks: Number | None = measured(
        "weeks", (1, 26), (3, 12), "usual interval of this horse", basis=basis.USUAL_WEEKS
    )
    owner: Contact | None = field("who owns it; on the trimmer's site alone")
    payer: Contact | None = field("who pays, where it is not the owner; on the trimmer's site alone")
    vet: Contact | None = field("the horse's own vet, where it is not the stable's; shown to owners beside a call")
    vet_plan: VetPlan | None = field("a vet's plan in force")
    aims: tuple[Aim, ...] = list_field(
        "what the trim aims at, such as {measure: flare, zone: lateral quarter, under: 2}"
    )
    consent: Consent | None = field("what may be shared")
    left: Left | None = field("when and why the record ends")
    note: Text | None = field("about the horse, for the owner to read")
    private_note: Text | None = field("about the horse, for the trimmer alone")
    seen: tuple[SeenEntry, ...] = list_field(SEEN)

    def size_class(self, day: dt.date) -> SizeClass | None:
        """The class by which the size of its feet goes on a day; None where neither kind nor youth is told, or a mule.

        Young animals go by age: foals to the first birthday, yearlings to the second, as young as they can be.
        """
        years = self.born.years_on(day) if self.born else None
        if years is not None and years < 2:
            return "foal" if years < 1 else "yearling"
        if self.heavy:
            return "heavy"
        return self.kind if "kind" in self.model_fields_set and self.kind != "mule" else None

    @model_validator(mode="before")
    @classmethod
    def _foal_with_its_birth(cls, values: Any) -> Any:
        if isinstance(values, dict) and values.get("kind") == FOAL and not values.get("born"):
            message = say("a foal is told by its birth, and none is written")
            raise refusal(
                "foal-without-birth", message, say("Add the day, the month or the year: born: May 2026"), at="kind"
            )
        return values


SHARED_FILE = "shared.yaml"
SharedForm = Literal["html", "pdf"]

_EDITION = re.compile("[0-9a-f]{8,64}")


def _edition(text: str) -> str:
    if not _EDITION.fullmatch(text):
        raise refusal(
            "edition-form",
            say("{text} is not an edition", text=quoted(text)),
            say("Write it as the head of the sheet tells it"),
        )
    return text


Edition = Annotated[Text, AfterValidator(_edition)]


class Shared(Record):
    """One time that the record was handed over."""

    date: Day = field("the day", ...)
    to: OneLine = field("who got it", ...)
    edition: Edition = field("which edition of the sheet it was, as its head tells", ...)
    until: Day | None = field("the day after which they were asked to delete it")
    what: tuple[SharedForm, ...] = field("the kinds of file: html, pdf", ...)


class SharedFile(Record):
    """Whom a horse's record was shared with."""

    shared: tuple[Shared, ...] = list_field("each time it was handed over, oldest first")


def shared_problems(log: Written[SharedFile], today: dt.date) -> Iterator[Problem]:
    """Days that a log cannot hold. today: nothing was handed over later."""
    for index, entry in enumerate(log.record.shared):
        if entry.date > today:
            place = log.place("shared", index, "date")
            yield Problem(
                place,
                "shared-date-future",
                say("the date {date} is in the future", date=entry.date),
                say("Correct the date"),
            )
        if entry.until and entry.until < entry.date:
            message = say(
                "until {until} is before the day it was handed over ({date})", until=entry.until, date=entry.date
            )
            yield Problem(
                log.place("shared", index, "until"), "shared-until-too-early", message, say("Correct one of the two")
            )
