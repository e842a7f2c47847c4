"""The folder of a sealed site: its own, and never anybody else's."""

import json
from pathlib import Path

import pytest

from recordgen.private.crypto.key_ring import b64u
from recordgen.private.sealing.sealed_folder import Outlet
from recordgen.problems import Trouble

SITE = b"w" * 16
FIXED = ["index.html", "sw.js", "keys.json", "manifest.bin"]
BLOB = f"d/{'a' * 26}.bin"


def folder_with(folder: Path, *names: str, site: bytes | None = SITE) -> Path:
    """A folder with these files, and the key ring of a site."""
    for name in names:
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_bytes(b"SLD1 sealed")
    if site:
        (folder / "keys.json").write_text(json.dumps({"site": b64u(site)}))
    return folder


def refused(folder: Path) -> str:
    """The words told of the folder, or none."""
    try:
        Outlet(folder).refuse_foreign(SITE, FIXED)
    except Trouble as trouble:
        return trouble.message
    return ""


def test_an_empty_folder_a_missing_one_and_its_own_are_fine(tmp_path: Path) -> None:
    """The folder of a git branch counts as empty."""
    (tmp_path / ".git").mkdir()
    (tmp_path / ".git" / "HEAD").write_text("ref: refs/heads/pages\n")

    assert refused(tmp_path) == refused(tmp_path / "missing") == ""
    assert refused(folder_with(tmp_path, *FIXED, BLOB)) == ""


@pytest.mark.parametrize("name", ["CNAME", "d/notes.txt", "horses/bramble.html", "d/aaaa.bin", ".htaccess"])
def test_a_foreign_file_is_named(tmp_path: Path, name: str) -> None:
    """Whatever a sealed site does not write."""
    assert name in refused(folder_with(tmp_path, *FIXED, name))


def test_another_website_is_not_overwritten(tmp_path: Path) -> None:
    """Its index.html bears the same name, but no key ring lies beside it."""
    assert "index.html" in refused(folder_with(tmp_path, "index.html", site=None))


def test_another_stables_folder_is_told(tmp_path: Path) -> None:
    """Two stables do not share an address."""
    assert "another stable" in refused(folder_with(tmp_path, *FIXED, site=b"x" * 16))


def test_a_file_of_a_blobs_name_is_no_blob(tmp_path: Path) -> None:
    """It must begin as blobs do."""
    folder_with(tmp_path, *FIXED)
    (tmp_path / "d").mkdir()
    (tmp_path / BLOB).write_bytes(b"GIF89a")

    assert BLOB in refused(tmp_path)


def test_a_first_sealing_that_was_cut_short_goes_on(tmp_path: Path) -> None:
    """Blobs are there and no key ring yet, and a part of a file."""
    folder_with(tmp_path, BLOB, "d/.blob.bin.0123abcd.part", site=None)

    assert refused(tmp_path) == ""


def test_what_is_the_same_is_not_written_again(tmp_path: Path) -> None:
    """Written once, changed once, and open to be served."""
    outlet = Outlet(tmp_path)
    outlet.put(BLOB, b"one")
    time = (tmp_path / BLOB).stat().st_mtime_ns
    again = Outlet(tmp_path)
    again.put(BLOB, b"one")

    assert (outlet.written, again.written) == ({BLOB: 3}, {})
    assert (tmp_path / BLOB).stat().st_mtime_ns == time
    assert (tmp_path / BLOB).stat().st_mode & 0o777 == 0o644


def test_a_damaged_file_is_written_anew(tmp_path: Path) -> None:
    """The name alone does not count."""
    folder_with(tmp_path, BLOB)
    outlet = Outlet(tmp_path)
    outlet.put(BLOB, b"SLD1 rights")

    assert (tmp_path / BLOB).read_bytes() == b"SLD1 rights"


def test_only_blobs_and_parts_are_taken_away(tmp_path: Path) -> None:
    """Files that are to stay do so, and so does everything that is no blob."""
    other = BLOB.replace("a", "b")
    folder_with(tmp_path, BLOB, other, "index.html", ".sw.js.0123abcd.part")
    outlet = Outlet(tmp_path)
    outlet.keep_only([BLOB])

    assert sorted(outlet.deleted) == [".sw.js.0123abcd.part", other]
    assert outlet.files() == [BLOB, "index.html", "keys.json"]


def test_a_link_is_no_blob_of_ours(tmp_path: Path) -> None:
    """The file it points to is somebody's."""
    folder_with(tmp_path, *FIXED)
    (tmp_path / "elsewhere").write_bytes(b"SLD1")
    (tmp_path / "d").mkdir()
    (tmp_path / BLOB).symlink_to(tmp_path / "elsewhere")

    with pytest.raises(Trouble, match="not of this site"):
        Outlet(tmp_path).refuse_foreign(SITE, [*FIXED, "elsewhere"])
