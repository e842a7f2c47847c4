"""The field page written into a folder, and shown on this machine."""

from __future__ import annotations

import functools
import http.server
import os
from collections.abc import Sequence
from datetime import date
from pathlib import Path

from recordgen.cache.entries import Cache
from recordgen.files import filling, write_whole
from recordgen.folders import replace_folder, workroom
from recordgen.hoof.summary import summarise_stable
from recordgen.locks import hold_lock
from recordgen.problems import Trouble
from recordgen.records.load.everything import Whole, read_whole
from recordgen.records.load.folders import FIELD
from recordgen.sentences import say
from recordgen.site.context import ways_of
from recordgen.site.field.page import field_files
from recordgen.site.site_folders import mark_folder, refuse_place


def build_field(records: Path, today: date, stables: Sequence[str], out: Path, key: bytes = b"") -> Path:
    """Write the field page of some stables, or of all, as of a day, into a folder of `out`; that folder.

    key: the practice's public key, for which the phone seals what it hands over. Raises Trouble for a stable that is
    not there and for a folder that may not be written.
    """
    whole = read_whole(records, today)
    slugs = [one.slug for one in whole.practice.stables]
    unknown = [name for name in stables if name not in slugs]
    if unknown:
        raise Trouble(
            say("there is no stable '{unknown}'", unknown=unknown[0]),
            say("The stables there are: {slugs}", slugs=", ".join(slugs)),
        )
    refuse_place(out / FIELD, FIELD)
    with filling(out, say("The page before stays as it is")):
        out.mkdir(mode=0o700, parents=True, exist_ok=True)
        with (
            hold_lock(out, say("sites are being built in {out}", out=out)),
            workroom(Path(os.path.realpath(out))) as room,
        ):
            (room / FIELD).mkdir()
            write_field(whole, today, room / FIELD, key, stables=stables)
            mark_folder(room / FIELD, FIELD)
            replace_folder(room / FIELD, out / FIELD)
    return out / FIELD


def write_field(
    whole: Whole,
    today: date,
    folder: Path,
    key: bytes,
    sealed: bool = False,
    stables: Sequence[str] = (),
    cache: Cache | None = None,
) -> None:
    """Write the files of the field page into an empty folder.

    sealed: whether it will be sealed, and then lies in the care of that site's worker. stables: those wanted, or all.
    cache: of figures and holidays; the user's own where None.
    """
    ways = ways_of(whole, cache)
    wanted = [one for one in whole.practice.stables if not stables or one.slug in stables]
    known = [summarise_stable(one, ways, today) for one in wanted]
    own = whole.practice.folder / "site_templates"
    for name, content in field_files(known, ways, today, key, own, sealed, whole.practice.outlines).items():
        write_whole(folder / name, content)


def serve_field(folder: Path, port: int) -> None:
    """Show a folder on this machine alone until interrupted. Raises OSError where the port is taken."""
    handler = functools.partial(_Quiet, directory=str(folder))
    with http.server.ThreadingHTTPServer(("127.0.0.1", port), handler) as server:
        try:
            server.serve_forever()
        except KeyboardInterrupt:
            return


class _Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, *args: object) -> None:
        """Say nothing of each request."""
