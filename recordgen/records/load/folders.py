"""Tell which folders and files of the records are read, and what is told about the others."""

from __future__ import annotations

import os
import re
import unicodedata
from pathlib import Path

from recordgen.days import days_meant
from recordgen.nearest import did_you_mean
from recordgen.problems import Place, Problem, Problems, warning
from recordgen.records.models.horse import SHARED_FILE
from recordgen.sentences import Said, say

# What phones handed over, as it came; stays on this computer.
RECEIVED = "received"
# Tables of usual outlines of a sole, made of the practice's own tracings.
OUTLINES = "outlines"
# Folders that are no stable and no horse: own templates, care notes, pages and outlines, photographs, sites built here.
OWN_FOLDERS = {"site_templates", "care", "pages", OUTLINES, "photos", "sites", RECEIVED}
# What lies beside the stables' folders and is read for each of them.
SHARED = frozenset({"practice.yaml", "care", "pages", OUTLINES, "site_templates"})
# How the names of picture files end.
PICTURES = {".jpg", ".jpeg", ".png", ".webp", ".heic", ".heif", ".avif", ".gif", ".tif", ".tiff", ".bmp"}
# The trimmer's own site has this name, so no stable can.
TAKEN = "practice"
# The page for the phone has this one.
FIELD = "field-notes"
# Names that Windows keeps for devices: no computer with it could take in the records. Source: Microsoft, Naming Files,
# Paths, and Namespaces, from memory.
DEVICES = {"con", "prn", "aux", "nul", *(f"{port}{number}" for port in ("com", "lpt") for number in range(1, 10))}
# What has a name already where the pages of stables and horses lie, so that neither can.
_HAS_NAME = {
    TAKEN: say("the trimmer's own site"),
    FIELD: say("the trimmer's page for the phone"),
    "index": say("the first page of a site"),
    "jobs": say("the page of a stable's jobs"),
    "rounds": say("the calendar of the rounds"),
    **dict.fromkeys(DEVICES, say("a device of Windows")),
}
# No folder of a stable or a horse has one of these names.
NOT_FREE = OWN_FOLDERS | _HAS_NAME.keys()
VISIT_FILE = re.compile(r"([0-9]{4}-[0-9]{2}-[0-9]{2})(-[b-z])?\.yaml")
# A visit that was received on a day of which another record was there already.
BESIDE = re.compile(r"([0-9]{4}-[0-9]{2}-[0-9]{2})(-[b-z])?\.received\.yaml")
SLUG = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")

# What editors and systems leave behind; nobody means it as a record.
LEFT_BEHIND = re.compile(r"\..*|.*~|#.*#|.*\.(bak|tmp|swp|swo|orig)|thumbs\.db|desktop\.ini", re.IGNORECASE)


class Walk:
    """A walk through the folder of the records that gathers problems on the way."""

    def __init__(self, root: Path) -> None:
        self.root = root
        self.inside = Path(os.path.realpath(root))
        self.problems = Problems()

    def shown(self, path: Path) -> str:
        """The path as people see it: with the folder's own name in front, forward slashes, signs that print."""
        text = (Path(self.inside.name) / path.relative_to(self.root)).as_posix()
        return "".join(sign if sign.isprintable() else "?" for sign in text)

    def tell(self, path: Path, code: str, message: Said, way_out: Said) -> None:
        """Keep an error about a file or folder as a whole."""
        self.problems.add(Problem(Place(self.shown(path)), code, message, way_out))

    def entries(self, parent: Path) -> list[Path]:
        """Entries of a folder, in the order of the names; nothing, and a problem, where it cannot be opened."""
        try:
            return sorted(parent.iterdir())
        except OSError:
            self.tell(
                parent, "folder-not-opened", say("the folder cannot be opened"), say("Look whether you may open it")
            )
            return []

    def may_read(self, path: Path) -> bool:
        """Tell whether a file that is wanted is there, is a file, and lies inside the records; a problem where not."""
        if self.leads_out(path):
            return False
        if os.path.isfile(path):
            return True
        if os.path.exists(path):
            self.tell(
                path,
                "file-not-plain",
                say("this is no plain file"),
                say("Give the folder another name, and write the record in a file"),
            )
        elif misnamed := self._misnamed(path):
            self.tell(
                misnamed,
                "file-misnamed",
                say("this file is not read: it is not named {name}", name=path.name),
                say("Name it {name}", name=path.name),
            )
        else:
            self.tell(
                path,
                "file-missing",
                say("this file is missing"),
                say("Make it, with a line such as name: {name}", name=path.parent.name.title().replace("-", " "))
                if path.name in ("horse.yaml", "stable.yaml")
                else say("Make it; recordgen schema {stem} tells what goes in", stem=path.stem),
            )
        return False

    def leads_out(self, path: Path, out_of: Path | None = None) -> bool:
        """Tell whether a path is a link that leads nowhere, or out of the records; a problem where so.

        out_of: the folder of the records that it must not lead out of; the records where None.
        """
        if not os.path.islink(path):
            return False
        try:
            target = Path(os.path.realpath(path, strict=True))
        except OSError:
            self.tell(path, "link-leads-nowhere", say("this link leads nowhere"), say("Put the file itself here"))
            return True
        if target.is_relative_to(self.inside / (out_of or "")):
            return False
        self.tell(
            path,
            "link-leads-out",
            say("this link leads out of {out_of}", out_of=out_of or say("the records")),
            say("Put the file itself here"),
        )
        return True

    def _misnamed(self, path: Path) -> Path | None:
        return next((other for other in self.entries(path.parent) if _means(other.name) == path.name), None)

    def folders(self, parent: Path, only: str | None = None) -> list[Path]:
        """The folders of stables or horses in `parent`; with `only`, the one of that name."""
        wanted = (path for path in self.entries(parent) if only in (None, path.name))
        return [path for path in wanted if self._is_place(path)]

    def _is_place(self, path: Path) -> bool:
        if path.name.startswith(".") or not os.path.isdir(path):
            return False
        if path.name in OWN_FOLDERS:
            self._not_lost(path)
            return False
        if self.leads_out(path) or _is_somebody_elses(path):
            return False
        if path.name in _HAS_NAME:
            message = say("the name {name} is taken by {has_name}", name=path.name, has_name=_HAS_NAME[path.name])
            self.tell(path, "folder-name-taken", message, say("Give the folder another name"))
            return False
        if SLUG.fullmatch(path.name):
            return True
        message = say("the folder's name cannot be part of an address")
        way_out = say("Use small letters, digits and hyphens, such as {name}", name=slug_of(path.name) or "old-mill")
        self.tell(path, "folder-name", message, way_out)
        return False

    def _not_lost(self, path: Path) -> None:
        """Tell where a stable or a horse lies in a folder that is read for something else."""
        if any(os.path.lexists(path / name) for name in ("stable.yaml", "horse.yaml")):
            message = say(
                "a folder named {name} is read for something else, not as a stable or a horse", name=path.name
            )
            self.tell(path, "folder-name-taken", message, say("Give the folder another name"))
        if path.name == "photos" and any(one.suffix.lower() in PICTURES for one in self.entries(path)):
            message = say("photographs are not read here")
            self.problems.add(
                warning(
                    Place(self.shown(path)), "photos-misplaced", message, say("They lie in a horse's folder, in photos")
                )
            )

    def strangers(self, parent: Path, known: set[str]) -> None:
        """Tell of the files in `parent` that are not read."""
        missing = {
            name for name in ("stable.yaml", "horse.yaml") if name in known and not os.path.lexists(parent / name)
        }
        for path in self.entries(parent):
            meant = _means(path.name)
            if path.name in known or meant in missing or LEFT_BEHIND.fullmatch(path.name) or os.path.isdir(path):
                continue
            if beside := BESIDE.fullmatch(path.name):
                self._ask_about(path, beside[1])
            elif meant is None:
                self.problems.add(
                    warning(
                        Place(self.shown(path)), "file-not-read", say("this file is not read"), say("Move it elsewhere")
                    )
                )
            else:
                self.tell(path, "file-misnamed", say("this file is not read"), _named_rightly(meant, known))

    def _ask_about(self, path: Path, day: str) -> None:
        message = say("this visit was received beside another record of {day}, and is not read", day=day)
        way_out = say(
            "Put what is right into {day}.yaml and delete this file; or, as a second visit, name it {day}-b.yaml",
            day=day,
        )
        self.problems.add(warning(Place(self.shown(path)), "visit-beside", message, way_out))

    def unread_folders(self, horse: Path) -> None:
        """Tell of the folders beside a horse's visits that nobody reads."""
        for path in self.entries(horse):
            if os.path.isdir(path) and path.name not in OWN_FOLDERS and not LEFT_BEHIND.fullmatch(path.name):
                if VISIT_FILE.fullmatch(path.name) or path.name == "horse.yaml":
                    continue
                way_out = say("Visits lie beside horse.yaml, pictures in photos")
                self.problems.add(
                    warning(Place(self.shown(path)), "folder-not-read", say("this folder is not read"), way_out)
                )


def stable_names(records: Path) -> list[str]:
    """The folders of a practice that are stables, by name and in order; none where the folder cannot be looked at."""
    return sorted(file.parent.name for file in records.glob("*/stable.yaml"))


def stable_meant(typed: str, records: Path) -> Said:
    """The way out where a practice has no stable in a folder of that name."""
    at = next((one.parent.parent.name for one in sorted(records.glob(f"*/{typed}/horse.yaml"))), "") if typed else ""
    if at and SLUG.fullmatch(typed):
        return say("{typed} is a horse at {at}; name that stable", typed=typed, at=at)
    return did_you_mean(typed, stable_names(records), say("A stable is a folder with a stable.yaml in it"))


def _is_somebody_elses(folder: Path) -> bool:
    """Tell whether a folder holds files of which none is a record or a photograph in its place."""
    found = False
    for _, folders, files in os.walk(folder):
        if "photos" in folders or any(_means(name) for name in files):
            return False
        found = found or bool(files)
    return found


def slug_of(name: str) -> str:
    """A folder's name for a stable or a horse: `Old Mill` becomes old-mill; empty where no letter or digit is left."""
    plain = unicodedata.normalize("NFKD", name.casefold()).encode("ascii", "ignore").decode()
    return "-".join(re.findall("[a-z0-9]+", plain.replace("'", "")))


def _means(name: str) -> str | None:
    """The name of a record that a file's name is near to: small letters and `.yaml`; None for other files."""
    stem, dot, ending = name.lower().rpartition(".")
    if ending == "txt" and (stem.endswith((".yaml", ".yml")) or _day_in(stem) or stem in ("horse", "stable")):
        stem, ending = re.sub(r"\.ya?ml$", "", stem), "yaml"
    if not dot and _day_in(name):
        return f"{name}.yaml"
    return f"{stem}.yaml" if dot and ending in ("yaml", "yml") else None


def _day_in(stem: str) -> str:
    """The one day that the beginning of a file's name tells, in any form, as year-month-day; empty where none is."""
    found = re.match(r"[0-9]{1,4}[-._][0-9]{1,2}[-._][0-9]{1,4}", stem)
    days = days_meant(found[0].replace("_", "-")) if found else []
    return days[0].isoformat() if len(days) == 1 else ""


def _named_rightly(meant: str, known: set[str]) -> Said:
    if "horse.yaml" not in known:
        return say("A stable holds stable.yaml and a folder for each horse; visits lie in the horse's folder")
    if (meant == SHARED_FILE or VISIT_FILE.fullmatch(meant)) and meant not in known:
        return say("Name it {meant}", meant=meant)
    if meant == "horse.yaml":
        return say("There is a horse.yaml already: put what is right into it, and delete this file")
    if (day := _day_in(meant)) and f"{day}.yaml" not in known:
        return say("Name it {day}.yaml", day=day)
    return say("A visit's file is named by its day: 2026-10-14.yaml, a second one 2026-10-14-b.yaml")
