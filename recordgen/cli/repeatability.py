"""recordgen repeatability."""

from __future__ import annotations

import datetime as dt
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from recordgen.cli.options import exit_on_trouble, json_option, print_json, records_option, today_option
from recordgen.cli.terminal import echo

if TYPE_CHECKING:
    from recordgen.hoof.measures.repeatability import ToldError
    from recordgen.language.quantities import Quantities


@click.command("repeatability")
@records_option
@today_option
@json_option
def command(records: Path, today: dt.date, as_json: bool) -> None:
    """Tell how well each measure repeats, how large a change must be, and where the figure comes from.

    \b
        recordgen repeatability
        recordgen repeatability --json

    Readings taken again (repeat: in a visit) replace what is assumed or published, once there are ten or more. The last
    line tells how steady the hand is that traces pictures, from five on that were traced twice.
    """
    with exit_on_trouble():
        from recordgen.hoof.context import hand_error_of
        from recordgen.hoof.measures.repeatability import list_errors
        from recordgen.hoof.tracing.errors.told import told_hand
        from recordgen.language.quantities import Quantities
        from recordgen.records.load.everything import read_whole
        from recordgen.units import UNITS

        whole = read_whole(records, today)
        file, phrases = whole.practice.file, whole.reference.phrases
        written = Quantities(units=UNITS[file.units])
        rows = list_errors(whole.reference, file.methods, whole.repeated)
        rows.append(told_hand(whole.repeated, hand_error_of(file), phrases))
    if as_json:
        print_json([_plain(row) for row in rows])
        return
    for row in rows:
        echo(_line(row, written))


def _plain(row: ToldError) -> dict[str, Any]:
    from recordgen.hoof.measures.rounding import significant

    return {
        "measure": row.measure,
        "way": row.way,
        "usual": row.usual,
        "unit": row.unit,
        "sd": significant(row.sd),
        "smallest_real_change": significant(row.smallest_real_change),
        "assumed": row.assumed,
        "source": row.source,
        "own_readings": row.own.sets + row.own.freedom if row.own else 0,
        "own_sd": significant(row.own.sd) if row.own else None,
        "own_counts": bool(row.own and row.own.counts),
    }


def _line(row: ToldError, written: Quantities) -> str:
    usual = "*" if row.usual else " "
    digits = written.digits(row.unit, 2)
    sd, least = (written.units.shown(value, row.unit) for value in (row.sd, row.smallest_real_change))
    real = f"{sd:8.{digits}f} {least:8.{digits}f} {written.unit(row.unit)}"
    return f"{usual} {row.name:28} {row.way:12} {real:28} {row.source}"
