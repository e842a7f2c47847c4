"""Tell where the templates and the base configuration lie: beside the package in a clone, inside it once installed."""

from __future__ import annotations

from functools import cache
from pathlib import Path


@cache
def packaged() -> Path:
    """The folder that holds `site_templates` and `mkdocs.yml`."""
    package = Path(__file__).parent
    return package if (package / "site_templates").is_dir() else package.parent
