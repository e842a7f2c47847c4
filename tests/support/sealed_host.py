"""Helpers of the tests of sealed sites: a small site, its sealing, a host with a log, and a reader's hands."""

from __future__ import annotations

import http.server
import json
import shutil
import struct
import threading
import zlib
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Literal

from playwright.sync_api import Browser, BrowserContext, Page, expect

from recordgen.private.crypto.blobs import MANIFEST, MANIFEST_NAME, Blob, open_blob
from recordgen.private.crypto.passphrases import FEWEST_ITERATIONS
from recordgen.private.keystore.site_keys import SiteKeys
from recordgen.private.sealing.seal import seal
from tests.conftest import TODAY

WORDS = "larch pebble otter moss willow finch"
SECRET = "Hollowbrook"
INLINE = "document.documentElement.dataset.inline = 'ran';"


def png(side: int = 8) -> bytes:
    """A square picture."""
    rows = b"".join(b"\0" + bytes((row * 7 + column) % 256 for column in range(side)) for row in range(side))
    header = struct.pack(">IIBBBBB", side, side, 8, 0, 0, 0, 0)
    parts = [(b"IHDR", header), (b"IDAT", zlib.compress(rows)), (b"IEND", b"")]
    chunks = (
        struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data)) for kind, data in parts
    )
    return b"\x89PNG\r\n\x1a\n" + b"".join(chunks)


def page_html(title: str, base: str, more: str = "") -> str:
    """A page of the small site, with a style, a picture and a script of its own."""
    return (
        f'<!doctype html><html lang="en"><head><meta charset="utf-8"><title>{title}</title>'
        f'<link rel="icon" href="data:,"><link rel="stylesheet" href="{base}assets/look.css">'
        f"<script>{INLINE}</script></head><body><h1>{title}</h1><p>{SECRET}</p>"
        f'<img src="{base}assets/picture.png" alt="picture"><a href="{base}h/two/">Two</a>{more}</body></html>'
    )


def small_site(folder: Path, base: str, more: str = "") -> Path:
    """A site of three pages, built for a base. more: HTML to add to its front page."""
    pages = {"index.html": "Front", "h/one/index.html": "One", "h/two/index.html": "Two", "404.html": "No such page"}
    for path, title in pages.items():
        write(folder / path, page_html(title, base, more if path == "index.html" else "").encode())
    write(folder / "assets/look.css", b"h1 { color: rgb(1, 2, 3); }")
    write(folder / "assets/picture.png", png())
    write(folder / "assets/numbers.txt", b"0123456789" * 100)
    return folder


def write(path: Path, content: bytes) -> None:
    """Write a file and the folders above it."""
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(content)


@dataclass
class Stand:
    """A site, its keys, and where it is sealed to."""

    site: Path
    out: Path
    state: SiteKeys
    base: str
    link: str = ""

    def publish(self) -> None:
        """Seal what the site holds now."""
        seal(self.site, self.state, self.base, self.out, today=TODAY, own_device=True)

    @property
    def published(self) -> dict[str, bytes]:
        """All published files by path."""
        files = (path for path in self.out.rglob("*") if path.is_file())
        return {str(path.relative_to(self.out)): path.read_bytes() for path in files}

    def blob_of(self, path: str) -> str:
        """The published path of a file of the site, in the last edition."""
        manifest = Blob(MANIFEST_NAME, self.published["manifest.bin"])
        files = json.loads(open_blob(self.state.reader_key, MANIFEST, manifest))["files"]
        return f"d/{files[path][0]}.bin"


def sealed(folder: Path, site: Path, base: str) -> Stand:
    """A site sealed with `WORDS` and a link, with the fewest rounds of hashing a reader takes."""
    state = SiteKeys.new(folder / "state.json")
    state.add_words(words=WORDS, iterations=FEWEST_ITERATIONS)
    stand = Stand(site, folder / "out", state, base, state.add_link()[1])
    stand.publish()
    return stand


def sealed_small(folder: Path, base: str = "/") -> Stand:
    """The small site, sealed."""
    return sealed(folder, small_site(folder / "site", base), base)


@dataclass
class Host:
    """A host of files that keeps a log and may be made to fail.

    link: the secret of a link that opens what lies there. instead: what is answered at a published path rather than
    the file; None answers 404. down: no answer at all.
    """

    folder: Path
    base: str
    link: str
    log: list[str] = field(default_factory=list)
    instead: dict[str, bytes | None] = field(default_factory=dict)
    down: bool = False
    address: str = ""

    def found(self, path: str) -> tuple[int, str, bytes]:
        """Status, name and bytes for a path of an address."""
        if not path.startswith(self.base):
            return 200, "outside.html", b"<!doctype html><title>outside</title>"
        name = path.removeprefix(self.base)
        name = name + "index.html" if name == "" or name.endswith("/") else name
        content = self.instead[name] if name in self.instead else self._file(name)
        return (404, "404.html", self._file("404.html") or b"") if content is None else (200, name, content)

    def _file(self, name: str) -> bytes | None:
        file = self.folder / name
        return file.read_bytes() if file.is_file() else None


TYPES = {"html": "text/html", "txt": "text/plain", "js": "text/javascript", "json": "application/json"}


def _handler(host: Host) -> type[http.server.BaseHTTPRequestHandler]:
    class Handler(http.server.BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            """Answer with a file."""
            host.log.append(self.path)
            if host.down:
                self.close_connection = True
                return
            status, name, content = host.found(self.path.partition("?")[0])
            self.send_response(status)
            self.send_header("Content-Type", TYPES.get(name.rpartition(".")[2], "application/octet-stream"))
            self.send_header("Content-Length", str(len(content)))
            self.end_headers()
            self.wfile.write(content)

        do_POST = do_GET

        def log_message(self, *args: object) -> None:
            """Say nothing; the host has its own log."""

    return Handler


@contextmanager
def hosted(stand: Stand) -> Iterator[Host]:
    """A sealed site served on this machine."""
    host = Host(stand.out, stand.base, stand.link)
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), _handler(host))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    host.address = f"http://127.0.0.1:{server.server_port}{stand.base}"
    try:
        yield host
    finally:
        server.shutdown()
        server.server_close()


@contextmanager
def copied(stand: Stand, folder: Path) -> Iterator[tuple[Stand, Host]]:
    """A copy of a sealed site that a test may publish anew or damage, and its host."""
    shutil.copytree(stand.site, folder / "site")
    shutil.copytree(stand.out, folder / "out")
    state = stand.state.model_copy(deep=True)
    state._file = folder / "state.json"
    own = Stand(folder / "site", folder / "out", state, stand.base, stand.link)
    with hosted(own) as host:
        yield own, host


@contextmanager
def reader(browser: Browser, scheme: Literal["light", "dark"] = "light", width: int = 1280) -> Iterator[BrowserContext]:
    """A reader's browser that knows nothing yet."""
    context = browser.new_context(viewport={"width": width, "height": 844}, color_scheme=scheme)
    context.set_default_timeout(10_000)
    yield context
    context.close()


def unlock(page: Page, words: str = WORDS, own_device: bool = False) -> None:
    """Type the words and press Open."""
    page.locator("#words").fill(words)
    if own_device:
        page.locator("#own").check()
    page.locator("#open").click()


def opened(context: BrowserContext, host: Host, title: str = "Front", path: str = "", own_device: bool = False) -> Page:
    """A page, unlocked: on an own device by the words, otherwise by a link, which is quicker."""
    page = context.new_page()
    page.goto(host.address + path + ("" if own_device else f"#k={host.link}"))
    if own_device:
        unlock(page, own_device=True)
    expect(page.locator("h1")).to_have_text(title)
    expect(page.locator(".private-foot")).to_be_visible()
    return page


def asks_for_words(page: Page) -> None:
    """The page asks for the words and shows nothing of the site."""
    expect(page.locator("#words")).to_be_visible()
    assert SECRET not in page.content()


def until(page: Page, holds: Callable[[], bool]) -> bool:
    """Tell whether something comes to hold within some seconds."""
    for _ in range(60):
        if holds():
            return True
        page.wait_for_timeout(100)
    return False


def stop_workers(page: Page) -> None:
    """Stop all service workers, as a browser does after a while."""
    session = page.context.new_cdp_session(page)
    session.send("ServiceWorker.enable")
    session.send("ServiceWorker.stopAllWorkers")
    session.detach()


def fetched(page: Page, path: str, how: dict[str, Any] | None = None) -> dict[str, Any]:
    """Status, headers and text that a page gets for an address."""
    script = """async ([path, how]) => {
      const answer = await fetch(path, how);
      return { status: answer.status, headers: Object.fromEntries(answer.headers), text: await answer.text() };
    }"""
    found: dict[str, Any] = page.evaluate(script, [path, how or {}])
    return found
