"""Small practices written into a folder, for the tests of the records."""

import datetime as dt
from collections.abc import Mapping
from pathlib import Path

from recordgen.problems import Problem
from recordgen.records.load.practice import read_practice
from recordgen.records.models.fields import Record
from recordgen.records.models.practice import Practice
from recordgen.records.models.visit import Visit
from recordgen.records.yaml.read import read_record

TODAY = dt.date(2026, 12, 1)

VISIT = """\
date: 2026-10-14
since_last: Out on the hill with the herd, dry and windy.
lameness: {scale: AAEP, grade: 0}
feet:
  left_fore:
    landing: medial first
    before: {toe_length: 86, heel_height: {medial: 33, lateral: 32}, toe_angle: 50}
    after:  {toe_length: 75, heel_height: {medial: 29, lateral: 30}, toe_angle: 53}
    frog: {infection: surface, central_groove_depth: 7}
    wall:
      medial toe quarter: {flare: 6, separation: {length: 18, depth: 3}}
    bars: {medial: 55, lateral: 54}
    sole: {shedding: true, toe_callus: thinned}
    done: [toe taken back, edge rounded, medial flare dressed]
care: [daily-grooves, dry-bed]
next: {weeks: 5}
"""

FILES = {
    "practice.yaml": "name: Hazel Hoof Care\ntrimmer: Wren Ashdown\n",
    "willowmere/stable.yaml": "name: Willowmere\n",
    "willowmere/bramble/horse.yaml": "name: Bramble\nborn: 2015\n",
    "willowmere/bramble/2026-10-14.yaml": VISIT,
}
VISIT_FILE = "willowmere/bramble/2026-10-14.yaml"


def build(folder: Path, files: Mapping[str, str | bytes | None] | None = None) -> Path:
    """A practice of one stable, one horse and one visit in `folder`, with `files` over it; None takes one out."""
    for name, text in {**FILES, **(files or {})}.items():
        if text is None:
            continue
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return folder


def practice(folder: Path, files: Mapping[str, str | bytes | None] | None = None) -> Practice:
    """The practice that `build` writes, read without errors."""
    found, problems = read_practice(build(folder, files), TODAY)
    assert found is not None, [problem.as_line() for problem in problems]
    return found


def line_of(problem: Problem) -> str:
    """A problem as one line, less its code, which has a test of its own."""
    return problem.as_line().removesuffix(f" [{problem.code}]")


def told(folder: Path, files: Mapping[str, str | bytes | None] | None = None) -> list[str]:
    """The problems of the practice that `build` writes, as lines without the folder's name."""
    _, problems = read_practice(build(folder, files), TODAY)
    return [line_of(problem).removeprefix(f"{folder.name}/") for problem in problems]


def problems_of(folder: Path, text: str | bytes, model: type[Record] = Visit) -> list[Problem]:
    """Problems of one file that holds `text`."""
    file = folder / "file.yaml"
    file.write_bytes(text if isinstance(text, bytes) else text.encode())
    return read_record(file, "file.yaml", model)[1]


def lines_of(folder: Path, text: str | bytes, model: type[Record] = Visit) -> list[str]:
    """The same, as lines."""
    return [line_of(problem) for problem in problems_of(folder, text, model)]
