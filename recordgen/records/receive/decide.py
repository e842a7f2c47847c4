"""Tell which file a visit becomes: a new one, one only begun, the same as before, or one beside what is there."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from recordgen.problems import Trouble
from recordgen.records.load.folders import BESIDE
from recordgen.records.models.visit import Visit
from recordgen.records.receive.compare import There, differences, is_same_visit, side_by_side, there_on
from recordgen.records.receive.doubts import SettledVisit
from recordgen.records.receive.questions import Answers, Phrase, Question
from recordgen.records.receive.seen import SeenVisit
from recordgen.records.yaml.tree import document
from recordgen.sentences import say

Kind = Literal[
    "new", "filled", "have", "beside", "second", "corrected", "answered", "kept", "changed_here", "left_out", "waiting"
]
LETTERS = "bcdefghijklmnopqrstuvwxyz"
CAME, HERE, BOTH, SECOND = "came", "here", "both", "second"

# The text of the visit's file; comments: more lines to stand above it.
Compose = Callable[[Sequence[str]], str]


@dataclass(frozen=True)
class Decision:
    """Tells what becomes of a visit.

    file: the name of its file, none where it gets none. text: what to write, empty where nothing is. over: the SHA-256
    of the text that may be written over, none where the file must be new. then_gone: a file of ours that it replaces.
    open: the question that has no answer yet.
    """

    kind: Kind
    file: str | None
    text: str = ""
    over: str | None = None
    then_gone: str | None = None
    open: Question | None = None


@dataclass(frozen=True)
class Deciding:
    """One visit on its way to its file.

    key: of the visit. rev: its state. told: the visit in words. folder: of the horse, there or not yet. known: how it
    was taken in before.
    """

    key: str
    rev: int
    told: str
    folder: Path
    day: dt.date
    settled: SettledVisit
    known: SeenVisit | None
    compose: Compose
    answers: Answers
    phrase: Phrase

    def decide(self) -> Decision:
        """Decide what becomes of it. Raises Trouble where its text would not read back."""
        own = self._own_file()
        others = [one for one in there_on(self.folder, self.day) if own is None or one.file != own.file]
        is_beside = own is not None and BESIDE.fullmatch(own.file.name) is not None
        if own and is_same_visit(own.visit, self.settled.visit) and not is_beside:
            return Decision("have", own.file.name)
        if own and self.known and self.rev > self.known.rev:
            return self._decide_correction(own)
        if own and not self._is_ours(own):
            return Decision("changed_here", own.file.name)
        if own and not is_beside:
            return Decision("answered", own.file.name, self._text(), own.sum)
        return self._among(others, own)

    def _own_file(self) -> There | None:
        """The file that it was taken in as. A run that was killed may have named one that somebody else wrote."""
        file = self.folder / self.known.file if self.known and self.known.file else None
        own = There.read(file) if file and file.is_file() else None
        if own and self.known and self.known.begun and not self._is_ours(own):
            return own if is_same_visit(own.visit, self.settled.visit) else None
        return own

    def _is_ours(self, own: There) -> bool:
        """Tell whether a file is as it was written here, so that nobody's work is in it."""
        return self.known is not None and own.sum == self.known.sum

    def _among(self, others: Sequence[There], own: There | None) -> Decision:
        """The decision among what is there of that day. own: what was laid beside it before."""
        gone = own.file.name if own else None
        for one in others:
            if is_same_visit(one.visit, self.settled.visit):
                return Decision("have", one.file.name, then_gone=gone)
            if one.is_blank:
                return Decision("filled", one.file.name, self._text(), one.sum, gone)
        if not others:
            return Decision("new", f"{self.day}.yaml", self._text(), then_gone=gone)
        return self._beside(others[0], own)

    def _beside(self, there: There, own: There | None) -> Decision:
        question = Question(
            f"{self.key} beside",
            self.told,
            self.phrase("asks_beside", file=there.file.name),
            {SECOND: self.phrase("second"), HERE: self.phrase("keep"), BOTH: self.phrase("beside")},
            until_then=self.phrase("until_beside"),
            beside=self._side_by_side(there),
        )
        answer = self.answers.of(question)
        gone = own.file.name if own else None
        if answer == HERE:
            return Decision("kept", None, then_gone=gone)
        if answer == SECOND:
            return Decision("second", self._free(f"{self.day}", ""), self._text(), then_gone=gone)
        text = self._text([self.phrase("comment_beside", file=there.file.name)])
        file = own.file.name if own else self._free(f"{self.day}", ".received")
        return Decision("beside", file, text, own.sum if own else None, open=None if answer else question)

    def _decide_correction(self, own: There) -> Decision:
        ours = self._is_ours(own)
        choices = {CAME: self.phrase("corrected")} if ours else {}
        choices |= {HERE: self.phrase("keep"), BOTH: self.phrase("beside")}
        asks = self.phrase("asks_corrected") if ours else self.phrase("asks_corrected_both")
        question = Question(f"{self.key} corrected", self.told, asks, choices, beside=self._side_by_side(own))
        match self.answers.of(question):
            case None:
                return Decision("waiting", own.file.name, open=question)
            case answer if answer == CAME:
                return Decision("corrected", own.file.name, self._text(), own.sum)
            case answer if answer == HERE:
                return Decision("kept", own.file.name)
        text = self._text([self.phrase("comment_beside", file=own.file.name)])
        return Decision("beside", self._free(f"{self.day}", ".received"), text)

    def _side_by_side(self, there: There) -> list[str]:
        found = differences(there.visit, self.settled.visit)
        return side_by_side(found, (self.phrase("here"), self.phrase("came")))

    def _free(self, day: str, infix: str) -> str:
        """The first name of a file of that day that nothing bears."""
        for name in _names(day, infix):
            if not (self.folder / name).exists():
                return name
        raise Trouble(say("there are too many visits of {day}", day=day), say("Look through them"))

    def _text(self, comments: Sequence[str] = ()) -> str:
        """The text of the file, held against what it is meant to say. Raises Trouble."""
        text = self.compose(comments)
        found = document("visit", text.encode())
        if found.problems or Visit.model_validate(found.values) != self.settled.visit:
            raise Trouble(
                say("{told} would not read back as it came", told=self.told),
                say("It stays in the file that was received"),
            )
        return text


def _names(day: str, infix: str) -> Iterator[str]:
    yield f"{day}{infix}.yaml"
    yield from (f"{day}-{letter}{infix}.yaml" for letter in LETTERS)
