"""The standard steps against their published test vectors."""

import pytest

from recordgen.private.crypto.primitives import NotOpened, decrypt, encrypt, hkdf, keys_of

# Source: RFC 5869, appendix A.1 to A.3. A.1 read in test suites that quote it; A.2, A.3 from memory, not read.
HKDF_CASES = {
    "A.1": (
        b"\x0b" * 22,
        bytes(range(13)),
        bytes(range(0xF0, 0xFA)),
        "3cb25f25faacd57a90434f64d0362f2a2d2d0a90cf1a5a4c5db02d56ecc4c5bf34007208d5b887185865",
    ),
    "A.2": (
        bytes(range(0x50)),
        bytes(range(0x60, 0xB0)),
        bytes(range(0xB0, 0x100)),
        "b11e398dc80327a1c8e7f78c596a49344f012eda2d4efad8a050cc4c19afa97c59045a99cac7827271cb41c65e590e09"
        "da3275600c2f09b8367793a9aca3db71cc30c58179ec3e87c14c01d5c1f3434f1d87",
    ),
    "A.3": (
        b"\x0b" * 22,
        b"",
        b"",
        "8da4e775a563c18f715f802a063c5a31b8a11f5c5ee1879ec3454e5f3c738d2d9d201395faa4b61a96c8",
    ),
}

# Source: the GCM specification by McGrew & Viega, 2005, test cases 13, 14 and 16. From memory, not read.
GCM_CASES = {
    "13": (bytes(32), bytes(12), b"", b"", "530f8afbc74536b9a963b4f1c4cb738b"),
    "14": (bytes(32), bytes(12), bytes(16), b"", "cea7403d4d606b6e074ec5d3baf39d18d0d1c8a799996bf0265b98b5d48ab919"),
    "16": (
        bytes.fromhex("feffe9928665731c6d6a8f9467308308" * 2),
        bytes.fromhex("cafebabefacedbaddecaf888"),
        bytes.fromhex(
            "d9313225f88406e5a55909c5aff5269a86a7a9531534f7da2e4c303d8a318a72"
            "1c3c0c95956809532fcf0e2449a6b525b16aedf5aa0de657ba637b39"
        ),
        bytes.fromhex("feedfacedeadbeeffeedfacedeadbeefabaddad2"),
        "522dc1f099567d07f47f37a32a84427d643a8cdcbfe5c0c97598a2bd2555d1aa"
        "8cb08e48590dbb3da7b08b1056828838c5f61e6393ba7a0abcc9f662"
        "76fc6ece0f4e1768cddf8853bb2d551b",
    ),
}


@pytest.mark.parametrize("case", HKDF_CASES)
def test_hkdf_gives_the_published_keys(case: str) -> None:
    """Secret, salt and info make the key of the standard."""
    secret, salt, info, key = HKDF_CASES[case]

    assert hkdf(secret, salt, info, len(key) // 2).hex() == key


@pytest.mark.parametrize("case", GCM_CASES)
def test_gcm_gives_the_published_bytes(case: str) -> None:
    """Key, nonce, text and bound bytes make the sealed bytes of the standard, tag last, and open again."""
    key, nonce, plain, bound, wanted = GCM_CASES[case]

    assert encrypt(key, nonce, plain, bound).hex() == wanted
    assert decrypt(key, nonce, bytes.fromhex(wanted), bound) == plain


def test_other_bound_bytes_open_nothing() -> None:
    """Text bound to the sealed bytes must be the same."""
    sealed = encrypt(bytes(32), bytes(12), b"left fore", b"here")

    with pytest.raises(NotOpened, match="cannot be opened"):
        decrypt(bytes(32), bytes(12), sealed, b"there")


def test_the_keys_of_a_site_differ_from_each_other_and_between_sites() -> None:
    """One master gives three values, and others for another site."""
    here, there = keys_of(bytes(32), bytes(16)), keys_of(bytes(32), bytes(15) + b"1")

    assert len({key for keys in (here, there) for key in (keys.enc, keys.mac, keys.proof, keys.kid)}) == 8
    assert (len(here.enc), len(here.mac), len(here.kid)) == (32, 32, 8)


def test_the_keys_of_a_site_are_those_of_the_form() -> None:
    """Each is HKDF of the master with the site's number and its own name, so that other programs find the same."""
    keys = keys_of(b"m" * 32, b"s" * 16)

    assert keys.enc == hkdf(b"m" * 32, b"s" * 16, b"sld1 enc")
    assert keys.kid == hkdf(b"m" * 32, b"s" * 16, b"sld1 kid")[:8]


def test_keys_are_not_printed() -> None:
    """Keys printed by mistake are not shown."""
    keys = keys_of(bytes(32), bytes(16))

    assert repr(keys) == f"Keys(kid={keys.kid!r})"
