"""A new, private folder of records: the practice, its first stable, help for the editor, and what to do next."""

from __future__ import annotations

import datetime as dt
import json
from collections.abc import Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import get_args

from recordgen.files import write_new, writing
from recordgen.git.keep import HOOKS, begin, look_through_first
from recordgen.git.troubles import GitTrouble
from recordgen.packaged import packaged
from recordgen.problems import Trouble, quoted
from recordgen.records.load.folders import NOT_FREE, SLUG
from recordgen.records.write.json_schema import FileKind, schema
from recordgen.records.write.templates import render_template
from recordgen.sentences import say

# What git runs before it keeps an entry.
HOOK = f"{HOOKS}/pre-commit"
FIRST_MESSAGE = "Records of {practice} begun"


@dataclass(frozen=True)
class StartedPractice:
    """The files made, and why they are not in git, where they are not."""

    files: list[Path]
    not_in_git: GitTrouble | None = None


def start_practice(
    folder: Path, practice_name: str, trimmer: str, stable_slug: str, stable_name: str, today: dt.date
) -> StartedPractice:
    """A new folder of records with a first stable, in git where git is there.

    Git looks through the records before each entry from then on.

    folder: new or empty. stable_slug: the name of the stable's folder, in small letters.
    Raises Trouble where the folder holds anything, where a name cannot be used, or where nothing can be written.
    """
    _free(folder)
    _check_names(stable_slug, {"practice": practice_name, "trimmer": trimmer, "stable": stable_name})
    texts = {
        "practice.yaml": render_template("practice.yaml.jinja", practice_name=practice_name, trimmer=trimmer),
        f"{stable_slug}/stable.yaml": render_template("stable.yaml.jinja", stable_name=stable_name),
        "README.md": render_template(
            "README.md.jinja",
            practice_name=practice_name,
            stable_slug=stable_slug,
            stable_name=stable_name,
            today=today,
        ),
        **dict(_for_tools()),
    }
    files = _write_files(folder, texts)
    try:
        begin(folder, FIRST_MESSAGE.format(practice=practice_name))
        look_through_first(folder)
    except GitTrouble as trouble:
        return StartedPractice(files, trouble)
    return StartedPractice(files)


def _for_tools() -> Iterator[tuple[str, str]]:
    templates = packaged() / "site_templates" / "records"
    yield ".gitignore", (templates / "gitignore").read_text("utf-8")
    yield HOOK, (templates / "pre-commit").read_text("utf-8")
    yield ".vscode/settings.json", (templates / "editor.json").read_text("utf-8")
    for kind in get_args(FileKind):
        yield f".schemas/{kind}.json", json.dumps(schema(kind), indent=1, ensure_ascii=False) + "\n"


def _free(folder: Path) -> None:
    way_out = say("Name a new folder, or an empty one")
    try:
        if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
            raise Trouble(say("{folder} holds something already", folder=folder), way_out)
    except OSError:
        raise Trouble(say("{folder} cannot be opened", folder=folder), way_out) from None


_WHOSE = {"practice": say("practice"), "trimmer": say("trimmer"), "stable": say("stable")}


def _check_names(stable_slug: str, names: dict[str, str]) -> None:
    if not SLUG.fullmatch(stable_slug) or stable_slug in NOT_FREE:
        message = say("{stable_slug} cannot be the name of a stable's folder", stable_slug=quoted(stable_slug))
        raise Trouble(message, say("Use small letters, digits and hyphens, such as old-mill"))
    for what, name in names.items():
        if not name.strip() or not name.isprintable() or len(name) > 200:
            raise Trouble(
                say("{name} cannot be the name of the {what}", name=quoted(name), what=_WHOSE[what]),
                say("Give a name on one line"),
            )


def _write_files(folder: Path, texts: Mapping[str, str]) -> list[Path]:
    """The files, all of them or none."""
    files: list[Path] = []
    with writing(folder):
        try:
            for name, text in sorted(texts.items()):
                (folder / name).parent.mkdir(parents=True, exist_ok=True)
                if write_new(folder / name, text, mode=0o755 if name == HOOK else None):
                    files.append(folder / name)
        except OSError:
            _delete_new(folder, files)
            raise
    return files


def _delete_new(folder: Path, files: Sequence[Path]) -> None:
    """Takes away files that were written just now, and the folders that hold nothing any more."""
    for path in files:
        path.unlink(missing_ok=True)
    for path in sorted(folder.rglob("*"), reverse=True):
        with suppress(OSError):
            path.rmdir()
