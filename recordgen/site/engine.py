"""One site to a folder of files, by MkDocs."""

from __future__ import annotations

import logging
import os
from pathlib import Path

from mkdocs.commands.build import build
from mkdocs.commands.serve import serve
from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig

from recordgen.packaged import packaged
from recordgen.site.model import Site

# The one thing MkDocs dates: the entries of the site map.
FIXED_TIME = "0"


def write_site(site: Site, folder: Path, records: Path) -> None:
    """Write a site into an empty or new folder.

    records: the practice's folder, whose own theme files and assets go before ours. Raises OSError on a full disk and
    the like, and mkdocs.exceptions.Abort where the engine gives up.
    """
    logging.getLogger("mkdocs").setLevel(logging.ERROR)
    os.environ["SOURCE_DATE_EPOCH"] = FIXED_TIME
    config = configuration(site, folder)
    with_own_theme(config, records)
    config.plugins.on_startup(command="build", dirty=False)
    build(config)


def configuration(site: Site, folder: Path) -> MkDocsConfig:
    """The base configuration, set to write one site."""
    return load_config(
        str(packaged() / "mkdocs.yml"),
        site_dir=str(folder),
        plugins=["search", {"recordgen": {"site": site}}],
    )


def with_own_theme(config: MkDocsConfig, records: Path) -> None:
    """Let a practice's own theme files go before ours."""
    own = records / "site_templates" / "theme"
    if own.is_dir():
        config.theme.dirs.insert(0, str(own))


def serve_site(records: Path, today: str, stable: str, port: int) -> None:
    """Serve a site on this machine alone until interrupted, rebuilt when a record or a template changes.

    today: ISO 8601, empty for the day of each rebuild. stable: empty for the trimmer's own site.
    Raises mkdocs.exceptions.Abort where the records hold errors, and OSError where the port is taken.
    """
    logging.getLogger("mkdocs").addHandler(_to_terminal())
    options = {"records": str(records.resolve()), "today": today, "stable": stable}
    serve(
        str(packaged() / "mkdocs.yml"),
        dev_addr=f"127.0.0.1:{port}",
        watch=[str(packaged() / "site_templates")],
        plugins=["search", {"recordgen": options}],
    )


def _to_terminal() -> logging.Handler:
    handler = logging.StreamHandler()
    handler.setFormatter(logging.Formatter("%(message)s"))
    logging.getLogger("mkdocs").setLevel(logging.INFO)
    return handler
