"""A key, a foot, a zone or a word that is not known, and the one that was probably meant."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, get_args, get_origin

from pydantic import BaseModel

from recordgen.nearest import did_you_mean, nearest
from recordgen.problems import Step, as_typed, quoted
from recordgen.records.models.annotations import annotation_at, bare, choices, inside, is_model
from recordgen.records.models.foot import FootVisit
from recordgen.records.models.names import FEET, ZONES, foot_named, zone_named
from recordgen.sentences import OR, Said, listed, say, sentences

Wrong = tuple[str, Said, Said]  # the code, what is wrong, the way out

# Keys that people type, and the ones that hold it here; told only where that key belongs.
MEANT_KEYS = {
    **dict.fromkeys(("age", "birth", "birthday", "dob", "years"), "born"),
    **dict.fromkeys(("thrush", "infected", "rot"), "infection"),
    **dict.fromkeys(("heel", "heels", "heels_height"), "heel_height"),
    **dict.fromkeys(("comment", "comments", "remark", "remarks", "text"), "note"),
    **dict.fromkeys(("phone", "telephone", "email", "contact", "owner", "client"), "contacts"),
    **dict.fromkeys(("chip", "chip_number"), "microchip"),
    **dict.fromkeys(("passport", "passport_number"), "ueln"),
    **dict.fromkeys(("angle", "hoof_angle"), "toe_angle"),
    "toe": "toe_length",
    "gap": "separation",
    "weeks": "next",
}
# The way out of a key whose value goes there in another form.
_HOW = {
    **dict.fromkeys(("age", "years"), say("Write the year of birth, such as born: 2015, since an age is soon wrong")),
    **dict.fromkeys(
        ("phone", "telephone", "email", "contact", "owner", "client"),
        say("Write it like contacts: [{{name: Mara Tilling, phone: 07700 900356}}]"),
    ),
    "weeks": say("Write it like next: {{weeks: 6}}"),
}
_SIDES = {"inside": "medial", "inner": "medial", "outside": "lateral", "outer": "lateral"}
_ENDS = {"front": "fore", "forefoot": "fore", "back": "hind", "rear": "hind", "near": "left", "off": "right"}


def unknown_key(model: type[BaseModel], steps: Sequence[Step], beside: Any) -> Wrong:
    """The problem of a key that a record does not have. beside: the values around it."""
    typed = str(steps[-1])
    around = annotation_at(model, steps[:-1])
    known = list(around.model_fields) if is_model(around) else []
    way_out = _key_meant(typed, around, known, beside)
    return "key-unknown", say("{typed} is not a known key here", typed=quoted(typed)), way_out


def _key_meant(typed: str, around: Any, known: list[str], beside: Any) -> Said:
    if re.match(r"[0-9]", typed):
        return _decimal(typed, beside)
    key, colon, value = typed.partition(":")
    if colon and key in known:
        return say("Put a space after the colon: {key}: {value}", key=key, value=as_typed(value.strip()))
    word, brace, _ = typed.partition(" {")
    if brace and word.strip() in known:
        return say("Put a colon behind it: {key}: {{…}}", key=word.strip())
    meant = MEANT_KEYS.get(typed.lower())
    if meant in known:
        given = beside.get(typed) if isinstance(beside, Mapping) else None
        value = as_typed(given) if isinstance(given, str) else "…"
        return _HOW.get(typed.lower()) or say("Write {key}: {value}", key=meant, value=value)
    if list(_homes(typed, around)) and typed.lower() not in (name.lower() for name in known):
        return _belongs(typed, around)
    near = nearest(typed, [*known, *_keys_below(around)])
    if near is not None and near not in known:
        return sentences(say("Did you mean {name}?", name=near), _belongs(near, around))
    return did_you_mean(typed, known, say("Known here are {known}", known=", ".join(known)))


def _belongs(key: str, around: Any) -> Said:
    return say("It belongs under {homes}", homes=listed([f"{name}:" for name in _homes(key, around)], OR))


def _keys_below(around: Any) -> Iterator[str]:
    """The keys that are known one step further in."""
    for info in around.model_fields.values() if is_model(around) else ():
        below = bare(info.annotation)
        yield from below.model_fields if is_model(below) else ()


def _decimal(typed: str, beside: Any) -> Said:
    """A comma within a decimal parts it from the value before."""
    otherwise = say("A comma parts two values; write a decimal with a point, like 8.2")
    names = list(beside) if isinstance(beside, Mapping) else []
    at = names.index(typed) if typed in names else 0
    before = beside[names[at - 1]] if at else None
    if not isinstance(before, str):
        return otherwise
    return say(
        "A comma parts two values; write {key}: {value}",
        key=as_typed(names[at - 1]),
        value=as_typed(f"{before}.{typed}"),
    )


def _homes(typed: str, around: Any) -> Iterator[str]:
    """The keys of a record below which the typed one is known."""
    for name, info in around.model_fields.items() if is_model(around) else ():
        below = bare(info.annotation)
        names = list(choices(get_args(below)[0])) if get_origin(below) is dict else []
        if (is_model(below) and typed in below.model_fields) or {foot_named(typed), zone_named(typed)} & {*names}:
            yield name


def missing_told_already(errors: Sequence[Any]) -> list[Any]:
    """The errors, less a key that is missing where the same is there misspelt and told."""
    unknown: dict[tuple[Any, ...], list[str]] = {}
    for error in errors:
        if error["type"] == "extra_forbidden":
            unknown.setdefault(error["loc"][:-1], []).append(str(error["loc"][-1]))
    return [
        error
        for error in errors
        if error["type"] != "missing"
        or not any(nearest(typed, [str(error["loc"][-1])]) for typed in unknown.get(error["loc"][:-1], ()))
    ]


def wrong_name(model: type[BaseModel], steps: Sequence[Step]) -> Wrong:
    """The problem of a foot or a zone whose name is not used, or that is described twice."""
    typed = str(steps[-1])
    name = foot_named(typed) or zone_named(typed)
    if name:
        return (
            "name-twice",
            say("{typed} means {name}, which is described twice", typed=quoted(typed), name=name),
            say("Keep one of the two"),
        )
    mapping = annotation_at(model, steps[:-1])
    names = list(choices(get_args(mapping)[0]))
    around = say("The names are {names}", names=", ".join(names))
    way_out = _name_meant(typed, names, inside(mapping, names[0])) or around
    return "name-unknown", say("{typed} is none of the names used here", typed=quoted(typed)), way_out


def _name_meant(typed: str, names: Sequence[str], below: Any) -> Said | None:
    """The name that was probably meant, as a way out."""
    if is_model(below) and typed in below.model_fields:
        if below is FootVisit:
            return say("Indent it two more, so that it stands below its foot")
        return say("Indent it two more, so that it stands below its zone")
    word, brace, _ = typed.partition("{")
    if brace and (foot_named(word) or zone_named(word)):
        return say("Put a colon behind it: {key}: {{…}}", key=word.strip())
    found = _feet_meant(typed) if tuple(names) == FEET else _zones_meant(typed) if tuple(names) == ZONES else []
    return say("Did you mean {found}?", found=listed(found, OR)) if found else None


def _feet_meant(typed: str) -> list[str]:
    words = {_ENDS.get(word, word) for word in re.findall("[a-z]+", typed.lower())}
    return [foot for foot in FEET if set(foot.split("_")) <= words]


def _zones_meant(typed: str) -> list[str]:
    words = [_SIDES.get(word, word) for word in re.findall("[a-z]+", typed.lower())]
    if " ".join(words) in ZONES:
        return [" ".join(words)]
    return [zone for zone in ZONES if words and set(words) < set(zone.split()) and len(zone.split()) == len(words) + 1]


def unknown_choice(model: type[BaseModel], steps: Sequence[Step], name: str, given: Any) -> Wrong:
    """The problem of a word that is none of those to choose from. name: of the value, as people read it."""
    if given is None:
        return "value-empty", say("{name} is empty", name=name), say("Fill it in, or take it out")
    words = list(choices(annotation_at(model, steps)))
    choices_told = ", ".join(words)
    if not isinstance(given, str):
        message = say("{name}: one word is expected here", name=name)
        return "word-unknown", message, say("Choose from {words}", words=choices_told)
    if " ".join(given.split()) in words:
        return (
            "unusual-space",
            say("{name}: an unusual space stands in {given}", name=name, given=quoted(given)),
            say("Type the space anew"),
        )
    message = say("{name}: {given} is not one of the words for it", name=name, given=quoted(given))
    if other := _key_of_word(annotation_at(model, steps[:-1]), given):
        write = {"key": other, "value": given.lower()}
        return "word-unknown", message, say("Write {key}: {value}. Choose from {words}", words=choices_told, **write)
    if near := nearest(given, words):
        way_out = say("Did you mean {name}? Choose from {words}", name=near, words=choices_told)
        return "word-unknown", message, way_out
    return "word-unknown", message, say("Choose from {words}", words=choices_told)


def _key_of_word(around: Any, given: str) -> str | None:
    """Another key of the same record, whose word this is: a mare is no kind but a sex."""
    fields = around.model_fields.items() if is_model(around) else ()
    return next((name for name, info in fields if given.lower() in choices(bare(info.annotation))), None)
