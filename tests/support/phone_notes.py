"""Visits and photographs as the page on a phone tells them."""

from __future__ import annotations

import base64
import hashlib
from typing import Any

from tests.support.photographs import drawn, file_of

Part = dict[str, Any]

DAY = "2026-11-20"
FOOT = {"before": {"toe_length": 88}, "after": {"toe_length": 80, "heel_height": {"medial": 36, "lateral": 36.5}}}


def visit(id_: str = "k7q2mfa3b", horse: str = "willowmere/bramble", day: str = DAY, **more: Any) -> Part:
    """A visit at which one foot was measured. more: over the keys of its part, such as rev, name or record."""
    record = {"feet": {"left_fore": FOOT}, "next": {"weeks": 6}}
    told = {"kind": "visit", "id": id_, "rev": 1, "horse": horse, "name": "Bramble", "date": day}
    return {**told, "began": f"{day}T09:00:00.000Z", "changed": f"{day}T09:20:00.000Z", "record": record, **more}


def photo(of: str = "k7q2mfa3b", id_: str = "p1", jpeg: bytes | None = None, **more: Any) -> Part:
    """A photograph of the left fore's sole; a small drawn picture unless told otherwise."""
    content = file_of(drawn()) if jpeg is None else jpeg
    told = {"kind": "photo", "id": id_, "visit": of, "foot": "left_fore", "view": "sole", "moment": "after"}
    shown = {
        "taken": f"{DAY}T09:10:00.000Z",
        "width": 320,
        "height": 240,
        "sha256": hashlib.sha256(content).hexdigest(),
    }
    return {**told, **shown, "jpeg": base64.b64encode(content).decode(), **more}


def parts(*inside: Part, practice: str = "Hazel Hoof Care", page: str = "2026-11-01") -> list[Part]:
    """All parts of a file: its head, what is inside, its end."""
    counts = {f"{kind}s": sum(part.get("kind") == kind for part in inside) for kind in ("visit", "photo")}
    head = {"kind": "head", "practice": practice, "page": page, "made": f"{DAY}T18:00:00.000Z", **counts}
    return [head, *inside, {"kind": "end", **counts}]
