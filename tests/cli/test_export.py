"""recordgen export: the whole practice as tables, into a folder of its own."""

from __future__ import annotations

import csv
from pathlib import Path

from tests.support.commands import run_today, small_practice


def test_the_practice_is_written_as_tables(tmp_path: Path) -> None:
    """Every visit and foot has its row, and the dictionary lies beside them; closed to others."""
    records = small_practice(tmp_path)
    told = run_today("export", tmp_path / "tables", records=records)
    rows = {file.stem: list(csv.DictReader(file.open(encoding="utf-8"))) for file in (tmp_path / "tables").iterdir()}

    assert told.exit_code == 0
    assert len(rows["visits"]) == len(list(records.glob("*/*/2026-*.yaml")))
    assert {row["horse"] for row in rows["feet"]} == {"bramble", "fennel"}
    assert {row["table"] for row in rows["dictionary"]} == set(rows) - {"dictionary"}
    assert (tmp_path / "tables").stat().st_mode & 0o077 == 0
    assert f"visits.csv: {len(rows['visits'])} rows" in told.output


def test_the_same_records_give_the_same_bytes(tmp_path: Path) -> None:
    """An earlier export is replaced as a whole, and a table that is empty now is gone."""
    records = small_practice(tmp_path)
    run_today("export", tmp_path / "tables", records=records)
    before = {file.name: file.read_bytes() for file in (tmp_path / "tables").iterdir()}
    again = run_today("export", tmp_path / "tables", records=records)

    assert again.exit_code == 0
    assert {file.name: file.read_bytes() for file in (tmp_path / "tables").iterdir()} == before


def test_a_folder_with_anything_else_is_never_replaced(tmp_path: Path) -> None:
    """Not even beside an earlier export."""
    records = small_practice(tmp_path)
    run_today("export", tmp_path / "tables", records=records)
    (tmp_path / "tables" / "my-own.csv").write_text("mine")
    told = run_today("export", tmp_path / "tables", records=records)

    assert told.exit_code == 1
    assert "holds 'my-own.csv', which is of no export. Name a new folder." in told.output
    assert (tmp_path / "tables" / "my-own.csv").read_text() == "mine"


def test_nothing_is_written_into_the_records(tmp_path: Path) -> None:
    """Tables with all names in them would get into git there."""
    records = small_practice(tmp_path)
    told = run_today("export", records / "tables", records=records)

    assert told.exit_code == 1
    assert "such as ../practice-as-tables" in told.output
    assert not (records / "tables").exists()


def test_records_with_an_error_are_not_exported(tmp_path: Path) -> None:
    """Nobody would miss there what is left out."""
    records = small_practice(tmp_path)
    file = next(records.glob("*/bramble/2026-*.yaml"))
    file.write_text(file.read_text() + "nonsense: 1\n")
    told = run_today("export", tmp_path / "tables", records=records)

    assert told.exit_code == 1
    assert not (tmp_path / "tables").exists()
