"""The steps of the tracing screen and their drawings, out of a table of which a practice may have its own."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import yaml

from recordgen.packaged import packaged
from recordgen.problems import Place, Trouble, quoted
from recordgen.records.models.fields import Record
from recordgen.records.models.tracing import LANDMARKS
from recordgen.records.yaml.read import Written, read_record
from recordgen.sentences import Said, say

FILE = "site_templates/trace/steps.yaml"
# Each stroke: its class, and its path as in SVG.
Drawing = tuple[tuple[str, str], ...]


class TapStep(Record):
    """One landmark that is tapped. good: so many taps make a good line."""

    mark: str
    good: int | None = None


class ViewSteps(Record):
    """The steps of one view. marks: where a landmark stands in the drawing, or the path that it is."""

    drawing: Drawing
    steps: tuple[TapStep, ...]
    later: tuple[TapStep, ...] = ()
    marks: dict[str, tuple[tuple[float, float], ...] | str]


class StepsFile(Record):
    """The steps of each view, and how the camera is held for it; what an own file leaves out stays as ours."""

    sole: ViewSteps | None = None
    side: ViewSteps | None = None
    front: ViewSteps | None = None
    camera: dict[str, Drawing] | None = None


def steps_of_screen(own: Path | None = None) -> dict[str, Any]:
    """The table of steps, the views of a practice's own over ours. own: its templates.

    Raises Trouble with file and line where its file is no such table.
    """
    found: dict[str, Any] = yaml.safe_load((packaged() / FILE).read_text("utf-8"))
    file = own / "trace" / "steps.yaml" if own else None
    if file is None or not file.is_file():
        return found
    written, problems = read_record(file, FILE, StepsFile)
    if written is None:
        raise _trouble(problems[0].place, problems[0].message, problems[0].way_out)
    for place, message in _unknown_marks(written):
        raise _trouble(place, message, say("Name one that our table names"))
    return found | (yaml.safe_load(written.text) or {})


def _unknown_marks(written: Written[StepsFile]) -> Iterator[tuple[Place, Said]]:
    for view, known in LANDMARKS.items():
        told: ViewSteps | None = getattr(written.record, view)
        for part in ("steps", "later"):
            for number, step in enumerate(getattr(told, part) if told else ()):
                if step.mark not in known:
                    place = written.place(view, part, number, "mark")
                    yield place, say("{mark} is no landmark of the view {view}", mark=quoted(step.mark), view=view)


def _trouble(place: Place, message: Said, way_out: Said) -> Trouble:
    told = say("{file}: {message}", file=place.path, message=message)
    if place.line:
        told = say("{file}, line {line}: {message}", file=place.path, line=place.line, message=message)
    return Trouble(told, way_out or say("Mend it, or take the file away, and ours stand"))
