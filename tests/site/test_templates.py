"""Compiled templates are kept; whatever is wrong with what is kept costs only time."""

from __future__ import annotations

from pathlib import Path

import pytest
from jinja2 import DictLoader, Environment

from recordgen.site.templates import Compiled


def filled(source: str, known: Compiled) -> str:
    """The output of a template."""
    made = Environment(loader=DictLoader({"page.html": source}), bytecode_cache=known)
    return made.get_template("page.html").render(name="Bramble")


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Where they are kept."""
    monkeypatch.setenv("RECORDGEN_PICTURES", str(tmp_path / "kept"))
    return tmp_path / "kept"


def test_a_template_is_compiled_once(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Another process reads what the first one compiled."""
    first = filled("Hello {{ name }}", Compiled())
    monkeypatch.setattr(Environment, "_generate", lambda *_, **__: pytest.fail("compiled again"))

    assert first == filled("Hello {{ name }}", Compiled()) == "Hello Bramble"
    assert len(list(folder.rglob("*.bin"))) == 1


def test_a_template_that_changed_is_compiled_anew(folder: Path) -> None:
    """The old one is of no use."""
    known = Compiled()

    assert [filled(text, known) for text in ("A {{ name }}", "B {{ name }}")] == ["A Bramble", "B Bramble"]


@pytest.mark.parametrize("content", [b"", b"x", b"\0" * 200])
def test_a_damaged_one_is_compiled_anew(folder: Path, content: bytes) -> None:
    """It is not trusted."""
    filled("A {{ name }}", Compiled())
    for file in folder.rglob("*.bin"):
        file.write_bytes(content)

    assert filled("A {{ name }}", Compiled()) == "A Bramble"


def test_a_cut_one_is_compiled_anew(folder: Path) -> None:
    """As a full disk may leave it."""
    filled("A {{ name }}", Compiled())
    for file in folder.rglob("*.bin"):
        file.write_bytes(file.read_bytes()[:-20])

    assert filled("A {{ name }}", Compiled()) == "A Bramble"


def test_a_folder_that_takes_nothing_costs_only_time(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A file stands where the folder should be."""
    (tmp_path / "kept").write_text("x")
    monkeypatch.setenv("RECORDGEN_PICTURES", str(tmp_path / "kept"))

    assert filled("A {{ name }}", Compiled()) == "A Bramble"
