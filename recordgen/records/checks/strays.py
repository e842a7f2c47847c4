"""Files in the records' folder that are no records, and pictures that tell where and when they were taken.

None of them is put into git by `recordgen commit`; `check` tells them, and the hook that git runs before an entry.
"""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path, PurePath, PurePosixPath
from shlex import quote

from recordgen.git.repository import Files, contents_of, files_about_to_add, files_of, staged_files
from recordgen.git.troubles import GitTrouble
from recordgen.problems import Place, Problem, Problems, warning
from recordgen.records.layout import home_of
from recordgen.records.load.folders import BESIDE, LEFT_BEHIND, OWN_FOLDERS, PICTURES, RECEIVED, Walk
from recordgen.records.photos.metadata import FIRST_BYTES, is_picture, metadata_in
from recordgen.sentences import Said, counted, listed, say

_NO_RECORD = say("this file is no record")
_MESSAGES = {
    **dict.fromkeys(PICTURES, say("this picture is no photograph of the records")),
    **dict.fromkeys(
        (".html", ".htm", ".pdf", ".csv"), say("this file is no record, and as a sheet it would not be sealed")
    ),
    ".ics": say("this calendar is no record"),
}


def with_strays(problems: Problems, root: Path, only: str | None = None) -> Problems:
    """The problems of reading a practice, and those of the files in its folder that are no records.

    root: the practice's folder. only: the folder of the one stable that was read. What was told of a file in reading
    goes before, but for a mere warning that it is not read.
    """
    told = {problem.place.path: problem for problem in problems}
    strays, around = [], Path(os.path.realpath(root)).parent
    for stray in stray_problems(Walk(root), only):
        before = told.get(stray.place.path)
        if before is None or (before.level == "warning" and not os.path.isdir(around / before.place.path)):
            strays.append(stray)
    instead = {stray.place.path for stray in strays if stray.level == "warning"}
    return Problems([*(one for one in problems if one.place.path not in instead), *strays], problems.seen)


def stray_problems(walk: Walk, only: str | None = None) -> Iterator[Problem]:
    """Problems of files that are no records, and of pictures with metadata, wherever they lie.

    walk: through the practice's folder. only: the folder of the one stable to look at. What git ignores is left alone.
    """
    try:
        found, about_to_be, refused = files_of(walk.root), staged_files(walk.root), files_about_to_add(walk.root)
    except GitTrouble:
        found, about_to_be = Files(frozenset(), frozenset(), frozenset(_on_disk(walk.root))), {}
        refused = frozenset()
    strays = _Strays(walk, found, only, refused)
    pictures = list(strays.pictures(about_to_be))
    yield from pictures
    told = {picture.place.path for picture in pictures}
    yield from (stray for stray in strays.others() if stray.place.path not in told)


def _on_disk(root: Path) -> Iterator[str]:
    """The files under a folder that is not in git; hidden ones, built sites and what was received are left alone."""
    for at, folders, files in os.walk(root):
        inside = Path(at).relative_to(root)
        folders[:] = [
            name for name in folders if not name.startswith(".") and (inside.parts or name not in ("sites", RECEIVED))
        ]
        yield from ((inside / name).as_posix() for name in files if not LEFT_BEHIND.fullmatch(name))


@dataclass(frozen=True)
class _Strays:
    """Tells of the files of one folder. refused: those that a hook stops, since git is about to add them."""

    walk: Walk
    files: Files
    only: str | None
    refused: frozenset[str]

    def pictures(self, about_to_be: Mapping[str, str]) -> Iterator[Problem]:
        """The pictures with metadata: those on the disk, and those that git is about to keep."""
        for name in sorted(self.files.tracked | self.files.new):
            told = self._metadata_on_disk(name) if self._is_wanted(name) else ()
            if told:
                yield self._picture_problem(name, told)
        names = {content: name for name, content in about_to_be.items() if self._is_wanted(name)}
        names = {content: name for content, name in names.items() if PurePath(name).suffix != ".yaml"}
        for content, data in contents_of(self.walk.root, names):
            if told := metadata_in(data or b""):
                yield self._picture_problem(names[content], told)

    def _is_wanted(self, name: str) -> bool:
        return self.only is None or name.startswith(f"{self.only}/")

    def _metadata_on_disk(self, name: str) -> tuple[str, ...]:
        """Problems of a picture; photographs in their place are looked at where they are read."""
        home = home_of(PurePosixPath(name))
        path = self.walk.root / name
        if (home and home.part != "template") or os.path.islink(path) or not os.path.isfile(path):
            return ()
        try:
            with path.open("rb") as file:
                begins = file.read(FIRST_BYTES)
                return metadata_in(begins + file.read()) if is_picture(begins) else ()
        except OSError:
            return ()

    def _picture_problem(self, name: str, told: tuple[str, ...]) -> Problem:
        message = say(
            "this picture carries {told}, which may tell where, when and by whom it was taken", told=listed(told)
        )
        return Problem(self._place(name), "picture-tells-where", message, self._way_out_of_picture(name))

    def _way_out_of_picture(self, name: str) -> Said:
        home = home_of(PurePosixPath(name))
        if home and home.part == "photograph":
            return say("Make it plain: recordgen photo --clean {name}; then git add {name}", name=quote(name))
        if home:
            return say("Save it again without them")
        told = {"command": _command(name), "name": quote(name)}
        if name in self.files.tracked:
            return say("Take it in: {command}; then git rm --cached {name}, and move it out of the records", **told)
        return say("Take it in: {command}; then move it out of the records", **told)

    def others(self) -> Iterator[Problem]:
        """Every other file that is no record; a folder that holds nothing else is told once."""
        names = self.files.tracked | self.files.new
        homes = {name: home_of(PurePosixPath(name)) for name in names}
        alive = {str(folder) for name, home in homes.items() if home for folder in PurePosixPath(name).parents}
        strays: dict[str, list[str]] = {}
        for name in sorted(name for name, home in homes.items() if home is None and name not in self.files.ignored):
            if BESIDE.fullmatch(PurePosixPath(name).name):
                # It is asked about where the visits are read.
                continue
            if self._is_wanted(name) and os.path.lexists(self.walk.root / name):
                strays.setdefault(_outermost_folder(name, alive), []).append(name)
        for name, inside in strays.items():
            yield self._stray(name, inside)

    def _stray(self, name: str, inside: list[str]) -> Problem:
        suffix = PurePosixPath(name).suffix.lower()
        message, recursive = _MESSAGES.get(suffix, _NO_RECORD), ""
        if name.endswith("/"):
            message, recursive = say("this folder holds no record ({files})", files=counted(len(inside), "file")), "-r "
        way_out = say("Move it out of the records, or write /{name} into .gitignore", name=name)
        if suffix in PICTURES:
            way_out = say("Take it in: {command}. Then move it out of the records", command=_command(name))
        if not self.files.tracked.intersection(inside):
            return warning(
                self._place(name),
                "file-no-record",
                say("{message}, so it is not kept in git", message=message),
                way_out,
            )
        out = f"git rm --cached {recursive}{quote(name)}"
        if self.refused.intersection(inside):
            way_out = say(
                "{way_out}. Leave it out: {out}; to keep it all the same: git commit --no-verify",
                way_out=way_out,
                out=out,
            )
            return Problem(
                self._place(name),
                "file-no-record",
                say("{message}, and git is about to keep it for good", message=message),
                way_out,
            )
        return warning(
            self._place(name),
            "file-no-record",
            say("{message}, but git knows it", message=message),
            say("{way_out}. To take it out there: {out}", way_out=way_out, out=out),
        )

    def _place(self, name: str) -> Place:
        return Place(self.walk.shown(self.walk.root / name))


def _outermost_folder(name: str, alive: set[str]) -> str:
    """The outermost folder around a file that holds no record at all, or the file itself."""
    above = [str(folder) for folder in PurePosixPath(name).parents][-2::-1]
    return next((f"{folder}/" for folder in above if folder not in alive), name)


def _command(name: str) -> str:
    """Tell how a picture is taken in; of which horse, where its place tells it."""
    parts = PurePosixPath(name).parts
    horse = "/".join(parts[:2]) if len(parts) > 2 and parts[0] not in OWN_FOLDERS else "STABLE/HORSE"
    return f"recordgen photo {horse} {quote(name)} --foot LF --view sole"
