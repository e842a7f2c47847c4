"""The page of methods: how figures come about, how far off they may be, and where each is from."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from recordgen.hoof.cautions.cautions import LEVELS
from recordgen.hoof.measures.measures import measures_of
from recordgen.hoof.tracing.errors.camera import TRUE_ANGLES, camera_table
from recordgen.hoof.tracing.errors.draws import DRAWS
from recordgen.hoof.tracing.errors.tilt import AWAY_MM, OFF_PLANE_MM, TILT_DEG
from recordgen.records.models.annotations import Range, range_at
from recordgen.records.models.reference import MeasureWords, Reference
from recordgen.site.model import Page
from recordgen.site.pages.renderer import PageRenderer

METHOD = "method.md"


@dataclass(frozen=True)
class MeasureRow:
    """One measure as the page tells it. unit: of its errors. range: outside which it is asked about."""

    words: MeasureWords
    unit: str
    range: Range | None


@dataclass(frozen=True)
class ErrorReason:
    """The reason for the error of one reading, taken in a way; told once for all measures of which it holds.

    sds: the errors, each with its unit.
    """

    way: str
    source: str
    assumed: bool
    sds: tuple[tuple[float, str], ...]


def render_method(renderer: PageRenderer) -> Page:
    """Tell how figures are read, how sure they are, and where that comes from."""
    tables = renderer.context.ways.reference
    rows = list(_measure_rows(tables))
    return renderer.render(
        METHOD,
        renderer.phrase("menu_method"),
        "method.md",
        measures=rows,
        reasons=_error_reasons(rows),
        cautions=tables.cautions,
        classes=tables.classes,
        levels=LEVELS,
        hand_error=renderer.context.ways.hand_error,
        draws=DRAWS,
        tilt_deg=TILT_DEG,
        away_mm=AWAY_MM,
        off_plane_mm=OFF_PLANE_MM,
        camera=camera_table(),
        camera_angles=TRUE_ANGLES,
    )


def _measure_rows(tables: Reference) -> Iterator[MeasureRow]:
    """Each measure once, in the order of the table, also where it is taken in every zone of the wall."""
    units = {measure.name: "°" if measure.unit == "degrees" else measure.unit for measure in measures_of(tables)}
    for name, words in tables.measures.items():
        yield MeasureRow(words, units[name], range_at(words.path) if words.path else None)


def _error_reasons(rows: Iterable[MeasureRow]) -> list[ErrorReason]:
    """The reasons of all errors, each once, by way of measuring in the order in which the table names them."""
    sds: dict[tuple[str, str, bool], dict[tuple[float, str], None]] = {}
    for row in rows:
        for way, method in row.words.methods.items():
            sds.setdefault((way, method.source, method.assumed), {})[method.sd, row.unit] = None
    ways = list(dict.fromkeys(way for way, *_ in sds))
    reasons = [ErrorReason(*key, tuple(sorted(errors, key=lambda one: one[::-1]))) for key, errors in sds.items()]
    return sorted(reasons, key=lambda one: ways.index(one.way))
