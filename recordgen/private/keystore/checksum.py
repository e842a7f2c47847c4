"""Kept files that show whether they are whole: a first line with the SHA-256 of all the rest, then the rest."""

from __future__ import annotations

import hashlib


def with_checksum(content: bytes) -> bytes:
    """The bytes to keep for a content."""
    return _line(content) + content


def verified_content(kept: bytes) -> bytes | None:
    """The content of kept bytes; None where they are not, bit for bit, what was kept."""
    line, end, content = kept.partition(b"\n")
    return content if line + end == _line(content) else None


def _line(content: bytes) -> bytes:
    return f"sha256 {hashlib.sha256(content).hexdigest()}\n".encode()
