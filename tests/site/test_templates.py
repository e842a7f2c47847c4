"""Compiled templates are shared within a process; nothing that is executed is kept on a disk."""

from __future__ import annotations

from typing import Any

import pytest
from jinja2 import DictLoader, Environment, nodes

from recordgen.packaged import packaged
from recordgen.site.templates import Compiled, compile_all, environment
from tests.conftest import RECORDS
from tests.support.horse_records import NAMING

PAGES = packaged() / "site_templates" / "pages"


def filled(source: str, known: Compiled) -> str:
    """The output of a template."""
    made = Environment(loader=DictLoader({"page.html": source}), bytecode_cache=known)
    return made.get_template("page.html").render(name="Bramble")


def test_a_template_is_compiled_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """Another site takes what the first one compiled."""
    known = Compiled()
    first = filled("Hello {{ name }}", known)
    monkeypatch.setattr(Environment, "_generate", lambda *_, **__: pytest.fail("compiled again"))

    assert first == filled("Hello {{ name }}", known) == "Hello Bramble"


def test_a_template_that_changed_is_compiled_anew() -> None:
    """The old one is of no use."""
    known = Compiled()

    assert [filled(text, known) for text in ("A {{ name }}", "B {{ name }}")] == ["A Bramble", "B Bramble"]


def test_a_template_that_no_page_uses_may_be_beyond_reading(monkeypatch: pytest.MonkeyPatch) -> None:
    """One that cannot be opened or compiled is left out, and the others are compiled all the same."""
    made = Environment(loader=DictLoader({"locked.html": "", "page.html": "{{ name }}", "torn.html": "{{"}))
    get_source, compiled = made.loader.get_source, []

    def opened(environment: Environment, name: str) -> Any:
        compiled.append(name)
        if name == "locked.html":
            raise PermissionError(13, "Permission denied", name)
        return get_source(environment, name)

    monkeypatch.setattr(made.loader, "get_source", opened)
    compile_all(made)

    assert compiled == ["locked.html", "page.html", "torn.html"]
    assert made.get_template("page.html").render(name="Bramble") == "Bramble"


def test_every_filter_that_a_template_names_is_there() -> None:
    """Also in a branch that the demo never comes to, where the engine would tell only when it is filled in."""
    made = environment(RECORDS, NAMING)
    named = {
        found.name
        for page in PAGES.rglob("*.*")
        if page.suffix in (".html", ".md")
        for found in made.parse(page.read_text("utf-8")).find_all(nodes.Filter)
    }

    assert named - made.filters.keys() == set()
    assert {"day", "foot", "plain"} < named
