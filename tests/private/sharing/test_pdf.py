"""The encrypted PDF, read back by qpdf, which did not write it."""

from __future__ import annotations

import http.server
import shutil
import sys
import threading
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path

import pikepdf
import pytest

from recordgen.private.sharing import pdf
from recordgen.private.sharing.pdf import NoPdf, encrypt_pdf, make_sealed_pdf, print_pdf
from tests.support.single_file import DOCUMENT, WORDS, needed_browser

PLAIN = pikepdf.new()
PLAIN.add_blank_page()
PLAIN.docinfo["/Title"] = "Bramble at Willowmere"


@pytest.fixture(scope="module")
def plain() -> bytes:
    """A PDF that everybody may read."""
    made = BytesIO()
    PLAIN.save(made)
    return made.getvalue()


@pytest.fixture
def browser() -> str:
    """The Chromium of this machine."""
    return needed_browser()


def test_it_opens_with_the_words(plain: bytes) -> None:
    """Whole, with AES of 256 bits for text and pictures, in the form of PDF 2.0 (revision 6)."""
    with pikepdf.open(BytesIO(encrypt_pdf(plain, WORDS)), password=WORDS) as opened:
        method = opened.encryption.stream_method

        assert (opened.encryption.R, opened.encryption.bits, method.name) == (6, 256, "aesv3")
        assert (str(opened.docinfo["/Title"]), len(opened.pages)) == ("Bramble at Willowmere", 1)


@pytest.mark.parametrize("typed", ["", "amber lotus drum fig harbor ten", "Amber lotus drum fig harbor nine"])
def test_it_opens_with_nothing_else(plain: bytes, typed: str) -> None:
    """No words, a wrong one, a capital."""
    with pytest.raises(pikepdf.PasswordError):
        pikepdf.open(BytesIO(encrypt_pdf(plain, WORDS)), password=typed)


def test_no_word_is_left_in_the_clear(plain: bytes) -> None:
    """The title stands in the plain file and not in the encrypted one."""
    assert b"Willowmere" in plain
    assert b"Willowmere" not in encrypt_pdf(plain, WORDS)


def test_each_encryption_is_another(plain: bytes) -> None:
    """The same words make another file each time."""
    assert encrypt_pdf(plain, WORDS) != encrypt_pdf(plain, WORDS)


@pytest.mark.parametrize("words", ["", "a" * 128])
def test_words_that_a_pdf_would_cut_are_refused(plain: bytes, words: str) -> None:
    """None at all, and more than 127 bytes."""
    with pytest.raises(ValueError, match="1 to 127 bytes"):
        encrypt_pdf(plain, words)


def test_a_chromium_prints_the_document(browser: str) -> None:
    """Each visit on a page of its own as the styles ask, and the sealed one is encrypted."""
    with pikepdf.open(BytesIO(make_sealed_pdf(DOCUMENT, WORDS)), password=WORDS) as opened:
        assert len(opened.pages) == 2


@pytest.fixture
def asked() -> Iterator[tuple[str, list[str]]]:
    """The address of a server on this machine, and what it was asked for."""
    found: list[str] = []

    class Told(http.server.BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            found.append(self.path)
            self.send_error(404)

        def log_message(self, *args: object) -> None:
            """Say nothing."""

    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), Told)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}", found
    server.shutdown()


@pytest.mark.parametrize(("policy", "resolver", "fetched"), [(1, 0, []), (0, 1, []), (0, 0, ["/a", "/b"])])
def test_printing_asks_no_network(
    browser: str,
    asked: tuple[str, list[str]],
    policy: bool,
    resolver: bool,
    fetched: list[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Each of the two guards alone keeps a picture and a style from being fetched; without both they are fetched."""
    if not policy:
        monkeypatch.setattr(pdf, "_POLICY", "")
    if not resolver:
        monkeypatch.setattr(pdf, "_FLAGS", [flag for flag in pdf._FLAGS if "resolver" not in flag])
    at, found = asked
    print_pdf(DOCUMENT.replace("<h1>", f"<img src='{at}/a'><link rel=stylesheet href='{at}/b'><h1>"), browser)

    assert sorted(found) == fetched


def test_nothing_readable_is_left_on_the_disk(browser: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The folder in which it was printed is gone."""
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))
    print_pdf(DOCUMENT, browser)

    assert list(tmp_path.iterdir()) == []


def test_without_a_browser_it_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    """A sentence with the way out."""
    monkeypatch.delenv("CHROMIUM", raising=False)
    monkeypatch.setattr(shutil, "which", lambda name: None)
    with pytest.raises(NoPdf, match="there is no Chromium on this machine") as told:
        make_sealed_pdf(DOCUMENT, WORDS)

    assert told.value.way_out == "Install one, or name it in CHROMIUM"


def test_without_the_library_it_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    """A sentence with the line to type."""
    monkeypatch.setitem(sys.modules, "pypdf", None)
    with pytest.raises(NoPdf, match="pypdf is not installed") as told:
        make_sealed_pdf(DOCUMENT, WORDS)

    assert told.value.way_out == "Install it: pip install 'recordgen[pdf]'"


def test_a_browser_that_prints_nothing_is_told(tmp_path: Path) -> None:
    """Its name and the way out."""
    with pytest.raises(NoPdf, match="did not print one") as told:
        print_pdf(DOCUMENT, str(tmp_path / "no-browser"))

    assert told.value.way_out == "Look whether it starts, or name another in CHROMIUM"
