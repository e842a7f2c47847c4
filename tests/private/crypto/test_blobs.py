"""A file to a sealed blob and back."""

import hashlib
import struct
import zlib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from recordgen.private.crypto import blobs as frames
from recordgen.private.crypto.blobs import (
    FILE,
    MANIFEST,
    Blob,
    ReaderKey,
    blob,
    frame_body,
    name_and_nonce,
    open_blob,
    padme,
    parse_frame,
)
from recordgen.private.crypto.primitives import NotOpened, keys_of

SITE = b"w" * 16
KEYS = keys_of(b"k" * 32, SITE)
READER = ReaderKey(KEYS.enc, KEYS.kid, SITE)
PATH = "horses/bramble.html"
TEXT = b"Left fore: 92 mm before, 83 mm after. " * 30


def sealed(body: bytes = TEXT, path: str = PATH) -> Blob:
    """A file of the site, sealed."""
    return blob(KEYS, SITE, FILE, path, frame_body(body, compress=True))


@given(st.binary(max_size=3000), st.booleans())
def test_a_file_comes_back_as_it_was(body: bytes, compress: bool) -> None:
    """Sealed and opened, any bytes are the same."""
    one = blob(KEYS, SITE, FILE, PATH, frame_body(body, compress))

    assert open_blob(READER, FILE, one) == body


def test_the_same_file_gives_the_same_blob() -> None:
    """Name and bytes come from path, content and keys alone."""
    assert sealed() == sealed()


def test_a_blob_has_the_form_that_browsers_read() -> None:
    """Magic, kind, eight bytes of key number, twelve of nonce, then the frame and sixteen of tag."""
    one = sealed()
    frame = frame_body(TEXT, compress=True)

    assert one.content[:13] == b"SLD1\x01" + KEYS.kid
    assert one.content[13:25] == name_and_nonce(KEYS.mac, FILE, PATH, frame)[1]
    assert len(one.content) == 25 + len(frame) + 16
    assert len(one.name) == 26
    assert set(one.name) <= set("abcdefghijklmnopqrstuvwxyz234567")


def test_equal_files_at_two_paths_look_different() -> None:
    """Neither the names nor the bytes tell that two files are the same."""
    here, there = sealed(path="a.css"), sealed(path="b.css")

    assert here.name != there.name
    assert here.content[25:] != there.content[25:]


@pytest.mark.parametrize("part", ["header", "nonce", "frame", "tag"])
def test_a_flipped_bit_is_refused_in_each_part(part: str) -> None:
    """Every bit of every byte of a part is held."""
    one = sealed(b"x" * 90)
    size = len(one.content)
    spans = {"header": (0, 13), "nonce": (13, 25), "frame": (25, size - 16), "tag": (size - 16, size)}
    for position in range(*spans[part]):
        for bit in range(8):
            changed = bytearray(one.content)
            changed[position] ^= 1 << bit
            with pytest.raises(NotOpened):
                open_blob(READER, FILE, Blob(one.name, bytes(changed)))


@pytest.mark.parametrize("length", [0, 3, 13, 20, 25, 40, -1])
def test_a_cut_blob_is_refused(length: int) -> None:
    """However little is left."""
    one = sealed()

    with pytest.raises(NotOpened):
        open_blob(READER, FILE, Blob(one.name, one.content[:length]))


def test_a_blob_under_another_name_is_refused() -> None:
    """One file cannot stand in for another."""
    with pytest.raises(NotOpened):
        open_blob(READER, FILE, Blob(sealed(path="b.css").name, sealed().content))


def test_a_blob_of_another_site_is_refused() -> None:
    """The same keys with another site's number open nothing."""
    with pytest.raises(NotOpened):
        open_blob(ReaderKey(KEYS.enc, KEYS.kid, b"x" * 16), FILE, sealed())


def test_a_manifest_is_no_file_and_keeps_its_name() -> None:
    """The kind is held by the seal."""
    manifest = blob(KEYS, SITE, MANIFEST, "", frame_body(b"{}", compress=True))

    assert manifest.name == "manifest"
    with pytest.raises(NotOpened, match="not sealed for this site"):
        open_blob(READER, FILE, manifest)


@given(st.integers(min_value=1, max_value=30_000_000))
def test_padding_is_small_and_leaves_few_sizes(length: int) -> None:
    """A length grows by 12 % at the most, never shrinks, and is padded once."""
    padded = padme(length)

    assert length <= padded <= length * 1.12
    assert padme(padded) == padded


def test_padding_leaves_few_sizes() -> None:
    """A hundred thousand lengths become some hundreds.

    Derived from: the rule keeps floor(log2 E) + 1 bits after the first, E being log2 of the length.
    """
    assert len({padme(length) for length in range(1, 100_000)}) < 400
    assert [padme(length) for length in (9, 100, 1000, 100_000)] == [10, 104, 1024, 100_352]


def test_no_two_frames_share_a_nonce() -> None:
    """Two ways of packing the same file are two frames with two nonces and two names, so no nonce meets two texts."""
    body = b"".join(b"%d mm, " % (n * n % 97) for n in range(800))
    packed = [zlib.compress(body, level) for level in (1, 6, 9)]
    different = {struct.pack(">BI", 1, len(inner)) + inner for inner in packed} | {frame_body(body, compress=False)}
    told = [name_and_nonce(KEYS.mac, FILE, PATH, frame) for frame in different]

    assert len(different) >= 3
    assert len({nonce for _, nonce in told}) == len({name for name, _ in told}) == len(different)


@given(st.lists(st.tuples(st.sampled_from(["a.css", "b.css"]), st.binary(max_size=20)), unique=True, max_size=30))
def test_different_files_have_different_nonces(files: list[tuple[str, bytes]]) -> None:
    """Path and content both count."""
    nonces = {name_and_nonce(KEYS.mac, FILE, path, frame_body(body, False))[1] for path, body in files}

    assert len(nonces) == len(files)


def test_the_parts_of_a_name_cannot_run_into_each_other() -> None:
    """The path's length goes in, so that its end cannot be taken for the frame's beginning."""
    assert name_and_nonce(KEYS.mac, FILE, "ab", b"c") != name_and_nonce(KEYS.mac, FILE, "a", b"bc")


def test_what_does_not_pack_stays_as_it_is() -> None:
    """A picture is not packed twice: the flag is off and the bytes stand in clear inside the frame."""
    noise = b"".join(hashlib.sha256(bytes([number])).digest() for number in range(9))

    assert frame_body(noise, compress=True)[:5] == struct.pack(">BI", 0, len(noise))
    assert frame_body(TEXT, compress=True)[0] == 1


@pytest.mark.parametrize(
    "frame",
    [
        b"",
        b"\0\0\0\0",
        b"\x02\0\0\0\1x",
        b"\0\0\0\0\x09x",
        b"\0\0\0\0\x04xxxxy",
        b"\0\0\0\0\x01x\0",
        b"\x01\0\0\0\x01x",
        b"\x01\0\0\0\x0a" + zlib.compress(b"x") + b"y\0",
    ],
    ids=["empty", "short", "flag", "length", "dirty padding", "long padding", "not packed", "more after the pack"],
)
def test_a_frame_of_another_form_is_refused(frame: bytes) -> None:
    """Only what is written is read."""
    with pytest.raises(NotOpened):
        parse_frame(frame)


def test_a_frame_that_explodes_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    """A small frame that unpacks to more than a reader holds is not unpacked."""
    monkeypatch.setattr(frames, "LARGEST", 1000)

    with pytest.raises(NotOpened, match="unpack"):
        parse_frame(frame_body(bytes(2000), compress=True))
