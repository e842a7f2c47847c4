"""One call of recordgen receive, file by file, and what it tells."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, Any

from recordgen.cli.options import print_json, print_problems
from recordgen.cli.terminal import echo
from recordgen.problems import Place, Problem, Trouble
from recordgen.sentences import say, sentences

if TYPE_CHECKING:
    from recordgen.records.receive.incoming import Incoming
    from recordgen.records.receive.questions import Answers, Phrase, Question
    from recordgen.records.receive.take_in import Intake, Outcome


@dataclass
class ReceiveRun:
    """One call of the command, file by file."""

    records: Path
    taking: Intake
    answers: Answers
    phrase: Phrase
    dry_run: bool
    told: list[dict[str, Any]] = field(default_factory=list)
    lines: list[str] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)
    open: list[Question] = field(default_factory=list)
    new: bool = False
    is_unfinished: bool = False
    columns_file: Path | None = None

    @property
    def folder(self) -> Path:
        """The place where what came is kept."""
        from recordgen.records.load.folders import RECEIVED

        return self.records / RECEIVED

    def take(self, file: Path, take: Callable[[ReceiveRun, Path], None]) -> None:
        """Take in one file in a way of its form; a refused one stops no other."""
        try:
            take(self, file)
        except Trouble as trouble:
            self._refuse(file, Problem(Place(file.name), "notes-refused", trouble.message, trouble.way_out))

    def take_notes(self, file: Path) -> None:
        """Take in what the field page handed over. Raises Trouble."""
        incoming = self._read(file)
        outcomes = self.taking.take(incoming)
        self.keep_problems(incoming)
        self._tell(file, incoming, outcomes)

    def keep_problems(self, incoming: Incoming) -> None:
        """Keep what was wrong with what came in, and with taking it in."""
        self.problems += [*incoming.problems, *self.taking.problems]
        self.taking.problems.found.clear()

    def _read(self, file: Path) -> Incoming:
        """Read what a file holds, kept as it came before anything is done with it. Raises Trouble."""
        from recordgen.private.keystore.field_key import key_named
        from recordgen.records.receive.notes_file import LARGEST_FILE_BYTES, file_id, is_notes, read_notes
        from recordgen.records.receive.seen import keep_raw, received_folder

        if not file.is_file():
            raise Trouble(say("there is no such file"), say("Look at its name and its folder"))
        if file.stat().st_size > LARGEST_FILE_BYTES:
            raise Trouble(
                say("it is larger than {largest_file_bytes} MB", largest_file_bytes=LARGEST_FILE_BYTES // 1000000),
                say("Hand over fewer visits at a time"),
            )
        raw = file.read_bytes()
        if not is_notes(raw):
            raise Trouble(say("these are no notes of the field page"), say("Name the file that the phone handed over"))
        if not self.dry_run:
            keep_raw(received_folder(self.records), f"notes-{file_id(raw) or 'damaged'}.txt", raw)
        return read_notes(raw, file.name, lambda head, first: key_named(self.records, head.to).opener(first, head.key))

    def _refuse(self, file: Path, problem: Problem) -> None:
        self.is_unfinished = True
        self.problems.append(problem)
        self.told.append({"file": str(file), "visits": [], "receipt": None})

    def _tell(self, file: Path, incoming: Incoming, outcomes: Sequence[Outcome]) -> None:
        from recordgen.records.receive.take_in import receipt_word

        for outcome in outcomes:
            self.tell_outcome(outcome)
        is_in = incoming.whole and bool(outcomes) and all(one.is_in for one in outcomes)
        word = receipt_word(incoming.id, incoming.visits) if is_in and not self.dry_run else None
        self.lines.append(self.phrase("receipt" if word else "no_receipt", file=file.name, word=word or ""))
        self.is_unfinished = self.is_unfinished or not is_in
        self.told.append({"file": str(file), "visits": [plain_outcome(one) for one in outcomes], "receipt": word})

    def tell_outcome(self, outcome: Outcome) -> None:
        """Tell what became of one visit."""
        self.open += outcome.open
        self.new = self.new or outcome.kind not in ("waiting", "have", "left_out", "changed_here")
        self.lines.append(self._line(outcome))
        self.lines += [f"    {line}" for question in outcome.open for line in question.beside]

    def _line(self, outcome: Outcome) -> str:
        line = self.phrase(f"did_{outcome.kind}", about=outcome.told, file=outcome.file)
        photos = len(outcome.photos)
        return line + (self.phrase("did_photos", count=str(photos)) if photos else "")

    def end(self, as_json: bool) -> None:
        """Tell the questions that are open, what was wrong, and what to run next."""
        self.problems += self.taking.answers.problems
        self.is_unfinished = self.is_unfinished or any(one.level == "error" for one in self.problems) or bool(self.open)
        written = not self.dry_run and self.answers.keep(self.open)
        asked = list({question.id: question for question in self.open}.values())
        if as_json:
            print_json(self._as_json(asked))
            return
        print_problems(self.problems)
        for line in (
            *self.lines,
            *(say("{about}: {asks}", about=one.about, asks=sentences(one.asks)) for one in asked),
        ):
            echo(line)
        if asked:
            key = "answers" if written or not self.dry_run else "answers_dry"
            echo(self.phrase(key, file=str(self.answers.file)))
        if self.new:
            echo(self.phrase("next_dry" if self.dry_run else "next"))

    def _as_json(self, asked: Iterable[Question]) -> dict[str, Any]:
        return {
            "files": self.told,
            "problems": [problem.as_json() for problem in self.problems],
            "questions": [_question(question) for question in asked],
            "answers": str(self.answers.file),
            "next": ["recordgen check", "recordgen commit"] if self.new and not self.dry_run else [],
        }


def plain_outcome(outcome: Outcome) -> dict[str, Any]:
    """Give what became of a visit as plain values."""
    visit = outcome.visit
    told = {"id": visit.id, "rev": visit.rev, "about": outcome.told, "did": outcome.kind, "file": outcome.file or None}
    return {**told, "photos": list(outcome.photos), "open": [question.id for question in outcome.open]}


def _question(question: Question) -> dict[str, Any]:
    told = {"id": question.id, "about": question.about, "asks": question.asks, "choices": dict(question.choices)}
    more = {"or": question.typed, "until_then": question.until_then, "beside": list(question.beside)}
    return {**told, **{key: value for key, value in more.items() if value}}
