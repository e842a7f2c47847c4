"""The field page written into a folder, and shown on this machine."""

from __future__ import annotations

import functools
import http.server
import os
from collections.abc import Sequence
from datetime import date
from pathlib import Path

from recordgen.files import filling, write_whole
from recordgen.folders import replace_folder, workroom
from recordgen.hoof.summary import summarise_stable
from recordgen.locks import hold_lock
from recordgen.problems import Trouble
from recordgen.records.load.everything import read_whole
from recordgen.site.context import ways_of
from recordgen.site.field.page import field_files
from recordgen.site.site_folders import FIELD, mark_folder, refuse_place


def build_field(records: Path, today: date, stables: Sequence[str], out: Path, key: bytes = b"") -> Path:
    """Write the field page of some stables, or of all, as of a day, into a folder of `out`; that folder.

    key: the practice's public key, for which the phone seals what it hands over. Raises Trouble for a stable that is
    not there and for a folder that may not be written.
    """
    whole = read_whole(records, today)
    ways = ways_of(whole)
    slugs = [one.slug for one in whole.practice.stables]
    unknown = [name for name in stables if name not in slugs]
    if unknown:
        raise Trouble(f"there is no stable '{unknown[0]}'", f"The stables there are: {', '.join(slugs)}")
    wanted = [one for one in whole.practice.stables if not stables or one.slug in stables]
    files = field_files(
        [summarise_stable(one, ways, today) for one in wanted], ways, today, key, records / "site_templates"
    )
    return _put(files, out)


def _put(files: dict[str, bytes], out: Path) -> Path:
    refuse_place(out / FIELD, FIELD)
    with filling(out, "The page before stays as it is"):
        out.mkdir(mode=0o700, parents=True, exist_ok=True)
        with hold_lock(out, f"sites are being built in {out}"), workroom(Path(os.path.realpath(out))) as room:
            (room / FIELD).mkdir()
            for name, content in files.items():
                write_whole(room / FIELD / name, content)
            mark_folder(room / FIELD, FIELD)
            replace_folder(room / FIELD, out / FIELD)
    return out / FIELD


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
