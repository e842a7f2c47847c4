"""The stable or the horse that a change is about: its folder, its file, and what stands in it."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Generic, TypeVar

from recordgen.problems import Problems, Trouble, quoted
from recordgen.records.load.everything import RecordsTrouble
from recordgen.records.load.folders import NOT_FREE, SLUG, slug_of, stable_meant
from recordgen.records.models.fields import Record
from recordgen.records.models.horse import Horse
from recordgen.records.models.stable import Stable
from recordgen.records.yaml.read import read_record
from recordgen.sentences import say

Kind = TypeVar("Kind", bound=Record)


@dataclass(frozen=True)
class OneRecord(Generic[Kind]):
    """A stable or a horse as its file tells it."""

    folder: Path
    file: Path
    record: Kind
    raw: bytes

    @property
    def slug(self) -> str:
        """The name of the folder."""
        return self.folder.name


def stable_of(records: Path, slug: str) -> OneRecord[Stable]:
    """A stable by its folder. Raises Trouble where there is none, or where its file is wrong."""
    file = records / slug / "stable.yaml"
    if not SLUG.fullmatch(slug) or not file.is_file():
        raise Trouble(say("there is no stable {slug}", slug=quoted(slug)), stable_meant(slug, records))
    return _read(file, Stable)


def horse_of(records: Path, which: str) -> OneRecord[Horse]:
    """A horse by stable/horse. Raises Trouble where there is none, or where its file is wrong."""
    stable, _, horse = which.partition("/")
    home = stable_of(records, stable)
    file = home.folder / horse / "horse.yaml"
    if not SLUG.fullmatch(horse) or not file.is_file():
        raise Trouble(
            say("there is no horse {horse} at {home}", horse=quoted(horse), home=home.record.name),
            say("See all: recordgen list"),
        )
    return _read(file, Horse)


def _read(file: Path, model: type[Kind]) -> OneRecord[Kind]:
    written, problems = read_record(file, file.as_posix(), model)
    if written is None:
        raise RecordsTrouble(Problems(problems))
    return OneRecord(file.parent, file, written.record, written.text)


def free_folder(around: Path, name: str, slug: str | None = None) -> Path:
    """The folder in which something of a name is begun: such as old-mill for Old Mill.

    slug: the folder's own name, where it was told. Raises Trouble where that is no name for one, or is taken.
    """
    folder = slug or slug_of(name)
    if not SLUG.fullmatch(folder) or folder in NOT_FREE:
        message = say("{folder} cannot be the name of a folder here", folder=quoted(folder or name))
        raise Trouble(
            message, say("Name another with --folder, in small letters, digits and hyphens, such as old-mill")
        )
    if (around / folder).exists():
        raise Trouble(
            say("there is {around} already", around=around / folder),
            say("Name another with --folder, such as {folder}-2", folder=folder),
        )
    return around / folder


def plain_name(name: str) -> str:
    """A name on one line, without blanks around it. Raises Trouble for an empty one."""
    plain = " ".join(name.split())
    if not plain:
        raise Trouble(say("a name is empty"), say("Give it one, such as Bramble"))
    return plain
