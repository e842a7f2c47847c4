"""recordgen receive: what a phone handed over, or what stands in a spreadsheet, comes into the records."""

from __future__ import annotations

import datetime as dt
import sys
from collections.abc import Sequence
from contextlib import nullcontext
from pathlib import Path
from string import ascii_lowercase
from typing import TYPE_CHECKING

import click

from recordgen.cli.asking import ask
from recordgen.cli.options import (
    exit_on_trouble,
    json_option,
    records_option,
    today_option,
)
from recordgen.cli.terminal import echo
from recordgen.problems import Trouble
from recordgen.sentences import say, sentences

if TYPE_CHECKING:
    from recordgen.cli.receive_run import ReceiveRun
    from recordgen.records.receive.questions import Phrase, Question

_FILE = click.Path(path_type=Path, dir_okay=False)


@click.command("receive")
@click.argument("files", nargs=-1, required=True, type=_FILE, metavar="FILE...")
@records_option
@today_option
@click.option("--answers", "answers_file", type=_FILE, help="Read answers here, and write open questions into it.")
@click.option("--columns", "columns_file", type=_FILE, help="Of a sheet: the file that tells what its columns are.")
@click.option("--dry-run", is_flag=True, help="Tell what would be done, and write nothing.")
@json_option
def command(
    files: Sequence[Path],
    records: Path,
    today: dt.date,
    answers_file: Path | None,
    columns_file: Path | None,
    dry_run: bool,
    as_json: bool,
) -> None:
    """Take in the visits that a phone handed over, or those of a spreadsheet: CSV, .xlsx or .ods.

    \b
        recordgen receive field-notes-2026-11-27-k7q2.txt
        recordgen receive visits-until-2025.xlsx --dry-run

    Of a sheet that is new, the file of its columns is proposed first; correct it, and take the sheet in again. Nothing
    that is there is written over, and a file taken in twice changes nothing. What cannot be known is asked; where
    nobody can be asked, the questions go into received/answers.yaml, to be filled in before the next run. Each file is
    kept as it came in the folder received, which git leaves alone.
    """
    with exit_on_trouble():
        from recordgen.cli.receive_run import ReceiveRun
        from recordgen.cli.receive_sheet import is_sheet, take_sheet
        from recordgen.locks import hold_lock
        from recordgen.records.load.folders import RECEIVED
        from recordgen.records.receive.seen import received_folder

        if not (records / "practice.yaml").is_file():
            raise Trouble(
                say("there is no practice.yaml in {records}", records=records),
                say("Name the folder of the records with --records"),
            )
        folder = records / RECEIVED if dry_run else received_folder(records)
        with nullcontext() if dry_run else hold_lock(folder / ".lock", say("notes are being taken in")):
            run = _begun(records, today, answers_file or folder / "answers.yaml", dry_run, as_json)
            run.columns_file = columns_file
            for file in files:
                run.take(file, take_sheet if is_sheet(file) else ReceiveRun.take_notes)
            run.end(as_json)
    if run.is_unfinished:
        raise click.exceptions.Exit(1)


def _begun(records: Path, today: dt.date, answers_file: Path, dry_run: bool, as_json: bool) -> ReceiveRun:
    from recordgen.cli.receive_run import ReceiveRun
    from recordgen.language.catalogs import ENGLISH_CODE
    from recordgen.records.load.folders import RECEIVED, Walk
    from recordgen.records.load.own_outlines import read_outlines
    from recordgen.records.load.tables import read_reference
    from recordgen.records.models.settings import PracticeFile
    from recordgen.records.receive.begun import written_by_hand
    from recordgen.records.receive.questions import Answers, phrases_of
    from recordgen.records.receive.seen import SeenVisits
    from recordgen.records.receive.take_in import Intake
    from recordgen.records.receive.whose import Horses
    from recordgen.records.yaml.read import read_partly
    from recordgen.units import METRIC, UNITS

    # A sole traced on the phone, or in a visit that is there, may name one of the practice's own tables.
    read_outlines(Walk(records))
    practice, _ = read_partly(records / "practice.yaml", "practice.yaml", PracticeFile)
    code = practice.record.language if practice else ENGLISH_CODE
    reference, _ = read_reference(records, code)
    near_and_off = practice is not None and practice.record.feet == "near and off"
    units = UNITS[practice.record.units] if practice is not None else METRIC
    answers = Answers.read(answers_file, str(answers_file))
    phrase = phrases_of(reference.phrases, language=code)
    if _somebody_is_there() and not as_json and not dry_run:
        answers.ask = lambda question: ask_question(question, phrase)
    taking = Intake(
        records,
        today,
        practice.record.name if practice else "",
        answers,
        phrase,
        SeenVisits.read(records / RECEIVED, dry_run),
        Horses.read(records),
        near_and_off,
        dry_run,
        lambda folder, day: written_by_hand(folder, day, near_and_off, reference.care, units),
    )
    return ReceiveRun(records, taking, answers, phrase, dry_run)


def _somebody_is_there() -> bool:
    return sys.stdin.isatty()


def ask_question(question: Question, phrase: Phrase) -> str:
    """The answer that somebody gives at a terminal; empty where the question stays open."""
    echo()
    echo(sentences(question.about, question.asks))
    for line in question.beside:
        echo(f"    {line}")
    choices = list(question.choices)
    for letter, answer in zip(ascii_lowercase, choices, strict=False):
        echo(f"  {letter}  {answer}: {question.choices[answer]}")
    if question.typed:
        echo(f"     {phrase('or_type', what=question.typed)}")
    while True:
        typed = str(ask(phrase("prompt"), default="", show_default=False)).strip()
        answer = dict(zip(ascii_lowercase, choices, strict=False)).get(typed, typed)
        fault = question.fault(answer) if answer else None
        if fault is None:
            return answer
        echo(sentences(fault))
