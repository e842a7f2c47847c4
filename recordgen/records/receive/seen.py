"""A memory of what was taken in: each visit by its id, so that nothing comes in twice and a killed run goes on."""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass
from pathlib import Path
from textwrap import indent

from recordgen.files import write_new, write_whole, writing
from recordgen.problems import Trouble
from recordgen.records.load.folders import RECEIVED
from recordgen.records.models.fields import Record, Text, Whole, YesNo, field, list_field
from recordgen.records.yaml.read import read_record
from recordgen.records.yaml.write import as_yaml
from recordgen.sentences import say

SEEN_FILE = "seen.yaml"
_HEAD = "# What was taken in before, so that nothing comes in twice. Kept by recordgen receive."


class SeenVisit(Record):
    """One visit, as it was taken in last."""

    rev: Whole = field("which of its states it was", ...)
    horse: Text = field("stable/horse", ...)
    file: Text | None = field("its file; none where it was left out, or another record of that day was kept")
    sum: Text | None = field("SHA-256 of the text that was written")
    photos: dict[str, Text] = field("file of each photograph by its id", {})
    waiting: tuple[Text, ...] = list_field("questions about it that are still open")
    answers: dict[str, Text] = field("answers by which it was taken in, by their questions", {})
    begun: YesNo = field("whether taking it in was begun and not ended", False)


class SeenFile(Record):
    """All visits by their ids, and the horses that were made for some of them."""

    visits: dict[str, SeenVisit] = field("visits by id", {})
    horses: dict[str, Text] = field("the horse that was made, by the question that asked for it", {})


@dataclass
class SeenVisits:
    """The visits that are remembered. file: where; None where nothing is to be written."""

    file: Path | None
    visits: dict[str, SeenVisit] = dataclasses.field(default_factory=dict)
    horses: dict[str, str] = dataclasses.field(default_factory=dict)
    _written: dict[str, str] = dataclasses.field(default_factory=dict)

    @classmethod
    def read(cls, folder: Path, dry_run: bool = False) -> SeenVisits:
        """Read what is remembered in a folder. Raises Trouble where it cannot be read."""
        file = folder / SEEN_FILE
        seen = cls(None if dry_run else file)
        if file.exists():
            written, problems = read_record(file, f"{folder.name}/{SEEN_FILE}", SeenFile)
            if written is None:
                way_out = say(
                    "Mend that line; or take the file away, and visits that came before are asked about again"
                )
                raise Trouble(
                    say("what was taken in before cannot be read: {problems}", problems=problems[0].as_line()), way_out
                )
            seen.visits, seen.horses = dict(written.record.visits), dict(written.record.horses)
        return seen

    def keep(self, id_: str, visit: SeenVisit | None) -> None:
        """Remember a visit, or forget it where None. Raises Trouble."""
        if visit is None:
            self.visits.pop(id_, None)
        else:
            self.visits[id_] = visit
        if self.file is None:
            return
        self._written.pop(id_, None)
        with writing(self.file):
            write_whole(self.file, self._text(), mode=0o600)

    def _text(self) -> str:
        """All of it as the text of its file. Each visit is put into words once, since a sheet may bring thousands."""
        for id_, visit in self.visits.items():
            if id_ not in self._written:
                record = visit.model_dump(mode="json", exclude_defaults=True)
                self._written[id_] = indent(as_yaml({id_: record}), "  ")
        visits = "".join(self._written[id_] for id_ in self.visits)
        horses = as_yaml({"horses": self.horses}) if self.horses else ""
        return f"{_HEAD}\nvisits:\n{visits}{horses}" if visits else f"{_HEAD}\nvisits: {{}}\n{horses}"


def received_folder(records: Path) -> Path:
    """The folder for what was handed over, made where it is missing, with a note that keeps it out of git.

    Raises Trouble.
    """
    folder = records / RECEIVED
    with writing(folder):
        folder.mkdir(mode=0o700, exist_ok=True)
        write_new(folder / ".gitignore", "# What phones handed over stays on this computer.\n*\n")
    return folder


def keep_raw(folder: Path, name: str, raw: bytes) -> Path:
    """Keep the bytes of a file before anything is done with them: the file here, the same for the same bytes.

    name: to keep it under; another with the same name and other bytes gets a number. Raises Trouble.
    """
    stem, dot, ending = name.rpartition(".")
    for number in range(1, 1000):
        path = folder / (name if number == 1 else f"{stem}-{number}{dot}{ending}")
        with writing(path):
            if write_new(path, raw, mode=0o600):
                return path
        if path.is_file() and path.read_bytes() == raw:
            return path
    raise Trouble(
        say("there are too many files named {name} in {folder}", name=name, folder=folder), say("Look through them")
    )
