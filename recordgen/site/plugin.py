"""The MkDocs plugin: hands the pages of a site to the engine as generated files and fills in their pictures last.

With this and `engine.py` the engine ends; everything else of the room knows only `Site` and `Page`.
"""

from __future__ import annotations

import base64
import datetime as dt
import logging
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader
from markupsafe import escape
from mkdocs.config import base as config_base
from mkdocs.config import config_options as option
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.plugins import BasePlugin
from mkdocs.structure.files import File, Files
from mkdocs.structure.pages import Page as EnginePage
from mkdocs.utils import get_theme_dir

from recordgen.language.catalogs import catalog_of
from recordgen.language.direction import isolated
from recordgen.language.spoken import language_of
from recordgen.packaged import packaged
from recordgen.problems import Trouble
from recordgen.records.load.everything import RecordsTrouble
from recordgen.records.sandbox import sandboxed
from recordgen.sentences import sentences
from recordgen.site.frame.home_screen import MANIFEST, manifest
from recordgen.site.frame.search_index import PLACE, index_script
from recordgen.site.frame.styles import style_of
from recordgen.site.model import Page, Placed, Site
from recordgen.site.templates import compiled_once, speak

log = logging.getLogger("mkdocs.plugins.recordgen")

# The mark of the site, and the scripts of every page, in this order; search is loaded when somebody searches.
MARK = "assets/mark.svg"
SCRIPTS = ("assets/recordgen.js", "assets/ticks.js", "assets/horse.js")


# Of the theme under our frame only the templates and marks are taken.
THEME = Path(get_theme_dir("material"))


def _inside(mark: Path) -> str:
    """A mark of the browser's tab as an address that holds it: asked for as a file, a host would see the asking."""
    return f"data:image/svg+xml;base64,{base64.b64encode(mark.read_bytes()).decode()}"


def _generate_file(config: MkDocsConfig, page: Page) -> File:
    """A page as a file of the engine's, which leaves out those that it is told have not been modified."""
    file = File.generated(config, page.uri, content=" ")
    if page.finished:
        file.is_modified = lambda: False  # type: ignore[method-assign]
    return file


class OwnFiles(FileSystemLoader):
    """Lists none of the theme's own files, of which there are ten thousand; no page loads one."""

    def list_templates(self) -> list[str]:
        """The names of all others."""
        others = [folder for folder in self.searchpath if not Path(folder).is_relative_to(THEME)]
        return FileSystemLoader(others).list_templates()


def _listing_own(env: Environment) -> Environment:
    if isinstance(env.loader, FileSystemLoader):
        env.loader = OwnFiles(env.loader.searchpath)
    return env


class Options(config_base.Config):  # type: ignore[no-untyped-call]
    """The place of the records and which day to show; or, for a build of many sites, the finished site itself."""

    records = option.Type(str, default="records")
    today = option.Type(str, default="")
    site = option.Optional(option.Type(Site))


class RecordsPlugin(BasePlugin[Options]):  # type: ignore[no-untyped-call]
    """Serves the pages of one site."""

    site: Site
    pages: dict[str, Page]
    # Where each page that was written names the day.
    placed: dict[str, Sequence[Placed]]

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Name the site and set its menu. Names are escaped here, since the theme prints them as they are."""
        self.site = self.config.site or self._from_records(config)
        self.pages, self.placed = {page.uri: page for page in self.site.pages}, {}
        config.site_name = escape(isolated(self.site.name))
        config.nav = [
            {escape(page.title): page.uri} for page in self.site.pages if page.in_menu or page == self.site.pages[0]
        ]
        config.theme["language"] = self.site.language
        frames = config.theme.get_env
        config.theme.get_env = lambda: _listing_own(frames())  # type: ignore[method-assign]
        return config

    def _from_records(self, config: MkDocsConfig) -> Site:
        from recordgen.site.build import render_one_site

        today = dt.date.fromisoformat(self.config.today) if self.config.today else dt.date.today()
        try:
            return render_one_site(self._folder(config), today)
        except RecordsTrouble as trouble:
            for problem in trouble.problems:
                log.error(problem.as_line())
            raise PluginError(f"{trouble.message}; what was built before still stands") from None
        except Trouble as trouble:
            raise PluginError(sentences(trouble.message, trouble.way_out)) from None

    def _folder(self, config: MkDocsConfig) -> Path:
        return Path(config.config_file_path or ".").parent / self.config.records

    def on_files(self, files: Files, config: MkDocsConfig) -> Files:
        """Add each page as a generated one; leave out the theme's own styles and scripts, which no page loads."""
        for file in list(files):
            if file.abs_src_path and Path(file.abs_src_path).is_relative_to(THEME):
                files.remove(file)
        for page in self.site.pages:
            files.append(_generate_file(config, page))
        return files

    def on_post_build(self, config: MkDocsConfig) -> None:
        """Write the other files, one at a time: of photographs there are more than the memory holds."""
        entries = [page.entry for page in self.site.pages if page.entry]
        made = {
            PLACE: index_script(entries, language_of(self.site.language)).encode(),
            MANIFEST: manifest(self.site.name),
        }
        for path, content in (*made.items(), *self.site.files.items()):
            place = Path(config.site_dir) / path
            place.parent.mkdir(parents=True, exist_ok=True)
            place.write_bytes(content)

    def on_env(self, env: Environment, config: MkDocsConfig, **_: Any) -> Environment:
        """Compile each template of the frame once; where a practice has files of its own there, sandbox all of them."""
        env.globals |= {"mark_inside": _inside(Path(config.docs_dir) / MARK), "scripts": SCRIPTS, "style_of": style_of}
        speak(env, catalog_of(self.site.language))
        env.finalize = isolated
        ours = packaged() / "site_templates" / "theme"
        return compiled_once(env if Path(config.theme.dirs[0]).samefile(ours) else sandboxed(env))

    def on_page_markdown(self, markdown: str, page: EnginePage, **_: Any) -> str:
        """Leave nothing for Markdown to read; set the page's title, its styles and more for its head."""
        ours = self.pages[page.file.src_uri]
        page.title = escape(isolated(ours.title))
        page.meta["style"] = style_of(ours.html, *ours.late)
        page.meta["head"] = ours.head
        return ""

    def on_page_content(self, html: str, page: EnginePage, **_: Any) -> str:
        """The page's own HTML, with places for its pictures."""
        return self.pages[page.file.src_uri].html

    def on_post_page(self, output: str, page: EnginePage, **_: Any) -> str:
        """Fill in pictures and tables, which the engine need not read through."""
        uri = page.file.src_uri
        file, self.placed[uri] = self.pages[uri].complete_as_file(output)
        return file.decode()

    def on_serve(self, server: Any, config: MkDocsConfig, **_: Any) -> Any:
        """Rebuild when a record changes."""
        server.watch(str(self._folder(config)))
        return server
