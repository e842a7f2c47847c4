"""Whose row it is: the horse that a sheet names, found among those of the practice."""

from __future__ import annotations

from dataclasses import dataclass

from recordgen.nearest import did_you_mean
from recordgen.problems import Trouble, quoted
from recordgen.records.load.folders import slug_of
from recordgen.records.receive.whose import Horses
from recordgen.records.sheets.columns import ColumnsFile
from recordgen.sentences import say


@dataclass(frozen=True)
class Owner:
    """A horse of a sheet. which: as stable/horse, or stable/? where it is not known. name: as it was typed."""

    which: str
    name: str

    @property
    def key(self) -> str:
        """Tells it from every other horse of the sheet."""
        return self.which if not self.which.endswith("?") else f"{self.which} {' '.join(self.name.lower().split())}"


def owner_of(horse: str, stable: str, horses: Horses, file: ColumnsFile) -> Owner:
    """The horse that a row names. Raises Trouble where its stable is not known, or several could be meant.

    horse: its name, its folder, or stable/horse. stable: empty where no column tells it.
    """
    whole = horse.strip().lower()
    if whole in horses.horses:
        return Owner(whole, horse)
    slug = _stable_of(stable, horses, file)
    found = [
        which
        for which, one in horses.horses.items()
        if slug in (None, which.partition("/")[0]) and _is_named(horse, which, one.name)
    ]
    if len(found) == 1:
        return Owner(found[0], horse)
    if slug is None:
        message = (
            say("there are several horses {horse}", horse=quoted(horse))
            if found
            else say("there is no horse {horse} here", horse=quoted(horse))
        )
        way_out = say("Tell the stable: stable: its folder in the file of columns, or a column that is: stable")
        raise Trouble(message, way_out)
    return Owner(f"{slug}/?", horse)


def _is_named(typed: str, which: str, name: str) -> bool:
    plain = " ".join(typed.lower().split())
    return plain == " ".join(name.lower().split()) or slug_of(typed) == which.partition("/")[2]


def _stable_of(typed: str, horses: Horses, file: ColumnsFile) -> str | None:
    """The folder of the stable that a row names, or of the one that is told for all rows; None where none is told."""
    told = typed.strip() or file.stable
    if not told:
        return None
    meant = {name.lower(): slug for name, slug in file.stables.items()}.get(told.lower(), told)
    for slug, name in horses.stables.items():
        if meant.lower() in (slug, name.lower()) or slug_of(meant) == slug:
            return slug
    way_out = did_you_mean(
        told,
        [*horses.stables.values()],
        say("Begin the stable first, or write stables: {{{told}: its folder}}", told=told),
    )
    raise Trouble(say("there is no stable {told} here", told=quoted(told)), way_out)
