"""The field page of a small practice on a host of the test, and a hand that taps it."""

from __future__ import annotations

import datetime as dt
import functools
import http.server
import ssl
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.x509.oid import NameOID
from playwright.sync_api import Browser, BrowserContext, Locator, Page

from recordgen.site.field.build import build_field
from tests.conftest import RECORDS

# The limits that a visit beside the horse is held to, and its page.
MOST_CONTACTS = 30
MOST_BYTES = 250_000
PHONE = {"viewport": {"width": 390, "height": 844}, "has_touch": True, "is_mobile": True, "ignore_https_errors": True}


def field_folder(folder: Path, stables: tuple[str, ...] = ("willowmere",), key: bytes = b"") -> Path:
    """The field page of some stables of the demo, made for the present day, since the page asks the device's clock."""
    return build_field(RECORDS, dt.date.today(), stables, folder, key)


class _Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, *args: object) -> None:
        """Say nothing."""


@contextmanager
def hosted(folder: Path, https: bool = False) -> Iterator[str]:
    """The folder at an address of this machine; with https, by a certificate that is made for it."""
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(_Quiet, directory=str(folder)))
    if https:
        how = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
        how.load_cert_chain(_certificate(folder.parent))
        server.socket = how.wrap_socket(server.socket, server_side=True)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http{'s' if https else ''}://127.0.0.1:{server.server_port}/"
    server.shutdown()


def _certificate(folder: Path) -> Path:
    key = ec.generate_private_key(ec.SECP256R1())
    name = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, "127.0.0.1")])
    now = dt.datetime.now(dt.UTC)
    made = x509.CertificateBuilder().subject_name(name).issuer_name(name).public_key(key.public_key())
    made = (
        made.serial_number(1).not_valid_before(now - dt.timedelta(days=1)).not_valid_after(now + dt.timedelta(days=1))
    )
    plain = serialization.NoEncryption()
    pem = key.private_bytes(serialization.Encoding.PEM, serialization.PrivateFormat.PKCS8, plain)
    path = folder / "certificate.pem"
    path.write_bytes(pem + made.sign(key, hashes.SHA256()).public_bytes(serialization.Encoding.PEM))
    return path


@dataclass
class Hand:
    """A hand at the phone.

    contacts: how often it touched the screen, scrolls included. said: what the console said. scrolled: to what it had
    to scroll.
    """

    page: Page
    contacts: int = 0
    said: list[str] = field(default_factory=list)
    scrolled: list[str] = field(default_factory=list)

    def _see(self, found: Locator) -> None:
        """Wait as a hand does, which touches what it sees: what the last tap changed is drawn by then."""
        found.evaluate("() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))")

    def write(self, key: str, text: str) -> None:
        """Put a text into the field that has this key."""
        found = self.page.locator(f'[data-key="{key}"]').first
        self._see(found)
        found.fill(text)

    def tap(self, key: str) -> None:
        """Tap what has this key; scrolls first where it is not to be seen, which counts as a contact."""
        found = self.page.locator(f'[data-key="{key}"]').first
        self._see(found)
        if not found.evaluate(_IN_SIGHT):
            found.evaluate("(one) => one.scrollIntoView({block: 'center', inline: 'nearest'})")
            self.contacts += 1
            self.scrolled.append(key)
        found.tap()
        self.contacts += 1

    def settled(self) -> None:
        """Wait until what was tapped is kept and shown, and a further press of the same key would be meant."""
        self.page.wait_for_timeout(150)

    def drafts(self) -> list[dict[str, Any]]:
        """Records that the device keeps, read from its store and not from the page."""
        self.settled()
        return self.page.evaluate(_KEPT)  # type: ignore[no-any-return]

    def record(self) -> dict[str, Any]:
        """The record of the one draft there is."""
        (draft,) = self.drafts()
        return draft["record"]  # type: ignore[no-any-return]


_IN_SIGHT = """(one) => {
  const box = one.getBoundingClientRect();
  const above = document.getElementById('bar').getBoundingClientRect().top;
  const bar = one.closest('#bar, .sheet, #toast') ? innerHeight : above;
  const strip = one.closest('.strip')?.getBoundingClientRect();
  const across = !strip || (box.left >= strip.left - 2 && box.right <= strip.right + 2);
  return across && box.top >= 0 && box.bottom <= bar + 2;
}"""
_KEPT = """() => new Promise((done) => {
  const request = indexedDB.open('recordgen-field');
  request.onsuccess = () => {
    const all = request.result.transaction('drafts').objectStore('drafts').getAll();
    all.onsuccess = () => { request.result.close(); done(all.result); };
  };
})"""


def phone(browser: Browser, **more: Any) -> BrowserContext:
    """A phone of its own, as wide as most."""
    return browser.new_context(**{**PHONE, **more})


def opened(context: BrowserContext, address: str) -> Hand:
    """The page opened on a phone, ready to tap."""
    page = context.new_page()
    hand = Hand(page)
    page.on("console", lambda told: hand.said.append(told.text) if told.type == "error" else None)
    page.on("pageerror", lambda told: hand.said.append(str(told)))
    page.goto(address)
    page.wait_for_selector("body[data-ready]")
    return hand


def usual_visit(hand: Hand) -> None:
    """Toe and both heels on four feet, what was done on all, two findings, the next visit."""
    hand.tap("horse-willowmere/tansy")
    hand.tap("first-foot")
    for foot, toe, heel in (
        ("left_fore", 73, 33),
        ("left_hind", 70, 31),
        ("right_hind", 69, 30),
        ("right_fore", 72, 32),
    ):
        for place, value in (("toe_length", toe), ("heel_height.medial", heel), ("heel_height.lateral", heel)):
            hand.tap(f"feet.{foot}.after.{place}-{value}")
        if foot in ("left_fore", "right_hind"):
            hand.tap("zone-lateral quarter")
            hand.tap(f"feet.{foot}.wall.lateral quarter.flare-3")
            hand.tap("sheet-close")
        hand.tap("next-foot")
    hand.tap("weeks-6")
    hand.tap("all-done-walls levelled")
