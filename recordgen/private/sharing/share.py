"""One horse's record for the vet: asked for consent, sealed, written where it may lie, and kept in the horse's log."""

from __future__ import annotations

import datetime as dt
import errno
import os
import re
import secrets
import string
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from recordgen.files import disk_trouble, write_new, write_whole
from recordgen.hoof.export.sheet import may_be_shared
from recordgen.hoof.naming import Naming
from recordgen.private.crypto.passphrases import six_words
from recordgen.private.sharing.pdf import NoPdf, make_sealed_pdf
from recordgen.private.sharing.sheet import HorseSheet
from recordgen.private.sharing.single_file import environment, single_file
from recordgen.problems import Trouble
from recordgen.records.load.folders import Walk
from recordgen.records.models.horse import SHARED_FILE, Horse, Shared, SharedForm
from recordgen.records.models.practice import HorseRecord, Practice
from recordgen.records.write.sharing_log import append_entry
from recordgen.records.yaml.read import read_record
from recordgen.sentences import say

NOT_SHARED = say("Nothing was shared")
_BODY = re.compile(r"<body\b[^>]*>", re.IGNORECASE)


@dataclass(frozen=True)
class Handing:
    """A handing over: who gets a horse's record, on which day, how long they are asked to keep it, and what else.

    photo_days: the days whose photographs do. why: why it is sent, in the sender's words.
    """

    to: str
    on: dt.date
    until: dt.date | None = None
    photo_days: tuple[dt.date, ...] = ()
    with_pdf: bool = True
    why: str | None = None


@dataclass(frozen=True)
class SealedFile:
    """A record ready to be handed over: its entry in the log, its files, the words, and why there is no PDF.

    words: to be told once and kept nowhere.
    """

    entry: Shared
    files: Mapping[SharedForm, bytes]
    words: str
    no_pdf: NoPdf | None = None

    def __repr__(self) -> str:
        return f"Sealed({self.entry!r}, {sorted(self.files)})"


def require_consent(practice: Practice, horse: HorseRecord, today: dt.date) -> None:
    """Raises Trouble with the file, the line and the way out where the owner has not agreed to share with the vet."""
    if may_be_shared(horse.horse):
        return
    consent = horse.horse.consent
    file = _folder(practice, horse) / "horse.yaml"
    written, _ = read_record(file, Walk(practice.folder).shown(file), Horse)
    place = written.place(*(("consent", "vet") if consent else ())) if written else file
    says = say("{by} said no on {date}", by=consent.by, date=consent.date) if consent else say("nobody has agreed yet")
    way_out = say("Ask the owner, then write there: consent: {{vet: yes, by: their name, date: {today}}}", today=today)
    raise Trouble(
        say(
            "{place}: {horse}'s record may not be shared with a vet: {says}",
            place=place,
            horse=horse.horse.name,
            says=says,
        ),
        way_out,
    )


def seal_sheet(sheet: HorseSheet, handing: Handing, naming: Naming, practice: Practice) -> SealedFile:
    """The sheet of one horse, sealed under fresh words as an HTML file, and as a PDF where one can be made."""
    document = add_note(sheet.html, handing, naming, practice)
    words, no_pdf = six_words(), None
    files: dict[SharedForm, bytes] = {"html": single_file(document, words, practice.folder, naming.language).encode()}
    if handing.with_pdf:
        try:
            files["pdf"] = make_sealed_pdf(document, words)
        except NoPdf as why:
            no_pdf = why
    entry = Shared(date=handing.on, to=handing.to, edition=sheet.edition, until=handing.until, what=tuple(files))
    return SealedFile(entry, files, words, no_pdf)


def add_note(sheet: str, handing: Handing, naming: Naming, practice: Practice) -> str:
    """The sheet, headed by who handed it to whom, on which day, and until when they are asked to keep it."""
    until = naming.phrase("share_until", day=naming.day(handing.until)) if handing.until else ""
    shared = naming.phrase("share_note", to=handing.to, by=practice.file.name, day=naming.day(handing.on))
    note = environment(practice.folder).get_template("note.html.jinja").render(shared=shared, until=until)
    body = _BODY.search(sheet)
    at = body.end() if body else 0
    return f"{sheet[:at]}\n{note}\n{sheet[at:]}"


def hand_over(sealed: SealedFile, practice: Practice, horse: HorseRecord, out: Path) -> list[Path]:
    """Writes the files into `out` and an entry into the horse's log; both, or neither. Returns the files.

    Raises Trouble where a log or a file cannot be written.
    """
    log = _folder(practice, horse) / SHARED_FILE
    shown = Walk(practice.folder).shown(log)
    before = log.read_bytes().decode("utf-8-sig") if log.exists() else ""
    after = append_entry(before, sealed.entry, shown)
    written = _write_files(sealed, out)
    try:
        write_whole(Path(os.path.realpath(log)), after)
    except OSError as fault:
        left = _delete(written)
        stays = say("Delete {left}, which is not in the log", left=", ".join(map(str, left))) if left else NOT_SHARED
        raise disk_trouble(fault, shown, stays) from fault
    return written


def _folder(practice: Practice, horse: HorseRecord) -> Path:
    return practice.folder / horse.stable / horse.slug


def _write_files(sealed: SealedFile, out: Path) -> list[Path]:
    """The files under a name that tells nothing, readable by this user alone; none where one cannot be written."""
    name = "".join(secrets.choice(string.ascii_lowercase) for _ in range(8))
    written: list[Path] = []
    try:
        out.mkdir(parents=True, exist_ok=True)
        for form, content in sealed.files.items():
            path = out / f"record-{name}.{form}"
            if not write_new(path, content, mode=0o600):
                raise FileExistsError(errno.EEXIST, f"{path.name} is there already")
            written.append(path)
    except OSError as fault:
        _delete(written)
        raise disk_trouble(fault, out, NOT_SHARED) from fault
    return written


def _delete(files: list[Path]) -> list[Path]:
    """Deletes the files; returns those that are still there."""
    for path in files:
        try:
            path.unlink()
        except OSError:
            continue
    return [path for path in files if path.exists()]
