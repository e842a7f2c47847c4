"""`recordgen cache`, and commands that go without it."""

from __future__ import annotations

import hashlib
import json
from pathlib import Path

import pytest

from recordgen.cache.entries import Cache, user_cache
from tests.support import practice_folders
from tests.support.commands import run, run_today, small_practice
from tests.support.publishing import ADDRESS

# Of all kinds a horse's records have, and traced: pictures, figures, readings.
TRACED = ("bramble",)
# Text as SVG, JSON, and photographs.
PLAIN = {"pictures", "figures", "photographs", "answers", "summaries", "places", "sites", "holidays", "readings"}


@pytest.fixture
def place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A cache of this test alone."""
    monkeypatch.setenv("RECORDGEN_CACHE", str(tmp_path / "kept"))
    return tmp_path / "kept"


def test_it_tells_where_and_how_large_and_clears(place: Path) -> None:
    """One line each."""
    user_cache().put("pictures", hashlib.sha256().hexdigest(), bytes(2_000_000))

    assert run("cache").output == f"{place}: 1 file, 2.0 MB of at most 500 MB.\n"
    assert run("cache", "--clear").output == f"1 file deleted.\n{place}: 0 files, 0.0 MB of at most 500 MB.\n"


def test_it_tells_programs_the_same(place: Path) -> None:
    """As plain values."""
    told = json.loads(run("cache", "--json").output)

    assert (told["folder"], told["files"], told["unused_because"]) == (str(place), 0, None)


def test_a_folder_of_somebody_is_told_and_left_alone(place: Path) -> None:
    """Even where it is to be cleared."""
    place.mkdir()
    (place / "letters.txt").write_text("somebody's")

    assert "is no folder of recordgen's" in run("cache", "--clear").output
    assert [path.name for path in place.iterdir()] == ["letters.txt"]


def test_without_the_cache_nothing_is_kept_and_the_sites_are_the_same(place: Path, tmp_path: Path) -> None:
    """To the last byte; and with it nothing is kept that Python or a template would run."""
    records = small_practice(tmp_path, TRACED)
    sites = [tmp_path / "without", tmp_path / "with"]
    assert run_today("build", "--out", sites[0], "--no-cache", records=records).exit_code == 0
    assert not place.exists()
    assert run_today("build", "--out", sites[1], records=records).exit_code == 0
    built = [{path.relative_to(out): path.read_bytes() for path in out.rglob("*") if path.is_file()} for out in sites]

    assert built[0] == built[1]
    assert {path.name for path in place.iterdir()} <= {"CACHEDIR.TAG", *PLAIN}


def test_without_the_cache_a_stable_that_is_built_apart_keeps_nothing(place: Path, tmp_path: Path) -> None:
    """Neither counting nor building with the counts keeps what it read."""
    records, counts = small_practice(tmp_path, TRACED), tmp_path / "counts.json"
    assert run_today("stables", "--counts", counts, "--no-cache", records=records).exit_code == 0
    words: list[str | Path] = ["--stable", "willowmere", "--with", counts, "--out", tmp_path / "sites"]
    assert run_today("build", *words, "--no-cache", records=records).exit_code == 0

    assert not place.exists()


@pytest.mark.parametrize(
    ("what", "file", "key"),
    [("willowmere", "willowmere/stable.yaml", "publish"), ("field-notes", "practice.yaml", "field_page")],
)
def test_without_the_cache_a_publication_keeps_nothing(
    place: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, what: str, file: str, key: str
) -> None:
    """Nothing of what it read, and nothing of what it drew."""
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(tmp_path / "keys"))
    records = small_practice(tmp_path, TRACED)
    with (records / file).open("a") as opened:
        opened.write(f"{key}: {{address: '{ADDRESS}', to: {tmp_path / 'public'}}}\n")
    assert run_today("publish", what, "--dry-run", "--no-cache", records=records).exit_code == 0

    assert not place.exists()


def test_a_cache_that_cannot_be_used_is_told_with_the_stages(place: Path, tmp_path: Path) -> None:
    """In one line, and the sites are built."""
    place.write_text("in the way")
    found = run_today("build", "--out", tmp_path / "sites", "-v", records=practice_folders.build(tmp_path / "records"))

    assert found.exit_code == 0
    assert f"{place} cannot be used: Not a directory." in found.output
    assert Cache(place).why_not
