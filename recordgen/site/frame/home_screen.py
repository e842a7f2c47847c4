"""Lets a site live on the home screen of a phone, under its own name and mark."""

from __future__ import annotations

import json

MANIFEST = "app.webmanifest"
# The paper of the light pages, which a phone shows while the site opens.
PAPER = "#f8f5ee"


def manifest(name: str) -> bytes:
    """The site as an app, for the browser. Source: W3C Web Application Manifest (from memory, not read)."""
    told = {
        "name": name,
        "start_url": "./index.html",
        "scope": "./",
        "display": "minimal-ui",
        "background_color": PAPER,
        "theme_color": PAPER,
        "icons": [
            {"src": "assets/icon.png", "sizes": "512x512", "type": "image/png"},
            {"src": "assets/mark.svg", "sizes": "any", "type": "image/svg+xml"},
        ],
    }
    return (json.dumps(told, ensure_ascii=False, indent=1, sort_keys=True) + "\n").encode()
