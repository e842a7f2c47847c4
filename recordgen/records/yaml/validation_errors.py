"""A value that the models refuse, told in words that a person who trims horses can act on."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any, get_args

from pydantic import BaseModel
from pydantic_core import ErrorDetails

from recordgen.nearest import did_you_mean
from recordgen.problems import Problem, Step, quoted
from recordgen.records.models.annotations import annotation_at, choices, extra, field_at, is_model
from recordgen.records.models.names import foot_named, zone_named
from recordgen.records.yaml.shapes import as_keys, as_list, correct_line
from recordgen.records.yaml.slips import glued, missing_space
from recordgen.records.yaml.tree import Document
from recordgen.records.yaml.values import is_known

Wrong = tuple[str, str, str]  # the code, what is wrong, the way out

_KEY = "[key]"  # stands in an error's steps where the key itself is wrong, not its value


def refused(found: Document, model: type[BaseModel], error: ErrorDetails) -> Problem:
    """The problem that one refused value is: where it stands, what is wrong, and the way out."""
    steps = steps_of(error)
    if slip := _missing_space(found, model, steps, error):
        return slip
    wrong = _wrong_name(model, steps) if _KEY in error["loc"] else _words(found, model, steps, error)
    return Problem(found.place(steps), *wrong)


def _missing_space(
    found: Document, model: type[BaseModel], steps: tuple[Step, ...], error: ErrorDetails
) -> Problem | None:
    """The problem of a key that stands without a space before its value; None where that is not what is wrong."""
    given = error["input"]
    slip = glued(given) if isinstance(given, str) else None
    if slip and is_known(annotation_at(model, steps), slip[0]):
        return Problem(found.value_place(steps), *missing_space(*slip))
    for key, value in given.items() if isinstance(given, dict) and error["type"] == "refused" else ():
        if not value and (slip := glued(key)):
            return Problem(found.place((*steps, key)), *missing_space(*slip))
    return None


def steps_of(error: ErrorDetails) -> tuple[Step, ...]:
    """The steps to the value that was refused."""
    return tuple(step for step in error["loc"] if step != _KEY)


def _words(found: Document, model: type[BaseModel], steps: tuple[Step, ...], error: ErrorDetails) -> Wrong:
    context: dict[str, Any] = error.get("ctx") or {}
    name = say_steps(found.typed(steps)) or "the file"
    match error["type"]:
        case "refused":
            return context["code"], f"{name}: {context['message']}", context["way_out"]
        case "missing":
            if found.wrote(steps):
                return "value-empty", f"{name} is empty", f"Add {steps[-1]}"
            return "key-missing", f"{name} is missing", f"Add {steps[-1]}"
        case "extra_forbidden":
            return _unknown_key(model, steps)
        case "literal_error":
            return _unknown_choice(model, steps, name, error["input"])
        case "greater_than_equal" | "less_than_equal":
            return _out_of_range(model, steps, name, error["input"])
        case "model_type" | "dict_type" | "tuple_type" if error["input"] is not None:
            return _wrong_shape(model, steps, name, error)
        case kind:
            return _wrong_kind(kind, name, error["input"], context)


def _wrong_shape(model: type[BaseModel], steps: tuple[Step, ...], name: str, error: ErrorDetails) -> Wrong:
    """A text where keys or a list belong, with the corrected line where it is known."""
    given = error["input"]
    if error["type"] == "tuple_type":
        way_out = "Write it as [one, two], or each on its own line behind a dash"
        return "list-expected", f"{name} should be a list", correct_line(steps, as_list(given), way_out)
    around = annotation_at(model, steps)
    way_out = correct_line(
        steps, as_keys(around, given) if is_model(around) else None, "Write key: value, each on its own line"
    )
    return "keys-expected", f"{name} should hold keys with values", way_out


def _wrong_kind(kind: str, name: str, given: Any, context: dict[str, Any]) -> Wrong:
    if given is None or kind == "string_too_short":
        return "value-empty", f"{name} is empty", "Fill it in, or take it out"
    match kind:
        case "string_type":
            return (
                "text-expected",
                f"{name} should be text",
                "Write words, in quotes where they hold : or # or begin with a bracket",
            )
        case "string_too_long":
            return "text-too-long", f"{name} is longer than {context['max_length']} characters", "Shorten it"
        case _:
            return "form-unknown", f"{name} is not in its form", "Look it up with: recordgen schema"


def say_steps(steps: Sequence[Step]) -> str:
    """Steps as people read them: `feet, left_fore, marks, number 2`."""
    return ", ".join(f"number {step + 1}" if isinstance(step, int) else _short(step) for step in steps)


def _short(step: str) -> str:
    return quoted(step)[1:-1]


def _unknown_key(model: type[BaseModel], steps: Sequence[Step]) -> Wrong:
    typed = str(steps[-1])
    around = annotation_at(model, steps[:-1])
    known = list(around.model_fields) if is_model(around) else []
    return "key-unknown", f"{quoted(typed)} is not a known key here", _nearest(typed, known)


def _nearest(typed: str, known: list[str]) -> str:
    if re.match(r"[0-9]", typed):
        return "A comma parts two values; write a decimal with a point, like 8.2"
    key, colon, value = typed.partition(":")
    if colon and key in known:
        return f"Put a space after the colon: {key}: {_short(value.strip())}"
    return did_you_mean(typed, known, f"Known here are {', '.join(known)}")


def _wrong_name(model: type[BaseModel], steps: Sequence[Step]) -> Wrong:
    typed = str(steps[-1])
    name = foot_named(typed) or zone_named(typed)
    if name:
        return "name-twice", f"{quoted(typed)} means {name}, which is described twice", "Keep one of the two"
    names = list(choices(get_args(annotation_at(model, steps[:-1]))[0]))
    return "name-unknown", f"{quoted(typed)} is none of the names used here", f"The names are {', '.join(names)}"


def _unknown_choice(model: type[BaseModel], steps: Sequence[Step], name: str, given: Any) -> Wrong:
    if given is None:
        return "value-empty", f"{name} is empty", "Fill it in, or take it out"
    words = list(choices(annotation_at(model, steps)))
    choose = f"Choose from {', '.join(words)}"
    if not isinstance(given, str):
        return "word-unknown", f"{name}: one word is expected here", choose
    if " ".join(given.split()) in words:
        return "unusual-space", f"{name}: an unusual space stands in {quoted(given)}", "Type the space anew"
    hint = did_you_mean(given, words, "")
    return "word-unknown", f"{name}: {quoted(given)} is not one of the words for it", f"{hint} {choose}".strip()


def _out_of_range(model: type[BaseModel], steps: Sequence[Step], name: str, given: Any) -> Wrong:
    told = extra(field_at(model, steps))
    low, high = told["possible"]
    message = f"{name}: {_short(str(given))} is not possible; {low:g} to {high:g} {told['unit']} is"
    return "value-impossible", message, "Type it anew, with its unit where it is another"
