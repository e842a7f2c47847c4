"""A cache damaged in every way gives the bytes that no cache gives, and never ends a build."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path
from random import Random

import pytest

from recordgen.cache import entries
from recordgen.cache.place import TAG
from recordgen.files import fingerprints
from tests.support.commands import run
from tests.support.practice_folders import TODAY, build

Damage = Callable[[Path, Random], object]


def _flipped(file: Path, rng: Random) -> None:
    content = bytearray(file.read_bytes())
    content[rng.randrange(len(content))] ^= 1 << rng.randrange(8)
    file.write_bytes(content)


def _digit(file: Path, rng: Random) -> None:
    """One figure is another one, as no reader of JSON could tell."""
    content = bytearray(file.read_bytes())
    digits = [at for at, sign in enumerate(content) if chr(sign).isdigit() and at > len(entries.MAGIC) + 1]
    at = rng.choice(digits)
    content[at] = ord("0") + (content[at] - ord("0") + 1) % 10
    file.write_bytes(content)


def _cut(file: Path, rng: Random) -> None:
    file.write_bytes(file.read_bytes()[: rng.randrange(file.stat().st_size)])


def _another_version(file: Path, _: Random) -> None:
    file.write_bytes(file.read_bytes().replace(entries.MAGIC, b"recordgen cache 9", 1))


def _foreign(file: Path, _: Random) -> None:
    file.write_bytes(b"PK\3\4 somebody's")


def _empty(file: Path, _: Random) -> None:
    file.write_bytes(b"")


def _folder(file: Path, _: Random) -> None:
    file.unlink()
    file.mkdir()


def _link_to_itself(file: Path, _: Random) -> None:
    file.unlink()
    file.symlink_to(file)


def _anothers(file: Path, rng: Random) -> None:
    """The whole entry of another key, in this one's place."""
    others = sorted(path for path in file.parent.parent.glob("*/?*") if path.is_file() and path != file)
    if others:
        shutil.copyfile(rng.choice(others), file)


WAYS: tuple[Damage, ...] = (
    *(_flipped, _digit, _cut, _another_version, _foreign, _empty, _folder, _link_to_itself, _anothers),
)


def _built(folder: Path, out: str, *words: str) -> dict[str, str]:
    """The files of the stable's site by their hashes."""
    place: list[str | Path] = ["--records", folder / "records", "--out", folder / out, "--stable", "willowmere"]
    told = run("build", *place, "--today", str(TODAY), *words)
    assert told.exit_code == 0, told.output
    return fingerprints(folder / out / "willowmere")


@pytest.fixture(scope="module")
def first(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, dict[str, str]]:
    """A practice with a filled cache, and its site as it is made without one."""
    folder = tmp_path_factory.mktemp("first")
    build(folder / "records")
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("RECORDGEN_CACHE", str(folder / "kept"))
        _built(folder, "sites")
    return folder, _built(folder, "anew", "--no-cache")


@pytest.mark.parametrize("seed", range(3))
def test_each_entry_damaged_in_some_way_changes_no_byte(
    first: tuple[Path, dict[str, str]], tmp_path: Path, monkeypatch: pytest.MonkeyPatch, seed: int
) -> None:
    """The ways go round over all entries, so that each kind of entry meets several."""
    folder, rng = first[0], Random(seed)
    monkeypatch.setenv("RECORDGEN_CACHE", str(tmp_path / "kept"))
    shutil.copytree(folder / "kept", tmp_path / "kept")
    files = sorted(path for path in (tmp_path / "kept").rglob("?" * 64) if path.is_file())
    for number, file in enumerate(files):
        WAYS[(number + seed) % len(WAYS)](file, rng)

    assert len(files) > len(WAYS)
    assert _built(folder, "sites") == first[1]


def _without_mark(kept: Path) -> None:
    (kept / TAG).unlink()


def _file_in_its_place(kept: Path) -> None:
    shutil.rmtree(kept)
    kept.write_text("somebody's")


def _kind_is_a_file(kept: Path) -> None:
    for kind in [path for path in kept.iterdir() if path.is_dir()]:
        shutil.rmtree(kind)
        kind.write_text("")


@pytest.mark.parametrize("spoil", [_without_mark, _file_in_its_place, _kind_is_a_file])
def test_a_folder_that_is_none_of_ours_changes_no_byte(
    first: tuple[Path, dict[str, str]], tmp_path: Path, monkeypatch: pytest.MonkeyPatch, spoil: Callable[[Path], None]
) -> None:
    """It is gone without; what is somebody's stays as it is."""
    shutil.copytree(first[0] / "kept", tmp_path / "kept")
    spoil(tmp_path / "kept")
    monkeypatch.setenv("RECORDGEN_CACHE", str(tmp_path / "kept"))
    before = fingerprints(tmp_path)

    assert _built(first[0], "sites") == first[1]
    assert fingerprints(tmp_path) == before
