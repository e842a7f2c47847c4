"""Single cells of a spreadsheet, read as what their column holds."""

from __future__ import annotations

import calendar
import datetime as dt

import pytest

from recordgen.records.sheets.cells import CellForm, day


@pytest.mark.parametrize("month", range(1, 13))
def test_each_month_is_known_by_its_name(month: int) -> None:
    """Whole or short, before or after the day, with a year of two digits too. Source: the calendar module."""
    whole, short = calendar.month_name[month], calendar.month_abbr[month]
    typed = [
        f"14 {whole} 2026",
        f"14-{short}-26",
        f"{whole} 14, 2026",
        f"{short}. 14th 2026",
        f"14. {short.upper()} 2026",
    ]

    assert {text: day(text, CellForm()) for text in typed} == dict.fromkeys(typed, dt.date(2026, month, 14))
