"""Practices in git, and practices to publish from."""

from __future__ import annotations

import datetime as dt
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from recordgen.private.publishing import publish as deliver
from recordgen.records.load.everything import Whole
from tests.support.commands import small_practice
from tests.support.publishing import TO_FOLDER, WORDS, Desk, git


@pytest.fixture(scope="session")
def begun(tmp_path_factory: pytest.TempPathFactory) -> Desk:
    """Records that were never published."""
    desk = Desk(tmp_path_factory.mktemp("begun"))
    small_practice(desk.folder)
    desk.say(TO_FOLDER)
    for words in (["init", "--quiet"], ["add", "."], ["commit", "--quiet", "--message", "begun"]):
        git(desk.records, *words)
    return desk


@pytest.fixture(scope="session")
def once(begun: Desk, tmp_path_factory: pytest.TempPathFactory) -> tuple[Desk, str]:
    """The same after the first publishing, and what that printed."""
    folder = tmp_path_factory.mktemp("once")
    shutil.copytree(begun.folder, folder, dirs_exist_ok=True)
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("RECORDGEN_PRIVATE", str(folder / "keys"))
        told = Desk(folder).publish("--yes")
    assert told.exit_code == 0, told.output
    return Desk(folder, WORDS.findall(told.output)[0]), told.output


@pytest.fixture
def new(begun: Desk, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Desk:
    """A copy that was never published."""
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(tmp_path / "keys"))
    shutil.copytree(begun.folder, tmp_path, dirs_exist_ok=True)
    return Desk(tmp_path)


@pytest.fixture
def published(once: tuple[Desk, str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Desk:
    """A copy that was published once."""
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(tmp_path / "keys"))
    shutil.copytree(once[0].folder, tmp_path, dirs_exist_ok=True)
    return Desk(tmp_path, once[0].words)


@pytest.fixture
def committer(monkeypatch: pytest.MonkeyPatch) -> None:
    """Git knows who commits."""
    for role in ("AUTHOR", "COMMITTER"):
        monkeypatch.setenv(f"GIT_{role}_NAME", "Wren Ashdown")
        monkeypatch.setenv(f"GIT_{role}_EMAIL", "wren@example.org")


@pytest.fixture
def kept_records(tmp_path: Path, committer: None) -> Path:
    """The records of a small practice, kept in git."""
    folder = small_practice(tmp_path)
    for words in (["init", "--quiet"], ["add", "."], ["commit", "--quiet", "--message", "begun"]):
        git(folder, *words)
    return folder


@pytest.fixture
def quick_build(monkeypatch: pytest.MonkeyPatch) -> None:
    """Pages of a line each in place of a built site, for what does not depend on what stands in them."""
    monkeypatch.setattr(deliver, "build_for", _few_lines)


def _few_lines(
    address: str, whole: Whole, today: dt.date, named: Callable[[str], str], folder: Path, _: object
) -> None:
    stable = whole.practice.stables[0]
    names = ", ".join(horse.horse.name for horse in stable.horses)
    texts = {"index.html": (stable.stable.name, names), "404.html": ("No such page", "")}
    for horse in stable.horses:
        title = f"{horse.horse.name} - {stable.stable.name}"
        texts[f"horses/{named(horse.slug)}.html"] = (title, horse.horse.note or "")
    for path, (title, text) in texts.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_text(f"<title>{title}</title><p>{text} As of {today}.</p>")
