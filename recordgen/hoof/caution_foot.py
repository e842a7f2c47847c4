"""What one record of a foot or of a zone of its wall says: the rules that look at nothing else."""

from __future__ import annotations

from recordgen.hoof.age import years_old
from recordgen.hoof.caution_seen import Answer, Cleared, Raised, Seen

# Told from this depth or length of a gap on. Common practice, no source.
SEPARATION_DEPTH_MM = 10
SEPARATION_LENGTH_MM = 40
# A limb is young until this birthday. Common practice, no source.
YOUNG_YEARS = 2


def object_in_foot(seen: Seen) -> Answer:
    """Something sticks in the foot; ends when the same place is recorded with it taken out."""
    thing = seen.found.object
    if thing is None:
        return None
    if not thing.still_in:
        return Cleared(thing.where)
    return Raised({"what": thing.what, "where": seen.naming.place(thing.where)}, thing.where)


def object_taken_out(seen: Seen) -> Answer:
    """Something stuck in the foot and was taken out; no later record can say otherwise."""
    thing = seen.found.object
    if thing is None or thing.still_in:
        return None
    return Raised({"what": thing.what, "where": seen.naming.place(thing.where)}, thing.where)


def bears_no_weight(seen: Seen) -> Answer:
    """The foot takes no weight."""
    return _when(seen.found.bears_weight, "not")


def bears_less(seen: Seen) -> Answer:
    """The foot is spared at rest."""
    return _when(seen.found.bears_weight, "less")


def wound(seen: Seen) -> Answer:
    """A wound, each place of the foot for itself; no later record can say otherwise."""
    found = seen.found.wound
    return Raised({"where": seen.naming.place(found.where)}, found.where) if found else None


def abscess(seen: Seen) -> Answer:
    """An abscess that has not drained; one of a foot at a time, since it comes out elsewhere than it was suspected."""
    found = seen.found.abscess
    if found is None:
        return None
    if found.state == "drained":
        return Cleared()
    return Raised({"where": seen.naming.place(found.where), "state": found.state or "suspected"})


def frog_tissue(seen: Seen) -> Answer:
    """Proud or creamy tissue of the frog."""
    tissue = seen.found.frog.tissue if seen.found.frog else None
    if tissue is None:
        return None
    return Cleared() if tissue == "usual" else Raised({"what": tissue})


def painful_infection(seen: Seen) -> Answer:
    """An infection of the frog that hurts or bleeds."""
    return _when(seen.found.frog.infection if seen.found.frog else None, "painful or bleeding")


def painful_groove(seen: Seen) -> Answer:
    """A groove of the frog that is deep and hurts; ends when it is no longer deep, or no longer hurts."""
    frog = seen.found.frog
    if frog is None:
        return None
    if frog.infection == "deep groove" and frog.painful:
        return Raised({})
    shallow = frog.infection is not None and frog.infection != "deep groove"
    return Cleared() if shallow or frog.painful is False else None


def sole_sensitive(seen: Seen) -> Answer:
    """A sole that hurts under the thumbs."""
    return _when(seen.found.sole.sensitive if seen.found.sole else None, True)


def sole_gives(seen: Seen) -> Answer:
    """A sole that gives under the thumbs."""
    return _when(seen.found.sole.gives if seen.found.sole else None, True)


def pulse(seen: Seen) -> Answer:
    """A raised or strong pulse at the foot; ends with a usual one."""
    if seen.found.pulse is None:
        return None
    return Cleared() if seen.found.pulse == "usual" else Raised({"what": seen.found.pulse})


def heat(seen: Seen) -> Answer:
    """A hoof that is warmer than the others."""
    return _when(seen.found.heat, True)


def testers(seen: Seen) -> Answer:
    """A reaction to hoof testers."""
    found = seen.found.testers
    if found is None:
        return None
    return Raised({"where": f" ({found.where})" if found.where else ""}) if found.reaction else Cleared()


def deviation(seen: Seen) -> Answer:
    """A bend or turn of a limb of an animal under two years, or of one whose birth is not told."""
    born = seen.horse.born
    if seen.found.deviation is None or (born and years_old(born, seen.visit.date) >= YOUNG_YEARS):
        return None
    return Raised({"what": seen.found.deviation})


def crack_open(seen: Seen) -> Answer:
    """A crack with blood or moisture; ends when neither was seen in it."""
    crack = seen.wall.crack
    if crack is None:
        return None
    if crack.blood or crack.moisture:
        return Raised({"what": "blood" if crack.blood else "moisture", "where": seen.where})
    return Cleared() if crack.blood is crack.moisture is False else None


def separation(seen: Seen) -> Answer:
    """A gap at the white line, 10 mm deep or 40 mm long and over."""
    gap = seen.wall.separation
    if gap is None or (gap.depth is None and gap.length is None):
        return None
    if (gap.depth or 0) >= SEPARATION_DEPTH_MM or (gap.length or 0) >= SEPARATION_LENGTH_MM:
        return Raised({"where": seen.where, "size": seen.naming.size(gap.length, gap.depth)})
    return Cleared()


def _when(found: object, bad: object) -> Answer:
    """Raised by one answer, cleared by any other, silent where there is none."""
    if found is None:
        return None
    return Raised({}) if found == bad else Cleared()
