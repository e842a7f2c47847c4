"""Stables and horses by what was typed: a folder, a name in any case, a part of the way where only one fits."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from pathlib import Path

from recordgen.records.load.folders import SLUG, slug_of
from recordgen.records.models.fields import without_quotes

_NAME = re.compile(r"^name:[ \t]*(.*?)[ \t]*$", re.MULTILINE)
# The name stands in the first lines; a longer file is not read to its end for it.
_HEAD_BYTES = 4096


def stables_meant(records: Path, typed: str) -> list[str]:
    """The folders of the stables that somebody may mean: the folder itself, else those of that name, in order."""
    plain = typed.strip().rstrip("/")
    for slug in (plain, slug_of(plain) if "/" not in plain else ""):
        if SLUG.fullmatch(slug) and (records / slug / "stable.yaml").is_file():
            return [slug]
    return [file.parent.name for file in _files(records, "*/stable.yaml") if _is_named(file, plain)]


def horses_meant(records: Path, typed: str) -> list[str]:
    """The horses that somebody may mean as stable/horse: by folders, else by names; of all stables where none is told.

    Such as "Hazel Bottom/Bilberry", or bilberry alone.
    """
    stable, slash, horse = typed.strip().rstrip("/").rpartition("/")
    stables = stables_meant(records, stable) if slash else ["*"]
    files = [file for one in stables for file in _files(records, f"{one}/*/horse.yaml")]
    for slug in (horse, slug_of(horse)):
        if found := [_which(file) for file in files if slug and file.parent.name == slug]:
            return found
    return [_which(file) for file in files if _is_named(file, horse)]


def folder_of_horse(records: Path, stable: str, typed: str) -> str:
    """The folder's name of the one horse of a stable that somebody may mean; else what was typed."""
    found = horses_meant(records, f"{stable}/{typed}")
    return found[0].partition("/")[2] if len(found) == 1 else typed


def all_stables(records: Path) -> Iterator[tuple[str, str]]:
    """Each stable's folder and name."""
    return ((file.parent.name, _name_in(file)) for file in _files(records, "*/stable.yaml"))


def all_horses(records: Path) -> Iterator[tuple[str, str]]:
    """Each horse as stable/horse, and its name."""
    return ((_which(file), _name_in(file)) for file in _files(records, "*/*/horse.yaml"))


def _files(records: Path, pattern: str) -> Iterable[Path]:
    return (file for file in sorted(records.glob(pattern)) if SLUG.fullmatch(file.parent.name))


def _which(file: Path) -> str:
    return f"{file.parent.parent.name}/{file.parent.name}"


def _is_named(file: Path, typed: str) -> bool:
    name = _name_in(file)
    return bool(typed) and "/" not in typed and (_plain(name) == _plain(typed) or slug_of(name) == slug_of(typed) != "")


def _plain(name: str) -> str:
    return " ".join(name.casefold().split())


def _name_in(file: Path) -> str:
    """The name that a record's file begins with; empty where none can be read at a glance."""
    try:
        with file.open("rb") as opened:
            head = opened.read(_HEAD_BYTES).decode("utf-8-sig", "replace").replace("\r", "")
    except OSError:
        return ""
    found = _NAME.search(head)
    return _bare(found[1]) if found else ""


def _bare(text: str) -> str:
    """A value without its quotes and the remark behind it."""
    if text[:1] in ("'", '"') and (end := text.find(text[0], 1)) > 0:
        return text[1:end]
    return without_quotes(re.split(r"\s+#", text, maxsplit=1)[0])
