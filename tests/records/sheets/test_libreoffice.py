"""A sheet as LibreOffice Calc 7.4 writes it, as .ods and as .xlsx, beside this file in `libreoffice/`; invented values.

Made from a book of openpyxl by `soffice --headless --convert-to ods book.xlsx`, and `--convert-to xlsx`: a title over
merged cells, a horse and a day merged over two rows, a day in words, figures that are reckoned, a row of totals.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from recordgen.records.sheets.grid import read_grid
from recordgen.records.sheets.merged_ods import merged_ranges_in_ods
from tests.support.own_sheets import DAY, feet, ods_of, proposed

BOOKS = Path(__file__).parent / "libreoffice"
READ = [
    (
        "bramble",
        "2024-03-14",
        {
            "left_fore": {
                "before": {"toe_length": "88.25"},
                "after": {"toe_length": "80.25"},
                "heat": "yes",
                "note": 'short; "so"',
            },
            "right_fore": {"before": {"toe_length": "86.3"}, "after": {"toe_length": "78.3"}},
        },
    ),
    ("fennel", "2024-04-02", {"left_fore": {"before": {"toe_length": "90.25"}, "note": "Grün"}}),
]


@pytest.mark.parametrize("name", ["book.ods", "book.xlsx"])
def test_a_sheet_of_libreoffice_is_read_as_it_was_typed(name: str) -> None:
    """Merged cells, days, what a formula makes, and letters; the row of totals is proposed to be left out."""
    raw = (BOOKS / name).read_bytes()

    assert proposed(raw, name).record.leave_out == ("Total",)
    assert feet(raw, name) == READ


def test_both_forms_tell_the_same_merged_cells() -> None:
    """Of the title, the horse and the day; blank rows above them, which are written once, are counted."""
    ods, xlsx = (read_grid((BOOKS / name).read_bytes(), name).merged for name in ("book.ods", "book.xlsx"))

    assert sorted(ods) == sorted(xlsx) == [((0, 0), (0, 6)), ((4, 0), (5, 0)), ((4, 1), (5, 1))]


def test_only_the_sheet_that_is_read_is_looked_at() -> None:
    """And what is no such file has none."""
    raw = (BOOKS / "book.ods").read_bytes()

    assert merged_ranges_in_ods(raw, "empty") == ()
    assert merged_ranges_in_ods(ods_of([("Bramble", DAY)]), "Visits") == ()
    assert merged_ranges_in_ods(b"PK\x03\x04", "Visits") == ()
