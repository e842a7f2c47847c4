"""Details of a foot and of a trim, in sentences: what is no finding at a place and no measure."""

from __future__ import annotations

from collections.abc import Iterator

from recordgen.hoof.naming import Naming
from recordgen.records.models.foot import FootVisit, HeelForm, WallZone
from recordgen.records.models.names import ZONES, Zone
from recordgen.records.models.visit import Visit


def details_of(found: FootVisit, naming: Naming) -> tuple[str, ...]:
    """Tell how a foot landed, its heels, white line and sole, and what was taken of the wall, a sentence each."""
    return (
        *_landing(found, naming),
        *_heels(found, naming),
        *_underneath(found, naming),
        *_wall_taken_off(found, naming),
    )


def handling_of(visit: Visit, naming: Naming) -> tuple[str, ...]:
    """Tell how a horse stood for the trim and was held, a sentence each; none where nothing was written down."""
    handling = visit.handling
    if handling is None:
        return ()
    stood = [naming.phrase(f"stood_{_key(one)}") for one in handling.stood]
    return (
        *((naming.phrase("handling_stood", how=naming.listed(stood)),) if stood else ()),
        *((naming.phrase("handling_sedated"),) if handling.sedated else ()),
        *((handling.note,) if handling.note else ()),
    )


def _landing(found: FootVisit, naming: Naming) -> Iterator[str]:
    if found.landing:
        yield naming.phrase("detail_landing", how=naming.phrase(f"landing_{_key(found.landing)}"))
    if found.landing_after:
        yield naming.phrase("detail_landing_after", how=naming.phrase(f"landing_{_key(found.landing_after)}"))


def _heels(found: FootVisit, naming: Naming) -> Iterator[str]:
    if found.heels is None:
        return
    medial, lateral = found.heels.medial, found.heels.lateral
    if medial and medial == lateral:
        yield naming.phrase("detail_heels", how=_form(medial, naming))
        return
    for side, form in (("medial", medial), ("lateral", lateral)):
        if form:
            yield naming.phrase("detail_heel", place=naming.place(f"{side} heel"), how=_form(form, naming))


def _form(form: HeelForm, naming: Naming) -> str:
    return naming.phrase(f"heel_form_{form}")


def _underneath(found: FootVisit, naming: Naming) -> Iterator[str]:
    line = found.white_line
    if line and line.joint:
        yield naming.phrase(f"detail_white_line_{line.joint}")
    if line and line.colour:
        yield naming.phrase("detail_white_line_colour", how=naming.phrase(f"white_line_{line.colour}"))
    if found.sole and found.sole.against_wall:
        yield naming.phrase(f"detail_sole_{found.sole.against_wall}")


def _wall_taken_off(found: FootVisit, naming: Naming) -> Iterator[str]:
    zones = [(zone, found.wall[zone]) for zone in ZONES if found.wall and zone in found.wall]
    if parts := [f"{naming.place(zone)} {naming.mm(wall.taken)}" for zone, wall in zones if wall.taken is not None]:
        yield naming.phrase("detail_taken", parts=naming.listed(parts))
    for zone, wall in zones:
        yield from _taken_back(zone, wall, naming)


def _taken_back(zone: Zone, wall: WallZone, naming: Naming) -> Iterator[str]:
    if wall.taken_back is not None:
        yield naming.phrase("detail_taken_back", place=naming.place(zone), size=naming.mm(wall.taken_back))
    if wall.sound_connection is not None:
        key = "detail_sound" if wall.sound_connection else "detail_not_sound"
        yield naming.phrase(key, place=naming.place(zone))


def _key(words: str) -> str:
    return words.replace(" ", "_")
