"""A value that the models refuse, told in words that a person who trims horses can act on."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Annotated, Any

from pydantic import BaseModel, TypeAdapter, ValidationError
from pydantic_core import ErrorDetails

from recordgen.problems import Problem, Step, as_typed
from recordgen.records.models.annotations import annotation_at, extra, field_at, is_model
from recordgen.records.yaml.shapes import as_keys, as_list, correct_line
from recordgen.records.yaml.slips import missing_space, split_glued
from recordgen.records.yaml.tree import Document
from recordgen.records.yaml.typed_units import teller
from recordgen.records.yaml.unknown import Wrong, unknown_choice, unknown_key, wrong_name
from recordgen.records.yaml.values import is_known
from recordgen.sentences import Said, listed, say

# A number without a unit, and the other units in which one may have been read.
_BARE = re.compile(r"[0-9][0-9 ./]*")
_UNITS = {"mm": ("cm", "in"), "cm": ("hh", "m", "in")}

# The day by which a visit's file is named, also a second one of that day.
_DAY_OF_NAME = re.compile(r"([0-9]{4}-[0-9]{2}-[0-9]{2})[^/]*$")

_KEY = "[key]"  # stands in an error's steps where the key itself is wrong, not its value


def problem_of(found: Document, model: type[BaseModel], error: ErrorDetails) -> Problem:
    """The problem that one refused value is: where it stands, what is wrong, and the way out."""
    steps = steps_of(error)
    if slip := _missing_space(found, model, steps, error):
        return slip
    is_name = _KEY in error["loc"] and error["type"] == "literal_error"
    wrong = wrong_name(model, steps) if is_name else _words(found, model, steps, error)
    return Problem(found.place(steps), *wrong)


def _missing_space(
    found: Document, model: type[BaseModel], steps: tuple[Step, ...], error: ErrorDetails
) -> Problem | None:
    """The problem of a key that stands without a space before its value; None where that is not what is wrong."""
    given = error["input"]
    slip = split_glued(given) if isinstance(given, str) else None
    if slip and is_known(annotation_at(model, steps), slip[0]):
        return Problem(found.value_place(steps), *missing_space(*slip))
    for key, value in given.items() if isinstance(given, dict) and error["type"] == "refused" else ():
        if not value and (slip := split_glued(key)):
            return Problem(found.place((*steps, key)), *missing_space(*slip))
    return None


def steps_of(error: ErrorDetails) -> tuple[Step, ...]:
    """The steps to the value that was refused."""
    at = (error.get("ctx") or {}).get("at")
    return (*(step for step in error["loc"] if step != _KEY), *([at] if at else ()))


def _words(found: Document, model: type[BaseModel], steps: tuple[Step, ...], error: ErrorDetails) -> Wrong:
    context: dict[str, Any] = error.get("ctx") or {}
    name = say_steps(found.typed_steps(steps)) or say("the file")
    match error["type"]:
        case "refused":
            way_out = correct_line(found.typed_steps(steps), context["write"], context["way_out"])
            return context["code"], say("{name}: {message}", name=name, message=context["message"]), way_out
        case "missing":
            if found.wrote(steps):
                return "value-empty", say("{name} is empty", name=name), say("Add {key}", key=steps[-1])
            return "key-missing", say("{name} is missing", name=name), say("Add {key}", key=_with_day(found, steps[-1]))
        case "extra_forbidden":
            return unknown_key(model, steps, _values_at(found.values, found.typed_steps(steps[:-1])))
        case "literal_error":
            return unknown_choice(model, steps, name, error["input"])
        case "greater_than_equal" | "less_than_equal":
            return _out_of_range(model, steps, name, error["input"])
        case "model_type" | "dict_type" | "tuple_type" if error["input"] is not None:
            return _wrong_shape(model, steps, name, error)
        case kind:
            return _wrong_kind(kind, name, error["input"], context)


def _with_day(found: Document, key: Step) -> str:
    """The key that is missing; the date of a visit with the day that its file is named by."""
    day = _DAY_OF_NAME.search(found.path) if key == "date" else None
    return f"date: {day[1]}" if day else str(key)


def _wrong_shape(model: type[BaseModel], steps: tuple[Step, ...], name: str, error: ErrorDetails) -> Wrong:
    """A text where keys or a list belong, with the corrected line where it is known."""
    given = error["input"]
    if error["type"] == "tuple_type":
        way_out = say("Write it as [one, two], or each on its own line behind a dash")
        meant = as_list(annotation_at(model, steps[:-1]), steps[-1], given)
        return "list-expected", say("{name} should be a list", name=name), correct_line(steps, meant, way_out)
    around = annotation_at(model, steps)
    meant = as_keys(around, given) if steps and is_model(around) else None
    return (
        "keys-expected",
        say("{name} should hold keys with values", name=name),
        correct_line(steps, meant, _as_keys(steps, given)),
    )


def _as_keys(steps: Sequence[Step], given: Any) -> Said:
    """The way out where it is not known which keys were meant."""
    if isinstance(given, list):
        return say("Take out the dashes or brackets: each key stands on its own line, without one")
    if steps:
        return say("Write key: value, each on its own line")
    return say("Write key: value, each on its own line, and free words behind note:")


def _values_at(values: Any, steps: Sequence[Step]) -> Any:
    """The value at some steps of a file, as typed; None where nothing stands."""
    for step in steps:
        if isinstance(values, dict):
            values = values.get(step)
        elif isinstance(values, list) and isinstance(step, int) and step < len(values):
            values = values[step]
        else:
            return None
    return values


def _wrong_kind(kind: str, name: str, given: Any, context: dict[str, Any]) -> Wrong:
    if given is None or kind == "string_too_short":
        return "value-empty", say("{name} is empty", name=name), say("Fill it in, or take it out")
    match kind:
        case "string_type":
            return (
                "text-expected",
                say("{name} should be text", name=name),
                say("Write words, in quotes where they hold : or # or begin with a bracket"),
            )
        case "string_too_long":
            return (
                "text-too-long",
                say("{name} is longer than {max_length} characters", name=name, max_length=context["max_length"]),
                say("Shorten it"),
            )
        case _:
            return "form-unknown", say("{name} is not in its form", name=name), say("Look it up with: recordgen schema")


def say_steps(steps: Sequence[Step]) -> Said:
    """Steps as people read them: `feet, left_fore, marks, number 2`."""
    return listed(
        [say("number {number}", number=step + 1) if isinstance(step, int) else as_typed(step) for step in steps], ", "
    )


def _out_of_range(model: type[BaseModel], steps: Sequence[Step], name: str, given: Any) -> Wrong:
    told = extra(field_at(model, steps))
    write, unit = teller(given, told["unit"])
    low, high = map(write, told["possible"])
    way_out = correct_line(
        steps, _in_other_unit(model, steps, given), say("Type it anew, with its unit where it is another")
    )
    shown = as_typed(str(given))
    return (
        "value-impossible",
        say(
            "{name}: {shown} is not possible; {low} to {high} {unit} is",
            name=name,
            shown=shown,
            low=low,
            high=high,
            unit=unit,
        ),
        way_out,
    )


def _in_other_unit(model: type[BaseModel], steps: Sequence[Step], given: Any) -> str | None:
    """A bare number with the one unit in which it would be likely; None where none is, or several are."""
    info, around = field_at(model, steps), annotation_at(model, steps[:-1])
    if info is None or not is_model(around) or not isinstance(given, str) or not _BARE.fullmatch(given.strip()):
        return None
    low, high = extra(info)["likely"]
    likely = []
    for unit in _UNITS.get(extra(info)["unit"], ()):
        value = _value_of(around, str(steps[-1]), f"{given.strip()} {unit}")
        if value is not None and low <= value <= high:
            likely.append(f"{given.strip()} {unit}")
    return likely[0] if len(likely) == 1 else None


def _value_of(model: type[BaseModel], name: str, typed: str) -> float | None:
    """The number that one key of a record makes of a text; None where it refuses it."""
    info = model.model_fields[name]
    try:
        form: Any = Annotated[(info.annotation, *info.metadata)]
        value: object = TypeAdapter(form).validate_python(typed)
    except ValidationError:
        return None
    return value if isinstance(value, int | float) else None
