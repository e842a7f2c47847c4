"""Compiled templates are shared within a process; nothing that is executed is kept on a disk."""

from __future__ import annotations

import pytest
from jinja2 import DictLoader, Environment

from recordgen.site.templates import Compiled


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
