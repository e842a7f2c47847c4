"""recordgen share."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest

from tests.support.commands import run_today, small_practice
from tests.support.single_file import needed_browser, opened

VETS = ("--with", "Three Larches Equine Vets")


@pytest.fixture
def records(tmp_path: Path) -> Path:
    """A small practice with a horse that may be shared and one that may not."""
    return small_practice(tmp_path)


def test_it_makes_a_file_that_the_told_words_open(records: Path, tmp_path: Path) -> None:
    """One file, the words on a line of their own, and a line in the log, which holds none of them."""
    result = run_today("share", "willowmere/bramble", *VETS, "--out", tmp_path / "out", "--no-pdf", records=records)
    (file,) = (tmp_path / "out").iterdir()
    words = re.search(r"^    ([a-z ]+)$", result.output, re.MULTILINE)

    assert result.exit_code == 0
    assert words
    assert "<h1>Bramble</h1>" in opened(file.read_text(), words[1])
    log = (records / "willowmere/bramble/shared.yaml").read_text()
    assert "date: 2026-11-25, to: Three Larches Equine Vets" in log
    assert words[1] not in file.read_text() + log


def test_the_records_check_afterwards(records: Path, tmp_path: Path) -> None:
    """The log is a file of the records like the others."""
    run_today("share", "willowmere/bramble", *VETS, "--out", tmp_path / "out", "--no-pdf", records=records)
    assert run_today("check", records=records).exit_code == 0


def test_the_words_are_shown_before_anything_is_written(records: Path, tmp_path: Path) -> None:
    """Whoever is cut off between the two has words without a file, never a file that nobody can open."""
    out = tmp_path / "out"
    out.mkdir()
    seen = {}

    def note(told: str, secret: str) -> None:
        seen[secret] = [*out.iterdir(), *(records / "willowmere/bramble").glob("shared.yaml")]

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("recordgen.cli.share.show_once", note)
        run_today("share", "willowmere/bramble", *VETS, "--out", out, "--no-pdf", records=records)

    assert list(seen.values()) == [[]]
    assert len(list(out.iterdir())) == 1


def test_a_pdf_is_made_beside_it(records: Path, tmp_path: Path) -> None:
    """Under the same name, told with how the words must be typed."""
    needed_browser()
    result = run_today("share", "willowmere/bramble", *VETS, "--out", tmp_path / "out", records=records)

    assert sorted(path.suffix for path in (tmp_path / "out").iterdir()) == [".html", ".pdf"]
    assert "small letters, one space between" in result.output


def test_without_a_browser_the_html_file_is_made(
    records: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A sentence tells what to install, and the exit code is 0."""
    monkeypatch.delenv("CHROMIUM", raising=False)
    monkeypatch.setattr(shutil, "which", lambda name: None)
    result = run_today("share", "willowmere/bramble", *VETS, "--out", tmp_path / "out", records=records)

    assert (result.exit_code, [path.suffix for path in (tmp_path / "out").iterdir()]) == (0, [".html"])
    assert "No PDF: there is no Chromium on this machine. Install one, or name it in CHROMIUM." in result.stderr


def test_without_consent_it_refuses(records: Path, tmp_path: Path) -> None:
    """The file and the way out; nothing is written."""
    result = run_today("share", "willowmere/fennel", *VETS, "--out", tmp_path / "out", records=records)

    assert result.exit_code == 1
    assert "records/willowmere/fennel/horse.yaml:" in result.stderr
    assert "consent: {vet: yes" in result.stderr
    assert not (tmp_path / "out").exists()


def test_it_keeps_out_of_the_records(records: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Run inside the records without --out, it asks for another folder."""
    monkeypatch.chdir(records)
    result = run_today("share", "willowmere/bramble", *VETS, records=records)

    assert result.exit_code == 1
    assert "--out" in result.stderr
    assert [*records.rglob("record-*")] == []


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["willowmere", *VETS], "Name the stable and the horse"),
        (["willowmere/bramble"], "Missing option '--with'"),
        (["willowmere/bramble", "--with", " "], "--with needs a name"),
        (["willowmere/bramble", *VETS, "--until", "2026-11-24"], "--until 2026-11-24 is over already"),
    ],
)
def test_wrong_use_is_told(records: Path, words: list[str], says: str) -> None:
    """Exit code 2, as for every command."""
    result = run_today("share", *words, records=records)

    assert (result.exit_code, says in result.output) == (2, True)
