"""Lets a site live on the home screen of a phone, under its own name and mark."""

from __future__ import annotations

import json

from recordgen.site.frame.styles import light_colour

MANIFEST = "app.webmanifest"


def manifest(name: str) -> bytes:
    """The site as an app, for the browser. Source: W3C Web Application Manifest (from memory, not read)."""
    paper = light_colour("paper")
    told = {
        "name": name,
        "start_url": "./index.html",
        "scope": "./",
        "display": "minimal-ui",
        "background_color": paper,
        "theme_color": paper,
        "icons": [
            {"src": "assets/icon.png", "sizes": "512x512", "type": "image/png"},
            {"src": "assets/mark.svg", "sizes": "any", "type": "image/svg+xml"},
        ],
    }
    return (json.dumps(told, ensure_ascii=False, indent=1, sort_keys=True) + "\n").encode()
