"""Answers that are remembered: while nothing changed, and not a moment longer."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from recordgen.cache.entries import Cache
from recordgen.cli import check as check_command
from recordgen.cli import remembered
from recordgen.cli.remembered import Remembered
from tests.support.commands import run_today, small_practice
from tests.support.git_practice import Kept, alone

VISIT = Path("willowmere", "bramble", "2026-10-21.yaml")


@pytest.fixture
def records(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A small practice in git, and a cache of this test alone."""
    monkeypatch.setenv("RECORDGEN_CACHE", str(tmp_path / "kept"))
    alone(monkeypatch, tmp_path)
    made = small_practice(tmp_path)
    git(made, "init", "--quiet")
    Kept(made, made).entry("2026-10-14", "first")
    return made


def git(records: Path, *words: str) -> None:
    """Git in the records."""
    Kept(records, records).git(*words)


def asked(records: Path, *options: object) -> Remembered:
    """The question, as of now."""
    return Remembered(Cache(records.parent / "kept"), records, "check", *options)


def _one_digit(records: Path) -> None:
    file = records / VISIT
    file.write_bytes(file.read_bytes().replace(b"1", b"2", 1))


def _same_size_and_time(records: Path) -> None:
    file, before = records / VISIT, (records / VISIT).stat()
    _one_digit(records)
    os.utime(file, ns=(before.st_atime_ns, before.st_mtime_ns))


def _renamed(records: Path) -> None:
    (records / VISIT.parent).rename(records / "willowmere" / "briar")


def _empty_folder(records: Path) -> None:
    (records / "willowmere" / "dapple").mkdir()


def _folder_full_of_folders(records: Path) -> None:
    (records / "willowmere" / "dapple" / "photos").mkdir(parents=True)


def _link(records: Path) -> None:
    (records / "care").symlink_to(records.parent)


def _large_file(records: Path) -> None:
    (records / "willowmere" / "bramble" / "photos").mkdir(exist_ok=True)
    (records / "willowmere" / "bramble" / "photos" / "x.jpg").write_bytes(bytes(100_000))


def _entry(records: Path) -> None:
    Kept(records, records).entry("2026-10-15", "a reason")


def _staged(records: Path) -> None:
    (records / VISIT).unlink()
    git(records, "rm", "--quiet", "--cached", VISIT.as_posix())
    git(records, "checkout", "--quiet", "HEAD", "--", VISIT.as_posix())
    git(records, "rm", "--quiet", "--cached", VISIT.as_posix())


def _ignored(records: Path) -> None:
    (records / ".git" / "info" / "exclude").write_text("willowmere/bramble\n")


CHANGES = [
    _one_digit,
    _same_size_and_time,
    _renamed,
    _empty_folder,
    _folder_full_of_folders,
    _link,
    _large_file,
    _entry,
    _staged,
    _ignored,
]


@pytest.mark.parametrize("change", CHANGES, ids=lambda change: change.__name__)
def test_whatever_changes_in_the_records_is_noticed(records: Path, change: Callable[[Path], None]) -> None:
    """A value, a name, a folder, a link, a photograph, and what git tells."""
    asked(records).keep("before")
    assert asked(records).answer() == "before"
    change(records)

    assert asked(records).answer() is None


def test_other_questions_have_other_answers(records: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Another day, another folder's name, another version of the program."""
    asked(records, "2026-11-25").keep("before")
    moved = records.rename(records.parent / "moved")
    assert asked(moved, "2026-11-25").answer() is None
    moved.rename(records)
    assert asked(records, "2026-11-26").answer() is None
    monkeypatch.setattr(remembered, "program_version", lambda: "another")

    assert asked(records, "2026-11-25").answer() is None


def test_a_record_that_changes_while_it_is_read_is_not_remembered(records: Path) -> None:
    """The answer may be of the one text or of the other."""
    question = asked(records)
    _one_digit(records)
    question.keep("of which text?")

    assert asked(records).answer() is None
    assert question.answer() is None


def test_check_again_reads_no_record_and_says_the_same(records: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Warnings are told each time."""
    (records / "willowmere" / "bramble" / "letter.txt").write_text("x")
    first = run_today("check", records=records)
    monkeypatch.setattr(check_command, "_look", lambda *_: pytest.fail("the records were read again"))
    again = run_today("check", records=records)

    assert (first.exit_code, first.output) == (again.exit_code, again.output)
    assert "letter.txt" in again.output


def test_errors_are_told_again_too(records: Path) -> None:
    """With the same exit code."""
    (records / VISIT).write_text("date: 2026-13-45\n")
    first, again = run_today("check", records=records), run_today("check", records=records)

    assert first.exit_code == again.exit_code == 1
    assert first.output == again.output


def test_a_build_with_nothing_new_ends_at_once(records: Path, tmp_path: Path) -> None:
    """Told in its last line; the files are not even written again, and a page that was edited or lost is made again."""
    sites = tmp_path / "sites"
    run_today("build", "--out", sites, records=records)
    page = sites / "willowmere" / "index.html"
    text, written = page.read_text("utf-8"), page.stat().st_mtime_ns
    again = run_today("build", "--out", sites, records=records)
    assert "Nothing has changed: 2 sites looked at" in again.output
    assert page.stat().st_mtime_ns == written
    page.write_text("x" * len(text.encode()))
    after = run_today("build", "--out", sites, records=records)

    assert "Nothing has changed" not in after.output
    assert page.read_text("utf-8") == text
