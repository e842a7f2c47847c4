"""The house: a room imports only from floors below it, is small, and means one thing by a name."""

from __future__ import annotations

import ast
import re
from collections import Counter
from collections.abc import Iterator
from functools import cache
from graphlib import TopologicalSorter
from pathlib import Path

import pytest

from tests.conftest import DEAREST, ROOT

PACKAGE = ROOT / "recordgen"
# From the ground up; a floor imports from those before it, and each may ask what lies on the ground.
GROUND = [
    *("days", "sentences", "nearest", "problems", "csv_text", "packaged", "locks", "files", "folders", "progress"),
    *("public_holidays", "workers", "units"),
]
FLOORS = ["language", "cache", "git", "records", "hoof", "pictures", "site", "private", "cli"]
# The commands lie side by side, one short file each; every other room is small enough to be taken in at a look.
MOST_FILES = 15
MOST_LINES = 400
FILES = sorted(PACKAGE.rglob("*.py"))
ROOMS = sorted({file.parent for file in FILES})


def text_of(file: Path) -> str:
    """The text of a file."""
    return file.read_text("utf-8")


def name_of(path: Path) -> str:
    """The place of a file or room within the package, for the name of a test."""
    return path.relative_to(PACKAGE).as_posix()


def module_of(file: Path) -> str:
    """The dotted name of a file's module."""
    parts = file.relative_to(ROOT).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


MODULES = {module_of(file): file for file in FILES}


@cache
def nodes(file: Path) -> list[ast.AST]:
    """All that the code of a file is made of."""
    return list(ast.walk(ast.parse(text_of(file))))


def imports(file: Path) -> Iterator[str]:
    """The modules of our own that a file imports, at its top or within a function."""
    for node in nodes(file):
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("recordgen"):
            whole = [f"{node.module}.{alias.name}" for alias in node.names]
            yield from (name if name in MODULES else str(node.module) for name in whole)
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names if alias.name in MODULES)


def floor(module: str) -> int:
    """The floor of a module; -1 for what lies on the ground."""
    parts = module.split(".")
    return FLOORS.index(parts[1]) if len(parts) > 1 and parts[1] in FLOORS else -1


def test_a_room_imports_only_from_below() -> None:
    """No import goes up, and the ground imports from no floor."""
    files = [file for file in FILES if file != PACKAGE / "__main__.py"]
    own = {file: floor(module_of(file)) for file in files}

    assert [(name_of(file), one) for file in files for one in imports(file) if floor(one) > own[file]] == []


def test_the_ground_and_the_floors_are_all_there_is() -> None:
    """Modules on top of the package are named here, so that a new room has to say on which floor it stands."""
    on_top = {path.stem for path in PACKAGE.iterdir() if path.suffix == ".py" or (path / "__init__.py").is_file()}

    assert on_top - {"__init__", "__main__"} == {*GROUND, *FLOORS}


@pytest.mark.parametrize("name", GROUND)
def test_the_ground_stands_on_itself_alone(name: str) -> None:
    """Modules that every floor may ask import nothing but those lower among their own."""
    taken = {module.removeprefix("recordgen.") for module in imports(PACKAGE / f"{name}.py")}

    assert taken - set(GROUND[: GROUND.index(name)]) == set()


def test_no_circle_of_imports() -> None:
    """The files can be put in an order in which each imports only from those before it."""
    TopologicalSorter({module_of(file): {*imports(file)} - {module_of(file)} for file in FILES}).prepare()


def test_a_room_is_small() -> None:
    """At most fifteen files a room, each of at most 400 lines."""
    files = [file for file in FILES if file.name != "__init__.py"]
    sizes = Counter(file.parent for file in files if file.parent != PACKAGE / "cli")

    assert [name_of(file) for file in files if len(text_of(file).splitlines()) > MOST_LINES] == []
    assert [(name_of(room), size) for room, size in sizes.items() if size > MOST_FILES] == []


def test_no_class_has_the_name_of_another() -> None:
    """One word, one meaning: no two classes of the package share a name."""
    names = [node.name for file in FILES for node in nodes(file) if isinstance(node, ast.ClassDef)]

    assert [name for name, times in Counter(names).items() if times > 1] == []


def test_hoof_takes_only_models_from_records() -> None:
    """The meaning of records opens no file: it imports their models and tables, and no reader."""
    files = [file for file in FILES if file.is_relative_to(PACKAGE / "hoof")]
    taken = {module for file in files for module in imports(file) if module.startswith("recordgen.records")}

    assert [module for module in taken if not module.startswith("recordgen.records.models.")] == []


def test_only_two_files_know_the_engine() -> None:
    """MkDocs is imported by the plugin and the engine's file alone."""
    knowing = {name_of(file) for file in FILES if re.search(r"(from|import) mkdocs", text_of(file))}

    assert knowing == {"site/plugin.py", "site/engine.py"}


def test_only_one_room_runs_git() -> None:
    """Git is called by one room, so that no setting of the machine reaches one caller and not another."""
    calling = {name_of(file.parent) for file in FILES if re.search(r"\[\s*\"git\"", text_of(file))}

    assert calling == {"git"}


@pytest.mark.parametrize("room", FLOORS)
def test_each_floor_says_what_it_is(room: str) -> None:
    """Each floor tells what is here, which file to open first, and what it must not do."""
    told = ast.get_docstring(ast.parse((PACKAGE / room / "__init__.py").read_text("utf-8"))) or ""

    assert "pen `" in told
    assert any(word in told for word in ("must never", "No ", "opens no", "computes no"))


def test_each_room_names_files_that_are_there() -> None:
    """Each room opens with what is here, and every file it names stands in it."""
    told = {room: ast.get_docstring(ast.parse(text_of(room / "__init__.py"))) or "" for room in ROOMS}
    named = [room / name for room in ROOMS for name in re.findall(r"`([a-z_/]+(?:\.py|/))`", told[room])]

    assert [name_of(room) for room in ROOMS if not told[room]] == []
    assert [name_of(path) for path in named if not path.exists()] == []


def test_the_dearest_files_are_there() -> None:
    """The list by which tests begin with what takes longest names files that there are, each once."""
    assert [file for file in DEAREST if not (ROOT / "tests" / file).is_file()] == []
    assert len(set(DEAREST)) == len(DEAREST)


def test_no_test_imports_from_another_test() -> None:
    """Helpers that tests share lie in tests/support (and the demo's stories in tests/demo)."""
    files = sorted((ROOT / "tests").rglob("*.py"))
    found = [
        (file.name, taken)
        for file in files
        for taken in re.findall(r"from (tests[\w.]*\.test_\w+) import", text_of(file))
    ]

    assert found == []


def test_hoof_looks_at_no_clock() -> None:
    """Nothing in hoof, pictures or records asks what day it is."""
    rooms = ("hoof", "pictures", "records")
    files = [file for file in FILES if file.relative_to(PACKAGE).parts[0] in rooms]
    asking = [name_of(file) for file in files if re.search(r"\.(today|now)\(\)", text_of(file))]

    assert asking == []
