"""The floors: a room imports only from floors below it."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest

from tests.conftest import ROOT

PACKAGE = ROOT / "recordgen"
# Every floor stands on these, and they on each other alone, from the lowest up.
GROUND = ["problems", "locks", "files", "folders"]
FLOORS = ["problems", "git", "records", "hoof", "pictures", "site", "private", "cli"]
# What hoof may take from records: names, models, tables, and the shape of the models.
MODELS = {
    *("names", "fields", "foot", "visit", "horse", "practice", "reference", "shape", "shared", "tracing"),
    *("care_in_force", "still_open"),
}
FILES = sorted(PACKAGE.rglob("*.py"))


def text_of(file: Path) -> str:
    """The text of a file."""
    return file.read_text("utf-8")


def imports(file: Path) -> set[str]:
    """The modules of our own that a file imports."""
    found: set[str] = set()
    for node in ast.walk(ast.parse(text_of(file))):
        if isinstance(node, ast.ImportFrom) and node.module and node.module.startswith("recordgen."):
            found.add(node.module)
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names if alias.name.startswith("recordgen.")}
    return found


def floor(module: str) -> int | None:
    """The floor of a module; None for what stands on none, such as packaged."""
    room = module.split(".")[1]
    return FLOORS.index(room) if room in FLOORS else None


@pytest.mark.parametrize("file", FILES, ids=lambda file: str(file.relative_to(PACKAGE)))
def test_a_room_imports_only_from_below(file: Path) -> None:
    """No import goes up."""
    own = floor("recordgen." + file.relative_to(PACKAGE).with_suffix("").parts[0])
    above = [module for module in imports(file) if own is not None and (floor(module) or 0) > own]

    assert above == []


@pytest.mark.parametrize("name", GROUND)
def test_the_ground_stands_on_itself_alone(name: str) -> None:
    """Problems, locks, files and folders import nothing but what is lower among them."""
    taken = {module.removeprefix("recordgen.") for module in imports(PACKAGE / f"{name}.py")}

    assert taken - set(GROUND[: GROUND.index(name)]) == set()


def test_hoof_takes_only_models_from_records() -> None:
    """The meaning of records opens no file: it imports their models and tables, and no reader."""
    taken = {
        module.split(".")[2]
        for file in (PACKAGE / "hoof").glob("*.py")
        for module in imports(file)
        if module.startswith("recordgen.records.")
    }

    assert taken - MODELS == set()


def test_only_two_files_know_the_engine() -> None:
    """MkDocs is imported by the plugin and the engine's file alone."""
    knowing = {str(file.relative_to(PACKAGE)) for file in FILES if re.search(r"(from|import) mkdocs", text_of(file))}

    assert knowing == {"site/plugin.py", "site/engine.py"}


@pytest.mark.parametrize("room", FLOORS[1:])
def test_each_room_says_what_it_is(room: str) -> None:
    """Each package tells what is here, which file to open first, and what it must not do."""
    told = ast.get_docstring(ast.parse((PACKAGE / room / "__init__.py").read_text("utf-8"))) or ""

    assert "pen `" in told
    assert any(word in told for word in ("must never", "No ", "opens no", "computes no"))


def test_hoof_looks_at_no_clock() -> None:
    """Nothing in hoof, pictures or records asks what day it is."""
    rooms = ("hoof", "pictures", "records")
    files = [file for file in FILES if file.relative_to(PACKAGE).parts[0] in rooms]
    asking = [str(file) for file in files if re.search(r"\.(today|now)\(\)", text_of(file))]

    assert asking == []
