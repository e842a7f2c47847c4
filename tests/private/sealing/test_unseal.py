"""A sealed folder read back, and every change to it found."""

import json
from pathlib import Path

import pytest

from recordgen.private.crypto.blobs import MANIFEST, blob, frame_body
from recordgen.private.crypto.primitives import NotOpened
from recordgen.private.keystore.site_keys import SiteKeys
from recordgen.private.sealing.unseal import Fault, faults, faults_through_reader, files_of, read_manifest, unseal
from tests.support.sealed_site import QUICK, WORDS, contents, new_state, page, sealed, small_site


@pytest.fixture
def state(tmp_path: Path) -> SiteKeys:
    """Keys with one way in."""
    return new_state(tmp_path)


@pytest.fixture
def out(tmp_path: Path, state: SiteKeys) -> Path:
    """A sealed folder."""
    sealed(small_site(tmp_path / "site"), state, tmp_path / "out")
    return tmp_path / "out"


def blob_of(out: Path, state: SiteKeys, path: str) -> Path:
    """The published file that holds a path of the site."""
    return out / "d" / f"{read_manifest(out, state.reader_key).files[path][0]}.bin"


def flip(file: Path) -> None:
    """Change one bit in the middle."""
    content = bytearray(file.read_bytes())
    content[len(content) // 2] ^= 1
    file.write_bytes(content)


def test_nothing_is_wrong_with_what_was_published(out: Path, state: SiteKeys) -> None:
    """Nor with one more edition, whose blobs lie beside the old ones."""
    assert faults(out, state) == []
    (out.parent / "site" / "index.html").write_bytes(page("Willowmere", "new"))
    sealed(out.parent / "site", state, out)

    assert faults(out, state) == []


@pytest.mark.parametrize("name", ["index.html", "404.html", "sw.js", "keys.json", "manifest.bin", "robots.txt"])
def test_a_changed_file_in_clear_is_found(out: Path, state: SiteKeys, name: str) -> None:
    """A host that alters the worker could read along; this is how it shows."""
    flip(out / name)

    assert faults(out, state) == [Fault(name, "changed")]


def test_changed_missing_and_foreign_files_are_found(out: Path, state: SiteKeys) -> None:
    """Each with its path, in order."""
    changed, missing = sorted((out / "d").iterdir())[:2]
    flip(changed)
    missing.unlink()
    (out / "d" / "extra.js").write_text("stray()")
    found = {fault.path: fault.kind for fault in faults(out, state)}

    assert found == {f"d/{changed.name}": "changed", f"d/{missing.name}": "missing", "d/extra.js": "foreign"}


def test_an_old_blob_may_be_gone_and_may_not_be_changed(out: Path, state: SiteKeys) -> None:
    """It belongs to the edition before."""
    old = blob_of(out, state, "index.html")
    (out.parent / "site" / "index.html").write_bytes(page("Willowmere", "new"))
    sealed(out.parent / "site", state, out)
    flip(old)
    assert faults(out, state) == [Fault(f"d/{old.name}", "changed")]
    old.unlink()

    assert faults(out, state) == []


def test_an_address_is_asked_file_by_file(out: Path, state: SiteKeys) -> None:
    """A missing file answers nothing."""
    files = contents(out)
    del files["robots.txt"]

    assert faults_through_reader(files.get, state) == [Fault("robots.txt", "missing")]


def test_an_older_edition_put_back_is_found(out: Path, state: SiteKeys) -> None:
    """All its files fit together, but it is not what was published last."""
    before = contents(out)
    (out.parent / "site" / "index.html").write_bytes(page("Willowmere", "new"))
    sealed(out.parent / "site", state, out)

    assert Fault("manifest.bin", "changed") in faults_through_reader(before.get, state)


def test_tampering_is_refused(out: Path, state: SiteKeys) -> None:
    """A changed blob is not read."""
    flip(blob_of(out, state, "index.html"))

    with pytest.raises(NotOpened, match="cannot be opened"):
        unseal(out, WORDS, fewest=QUICK)


def test_two_swapped_blobs_are_refused(out: Path, state: SiteKeys) -> None:
    """Each is whole, but under the other's name."""
    one, other = blob_of(out, state, "index.html"), blob_of(out, state, "horses/moss.html")
    first, second = one.read_bytes(), other.read_bytes()
    one.write_bytes(second)
    other.write_bytes(first)

    with pytest.raises(NotOpened, match="cannot be opened"):
        files_of(out, state.reader_key)


def test_a_blob_in_place_of_the_list_is_refused(out: Path, state: SiteKeys) -> None:
    """The list is of another kind than a file."""
    (out / "manifest.bin").write_bytes(blob_of(out, state, "index.html").read_bytes())

    with pytest.raises(NotOpened, match="not sealed for this site"):
        files_of(out, state.reader_key)


def test_a_file_of_another_length_than_listed_is_refused(out: Path, state: SiteKeys) -> None:
    """The list and the files hold each other."""
    told = read_manifest(out, state.reader_key).model_dump()
    told["files"]["index.html"] = (*told["files"]["index.html"][:2], 1)
    frame = frame_body(json.dumps(told).encode(), compress=True)
    (out / "manifest.bin").write_bytes(blob(state.keys, state.site_id, MANIFEST, "", frame).content)

    with pytest.raises(NotOpened, match=r"index\.html is not as long"):
        files_of(out, state.reader_key)


def test_a_missing_blob_is_told(out: Path, state: SiteKeys) -> None:
    """By its file."""
    missing = blob_of(out, state, "assets/foot.png")
    missing.unlink()

    with pytest.raises(FileNotFoundError, match=missing.name):
        files_of(out, state.reader_key)


def test_a_reader_takes_no_weak_ring(out: Path) -> None:
    """The tests' few rounds are refused where nobody asks for them."""
    with pytest.raises(NotOpened, match="1000 rounds"):
        unseal(out, WORDS)
