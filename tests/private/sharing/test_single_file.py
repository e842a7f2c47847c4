"""One document in an encrypted file of its own."""

from __future__ import annotations

import base64
import hashlib
import re
from pathlib import Path

import pytest
from cryptography.exceptions import InvalidTag

from recordgen.private.crypto.blobs import padme
from recordgen.private.sharing.single_file import seal, single_file
from tests.support.single_file import DOCUMENT, WORDS, frame_of, opened, seal_of, sealed_of


@pytest.fixture(scope="module")
def page(tmp_path_factory: pytest.TempPathFactory) -> str:
    """A sealed document."""
    return single_file(DOCUMENT, WORDS, tmp_path_factory.mktemp("records"))


def test_another_reader_opens_it_with_the_words(page: str) -> None:
    """Bytes come out as they went in."""
    assert opened(page, WORDS) == DOCUMENT


def test_words_are_hashed_a_million_times(page: str) -> None:
    """The number stands in the file and is the one in use."""
    assert seal_of(page)["iter"] == 1_000_000


def test_words_typed_otherwise_make_the_same_file_open(tmp_path: Path) -> None:
    """Capitals and hyphens at sealing are the plain words at opening."""
    assert opened(single_file("<p>x</p>", "Amber-LOTUS drum\tfig harbor  nine", tmp_path), WORDS) == "<p>x</p>"


def test_no_word_of_the_document_is_in_the_file(page: str) -> None:
    """Neither names nor figures nor the title; the same search finds all of them in the document."""
    told = re.findall(r"[A-Z][a-z]{5,}|[0-9]{2} mm", DOCUMENT)

    assert {"Bramble", "Willowmere", "92 mm"} <= set(told)
    assert [word for word in told if word in page] == []


def test_other_words_do_not_open_it(page: str) -> None:
    """One word off is enough."""
    with pytest.raises(InvalidTag):
        opened(page, WORDS.replace("fig", "figs"))


@pytest.mark.parametrize("at", [0, 100, -1])
def test_a_changed_byte_is_noticed(page: str, at: int) -> None:
    """At the beginning, inside, and in the tag."""
    sealed = bytearray(sealed_of(page))
    sealed[at] ^= 1
    changed = page.replace(base64.b64encode(sealed_of(page)).decode(), base64.b64encode(bytes(sealed)).decode())

    assert changed != page
    with pytest.raises(InvalidTag):
        opened(changed, WORDS)


def test_a_changed_name_is_noticed(page: str) -> None:
    """The part in the clear is bound to the rest."""
    name = seal_of(page)["id"]
    with pytest.raises(InvalidTag):
        opened(page.replace(name, "00000000"), WORDS)


def test_salt_iv_and_name_are_fresh_each_time() -> None:
    """The same document under the same words shares nothing with the time before but version and rounds."""
    one, other = seal(DOCUMENT, WORDS), seal(DOCUMENT, WORDS)

    assert [key for key in one[0] if one[0][key] == other[0][key]] == ["v", "iter"]
    assert one[1][:20] != other[1][:20]


def test_the_length_is_padded(page: str) -> None:
    """The sealed length is one of few, and what pads it is zeros."""
    frame = frame_of(page, WORDS)
    length = int.from_bytes(frame[:4], "big")

    assert len(frame) == padme(4 + length)
    assert set(frame[4 + length :]) <= {0}


def test_only_its_own_script_may_run(page: str) -> None:
    """The policy names the hash of the script as it stands in the file, and lets nothing be fetched."""
    policy = re.search(r'Content-Security-Policy" content="(.*?)"', page)
    script = re.search(r"<script>(.*?)</script>", page, re.DOTALL)
    assert policy
    assert script
    hashed = base64.b64encode(hashlib.sha256(script[1].encode()).digest()).decode()

    assert policy[1].split("; ") == [
        "default-src 'none'",
        f"script-src 'sha256-{hashed}'",
        "style-src 'unsafe-inline'",
        "img-src data:",
        "base-uri 'none'",
        "form-action 'none'",
    ]


def test_it_has_no_form_and_names_no_other_host(page: str) -> None:
    """A preview that forbids forms can open it, and no address stands in it."""
    assert "<form" not in page
    assert re.findall(r"(?:https?:)?//[a-z]", page.replace(base64.b64encode(sealed_of(page)).decode(), "")) == []


def test_a_file_needs_words(tmp_path: Path) -> None:
    """Nothing is sealed under nothing."""
    with pytest.raises(ValueError, match="needs words"):
        single_file(DOCUMENT, " - ", tmp_path)
