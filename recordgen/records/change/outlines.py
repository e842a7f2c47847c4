"""A practice's own table of usual outlines, kept beside those before it."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

from recordgen.days import spoken_day
from recordgen.problems import Trouble
from recordgen.records.change.change import Change
from recordgen.records.load.folders import OUTLINES
from recordgen.records.models.lines.shape_table import ShapeTable, text_of
from recordgen.sentences import counted, say


def keep_outlines(records: Path, table: ShapeTable, soles: int, today: dt.date) -> Change:
    """A new file for a table made of so many traced soles; what was traced before goes on as it was drawn.

    Raises Trouble where the same table is there already.
    """
    file = records / OUTLINES / f"{table.version}.yaml"
    if file.exists():
        raise Trouble(say("the table {version} is there already", version=table.version), say("Trace more soles first"))
    rows = {"wall": text_of(table.wall), "ring": text_of(table.ring)}
    blocks = [f"{name}: |\n" + "".join(f"  {line}\n" for line in text.splitlines()) for name, text in rows.items()]
    text = f"# Usual outlines of a sole, {spoken_day(today)}. Tracings name this file: keep it as it is.\n"
    text += f"made: {today.isoformat()}\ntracings: {soles}\n{''.join(blocks)}"
    return Change(
        records,
        f"Table of usual outlines made of {counted(soles, 'traced sole')}",
        (
            say("{file}: made of {soles}", file=f"{OUTLINES}/{file.name}", soles=counted(soles, "traced sole")),
            say("soles traced from now on follow it"),
        ),
        say("recordgen publish, so that phones have it too"),
        files={file: text.encode()},
    )
