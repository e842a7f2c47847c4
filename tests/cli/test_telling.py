"""recordgen summary, due, schema."""

from __future__ import annotations

import json
from pathlib import Path

import jsonschema
import pytest

from tests.support.commands import run, run_today
from tests.support.practice_folders import VISIT_FILE, build


def test_summary_as_json_holds_what_other_programs_read() -> None:
    """Due window, cautions, growth and measures of each foot."""
    told = json.loads(run_today("summary", "willowmere/fennel", "--json").output)

    assert set(told["due"]) >= {"earliest", "best", "latest", "reason"}
    assert set(told["cautions"][0]) >= {"level", "text", "source"}
    assert set(told["feet"]["left_fore"]["growth"]) == {"net", "by_mark", "wear", "left_out"}
    assert set(told["feet"]["left_fore"]["measures"]["toe_length"]) >= {
        "before",
        "after",
        "change",
        "smallest_real_change",
        "real",
    }


def test_summary_reads_in_a_terminal() -> None:
    """Name, caution, next visit and feet stand in it."""
    told = run_today("summary", "willowmere/fennel").output

    assert told.startswith("Fennel, last visit 18 November 2026\n  arrange soon: ")
    assert "next visit about 16 December 2026" in told
    assert "left hind" in told


@pytest.mark.parametrize(
    ("which", "code", "words"),
    [
        ("willowmere", 2, "Name the stable and the horse"),
        ("willowmere/nobody", 1, "nobody"),
        ("nowhere/x", 1, "nowhere"),
    ],
)
def test_summary_of_nobody_is_told(which: str, code: int, words: str) -> None:
    """Wrong use exits with 2, an unknown name with 1, both in a sentence."""
    result = run_today("summary", which)

    assert result.exit_code == code
    assert words in result.output


def test_due_lists_the_earliest_first() -> None:
    """Rowan is overdue and comes first; who has left is not listed."""
    told = json.loads(run_today("due", "--json").output)

    assert told[0]["horse"] == "rowan"
    assert told[0]["due"]["overdue_days"] == 26
    assert "bracken" not in {horse["horse"] for horse in told}
    assert [horse["due"]["best"] for horse in told] == sorted(horse["due"]["best"] for horse in told)


def test_due_of_one_stable_reads_in_a_terminal() -> None:
    """A line a horse: name, best day, window, reason; below it what is open of it."""
    lines = run_today("due", "--stable", "willowmere").output.splitlines()

    assert len([line for line in lines if not line.startswith(" ")]) == 5
    assert lines[-2] == "    arrange soon: painful-groove, left_hind"
    assert lines[0].split()[:2] == ["willowmere/bramble", "2026-11-25"]


@pytest.mark.parametrize("kind", ["practice", "stable", "horse", "visit"])
def test_schema_is_a_json_schema(kind: str) -> None:
    """The output is a valid schema. Source: JSON Schema 2020-12, meta-schema."""
    printed = json.loads(run("schema", kind).output)

    jsonschema.Draft202012Validator.check_schema(printed)


def test_a_day_that_is_none_is_wrong_use(tmp_path: Path) -> None:
    """--today takes year-month-day and says so."""
    result = run("check", "--today", "25.11.2026")

    assert result.exit_code == 2
    assert "write it 2026-11-25" in result.output


def test_a_practice_without_a_horse_is_due_for_nothing_and_says_so(tmp_path: Path) -> None:
    """An empty answer could be an answer that did not come."""
    records = build(tmp_path, {"willowmere/bramble/horse.yaml": None, VISIT_FILE: None})

    assert run_today("due", records=records).output == "No next visit to plan.\n"
