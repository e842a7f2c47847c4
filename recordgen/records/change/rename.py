"""A stable or a horse gets another name, and its folder with it."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from recordgen.problems import Trouble
from recordgen.records.change.change import Change
from recordgen.records.change.subject import OneRecord, free_folder, horse_of, plain_name, stable_of
from recordgen.records.load.folders import slug_of, stable_names
from recordgen.records.models.stable import Stable
from recordgen.records.yaml.edit import with_value
from recordgen.records.yaml.read import read_record
from recordgen.sentences import Said, say


def rename_stable(records: Path, stable: str, name: str, slug: str | None = None) -> Change:
    """Another name for a stable, its folder, and the word that other stables have for it in `near`. Raises Trouble."""
    was = stable_of(records, stable)
    name, folder = _new_name(was, name, slug)
    files = {folder / "stable.yaml": with_value(was.raw, "name", name, str(was.file))}
    if folder != was.folder:
        files |= _near_others(records, was.slug, folder.name)
    return Change(
        records,
        f"{name}: was {was.record.name} before",
        (say("{old} is called {new} from now on", old=was.record.name, new=name), *_folder_note(was, folder)),
        "recordgen build",
        _folders(was, folder),
        files,
    )


def rename_horse(records: Path, which: str, name: str, slug: str | None = None) -> Change:
    """Another name for a horse and its folder. Raises Trouble."""
    was = horse_of(records, which)
    home = stable_of(records, was.folder.parent.name)
    name, folder = _new_name(was, name, slug)
    return Change(
        records,
        f"{home.record.name}: {was.record.name} is called {name} now",
        (
            say(
                "{old} at {stable} is called {new} from now on", old=was.record.name, stable=home.record.name, new=name
            ),
            *_folder_note(was, folder),
        ),
        "recordgen build",
        _folders(was, folder),
        {folder / "horse.yaml": with_value(was.raw, "name", name, str(was.file))},
    )


def _new_name(was: OneRecord[Any], name: str, slug: str | None) -> tuple[str, Path]:
    name = plain_name(name)
    wanted = slug or slug_of(name)
    folder = was.folder if wanted == was.slug else free_folder(was.folder.parent, name, slug)
    if name == was.record.name and folder == was.folder:
        raise Trouble(say("it is called {name} already", name=name), say("Give the new name"))
    return name, folder


def _folders(was: OneRecord[Any], folder: Path) -> tuple[tuple[Path, Path], ...]:
    return ((was.folder, folder),) if folder != was.folder else ()


def _folder_note(was: OneRecord[Any], folder: Path) -> tuple[Said, ...]:
    return (say("{old} becomes {new}", old=was.folder, new=folder),) if folder != was.folder else ()


def _near_others(records: Path, old: str, new: str) -> dict[Path, bytes]:
    """The files of other stables that name this one as near, with its new folder."""
    files = {}
    for slug in stable_names(records):
        file = records / slug / "stable.yaml"
        written, _ = read_record(file, str(file), Stable)
        if slug != old and written and old in written.record.near:
            near = [new if one == old else one for one in written.record.near]
            files[file] = with_value(written.text, "near", near, str(file))
    return files
