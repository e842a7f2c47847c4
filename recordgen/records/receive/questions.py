"""Questions about what cannot be known of something that came in, with answers to choose; asked at once or by file."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Annotated, Any

from pydantic import BeforeValidator, Field

from recordgen.files import write_whole, writing
from recordgen.language.catalogs import ENGLISH_CODE
from recordgen.language.translator import translator_of
from recordgen.problems import Place, Problem, Problems, Trouble, quoted
from recordgen.records.models.fields import Record, Text, field, list_field
from recordgen.records.write.templates import render_template
from recordgen.records.yaml.read import Written, read_record
from recordgen.records.yaml.write import on_one_line
from recordgen.sentences import Said, in_words_of, say

# A phrase of the tables by its key, with its facts filled in.
Phrase = Callable[..., str]
# What is wrong with a typed answer; nothing where it fits.
Fits = Callable[[str], Said | None]


def phrases_of(phrases: Mapping[str, str], about: str = "receive", language: str = ENGLISH_CODE) -> Phrase:
    """The phrases about taking in, or about something else, by their key without `receive_`.

    language: its code; the phrases are in it already, sentences among their facts are told in it.
    """
    tongue = translator_of(language)

    def phrase(key: str, **facts: Any) -> str:
        return phrases[f"{about}_{key}"].format(**{name: in_words_of(tongue, fact) for name, fact in facts.items()})

    return phrase


@dataclass(frozen=True)
class Question:
    """One thing to ask.

    id: the same whenever the same is asked. about: the visit in words. choices: each answer and what it does. typed:
    what may be typed in their place, in words; nothing where one must be chosen. fits: looks at what was typed.
    until_then: what is done while there is no answer; empty where the visit waits for it. beside: lines to look at.
    """

    id: str
    about: str
    asks: str
    choices: Mapping[str, str]
    typed: str = ""
    fits: Fits | None = None
    until_then: str = ""
    beside: Sequence[str] = ()

    def fault(self, answer: str) -> Said | None:
        """Tell what is wrong with an answer, as half a sentence; None where it can be taken."""
        if answer in self.choices:
            return None
        if not self.typed:
            choices = ", ".join(self.choices)
            return say("{answer} is none of the answers: {choices}", answer=quoted(answer), choices=choices)
        return self.fits(answer) if self.fits else None


def _as_text(value: Any) -> Any:
    return on_one_line(value) if isinstance(value, dict | list) else value


class Answer(Record):
    """A question in a file, and its answer once somebody wrote it."""

    id: Text = field("which question", ...)
    about: Text | None = field("which visit")
    asks: Text | None = field("the question")
    beside: tuple[Text, ...] = list_field("what to look at")
    choices: dict[str, Text] = field("answers to choose from, and what each does", {})
    or_: Text | None = Field(None, alias="or", description="what may be typed instead")
    until_then: Text | None = field("what is done until there is an answer")
    answer: Annotated[Text | None, BeforeValidator(_as_text)] = field("the answer")


class AnswersFile(Record):
    """Questions with their answers."""

    answers: tuple[Answer, ...] = list_field("the questions, in the order in which they came up")


@dataclass
class Answers:
    """The answers there are so far, by the questions' ids. problems: answers that cannot be taken.

    ask: asks somebody at once; None where nobody can be asked. An empty answer leaves the question open.
    """

    given: dict[str, str] = dataclasses.field(default_factory=dict)
    ask: Callable[[Question], str] | None = None
    file: Path | None = None
    written: Written[AnswersFile] | None = None
    problems: Problems = dataclasses.field(default_factory=Problems)
    used: dict[str, str] = dataclasses.field(default_factory=dict)
    _left_open: set[str] = dataclasses.field(default_factory=set)

    @classmethod
    def read(cls, file: Path, shown: str) -> Answers:
        """Those in a file; none where it is not there. Raises Trouble where it cannot be read."""
        if not file.exists():
            return cls(file=file)
        written, problems = read_record(file, shown, AnswersFile)
        if written is None:
            raise Trouble(
                say("the answers cannot be read: {problems}", problems=problems[0].as_line()),
                say("Mend that line, or take the file away"),
            )
        given = {one.id: one.answer for one in written.record.answers if one.answer}
        return cls(given, file=file, written=written)

    def begin(self, earlier: Mapping[str, str]) -> None:
        """Begin with another visit: what is used from here on is gathered anew. earlier: what was answered before."""
        self.given = {**earlier, **self.given}
        self.used = {}

    def of(self, question: Question) -> str | None:
        """The answer to a question, None while it is open."""
        given = self.given.get(question.id)
        fault = question.fault(given) if given is not None else None
        if given is not None and fault:
            self._refuse(question, fault)
        if given is None or fault:
            given = self._ask(question) if self.ask and question.id not in self._left_open else None
        if given is not None:
            self.used[question.id] = given
        return given

    def _ask(self, question: Question) -> str | None:
        assert self.ask is not None
        answer = self.ask(question)
        if not answer:
            self._left_open.add(question.id)
            return None
        self.given[question.id] = answer
        return answer

    def _refuse(self, question: Question, fault: Said) -> None:
        ids = [one.id for one in self.written.record.answers] if self.written else []
        known = self.written and question.id in ids
        place = (
            self.written.place("answers", ids.index(question.id), "answer")
            if self.written and known
            else Place("the answers")
        )
        message = say("{about}: {fault}", about=question.about, fault=fault)
        self.problems.add(Problem(place, "answer-unfit", message, say("Write another answer")))

    def keep(self, questions: Iterable[Question]) -> bool:
        """Write the questions that are open and not in the file yet into it; False where there are none.

        What stands in the file stays. Raises Trouble.
        """
        assert self.file is not None
        known = {one.id for one in self.written.record.answers} if self.written else set()
        new = {question.id: question for question in questions if question.id not in known}
        if not new:
            return False
        text = render_template("answers.yaml.jinja", questions=list(new.values()), begun=self.file.exists())
        with writing(self.file, say("The questions come up again next time")):
            self.file.parent.mkdir(parents=True, exist_ok=True)
            before = self.file.read_text("utf-8") if self.file.exists() else ""
            write_whole(self.file, before + text, mode=0o600)
        return True
