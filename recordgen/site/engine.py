"""One site to a folder of files, by MkDocs."""

from __future__ import annotations

import logging
import os
import tempfile
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import Any

from jinja2 import TemplateError
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import MkDocsException
from mkdocs.livereload import LiveReloadServer

from recordgen.folders import replace_folder, workroom
from recordgen.packaged import packaged
from recordgen.problems import Trouble
from recordgen.sentences import say
from recordgen.site.model import Placed, Site

# The one thing MkDocs dates: the entries of the site map.
FIXED_TIME = "0"


def write_site(site: Site, folder: Path, records: Path) -> Mapping[str, Sequence[Placed]]:
    """Write a site into an empty or new folder, without its finished pages and files; its dated parts, by page.

    records: the practice's folder, whose own theme files and assets go before ours. Raises OSError on a full disk and
    the like, and Trouble where the engine gives up.
    """
    logging.getLogger("mkdocs").setLevel(logging.ERROR)
    os.environ["SOURCE_DATE_EPOCH"] = FIXED_TIME
    config = configuration(site, folder)
    with_own_theme(config, records)
    try:
        config.plugins.on_startup(command="build", dirty=False)
        # What the engine calls dirty leaves out the pages that stand finished; the folder is new all the same.
        build(config, dirty=any(page.finished for page in site.pages))
    except (TemplateError, MkDocsException) as fault:
        message = say("the site of {site} cannot be built: {fault}", site=site.name, fault=fault)
        raise Trouble(message, say("Look at your own files under site_templates/theme")) from fault
    plugin: Any = config.plugins["recordgen"]
    placed: Mapping[str, Sequence[Placed]] = plugin.placed
    return placed


def configuration(site: Site, folder: Path) -> MkDocsConfig:
    """The base configuration, set to write one site."""
    return load_config(
        str(packaged() / "mkdocs.yml"),
        site_dir=str(folder.resolve()),
        plugins=[{"recordgen": {"site": site}}],
    )


def with_own_theme(config: MkDocsConfig, records: Path) -> None:
    """Let a practice's own theme files go before ours."""
    own = records / "site_templates" / "theme"
    if own.is_dir():
        config.theme.dirs.insert(0, str(own))


def serve_site(first: Site, make: Callable[[], Site | None], records: Path, port: int) -> None:
    """Serve a site on this machine alone until interrupted, made anew when a record or a template changes.

    first: the site to begin with. make: the site as of now, or None where it cannot be made; what was served before
    then stays.
    Raises OSError where the port is taken.
    """
    with workroom(Path(tempfile.gettempdir())) as folder:
        root = folder / "site"

        def rebuild() -> None:
            site = make()
            if site is not None:
                _replace(site, root, records)

        server = LiveReloadServer(rebuild, "127.0.0.1", port, str(root), mount_path="/")
        _replace(first, root, records)
        server.watch(str(records.resolve()))
        server.watch(str(packaged() / "site_templates"))
        try:
            server.serve()  # type: ignore[no-untyped-call]
        except KeyboardInterrupt:
            server.shutdown()


def _replace(site: Site, root: Path, records: Path) -> None:
    with workroom(root.parent) as room:
        write_site(site, room / "fresh", records)
        replace_folder(room / "fresh", root)
