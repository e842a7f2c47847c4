"""Checks that the README and the notes for developers say what is so."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from recordgen import __version__
from recordgen.records.models.visit import Visit
from recordgen.records.yaml.read import read_record
from tests.conftest import ROOT

README = (ROOT / "README.md").read_text("utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text("utf-8")


def test_the_visit_of_the_readme_is_a_visit(tmp_path: Path) -> None:
    """The example reads without a problem."""
    example = re.search(r"```yaml\n(.*?)```", README, re.DOTALL)
    assert example is not None
    file = tmp_path / "visit.yaml"
    file.write_text(example[1])

    visit, problems = read_record(file, "visit.yaml", Visit)
    assert problems == []
    assert visit is not None
    assert visit.record.feet["right_hind"].wall is not None


def test_paths_named_for_developers_exist() -> None:
    """Each file or folder that the notes name in code is there."""
    named = set(re.findall(r"`([a-z_]+(?:/[a-z_]+)*(?:/|\.py|\.yaml|\.txt)?)`", DEVELOPERS))
    paths = {name for name in named if "/" in name or name.endswith((".py", ".yaml"))}
    missing = [path for path in paths if not (ROOT / path).exists() and not (ROOT / "recordgen" / path).exists()]

    assert paths
    assert missing == []


def test_files_named_in_docstrings_and_comments_exist() -> None:
    """Each Python file that the code or a test names in code ends the path of one that is there."""
    files = [path for room in ("recordgen", "tests") for path in (ROOT / room).rglob("*.py")]
    named = {(path.name, name) for path in files for name in re.findall(r"`([a-z_/]+\.py)`", path.read_text("utf-8"))}
    paths = [f"/{path.relative_to(ROOT)}" for path in files]

    assert ("table.py", "cautions/context.py") in named
    assert [one for one in sorted(named) if not any(path.endswith(f"/{one[1]}") for path in paths)] == []


def test_ci_runs_the_command_of_the_readme() -> None:
    """The line that .ci/run picks out of the README is there once."""
    lines = [line for line in README.splitlines() if re.match(r"python3 -m venv .*pytest$", line)]

    assert len(lines) == 1
    assert "README.md" in (ROOT / ".ci" / "run").read_text("utf-8")


def test_the_top_level_holds_what_the_design_names() -> None:
    """Nothing else lies at the top of the repository but files that begin with a dot and the licence."""
    allowed = {"README.md", "DEVELOPERS.md", "LICENSE", "mkdocs.yml", "pyproject.toml", "recordgen", "records", "tests"}
    allowed |= {"site_templates", "sites"}

    assert {path.name for path in ROOT.iterdir() if not path.name.startswith(".")} - allowed == set()


def test_the_words_of_the_glossary_are_the_words_of_the_code() -> None:
    """At most thirty, in order, and each stands in a file of the package."""
    words = re.findall(r"^\| \*\*(.+?)\*\* \|", DEVELOPERS, re.MULTILINE)
    code = "\n".join(path.read_text("utf-8") for path in (ROOT / "recordgen").rglob("*.py"))
    unused = [word for word in words if not re.search(rf"\b{word.replace(' ', '[ _]')}s?\b", code, re.IGNORECASE)]

    assert words == sorted(words)
    assert 20 <= len(words) <= 30
    assert unused == []


def test_the_newest_release_is_the_version_of_the_package() -> None:
    """The record of releases names it first, each version once, in descending order."""
    released = re.findall(r"^\| (\d+)\.(\d+)\.(\d+) \|", DEVELOPERS, re.MULTILINE)

    assert ".".join(released[0]) == __version__
    assert released == sorted(set(released), key=lambda parts: tuple(map(int, parts)), reverse=True)


@pytest.mark.parametrize(
    ("room", "words"), [("recordgen", "What|Whether|Who|Why|How|Where|When|Which"), ("tests", "What")]
)
def test_docstrings_open_with_a_verb_or_a_noun(room: str, words: str) -> None:
    """None of the package opens with a question, and none of the tests with 'What', which tells neither."""
    opening = re.compile(rf'^\s*r?"""(?:{words})\b', re.MULTILINE)
    files = [path for path in (ROOT / room).rglob("*.py") if opening.search(path.read_text("utf-8"))]

    assert files == []
