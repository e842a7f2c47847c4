"""Doubts: values seen and not measured, keys and values that the models refuse. Each becomes a question.

Until there is an answer it stands in words in the visit's private note, so that nothing is lost.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from recordgen.nearest import nearest_ones
from recordgen.problems import Problem, Step, Trouble
from recordgen.records.models.annotations import annotation_at, choices, extra, field_at, is_model
from recordgen.records.models.fields import LONGEST_TEXT
from recordgen.records.models.visit import Visit
from recordgen.records.receive.compare import path_words
from recordgen.records.receive.incoming import IncomingVisit
from recordgen.records.receive.questions import Answers, Phrase, Question
from recordgen.records.receive.visits import Values, as_texts, visit_text
from recordgen.records.yaml.tree import document, typed_key
from recordgen.records.yaml.validation_errors import problem_of, steps_of
from recordgen.records.yaml.write import on_one_line
from recordgen.sentences import NOTHING, Said, say, sentences

SEEN = "?"
NOTE = "private note"
DROP = "drop it"
# Findings that say something by being there, even without a size.
TELLS_WITHOUT_SIZE = ("separation", "crack")
MOST_DOUBTS = 200

Steps = tuple[Step, ...]


@dataclass(frozen=True)
class SettledVisit:
    """A record that the models take. questions: those that are open; what they are about stands in the private note."""

    record: Values
    visit: Visit
    questions: tuple[Question, ...]


@dataclass(frozen=True)
class _Doubt:
    """A value that cannot stay as it is, or that should be there. why: in words."""

    steps: Steps
    why: Said
    seen: bool = False
    unknown: bool = False

    @property
    def taken_out(self) -> Steps:
        """The place of the value that goes where there is no answer: around one that its group cannot be without."""
        around, name = annotation_at(Visit, self.steps[:-1]), self.steps[-1]
        fields = around.model_fields.items() if is_model(around) else ()
        needed = {info.alias or field for field, info in fields if info.is_required()}
        return self.steps[:-1] if name in needed else self.steps


class _Gone:
    """Stands in a list for an item that was taken out, so that the others keep their numbers."""


_GONE = _Gone()


def settle(incoming: IncomingVisit, day: str, told: str, answers: Answers, phrase: Phrase) -> SettledVisit:
    """An incoming record as one that the models take, and the questions about what they do not.

    day: of the visit, as its file holds it. told: the visit in words. Raises Trouble where nothing comes of it.
    """
    return _Settling(incoming, told, answers, phrase).settle(day)


def refusals(record: Mapping[str, Any]) -> list[tuple[Steps, Said]]:
    """Refusals of the models for a record, and values seen and not measured: where each stands, and why in words.

    Raises Trouble where nothing of it can be a record.
    """
    return [(doubt.steps, doubt.why) for doubt in _doubts(as_texts(record))]


class _Settling:
    """Settles one record, doubt by doubt."""

    def __init__(self, incoming: IncomingVisit, told: str, answers: Answers, phrase: Phrase) -> None:
        self.incoming = incoming
        self.told = told
        self.answers = answers
        self.phrase = phrase
        self.notes: list[str] = []
        self.questions: list[Question] = []

    def settle(self, day: str) -> SettledVisit:
        values: Values = as_texts({**self.incoming.record, "date": day})
        for _ in range(MOST_DOUBTS):
            doubt = next(_doubts(values), None)
            if doubt is None:
                record = self._with_notes(_without_gone(values))
                return SettledVisit(record, Visit.model_validate(record), tuple(self.questions))
            self._settle(values, doubt)
        raise Trouble(
            say("{told}: too much of it is no record", told=self.told), say("It stays in the file that was received")
        )

    def _settle(self, values: Values, doubt: _Doubt) -> None:
        question = self._question(values, doubt)
        answer = self.answers.of(question)
        if answer is None:
            self.questions.append(question)
        if answer is None or answer == NOTE:
            self._note(_at(values, doubt.taken_out), doubt)
        if answer in (None, NOTE, DROP):
            _take_out(values, doubt.taken_out, doubt.seen)
        elif doubt.unknown and answer:
            around = _at(values, doubt.steps[:-1])
            around[answer] = around.pop(doubt.steps[-1])
        elif answer:
            _set_at(values, doubt.steps, _parse_answer(answer))

    def _note(self, value: Any, doubt: _Doubt) -> None:
        where = path_words(doubt.taken_out)
        if doubt.seen and doubt.taken_out == doubt.steps:
            self.notes.append(self.phrase("note_seen", where=where))
        else:
            text = value if isinstance(value, str) else on_one_line(_without_gone(value))
            self.notes.append(self.phrase("note_refused", where=where, value=text))

    def _with_notes(self, values: Values) -> Values:
        notes = [*filter(None, [values.get("private_note")]), *self.notes]
        return values | {"private_note": "\n".join(notes)[:LONGEST_TEXT].strip()} if notes else values

    def _question(self, values: Values, doubt: _Doubt) -> Question:
        where = path_words(doubt.steps)
        offered = {word: self.phrase("word") for word in _words_to_choose(values, doubt)}
        offered |= {NOTE: self.phrase("to_note"), DROP: self.phrase("to_drop")}
        asks = self.phrase("asks_seen", where=where) if doubt.seen else self.phrase("asks_refused", why=doubt.why)
        return Question(
            f"{self.incoming.key} {'.'.join(map(str, doubt.steps))}",
            self.told,
            asks,
            offered,
            "" if doubt.unknown else self._value_hint(doubt.steps),
            lambda text: _fault(values, doubt.steps, text),
            self.phrase("until_note"),
        )

    def _value_hint(self, steps: Steps) -> str:
        info = field_at(Visit, steps)
        unit = extra(info).get("unit")
        return self.phrase("typed_value", what=f"{info.description}" if info and info.description else unit or "")


def _doubts(values: Values) -> Iterator[_Doubt]:
    """Find what cannot stay as it is: first what was seen and not measured, then what the models refuse."""
    yield from (_Doubt(steps, NOTHING, seen=True) for steps in _places_without_value(values, ()))
    whole = _without_gone(values)
    found = document("the visit", visit_text(whole).encode())
    if found.problems:
        raise Trouble(
            say("it cannot be written as a record: {message}", message=found.problems[0].message),
            found.problems[0].way_out,
        )
    try:
        Visit.model_validate(found.values)
    except ValidationError as wrong:
        for error in wrong.errors(include_url=False):
            yield _doubt_of(values, problem_of(found, Visit, error), error)


def _doubt_of(values: Values, problem: Problem, error: ErrorDetails) -> _Doubt:
    steps, missing = steps_of(error), error["type"] == "missing"
    around = _as_incoming(values, steps[:-1] if missing else steps)
    if not around:
        raise Trouble(say("it cannot be written as a record: {message}", message=problem.message), problem.way_out)
    why = sentences(problem.message, problem.way_out)
    return _Doubt((*around, steps[-1]) if missing else around, why, unknown=error["type"] == "extra_forbidden")


def _places_without_value(value: Any, steps: Steps) -> Iterator[Steps]:
    if isinstance(value, Mapping):
        for key, inner in value.items():
            yield from _places_without_value(inner, (*steps, key))
    elif isinstance(value, list):
        for index, inner in enumerate(value):
            yield from _places_without_value(inner, (*steps, index))
    elif value == SEEN and annotation_at(Visit, steps) is not str:
        yield steps


def _fault(values: Values, steps: Steps, text: str) -> Said | None:
    """Tell what is wrong with a typed answer at its place."""
    tried = _copy(values)
    _set_at(tried, steps, _parse_answer(text))
    wrong = (one for one in _doubts(tried) if one.steps[: len(steps)] == steps)
    found = next(wrong, None)
    return None if found is None else found.why or say("a value is expected")


def _parse_answer(text: str) -> Any:
    """Read what somebody typed, as a reader of YAML sees it behind a key."""
    found = document("the answer", f"answer: {text}".encode())
    return text if found.problems else found.values["answer"]


def _words_to_choose(values: Values, doubt: _Doubt) -> list[str]:
    """The words to choose from in the place of a doubt: for a key that is not known, keys like it that are free."""
    if not doubt.unknown:
        return list(choices(annotation_at(Visit, doubt.steps)))
    around = annotation_at(Visit, doubt.steps[:-1])
    free = set(around.model_fields) - set(_at(values, doubt.steps[:-1])) if is_model(around) else set()
    near = nearest_ones(str(doubt.steps[-1]), free, most=2, least_alike=0.8)
    return [name for name in near if _fits_there(values, doubt.steps, name)]


def _fits_there(values: Values, steps: Steps, name: str) -> bool:
    there = (*steps[:-1], name)
    tried = _copy(values)
    _set_at(tried, there, _at(values, steps))
    return not any(one.steps[: len(there)] == there for one in _doubts(tried))


def _at(values: Any, steps: Sequence[Step]) -> Any:
    for step in steps:
        values = values[step]
    return values


def _set_at(values: Any, steps: Steps, value: Any) -> None:
    _at(values, steps[:-1])[steps[-1]] = value


def _take_out(values: Any, steps: Steps, keep_group: bool) -> None:
    """Take out the value at some steps, and every group around it that holds nothing then."""
    around = _at(values, steps[:-1])
    if isinstance(around, list):
        around[int(steps[-1])] = _GONE
    else:
        del around[steps[-1]]
    tells = keep_group and len(steps) > 1 and steps[-2] in TELLS_WITHOUT_SIZE
    empty = all(one is _GONE for one in around) if isinstance(around, list) else not around
    if empty and len(steps) > 1 and not tells:
        _take_out(values, steps[:-1], keep_group)


def _copy(value: Any) -> Any:
    if isinstance(value, Mapping):
        return {key: _copy(inner) for key, inner in value.items()}
    return [_copy(inner) for inner in value] if isinstance(value, list) else value


def _without_gone(value: Any) -> Any:
    if isinstance(value, Mapping):
        return {key: _without_gone(inner) for key, inner in value.items()}
    if isinstance(value, list):
        return [_without_gone(inner) for inner in value if inner is not _GONE]
    return value


def _as_incoming(values: Any, steps: Sequence[Step]) -> Steps:
    """Steps among what is left as steps among what came in, as far as something stands there.

    Items that are gone count again, and feet and zones are named as they were.
    """
    found: list[Step] = []
    for step in steps:
        if isinstance(values, Mapping):
            key: Step | None = typed_key(values.keys(), step)
        elif isinstance(values, list) and isinstance(step, int):
            key = next(iter([index for index, inner in enumerate(values) if inner is not _GONE][step:]), None)
        else:
            key = None
        if key is None:
            break
        found.append(key)
        values = values[key]
    return tuple(found)
