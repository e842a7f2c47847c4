"""A tracing from the screen, taken in: looked at as `check` would, then written into the visit with all else kept."""

from __future__ import annotations

import json
from dataclasses import dataclass, field
from typing import Any

from pydantic import ValidationError

from recordgen.files import write_whole, writing
from recordgen.hoof.tracing.figures import Figures, reckoned
from recordgen.language.catalogs import ENGLISH_CODE
from recordgen.language.translator import translator_of
from recordgen.problems import Trouble
from recordgen.records.checks.sizes import Animal
from recordgen.records.checks.tracings import TracedAt, problems_of
from recordgen.records.models.foot import FootVisit
from recordgen.records.models.horse import Horse
from recordgen.records.models.tracing import ONE, TAKES, Tracing
from recordgen.records.models.visit import Visit
from recordgen.records.write.tracing import with_tracing
from recordgen.records.yaml.read import Written, read_partly
from recordgen.records.yaml.tree import document
from recordgen.sentences import Said, in_words_of, say, sentences, worded
from recordgen.site.trace.photo import PhotoToTrace

# Of the answer; the rest is known from the photograph.
TOLD = ("scale", "drawn", "model", "ridge", "hand_error", "hand_errors")
BOM = b"\xef\xbb\xbf"


@dataclass(frozen=True)
class KeptTracing:
    """Tells what became of a tracing: whether it was written, what is wrong or to be looked at, and its figures."""

    written: bool
    problems: tuple[Said, ...] = ()
    figures: Figures = field(default_factory=dict)

    def as_json(self, language: str = ENGLISH_CODE) -> dict[str, Any]:
        """The same as plain values, each figure with its standard deviation. language: its code, for what is wrong."""
        tongue = translator_of(language)
        figures = {name: [figure.value, figure.sd] for name, figure in self.figures.items()}
        return {
            "written": self.written,
            "problems": [in_words_of(tongue, problem) for problem in self.problems],
            "figures": figures,
        }


def keep_tracing(photo: PhotoToTrace, answer: bytes, near_and_off: bool = False) -> KeptTracing:
    """Write a tracing into the visit of its photograph, unless something in it is wrong.

    answer: JSON with the landmarks, scale and how it was drawn, as the screen sends it. near_and_off: how the practice
    names feet. Raises Trouble where the visit cannot take it.
    """
    told = _parse_answer(answer)
    try:
        tracing = Tracing.model_validate(_values(photo, told))
    except ValidationError as wrong:
        return KeptTracing(False, tuple(_sentence(error) for error in wrong.errors(include_url=False)))
    problems = list(problems_of(_alone(photo, tracing)))
    words = tuple(sentences(problem.message, problem.way_out) for problem in problems)
    if any(problem.level == "error" for problem in problems):
        return KeptTracing(False, words)
    _write(photo, tracing, told.get("instead_of"), near_and_off)
    return KeptTracing(True, words, reckoned(tracing, tracing.error_px()))


def _parse_answer(answer: bytes) -> dict[str, Any]:
    told: Any
    try:
        told = json.loads(answer)
    except ValueError:
        told = None
    if isinstance(told, dict) and isinstance(told.get("landmarks"), dict):
        return dict(told)
    raise Trouble(say("the screen sent no tracing"), say("Try once more; what was tapped is kept on the screen"))


def _values(photo: PhotoToTrace, told: dict[str, Any]) -> dict[str, Any]:
    """The tracing as it would be typed."""
    known: dict[str, Any] = {
        "view": photo.view,
        "moment": photo.moment,
        "of": photo.earlier[-1][1].of if photo.earlier else "photograph",
        "file": photo.file.name,
        "sha256": photo.sha256,
        "image": list(photo.size),
    }
    said = {name: told[name] for name in TOLD if told.get(name) is not None}
    marks = {name: points[0] if _is_single(name, points) else points for name, points in told["landmarks"].items()}
    return known | said | marks


def _is_single(name: str, points: Any) -> bool:
    """Tell whether a landmark is one point, which the screen sends as a list of one."""
    return TAKES.get(name) == ONE and isinstance(points, list) and len(points) == 1


def _sentence(error: Any) -> Said:
    where = ", ".join(str(step).replace("_", " ") for step in error["loc"] if isinstance(step, str))
    context = error.get("ctx") or {}
    message = context.get("message") or worded(error["msg"])
    return sentences(
        say("{name}: {message}", name=where, message=message) if where else message, context.get("way_out", "")
    )


def _alone(photo: PhotoToTrace, tracing: Tracing) -> TracedAt:
    """The tracing as if it were all that the visit holds, so that nothing else in the file stands in its way."""
    values = document(photo.shown, photo.visit.read_bytes()).values
    trimmed = values.get("trimmed") if isinstance(values, dict) else None
    visit = Visit(
        date=photo.subject.day,
        trimmed=str(trimmed).lower() not in ("no", "false"),
        feet={photo.foot: FootVisit(tracings=(tracing,))},
    )
    return TracedAt(Written(visit, photo.visit, photo.shown, b""), photo.foot, 0, tracing, _animal(photo))


def _animal(photo: PhotoToTrace) -> Animal:
    """The animal on the day of the photograph, as far as its file tells."""
    file = photo.visit.parent / "horse.yaml"
    written = read_partly(file, file.name, Horse)[0] if file.is_file() else None
    return Animal.of(written.record if written else None, photo.subject.day)


def _write(photo: PhotoToTrace, tracing: Tracing, instead_of: int | None, near_and_off: bool) -> None:
    with writing(photo.visit, say("The tracing was not written")):
        before = photo.visit.read_bytes()
        text = before.removeprefix(BOM).decode("utf-8", "replace")
        after = with_tracing(text, photo.foot, tracing, photo.shown, near_and_off, instead_of)
        head = BOM if before.startswith(BOM) else b""
        write_whole(photo.visit, head + after.encode())
