"""Folders that look like sealed sites, for tests of where they are put."""

from __future__ import annotations

import base64
import hashlib
import json
from pathlib import Path

from recordgen.private.publishing.ownership import Ours

SITE = "d2lsbG93bWVyZS1hLWlkLg"
OURS = Ours(SITE)


def sealed_like(folder: Path, edition: str, blobs: int = 4, site: str = SITE) -> Path:
    """A folder with the names of a sealed site, whose contents tell one edition from another."""
    (folder / "d").mkdir(parents=True)
    for number in range(blobs):
        drawn = hashlib.sha256(f"{edition}{number}".encode()).digest()
        name = base64.b32encode(drawn[:16]).decode().rstrip("=").lower()
        (folder / "d" / f"{name}.bin").write_bytes(b"SLD1" + drawn)
    for name in ("index.html", "404.html", "sw.js"):
        (folder / name).write_text(f"{name} of {edition}\n")
    (folder / "manifest.bin").write_bytes(b"SLD1\2" + edition.encode())
    (folder / "keys.json").write_text(json.dumps({"site": site, "edition": edition}))
    (folder / "robots.txt").write_text("User-agent: *\nDisallow: /\n")
    (folder / ".nojekyll").touch()
    return folder
