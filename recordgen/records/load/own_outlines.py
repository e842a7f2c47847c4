"""A practice's own tables of usual outlines: all are known to its tracings, and the newest is traced by."""

from __future__ import annotations

import os

from recordgen.problems import Problem
from recordgen.records.load.folders import LEFT_BEHIND, OUTLINES, Walk
from recordgen.records.models.lines.outlines_file import OutlinesFile
from recordgen.records.models.lines.shape_table import SHIPPED, ShapeTable, make_known, own_table
from recordgen.records.yaml.read import Written, read_partly
from recordgen.sentences import say


def read_outlines(walk: Walk) -> ShapeTable:
    """The table by which soles are traced: the newest of the practice's own, else ours. All of these become known.

    Of two made on one day it is the same one everywhere. A file that is not as it was made is a problem of the walk.
    """
    folder = walk.root / OUTLINES
    found = []
    for path in walk.entries(folder) if os.path.isdir(folder) else ():
        if path.suffix != ".yaml" or LEFT_BEHIND.fullmatch(path.name) or not walk.may_read(path):
            continue
        written, problems = read_partly(path, walk.shown(path), OutlinesFile)
        walk.problems.extend(problems)
        table = _verified_table(written, walk) if written else None
        if written and table:
            found.append(((written.record.made, str(table.version)), table))
    make_known(*(table for _, table in found))
    return max(found, key=lambda one: one[0])[1] if found else SHIPPED


def _verified_table(written: Written[OutlinesFile], walk: Walk) -> ShapeTable | None:
    """The table of a file; None, and a problem, where its numbers are not those that gave it its name."""
    try:
        table = own_table(written.record.wall, written.record.ring)
    except ValueError:
        table = None
    if table and written.file.stem == table.version:
        return table
    message = say("its numbers are not those that it was made with")
    way_out = say("Take the file back out of git, or delete it where no tracing names it")
    walk.problems.add(Problem(written.place("wall"), "outlines-changed", message, way_out))
    return None
