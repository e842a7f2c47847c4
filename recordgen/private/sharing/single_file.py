"""One document in a file of its own that nobody reads without the words: its code travels with it and asks no network.

    <script type="application/json" id="seal">{"v": 1, "id", "iter", "salt", "iv"}</script>
    <script type="text/plain" id="sealed">base64</script>

The sealed bytes are AES-256-GCM under PBKDF2-HMAC-SHA256 of the words, bound to the text `sld1 file|id|iter`; inside:
length (4, big-endian), the document packed by zlib, zeros up to a padded length. Salt, iv and id are drawn each time.
"""

from __future__ import annotations

import base64
import json
import secrets
import struct
import zlib
from pathlib import Path

from jinja2 import Environment
from markupsafe import Markup

from recordgen.language.catalogs import catalog_of
from recordgen.language.direction import isolated
from recordgen.language.spoken import ENGLISH, Language
from recordgen.private.crypto.blobs import padme
from recordgen.private.crypto.passphrases import ITERATIONS, normal, pbkdf2
from recordgen.private.crypto.primitives import NONCE_BYTES, encrypt
from recordgen.records.sandbox import templates_of
from recordgen.site.single_page import policy_hash
from recordgen.site.templates import speak

SALT_BYTES = 16


def single_file(document: str, words: str, own: Path, language: Language = ENGLISH) -> str:
    """A page that shows the document to whoever types the words, and to nobody else.

    document: a whole HTML document that needs no other file. own: the records' folder, whose templates go before ours.
    language: in which the page asks for the words.
    Raises ValueError for no words at all.
    """
    if not normal(words):
        raise ValueError("a file needs words")
    templates = environment(own, language)
    script = templates.get_template("record.js").render()
    sealed = seal(document, words)
    hashed = Markup(policy_hash(script))
    page = templates.get_template("record.html.jinja")
    return page.render(script=Markup(script), script_hash=hashed, seal=_as_data(sealed[0]), sealed=sealed[1])


def seal(document: str, words: str) -> tuple[dict[str, str | int], str]:
    """Values a reader needs beside the words (version, id, rounds, salt, iv), and the sealed document in base64."""
    salt, iv, name = secrets.token_bytes(SALT_BYTES), secrets.token_bytes(NONCE_BYTES), secrets.token_hex(4)
    key = pbkdf2(normal(words).encode(), salt, ITERATIONS)
    sealed = encrypt(key, iv, _pad(document), f"sld1 file|{name}|{ITERATIONS}".encode())
    beside: dict[str, str | int] = {"v": 1, "id": name, "iter": ITERATIONS, "salt": b64(salt), "iv": b64(iv)}
    return beside, b64(sealed)


def _pad(document: str) -> bytes:
    packed = zlib.compress(document.encode(), 9)
    whole = struct.pack(">I", len(packed)) + packed
    return whole.ljust(padme(len(whole)), b"\0")


def b64(content: bytes) -> str:
    """Bytes in base64."""
    return base64.b64encode(content).decode()


def _as_data(value: dict[str, str | int]) -> Markup:
    # Hexadecimal, base64 and numbers hold nothing that could end the script element.
    return Markup(json.dumps(value))


def environment(own: Path, language: Language = ENGLISH) -> Environment:
    """The templates of what is handed over: a practice's own, then ours."""
    made = templates_of("private", own, autoescape=True, finalize=isolated)
    made.globals["language"] = language
    speak(made, catalog_of(language.code))
    return made
