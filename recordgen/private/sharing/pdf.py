"""A document as a PDF that opens with the words alone: printed by a Chromium of this machine, encrypted with AES-256.

For phones and mailboxes in which an HTML file does not open. Guessing is cheaper here than in the HTML file, so only
words that were drawn will do.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import tempfile
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING

from recordgen.folders import workroom
from recordgen.private.crypto.passphrases import normal
from recordgen.problems import Trouble
from recordgen.sentences import say

if TYPE_CHECKING:
    from pypdf import PdfWriter

BROWSERS = ("chromium", "chromium-browser", "google-chrome", "chrome", "chromium-headless-shell")
# Printing takes two or three seconds; a machine under load may take long.
LONGEST_S = 120
# A password longer than this is cut. Source: ISO 32000-2, algorithm 2.A, as the qpdf manual tells it; not read itself.
LONGEST_PASSWORD_BYTES = 127

# Quiet, without an account, reports or a network: whatever the page names is not found.
_FLAGS = (
    *("--headless", "--disable-gpu", "--no-first-run", "--no-default-browser-check", "--no-pdf-header-footer"),
    *("--disable-background-networking", "--disable-component-update", "--disable-sync", "--disable-quic"),
    *("--disable-breakpad", "--disable-extensions", "--host-resolver-rules=MAP * ~NOTFOUND"),
)
# Printing runs no script and loads no file: the document carries all it shows.
_POLICY = (
    '<meta http-equiv="Content-Security-Policy" content="default-src \'none\'; '
    "style-src 'unsafe-inline'; img-src data:\">"
)
_HEAD = re.compile(r"<head\b[^>]*>", re.IGNORECASE)


class NoPdf(Trouble):
    """A PDF cannot be made here: what is missing, and what to install."""


def make_sealed_pdf(document: str, words: str) -> bytes:
    """The document as a PDF that opens with the words, typed small with one space between. Raises NoPdf."""
    _library()
    return encrypt_pdf(print_pdf(document, browser()), words)


def browser() -> str:
    """The Chromium of this machine: the one CHROMIUM names, or one on the path. Raises NoPdf where there is none."""
    found = os.environ.get("CHROMIUM") or next(filter(None, map(shutil.which, BROWSERS)), None)
    if found is None:
        raise NoPdf(say("No PDF: there is no Chromium on this machine"), say("Install one, or name it in CHROMIUM"))
    return found


def print_pdf(document: str, chromium: str) -> bytes:
    """The document as a PDF on A4 or as its styles ask, open to everybody. Raises NoPdf where the browser makes none.

    It lies on the disk meanwhile, in a folder of this user's alone that is taken away again.
    """
    with workroom(Path(tempfile.gettempdir())) as folder:
        page, pdf = folder / "page.html", folder / "page.pdf"
        page.write_text(_with_policy(document), "utf-8")
        # A browser refuses to guard itself where it runs as the machine's owner.
        flags = [*_FLAGS, "--no-sandbox"] if _is_root() else _FLAGS
        places = (f"--user-data-dir={folder}/profile", f"--print-to-pdf={pdf}", page.as_uri())
        try:
            subprocess.run([chromium, *flags, *places], capture_output=True, timeout=LONGEST_S, check=True)
            return pdf.read_bytes()
        except (OSError, subprocess.SubprocessError):
            way_out = say("Look whether it starts, or name another in CHROMIUM")
            raise NoPdf(say("No PDF: {chromium} did not print one", chromium=chromium), way_out) from None


def _with_policy(document: str) -> str:
    head = _HEAD.search(document)
    at = head.end() if head else 0
    return f"{document[:at]}{_POLICY}{document[at:]}"


def _is_root() -> bool:
    return hasattr(os, "geteuid") and os.geteuid() == 0


def encrypt_pdf(pdf: bytes, words: str) -> bytes:
    """The same PDF, encrypted with AES-256 under the words. Raises NoPdf without pypdf, ValueError for unfit words."""
    password = normal(words)
    if not 0 < len(password.encode()) <= LONGEST_PASSWORD_BYTES:
        raise ValueError(f"a PDF needs words of 1 to {LONGEST_PASSWORD_BYTES} bytes")
    writer_of = _library()
    writer = writer_of(clone_from=BytesIO(pdf))
    writer.encrypt(password, algorithm="AES-256")
    made = BytesIO()
    writer.write(made)
    return made.getvalue()


def _library() -> type[PdfWriter]:
    try:
        from pypdf import PdfWriter
    except ImportError:
        raise NoPdf(say("No PDF: pypdf is not installed"), say("Install it: pip install 'recordgen[pdf]'")) from None
    return PdfWriter
