"""Opens a single file by the form its module tells, with Python's own steps where there are any."""

from __future__ import annotations

import base64
import hashlib
import json
import os
import re
import zlib
from typing import Any

import pytest
from cryptography.hazmat.primitives.ciphers.aead import AESGCM

from tests.conftest import chromium

WORDS = "amber lotus drum fig harbor nine"
DOCUMENT = """<!doctype html>
<html lang="en" class="sheet"><head><meta charset="utf-8"><title>Bramble at Willowmere</title>
<style>h1 { color: rgb(10, 120, 60); } @media print { .screen { display: none; } .visit { break-after: page; } }</style>
</head><body data-kind="sheet"><h1>Bramble</h1><p class="screen">Only on a screen</p>
<section class="visit"><p>Toe of the left fore 92 mm, then 83 mm</p></section>
<section class="visit"><img alt="a dot" src="data:image/svg+xml,%3Csvg xmlns='http://www.w3.org/2000/svg'/%3E"></section>
<script>document.title = "ran";</script></body></html>
"""


def seal_of(page: str) -> dict[str, Any]:
    """Values beside the sealed document."""
    found = re.search(r'id="seal">(.*?)</script>', page)
    assert found
    seal: dict[str, Any] = json.loads(found[1])
    return seal


def sealed_of(page: str) -> bytes:
    """The sealed bytes."""
    found = re.search(r'id="sealed">(.*?)</script>', page)
    assert found
    return base64.b64decode(found[1], validate=True)


def frame_of(page: str, words: str) -> bytes:
    """The length, the packed document and the padding. Raises InvalidTag where the words do not fit."""
    seal = seal_of(page)
    key = hashlib.pbkdf2_hmac("sha256", words.encode(), base64.b64decode(seal["salt"]), seal["iter"])
    bound = f"sld1 file|{seal['id']}|{seal['iter']}".encode()
    return AESGCM(key).decrypt(base64.b64decode(seal["iv"]), sealed_of(page), bound)


def opened(page: str, words: str) -> str:
    """The document inside. Raises InvalidTag where the words do not fit."""
    frame = frame_of(page, words)
    return zlib.decompress(frame[4 : 4 + int.from_bytes(frame[:4], "big")]).decode()


def needed_browser() -> str:
    """The Chromium of this machine; without one the test is skipped, or fails where it is required."""
    found = chromium()
    if found is None:
        told = "no Chromium on this machine; install one, or name it in CHROMIUM"
        (pytest.fail if os.environ.get("RECORDGEN_BROWSER") == "required" else pytest.skip)(told)
    return found
