"""recordgen receive: what a phone handed over comes into the records."""

from __future__ import annotations

import datetime as dt
import sys
from collections.abc import Iterable, Sequence
from contextlib import nullcontext
from dataclasses import dataclass, field
from pathlib import Path
from string import ascii_lowercase
from typing import TYPE_CHECKING, Any

import click

from recordgen.cli.options import (
    json_option,
    print_json,
    print_problems,
    records_option,
    today_option,
    told_plainly,
)
from recordgen.cli.terminal import echo
from recordgen.problems import Place, Problem, Trouble, sentences

if TYPE_CHECKING:
    from recordgen.records.receive.brought import Brought
    from recordgen.records.receive.questions import Answers, Question, Say
    from recordgen.records.receive.take_in import Outcome, TakingIn

_FILE = click.Path(path_type=Path, dir_okay=False)


@click.command("receive")
@click.argument("files", nargs=-1, required=True, type=_FILE, metavar="FILE...")
@records_option
@today_option
@click.option("--answers", "answers_file", type=_FILE, help="Read answers here, and write open questions into it.")
@click.option("--dry-run", is_flag=True, help="Tell what would be done, and write nothing.")
@json_option
def command(
    files: Sequence[Path], records: Path, today: dt.date, answers_file: Path | None, dry_run: bool, as_json: bool
) -> None:
    """Take in the visits and photographs that a phone handed over.

    \b
        recordgen receive field-notes-2026-11-27-k7q2.txt
        recordgen receive field-notes-*.txt --dry-run

    Nothing that is there is written over, and a file taken in twice changes nothing. What cannot be known is asked;
    where nobody can be asked, the questions go into received/answers.yaml, to be filled in before the next run. Each
    file is kept as it came in the folder received, which git leaves alone.
    """
    with told_plainly():
        from recordgen.locks import held
        from recordgen.records.load.folders import RECEIVED
        from recordgen.records.receive.seen import received_folder

        if not (records / "practice.yaml").is_file():
            raise Trouble(f"there is no practice.yaml in {records}", "Name the folder of the records with --records")
        folder = records / RECEIVED if dry_run else received_folder(records)
        with nullcontext() if dry_run else held(folder / ".lock", "notes are being taken in"):
            run = _begun(records, today, answers_file or folder / "answers.yaml", dry_run, as_json)
            for file in files:
                run.take(file)
            run.end(as_json)
    if run.is_unfinished:
        raise click.exceptions.Exit(1)


def _begun(records: Path, today: dt.date, answers_file: Path, dry_run: bool, as_json: bool) -> _Run:
    from recordgen.records.load.folders import RECEIVED
    from recordgen.records.load.tables import read_reference
    from recordgen.records.models.settings import PracticeFile
    from recordgen.records.receive.begun import written_by_hand
    from recordgen.records.receive.questions import Answers, phrases_of
    from recordgen.records.receive.seen import Seen
    from recordgen.records.receive.take_in import TakingIn
    from recordgen.records.receive.whose import Horses
    from recordgen.records.yaml.read import read_as_far

    reference, _ = read_reference(records)
    practice, _ = read_as_far(records / "practice.yaml", "practice.yaml", PracticeFile)
    near_and_off = practice is not None and practice.record.feet == "near and off"
    answers = Answers.read(answers_file, str(answers_file))
    say = phrases_of(reference.phrases)
    if _somebody_is_there() and not as_json and not dry_run:
        answers.ask = lambda question: _ask(question, say)
    taking = TakingIn(
        records,
        today,
        practice.record.name if practice else "",
        answers,
        say,
        Seen.read(records / RECEIVED, dry_run),
        Horses.read(records),
        near_and_off,
        dry_run,
        lambda folder, day: written_by_hand(folder, day, near_and_off, reference.care),
    )
    return _Run(records, taking, answers, say, dry_run)


def _somebody_is_there() -> bool:
    return sys.stdin.isatty()


@dataclass
class _Run:
    """One call of the command, file by file."""

    records: Path
    taking: TakingIn
    answers: Answers
    say: Say
    dry_run: bool
    told: list[dict[str, Any]] = field(default_factory=list)
    lines: list[str] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)
    open: list[Question] = field(default_factory=list)
    new: bool = False
    is_unfinished: bool = False

    def take(self, file: Path) -> None:
        """Take in one file; a refused one stops no other."""
        try:
            brought = self._read(file)
            outcomes = self.taking.take(brought)
        except Trouble as trouble:
            self._refused(file, Problem(Place(file.name), "notes-refused", trouble.message, trouble.way_out))
            return
        self.problems += [*brought.problems, *self.taking.problems]
        self.taking.problems.found.clear()
        self._tell(file, brought, outcomes)

    def _read(self, file: Path) -> Brought:
        """Read what a file holds, kept as it came before anything is done with it. Raises Trouble."""
        from recordgen.private.keystore.field_key import key_named
        from recordgen.records.receive.notes_file import LARGEST_FILE_BYTES, file_id, is_notes, read_notes
        from recordgen.records.receive.seen import keep_raw, received_folder

        if not file.is_file():
            raise Trouble("there is no such file", "Look at its name and its folder")
        if file.stat().st_size > LARGEST_FILE_BYTES:
            raise Trouble(f"it is larger than {LARGEST_FILE_BYTES // 1_000_000} MB", "Hand over fewer visits at a time")
        raw = file.read_bytes()
        if not is_notes(raw):
            raise Trouble("these are no notes of the field page", "Name the file that the phone handed over")
        if not self.dry_run:
            keep_raw(received_folder(self.records), f"notes-{file_id(raw) or 'damaged'}.txt", raw)
        return read_notes(raw, file.name, lambda head, first: key_named(self.records, head.to).opener(first, head.key))

    def _refused(self, file: Path, problem: Problem) -> None:
        self.is_unfinished = True
        self.problems.append(problem)
        self.told.append({"file": str(file), "visits": [], "receipt": None})

    def _tell(self, file: Path, brought: Brought, outcomes: Sequence[Outcome]) -> None:
        from recordgen.records.receive.take_in import receipt_word

        for outcome in outcomes:
            self.open += outcome.open
            self.new = self.new or outcome.kind not in ("waiting", "have", "left_out", "changed_here")
            self.lines.append(self._line(outcome))
            self.lines += [f"    {line}" for question in outcome.open for line in question.beside]
        is_in = brought.whole and bool(outcomes) and all(one.is_in for one in outcomes)
        word = receipt_word(brought.id, brought.visits) if is_in and not self.dry_run else None
        self.lines.append(self.say("receipt" if word else "no_receipt", file=file.name, word=word or ""))
        self.is_unfinished = self.is_unfinished or not is_in
        self.told.append({"file": str(file), "visits": [_plain(one) for one in outcomes], "receipt": word})

    def _line(self, outcome: Outcome) -> str:
        line = self.say(f"did_{outcome.kind}", about=outcome.told, file=outcome.file)
        photos = len(outcome.photos)
        return line + (self.say("did_photos", count=str(photos)) if photos else "")

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
        for line in (*self.lines, *(f"{one.about}: {sentences(one.asks)}" for one in asked)):
            echo(line)
        if asked:
            key = "answers" if written or not self.dry_run else "answers_dry"
            echo(self.say(key, file=str(self.answers.file)))
        if self.new:
            echo(self.say("next_dry" if self.dry_run else "next"))

    def _as_json(self, asked: Iterable[Question]) -> dict[str, Any]:
        return {
            "files": self.told,
            "problems": [problem.as_json() for problem in self.problems],
            "questions": [_question(question) for question in asked],
            "answers": str(self.answers.file),
            "next": ["recordgen check", "recordgen commit"] if self.new and not self.dry_run else [],
        }


def _plain(outcome: Outcome) -> dict[str, Any]:
    visit = outcome.visit
    told = {"id": visit.id, "rev": visit.rev, "about": outcome.told, "did": outcome.kind, "file": outcome.file or None}
    return {**told, "photos": list(outcome.photos), "open": [question.id for question in outcome.open]}


def _question(question: Question) -> dict[str, Any]:
    told = {"id": question.id, "about": question.about, "asks": question.asks, "choices": dict(question.choices)}
    more = {"or": question.typed, "until_then": question.until_then, "beside": list(question.beside)}
    return {**told, **{key: value for key, value in more.items() if value}}


def _ask(question: Question, say: Say) -> str:
    """The answer that somebody gives at a terminal; empty where the question stays open."""
    for line in (f"\n{question.about}. {sentences(question.asks)}", *(f"    {one}" for one in question.beside)):
        echo(line)
    choices = list(question.choices)
    for letter, answer in zip(ascii_lowercase, choices, strict=False):
        echo(f"  {letter}  {answer}: {question.choices[answer]}")
    if question.typed:
        echo(f"     {say('or_type', what=question.typed)}")
    while True:
        typed = str(click.prompt(say("prompt"), default="", show_default=False)).strip()
        answer = dict(zip(ascii_lowercase, choices, strict=False)).get(typed, typed)
        fault = question.fault(answer) if answer else None
        if fault is None:
            return answer
        echo(sentences(fault))
