"""recordgen sheet."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import pytest

from tests.conftest import RECORDS
from tests.support.commands import run_today, small_practice
from tests.support.pages import text_of
from tests.support.sheets import soup_of


def test_the_sheet_is_one_file(tmp_path: Path) -> None:
    """Style and pictures are inside; the command says where it is."""
    file = tmp_path / "new" / "bramble.html"
    result = run_today("sheet", "willowmere/bramble", "--out", file)
    text = file.read_text("utf-8")

    assert (result.exit_code, result.output) == (0, f"Written: {file}\n")
    assert text.startswith("<!doctype html>")
    assert text.count("<svg") > 7
    assert ".rg-sheet" in text


def test_without_a_name_it_goes_into_this_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Named by the horse and the day."""
    monkeypatch.chdir(tmp_path)
    run_today("sheet", "willowmere/bramble")

    assert [path.name for path in tmp_path.iterdir()] == ["bramble-2026-11-25.html"]


@pytest.mark.parametrize("words", [[], ["--out", "b.html"], ["--csv", "--out", "willowmere/b.csv"], ["--json"]])
def test_no_sheet_is_written_into_the_records(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, words: list[str]
) -> None:
    """Where git might keep it; what is only printed may be printed anywhere."""
    records = small_practice(tmp_path)
    before = sorted(records.rglob("*"))
    monkeypatch.chdir(records)
    result = run_today("sheet", "willowmere/bramble", *words, records=Path())

    assert result.exit_code == (0 if words == ["--json"] else 1)
    assert "lies inside the records" in result.output or words == ["--json"]
    assert sorted(records.rglob("*")) == before


def test_the_same_records_make_the_same_bytes(tmp_path: Path) -> None:
    """On the same day."""
    files = [tmp_path / name for name in ("one.html", "two.html")]
    for file in files:
        run_today("sheet", "willowmere/pippin", "--out", file)

    assert files[0].read_bytes() == files[1].read_bytes()


def test_csv_is_printed_as_bytes() -> None:
    """A line of names, then a reading a line; lines end with CR and LF. Source: RFC 4180, section 2.1."""
    printed = run_today("sheet", "willowmere/bramble", "--csv").stdout_bytes.decode()
    rows = list(csv.DictReader(io.StringIO(printed, newline=""), strict=True))

    assert printed.count("\r\n") == len(rows) + 1
    assert {row["visit_day"] for row in rows} >= {"2025-02-19", "2026-10-21"}
    assert {row["foot"] for row in rows} == {"left_fore", "right_fore", "left_hind", "right_hind"}


def test_csv_and_json_hold_the_same_readings(tmp_path: Path) -> None:
    """Written into files; the values of both are equal."""
    table, values = tmp_path / "b.csv", tmp_path / "b.json"
    run_today("sheet", "willowmere/bramble", "--csv", "--out", table)
    run_today("sheet", "willowmere/bramble", "--json", "--out", values)
    held = json.loads(values.read_text("utf-8"))
    with table.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))

    assert [float(row["value"]) for row in rows] == [row["value"] for row in held["readings"]]
    assert held["identity"]["microchip"] == "999000000104217"


def test_json_carries_its_dictionary() -> None:
    """Each column of the readings is explained in it."""
    held = json.loads(run_today("sheet", "willowmere/bramble", "--json").output)
    columns = {one["name"] for one in held["dictionary"] if one["kind"] == "column"}

    assert set(held["readings"][0]) == columns


def test_the_dictionary_is_csv_of_its_own() -> None:
    """Every measure has its unit and landmarks; the horse need not be shared for it."""
    printed = run_today("sheet", "willowmere/moss", "--dictionary").stdout_bytes.decode()
    rows = [row for row in csv.DictReader(io.StringIO(printed, newline="")) if row["kind"] == "measure"]

    assert rows
    assert all(row["unit"] and row["landmarks"] for row in rows)


@pytest.mark.parametrize("form", [[], ["--csv"], ["--json"]])
def test_nothing_leaves_without_an_agreement(form: list[str], tmp_path: Path) -> None:
    """Nobody agreed for Moss: no file, and the way out."""
    result = run_today("sheet", "willowmere/moss", *form, "--out", tmp_path / "moss")

    assert result.exit_code == 1
    assert "nobody's agreement is recorded that the record of Moss may be shared with a vet" in result.output
    assert list(tmp_path.iterdir()) == []


def test_a_refusal_is_kept(tmp_path: Path) -> None:
    """The owner's no is told with the name."""
    records = small_practice(tmp_path)
    file = records / "willowmere" / "bramble" / "horse.yaml"
    file.write_text(file.read_text("utf-8").replace("{vet: yes, by: Jonah", "{vet: no, by: Jonah"), "utf-8")
    result = run_today("sheet", "willowmere/bramble", "--csv", records=records)

    assert result.exit_code == 1
    assert "Jonah Peake did not agree" in result.output


def test_a_sheet_for_oneself_says_that_nobody_agreed(tmp_path: Path) -> None:
    """It may be made, and it says so."""
    file = tmp_path / "moss.html"
    run_today("sheet", "willowmere/moss", "--for-myself", "--out", file)

    assert "nobody's agreement is recorded" in file.read_text("utf-8")


def test_why_it_is_sent_stands_first(tmp_path: Path) -> None:
    """In the sender's words, on one line, with name and day; what is worked out else is left out."""
    file = tmp_path / "pippin.html"
    run_today("sheet", "willowmere/pippin", "--why", " Short in front\n since <Monday>. ", "--out", file)
    why = text_of(soup_of(file.read_text("utf-8")), "#why")

    assert why.startswith("Why it is sent Short in front since <Monday>. Wren Ashdown, 25 November 2026 ")
    assert "The vet's plan" not in why


def test_json_tells_why_too() -> None:
    """And the edition is another then."""
    said, unsaid = (
        json.loads(run_today("sheet", "willowmere/pippin", "--json", *why).output) for why in (["--why", "Lame."], [])
    )

    assert (said["why"], unsaid["why"]) == ("Lame.", None)
    assert said["edition"] != unsaid["edition"]


@pytest.mark.parametrize("command", ["sheet", "share"])
@pytest.mark.parametrize(
    ("why", "told"),
    [
        (" \n", "nothing stands there"),
        ("lame " * 5000, "24999 signs are too many for the first page; say it in 300"),
        ("lame\x1b[31m", "U+001B is a sign that does not show"),
        ("lame \u202e", "U+202E is a sign that does not show"),
    ],
)
def test_words_that_cannot_stand_there_are_refused(command: str, why: str, told: str) -> None:
    """None, thousands of them, and signs that act on a terminal or turn the line."""
    result = run_today(command, "willowmere/bramble", "--why", why, *(["--with", "V"] if command == "share" else []))

    assert (result.exit_code, told in " ".join(result.output.split())) == (2, True)


@pytest.mark.parametrize(
    ("words", "code", "told"),
    [
        (["willowmere/bramble", "--csv", "--why", "lame"], 2, "--why has no place in CSV"),
        (["willowmere"], 2, "Name the stable and the horse"),
        (["willowmere/bramble", "--csv", "--json"], 2, "Ask for one of"),
        (["willowmere/nobody"], 1, "nobody"),
    ],
)
def test_wrong_use_is_told(words: list[str], code: int, told: str) -> None:
    """In a sentence, without a traceback."""
    result = run_today("sheet", *words, records=RECORDS)

    assert result.exit_code == code
    assert told in result.output
