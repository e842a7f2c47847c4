"""Every reading as CSV, read back by a reader that knows nothing of us."""

from __future__ import annotations

import csv
import io
from typing import Any

import pytest

from recordgen.csv_text import csv_of, guarded
from recordgen.hoof.export.sheet_csv import COLUMNS, reading_rows
from recordgen.hoof.measures.readings import Reading
from recordgen.records.models.visit import Visit
from tests.support.full_visits import EARLIER, FULL, sheet
from tests.support.horse_records import visit


def read_back(*visits: Visit, **values: Any) -> list[dict[str, str]]:
    """The rows of a horse with these visits, through CSV and back."""
    text = csv_of(COLUMNS, reading_rows(sheet(*visits, **values)))
    return list(csv.DictReader(io.StringIO(text, newline=""), strict=True))


def test_a_row_for_each_moment() -> None:
    """Day, foot, measure and moment with value, unit, way, error and its source."""
    first = read_back(EARLIER)[0]

    assert first == {
        "stable": "willowmere",
        "horse": "bramble",
        "name": "Bramble",
        "visit_day": "2026-09-02",
        "visit_number": "1",
        "trimmed": "yes",
        "recorded_by": "Wren Ashdown",
        "foot": "left_fore",
        "measure": "toe_length",
        "zone": "",
        "moment": "before",
        "value": "86",
        "unit": "mm",
        "method": "rule",
        "sd": "1.04",
        "error": "assumed",
        "source": "Assumed: a reading to the millimetre is out by about a millimetre",
    }


def test_every_reading_of_the_summary_has_its_row() -> None:
    """No more and no fewer, each with its value."""
    found = sheet(EARLIER, FULL)
    rows = {
        (row["visit_day"], row["foot"], row["measure"], row["zone"], row["moment"]): float(row["value"])
        for row in read_back(EARLIER, FULL)
    }
    readings = {
        (str(at.day), foot, one.measure.name, one.measure.zone or "", "as found" if one.measure.as_found else moment): v
        for foot, held in found.summary.feet.items()
        for one in held.measures.values()
        for at in one.readings
        for moment, v in _moments(at)
    }

    assert rows == pytest.approx(readings, abs=5e-5)


def _moments(reading: Reading) -> list[tuple[str, float]]:
    taken = (("before", reading.before), ("after", reading.after))
    return [(moment, value) for moment, value in taken if value is not None]


def test_a_measure_of_the_wall_names_its_zone() -> None:
    """Beside the name in the table; taken once a visit."""
    flare = next(row for row in read_back(FULL) if row["measure"] == "flare")

    assert (flare["zone"], flare["moment"], flare["value"]) == ("medial toe quarter", "as found", "6")


def test_two_visits_of_one_day_are_told_apart() -> None:
    """By their number."""
    toe = {"before": {"toe_length": 86}}
    rows = read_back(visit("2026-10-14", left_fore=toe), visit("2026-10-14", left_fore=toe))

    assert [(row["visit_day"], row["visit_number"]) for row in rows] == [("2026-10-14", "1"), ("2026-10-14", "2")]


def test_numbers_below_zero_stay_numbers() -> None:
    """An inner heel that is higher is -2, without an apostrophe."""
    heels = {"before": {"heel_height": {"medial": 38, "lateral": 36}}}
    rows = read_back(visit("2026-10-14", left_fore=heels))

    assert [row["value"] for row in rows if row["measure"] == "heel_difference"] == ["-2"]


@pytest.mark.parametrize("name", ["=1+1", "+44 7700", "-x", "@SUM(A1)", "\uff1d1", "=cmd|' /C calc'!A0"])
def test_text_that_could_be_a_formula_is_guarded(name: str) -> None:
    """An apostrophe stands before it. Source: OWASP, CSV Injection. From memory, not read."""
    assert {row["name"] for row in read_back(FULL, name=name)} == {f"'{name}"}


@pytest.mark.parametrize("name", ['Bramble "B", mare', "a;b", "O'Malley", "Grünes Øre 🐴"])
def test_other_text_comes_back_as_typed(name: str) -> None:
    """Quotes and commas are quoted. Source: RFC 4180, sections 2.5 to 2.7."""
    assert {row["name"] for row in read_back(FULL, name=name)} == {name}


def test_a_break_of_a_line_comes_back_as_typed() -> None:
    """It stands in quotes. Source: RFC 4180, section 2.6."""
    (row,) = csv.DictReader(io.StringIO(csv_of(("a", "b"), [{"a": "one\ntwo", "b": "c"}]), newline=""), strict=True)

    assert row == {"a": "one\ntwo", "b": "c"}


def test_lines_end_as_the_format_asks() -> None:
    """With CR and LF, the line of names first. Source: RFC 4180, sections 2.1 and 2.3."""
    lines = csv_of(("a", "b"), [{"a": 'x "y"', "b": None}]).split("\r\n")

    assert lines == ["a,b", '"x ""y""",', ""]


def test_text_in_the_middle_is_left_alone() -> None:
    """Only its beginning counts."""
    assert guarded("a=1") == "a=1"
