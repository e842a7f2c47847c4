"""The part of recordgen receive that takes in CSV and spreadsheets."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from recordgen.problems import Problems, Trouble
from recordgen.sentences import counted, say

if TYPE_CHECKING:
    from recordgen.cli.receive_run import ReceiveRun
    from recordgen.records.receive.incoming import Incoming
    from recordgen.records.receive.take_in import Outcome
    from recordgen.records.sheets.columns import ColumnsFile
    from recordgen.records.sheets.grid import Grid
    from recordgen.records.yaml.read import Written

SHEET_ENDINGS = (".csv", ".tsv", ".xlsx", ".xlsm", ".xls", ".ods")
# How many visits are shown as they will be.
SHOWN = 3


def is_sheet(file: Path) -> bool:
    """Tell whether a file is named as a sheet is."""
    return file.suffix.lower() in SHEET_ENDINGS


def take_sheet(run: ReceiveRun, file: Path) -> None:
    """Take in the visits of a sheet; where nobody told what its columns are, propose it instead. Raises Trouble."""
    from recordgen.records.sheets.columns import read_columns

    raw = _keep_bytes(run, file)
    columns = run.columns_file or run.folder / f"{file.stem}.columns.yaml"
    if columns.is_file():
        written = read_columns(columns)
        _take(run, file, _grid(raw, file, written.record.sheet), written)
    else:
        _propose(run, file, _grid(raw, file, None), columns)


def _grid(raw: bytes, file: Path, sheet: str | None) -> Grid:
    from recordgen.records.sheets.grid import read_grid

    return read_grid(raw, file.name, sheet)


def _keep_bytes(run: ReceiveRun, file: Path) -> bytes:
    """The bytes of a sheet, kept as they came before anything is done with them. Raises Trouble."""
    from recordgen.records.load.folders import slug_of
    from recordgen.records.receive.seen import keep_raw, received_folder
    from recordgen.records.sheets.grid import LARGEST_FILE_BYTES

    if not file.is_file():
        raise Trouble(say("there is no such file"), say("Look at its name and its folder"))
    if file.stat().st_size > LARGEST_FILE_BYTES:
        raise Trouble(
            say("it is larger than {largest_file_bytes} MB", largest_file_bytes=LARGEST_FILE_BYTES // 1000000),
            say("Take it in in several parts"),
        )
    raw = file.read_bytes()
    if not run.dry_run:
        keep_raw(received_folder(run.records), f"sheet-{slug_of(file.stem) or 'visits'}{file.suffix.lower()}", raw)
    return raw


def _propose(run: ReceiveRun, file: Path, grid: Grid, columns: Path) -> None:
    from recordgen.files import write_new, writing
    from recordgen.records.sheets.propose import propose
    from recordgen.records.sheets.rows import read_visits

    proposal = propose(grid, run.taking.horses)
    if run.dry_run:
        run.lines += [run.phrase("columns_dry", file=str(columns)), *proposal.text.splitlines()]
    else:
        with writing(columns):
            write_new(columns, proposal.text, mode=0o600)
        run.lines.append(run.phrase("columns_proposed", file=str(columns)))
    incoming = read_visits(grid, proposal.as_read(columns), run.taking.horses)
    run.problems += incoming.problems
    outcomes = _try_first(run, incoming)
    run.lines += list(_previews(run, outcomes))
    run.is_unfinished = run.is_unfinished or not incoming.whole
    told = {"file": str(file), "columns": str(columns), "proposed": proposal.text}
    run.told.append({**told, "visits": [], "receipt": None})


def _try_first(run: ReceiveRun, incoming: Incoming) -> list[Outcome]:
    """Tell what would become of the first visits, with nothing asked and nothing written."""
    from recordgen.records.receive.questions import Answers
    from recordgen.records.receive.seen import SeenVisits

    horses = replace(run.taking.horses, horses=dict(run.taking.horses.horses))
    seen = SeenVisits(None, dict(run.taking.seen.visits), dict(run.taking.seen.horses))
    trying = replace(run.taking, dry_run=True, answers=Answers(), seen=seen, horses=horses, problems=Problems())
    return trying.take(replace(incoming, visits=incoming.visits[: SHOWN * 10]))


def _previews(run: ReceiveRun, outcomes: Sequence[Outcome]) -> Iterator[str]:
    for outcome in [one for one in outcomes if one.text][:SHOWN]:
        yield run.phrase("sheet_preview", file=outcome.file)
        yield from (f"    {line}" for line in outcome.text.splitlines())


def _take(run: ReceiveRun, file: Path, grid: Grid, written: Written[ColumnsFile]) -> None:
    from recordgen.cli.receive_run import plain_outcome
    from recordgen.records.receive.whose import NEW, question_of_horse
    from recordgen.records.sheets.rows import read_visits

    incoming = read_visits(grid, written, run.taking.horses)
    if written.record.new_horses:
        for visit in incoming.visits:
            run.answers.given.setdefault(question_of_horse(visit, incoming.id), NEW)
    outcomes = run.taking.take(incoming)
    run.keep_problems(incoming)
    have = [one for one in outcomes if one.kind == "have" and not one.open]
    for outcome in outcomes:
        if outcome not in have:
            run.tell_outcome(outcome)
    if have:
        run.lines.append(run.phrase("sheet_have", count=counted(len(have), "visit")))
    if run.dry_run:
        run.lines += list(_previews(run, outcomes))
    run.is_unfinished = run.is_unfinished or not incoming.whole or not all(one.is_in for one in outcomes)
    run.told.append({"file": str(file), "visits": [plain_outcome(one) for one in outcomes], "receipt": None})
