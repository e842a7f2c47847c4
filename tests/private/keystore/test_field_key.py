"""The practice's key pair that notes from a phone are sealed for."""

from __future__ import annotations

import stat
from pathlib import Path

import pytest
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.ciphers.aead import AESGCM
from cryptography.hazmat.primitives.hashes import SHA256
from cryptography.hazmat.primitives.kdf.hkdf import HKDF

from recordgen.private.crypto.primitives import NotOpened
from recordgen.private.keystore.backup import backup, restore
from recordgen.private.keystore.field_key import FieldKey, field_key, key_named, keys_in
from recordgen.problems import Trouble
from tests.support.sealed_notes import sealed_notes, url64
from tests.support.sealed_site import QUICK, WORDS

# Source: RFC 5903, section 8.1 (256-bit random ECP group), read in test suites that quote it.
OURS = 0xC88F01F510D9AC3F70A292DAA2316DE544E9AAB8AFE84049C62A9C57862D1433
OURS_PUBLIC = bytes.fromhex(
    "04DAD0B65394221CF9B051E1FECA5787D098DFE637FC90B9EF945D0C3772581180"
    "5271A0461CDB8252D61F1C456FA3E59AB1F45B33ACCF5F58389E0577B8990BB3"
)
THEIRS = 0xC6EF9C5D78AE012A011164ACB397CE2088685D8F06BF9BE0B283AB46476BEE53
THEIRS_PUBLIC = bytes.fromhex(
    "04D12DFB5289C8D4F81208B70270398C342296970A0BCCB74C736FC7554494BF63"
    "56FBF3CA366CC23E8157854C13C58D6AAC23F046ADA30F8353E74F33039872AB"
)
SHARED = bytes.fromhex("D6840F6B42F6EDAFD13116E0E12565202FEF8E9ECE7DCE03812464D04B9442DE")


def pair(private: int = OURS) -> FieldKey:
    """A pair of a known private key."""
    return FieldKey(ec.derive_private_key(private, ec.SECP256R1()))


@pytest.fixture
def records(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder of records, and a folder of keys for this test alone."""
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(tmp_path / "keys"))
    (tmp_path / "records").mkdir()
    return tmp_path / "records"


def copied(folder: Path) -> None:
    """A copy of all keys."""
    made = backup(folder / "copy", WORDS, QUICK)
    made.write()
    assert (made.stables, made.field_page) == (0, True)


def test_the_public_half_is_the_published_one() -> None:
    """The point of the published private key, uncompressed. Source: RFC 5903, section 8.1."""
    assert pair().public == OURS_PUBLIC


def test_a_line_opens_with_the_published_shared_secret() -> None:
    """The keys agree on the secret of RFC 5903, section 8.1; from it HKDF makes the file's key."""
    key = HKDF(SHA256(), 32, THEIRS_PUBLIC, b"recordgen field notes 1").derive(SHARED)
    bound = bytes.fromhex(
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
    )  # SHA-256 of abc, FIPS 180
    nonce = bytes(11) + b"\7"
    line = url64(AESGCM(key).encrypt(nonce, b"\0heel 42", bound + nonce))

    assert pair().opener(b"abc", url64(THEIRS_PUBLIC))(7, line) == b"heel 42"


@pytest.mark.parametrize(("number", "first"), [(8, b"abc"), (7, b"abd")])
def test_a_line_fits_no_other_place_and_no_other_file(number: int, first: bytes) -> None:
    """Its number and the first line are held by the seal."""
    head, line = sealed_notes("k7", [{"kind": "end"}] * 7, OURS_PUBLIC, THEIRS).decode().split("\n")[:8:7]
    sealed = line.partition(" ")[2]
    first = head.encode() if first == b"abc" else head.replace("k7", "k8").encode()

    assert pair().opener(head.encode(), url64(THEIRS_PUBLIC))(7, sealed) == b'{"kind": "end"}'
    with pytest.raises(NotOpened, match="changed since"):
        pair().opener(first, url64(THEIRS_PUBLIC))(number, sealed)


def test_a_content_made_small_is_bounded() -> None:
    """A line that would grow without end, or is not packed rightly, is refused."""
    key = HKDF(SHA256(), 32, THEIRS_PUBLIC, b"recordgen field notes 1").derive(SHARED)
    bound = bytes.fromhex("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")
    line = url64(AESGCM(key).encrypt(bytes(11) + b"\1", b"\1not packed", bound + bytes(11) + b"\1"))

    with pytest.raises(NotOpened):
        pair().opener(b"abc", url64(THEIRS_PUBLIC))(1, line)


@pytest.mark.parametrize("brought", ["", "BAAA", url64(b"\4" + bytes(64)), "no base64!"])
def test_a_key_that_is_none_is_told(brought: str) -> None:
    """A point that is not on the curve gives nothing away."""
    with pytest.raises(NotOpened):
        pair().opener(b"abc", brought)


def test_the_pair_is_made_once_and_for_this_user_alone(records: Path, tmp_path: Path) -> None:
    """It lies in the folder of keys; the same practice gets the same pair."""
    first = field_key(records)
    (file,) = (tmp_path / "keys").iterdir()

    assert field_key(records).public == first.public
    assert stat.S_IMODE(file.stat().st_mode) == 0o600


def test_a_pair_is_found_by_its_fingerprint(records: Path) -> None:
    """Notes for another practice are told, and how to bring a lost key back."""
    key = field_key(records)

    assert key_named(records, key.fingerprint).public == key.public
    with pytest.raises(NotOpened, match="another practice") as told:
        key_named(records, pair().fingerprint)
    assert "readers --restore" in told.value.way_out


def test_a_lost_pair_comes_back_with_the_other_keys(records: Path, tmp_path: Path) -> None:
    """The copy of all keys holds it, and it opens what the page sealed meanwhile."""
    key = field_key(records)
    copied(tmp_path)
    for file in (tmp_path / "keys").iterdir():
        file.unlink()

    assert len(restore(tmp_path / "copy", WORDS, QUICK).put_back) == 1
    assert field_key(records).public == key.public


def test_a_pair_made_meanwhile_stays_and_the_old_one_is_put_beside_it(records: Path, tmp_path: Path) -> None:
    """Notes that were sealed for either open."""
    old = field_key(records)
    copied(tmp_path)
    (file,) = (tmp_path / "keys").iterdir()
    file.unlink()
    new = field_key(records)
    restore(tmp_path / "copy", WORDS, QUICK)

    assert [key.public for key in keys_in(file)] == [new.public, old.public]
    assert key_named(records, old.fingerprint).public == old.public
    assert restore(tmp_path / "copy", WORDS, QUICK).already_here == (file.name,)


def test_a_damaged_file_of_keys_is_told(records: Path, tmp_path: Path) -> None:
    """It says where to get it back, and is not written over."""
    field_key(records)
    (file,) = (tmp_path / "keys").iterdir()
    file.write_bytes(file.read_bytes()[:-40])

    with pytest.raises(Trouble, match="is damaged"):
        field_key(records)


def test_a_damaged_file_of_keys_is_put_aside_by_a_restore(records: Path, tmp_path: Path) -> None:
    """It is not deleted, and the copy takes its place."""
    key = field_key(records)
    copied(tmp_path)
    (file,) = (tmp_path / "keys").iterdir()
    file.write_bytes(file.read_bytes()[:-40])
    restored = restore(tmp_path / "copy", WORDS, QUICK)

    assert (restored.put_back, restored.damaged) == ((file.name,), (f"{file.name}.damaged",))
    assert field_key(records).public == key.public
