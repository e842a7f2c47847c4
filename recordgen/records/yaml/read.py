"""A file of records to a model, or to problems that point at the very line."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any, Generic, TypeVar

from pydantic import BaseModel, ValidationError
from pydantic.fields import FieldInfo
from pydantic_core import ErrorDetails

from recordgen.problems import Place, Problem, Step, warning
from recordgen.records.models.annotations import extra
from recordgen.records.models.fields import Record
from recordgen.records.yaml.comments import lost_in_comments
from recordgen.records.yaml.text import LARGEST_FILE_BYTES, MOST_PROBLEMS
from recordgen.records.yaml.tree import Document, document, typed_key
from recordgen.records.yaml.typed_units import teller
from recordgen.records.yaml.unknown import missing_told_already
from recordgen.records.yaml.validation_errors import problem_of, say_steps, steps_of
from recordgen.records.yaml.values import without_empty
from recordgen.sentences import NOTHING, Said, say

Kind = TypeVar("Kind", bound=Record)

_ROUNDS = 5


@dataclass(frozen=True)
class Written(Generic[Kind]):
    """A record and the file it stands in, which can tell the line of each of its values.

    shown: the path as people see it. text: what was read. whole: False where parts of the file were wrong and are not
    in the record.
    """

    record: Kind
    file: Path
    shown: str
    text: bytes = field(repr=False)
    whole: bool = True

    @property
    def within(self) -> str:
        """The path inside the records: the same on every computer, whatever their folder is called there."""
        return self.shown.partition("/")[2]

    def place(self, *steps: Step) -> Place:
        """The place where the value at `steps` stands. The text is parsed again; only a problem asks for this."""
        return self.document().place(steps)

    def document(self) -> Document:
        """Its text, parsed again."""
        return document(self.shown, self.text)


def read_record(file: Path, shown: str, model: type[Kind]) -> tuple[Written[Kind] | None, list[Problem]]:
    """The record in `file`, or None where anything is wrong, and everything that is wrong or unlikely about it.

    shown: the path as people see it.
    """
    written, problems = read_partly(file, shown, model)
    return (written if written and written.whole else None), problems


def read_with_key(file: Path, model: type[Kind], *keys: str) -> Kind | None:
    """The record in `file`; None where its text holds none of the keys, and where anything is wrong."""
    raw, _ = _bytes(file, file.name)
    written, _ = (
        _parse_record(raw, file, file.name, model) if any(f"{key}:".encode() in raw for key in keys) else (None, ())
    )
    return written.record if written and written.whole else None


def check_bytes(raw: bytes, file: Path, shown: str, model: type[Record]) -> list[Problem]:
    """Everything that is wrong or unlikely about the bytes that a file is to hold. Arguments as in `read_record`."""
    return _parse_record(raw, file, shown, model)[1]


def read_partly(file: Path, shown: str, model: type[Kind]) -> tuple[Written[Kind] | None, list[Problem]]:
    """The record in `file` as far as it is right, or None where no record is left, and everything wrong or unlikely.

    What is left of a record serves for looking at the rest of it, so that one wrong value does not hide another.
    """
    raw, unreadable = _bytes(file, shown)
    return (None, [unreadable]) if unreadable else _parse_record(raw, file, shown, model)


def _parse_record(raw: bytes, file: Path, shown: str, model: type[Kind]) -> tuple[Written[Kind] | None, list[Problem]]:
    found = document(shown, raw)
    if found.problems:
        return None, _first_ones(found.problems)
    lost = _first_ones(list(lost_in_comments(found, model)))
    if found.has_empty:
        found.values = without_empty(found.values, model) or {}
    try:
        record, problems = model.model_validate(found.values), []
    except ValidationError as wrong:
        errors = wrong.errors(include_url=False)
        problems = _first_ones(
            [problem_of(found, model, error) for error in missing_told_already(errors)[: MOST_PROBLEMS + 1]]
        )
        rest = _rest(found.values, model, errors)
        if rest is None:
            return None, [*problems, *lost]
        record = rest
    written = Written(record, file, shown, raw, whole=not problems)
    return written, [*problems, *lost, *_first_ones(list(_unlikely(found, record)))]


def _bytes(file: Path, shown: str) -> tuple[bytes, Problem | None]:
    try:
        with file.open("rb") as opened:
            return opened.read(LARGEST_FILE_BYTES + 1), None
    except OSError:
        way_out = say("Look whether you may open it, and whether it is a plain file")
        return b"", Problem(Place(shown), "file-not-opened", say("the file cannot be opened"), way_out)


def _first_ones(problems: list[Problem]) -> list[Problem]:
    if len(problems) <= MOST_PROBLEMS:
        return problems
    last = problems[MOST_PROBLEMS]
    return [
        *problems[:MOST_PROBLEMS],
        Problem(last.place, "more-problems", say("more is wrong from here on"), say("Begin with the first ones")),
    ]


def _rest(values: Any, model: type[Kind], errors: Sequence[ErrorDetails]) -> Kind | None:
    """The rest of a record without its wrong values; None where nothing is. `values` is cut down in place."""
    for _ in range(_ROUNDS):
        for error in errors:
            steps = steps_of(error)
            if not isinstance(values, dict) or not _take_out(
                values, steps[:-1] if error["type"] == "missing" else steps
            ):
                return None
        try:
            return model.model_validate(values)
        except ValidationError as wrong:
            errors = wrong.errors(include_url=False)
    return None


def _take_out(values: dict[str, Any], steps: Sequence[Step]) -> bool:
    """Takes out the value at `steps`; of a list the whole of it, so that no other item changes its number."""
    around: Any = values
    last: tuple[dict[str, Any], str] | None = None
    for number, step in enumerate(steps, 1):
        if isinstance(around, dict):
            key = typed_key(around.keys(), step)
            if key is None:
                return True
            last, around = (around, key), around[key]
        elif isinstance(around, list) and isinstance(step, int) and number < len(steps):
            around = around[step]
        else:
            break
    if last:
        last[0].pop(last[1])
    return last is not None


def values(record: BaseModel, steps: tuple[Step, ...] = ()) -> Iterator[tuple[tuple[Step, ...], FieldInfo, Any]]:
    """Every value that was written in a record: its steps, its field, itself; in the order of the models."""
    for name, info in type(record).model_fields.items():
        if name not in record.model_fields_set or (value := getattr(record, name)) is None:
            continue
        at = (*steps, name)
        yield at, info, value
        for step, inner in _records_in(value):
            yield from values(inner, at if step is None else (*at, step))


def _records_in(value: Any) -> Iterator[tuple[Step | None, BaseModel]]:
    if isinstance(value, BaseModel):
        yield None, value
    elif isinstance(value, dict):
        yield from ((key, inner) for key, inner in value.items() if isinstance(inner, BaseModel))
    elif isinstance(value, tuple):
        yield from ((index, inner) for index, inner in enumerate(value) if isinstance(inner, BaseModel))


@cache
def _likely(model: type[BaseModel]) -> dict[str, tuple[float, float]]:
    told = ((name, extra(info)) for name, info in model.model_fields.items())
    return {name: one["likely"] for name, one in told if "likely" in one and "by_class" not in one}


def _unlikely(found: Document, record: BaseModel, steps: tuple[Step, ...] = ()) -> Iterator[Problem]:
    likely = _likely(type(record))
    for name, value in record.__dict__.items():
        if value is None:
            continue
        if name in likely:
            low, high = likely[name]
            if not low <= value <= high:
                yield unusual(found, type(record).model_fields[name], (*steps, name), value, (low, high))
        elif not isinstance(value, str):
            for step, inner in _records_in(value):
                yield from _unlikely(found, inner, (*steps, name) if step is None else (*steps, name, step))


def unusual(
    found: Document,
    info: FieldInfo,
    steps: tuple[Step, ...],
    value: float,
    likely: tuple[float, float],
    of_whom: Said = NOTHING,
) -> Problem:
    """The warning about a value outside what is likely. of_whom: for which animals it is, such as ' for ponies'."""
    write, unit = teller(found.typed(steps), extra(info)["unit"])
    name, told = say_steps(found.typed_steps(steps)), write(value)
    message = say(
        "{name}: {told} {unit} is outside {low} to {high}{of_whom}, so look again",
        name=name,
        told=told,
        unit=unit,
        low=write(likely[0]),
        high=write(likely[1]),
        of_whom=of_whom,
    )
    return warning(found.place(steps), "value-unlikely", message, say("It may stand if it is right"))
