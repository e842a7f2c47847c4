"""Records that change under a command, a clock that goes back, two builds at once, disks that refuse."""

from __future__ import annotations

import ctypes
import os
import sys
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from click.testing import Result

from recordgen.files import fingerprints
from recordgen.records.load import everything
from tests.faults.apart import run_apart
from tests.support.commands import run
from tests.support.practice_folders import VISIT, VISIT_FILE, build

DAY = "2026-12-01"
LONGER = VISIT.replace("toe_length: 75", "toe_length: 79")


@pytest.fixture
def records(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A practice of one visit, and a cache of this test alone."""
    monkeypatch.setenv("RECORDGEN_CACHE", str(tmp_path / "kept"))
    return build(tmp_path / "records")


def built(records: Path, out: str, *words: str, day: str = DAY) -> Result:
    """The outcome of a build of the one stable."""
    given: list[str | Path] = [
        "--records",
        records,
        "--today",
        day,
        "--out",
        records.parent / out,
        "--stable",
        "willowmere",
    ]
    return run("build", *given, "--out", records.parent / out, *words)


def site(records: Path, out: str) -> dict[str, str]:
    """The files of a built site by their hashes."""
    return fingerprints(records.parent / out / "willowmere")


def test_a_record_that_changes_and_changes_back_is_not_kept(records: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Read between the two, what was made of it would stand under the bytes from before and after."""
    file, read = records / VISIT_FILE, everything.read_whole

    def read_meanwhile(*given: object, **more: object) -> object:
        file.write_text(LONGER)
        try:
            return read(*given, **more)  # type: ignore[arg-type]
        finally:
            file.write_text(VISIT)

    with monkeypatch.context() as meanwhile:
        meanwhile.setattr(everything, "read_whole", read_meanwhile)
        assert built(records, "sites").exit_code == 0
    first = site(records, "sites")
    assert built(records, "sites").exit_code == 0
    assert built(records, "anew", "--no-cache").exit_code == 0

    assert first != site(records, "anew")
    assert site(records, "sites") == site(records, "anew")


def test_a_clock_set_back_gives_the_pages_of_that_day(records: Path) -> None:
    """Built for today, then for a day a month before: the same bytes as without a cache, and no page of later."""
    assert built(records, "sites").exit_code == 0
    later = site(records, "sites")
    assert built(records, "sites", day="2026-11-01").exit_code == 0
    assert built(records, "anew", "--no-cache", day="2026-11-01").exit_code == 0

    assert site(records, "sites") == site(records, "anew") != later


def test_a_clock_set_back_behind_a_visit_is_told_and_the_site_stays(records: Path) -> None:
    """A visit of tomorrow is an error at its line."""
    assert built(records, "sites").exit_code == 0
    before = site(records, "sites")
    told = built(records, "sites", day="2026-10-01")

    assert (told.exit_code, "2026-10-14.yaml:1:" in told.output) == (1, True)
    assert site(records, "sites") == before


def test_of_two_builds_at_once_one_makes_the_site_and_the_other_says_so(records: Path) -> None:
    """Or both make it, one after the other; never is it torn, and nothing is left beside it."""
    words: list[str | Path] = ["build", "--records", records, "--today", DAY, "--stable", "willowmere"]
    words += ["--out", records.parent / "sites"]
    with ThreadPoolExecutor(2) as pool:
        ends = list(pool.map(lambda _: run_apart(words, {}), range(2)))
    assert built(records, "anew", "--no-cache").exit_code == 0

    assert {code for code, _, _ in ends} in ({0}, {0, 1})
    assert all(code == 0 or "are being built" in said for code, said, _ in ends)
    assert site(records, "sites") == site(records, "anew")
    assert [path.name for path in (records.parent / "sites").iterdir()] == ["willowmere"]


def _without_the_rights_of_root() -> None:
    """Lets the modes of files count for this process. Source: prctl(2), PR_CAPBSET_DROP; capset(2), Linux manual."""
    if hasattr(os, "geteuid") and os.geteuid() == 0:
        library = ctypes.CDLL(None, use_errno=True)
        header, none = (ctypes.c_uint32 * 2)(0x20080522, 0), (ctypes.c_uint32 * 6)()
        assert library.capset(header, none) == 0, os.strerror(ctypes.get_errno())


@pytest.fixture
def shut(records: Path) -> Iterator[Path]:
    """A folder that takes no writing, for whoever is not root."""
    folder = records.parent / "shut"
    folder.mkdir()
    folder.chmod(0o500)
    yield folder
    folder.chmod(0o700)


@pytest.mark.skipif(sys.platform != "linux", reason="kills by forking")
def test_a_cache_that_takes_no_writing_costs_only_time(records: Path, shut: Path) -> None:
    """The same bytes as without one, exit code 0, and the reason with -v."""
    words: list[str | Path] = ["build", "--records", records, "--today", DAY, "--stable", "willowmere", "-v"]
    words += ["--out", records.parent / "sites"]
    code, said, _ = run_apart(words, {"RECORDGEN_CACHE": str(shut / "kept")}, prepare=_without_the_rights_of_root)
    assert built(records, "anew", "--no-cache").exit_code == 0

    assert (code, "cannot be used" in said) == (0, True), said
    assert site(records, "sites") == site(records, "anew")


@pytest.mark.skipif(sys.platform != "linux", reason="kills by forking")
@pytest.mark.parametrize(
    "words", [["build", "--out", "SHUT"], ["photo", "willowmere/bramble", "FILE"], ["receive", "FILE"]]
)
def test_a_folder_that_takes_no_writing_is_told_in_a_sentence(records: Path, shut: Path, words: list[str]) -> None:
    """No traceback, exit code 1, and not one byte of the records is another."""
    (records.parent / "2026-10-14-left-fore-sole-after.jpg").write_bytes(b"")
    before = fingerprints(records)
    for folder in [records, *(path for path in records.rglob("*") if path.is_dir())]:
        folder.chmod(0o500)
    names = {"SHUT": str(shut / "sites"), "FILE": str(records.parent / "2026-10-14-left-fore-sole-after.jpg")}
    code, said, _ = run_apart(
        [*(names.get(word, word) for word in words), "--records", records, "--today", DAY],
        {"RECORDGEN_PRIVATE": str(records.parent / "keys")},
        prepare=_without_the_rights_of_root,
    )

    assert (code, "TRACEBACK" in said, bool(said.strip())) == (1, False, True), said
    assert fingerprints(records) == before
