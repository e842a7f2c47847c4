"""Nothing of the records shows in what is published of the demo practice, while the built site is full of it.

Packing alone would hide words from a search. So what is searched was sealed without packing, and beside it lies the
same without encryption, in which the search must find.
"""

import re
from pathlib import Path

import pytest

from recordgen.private.crypto import blobs as frames
from recordgen.private.sealing import seal as sealing
from recordgen.private.sealing.unseal import unseal
from tests.conftest import RECORDS
from tests.support.sealed_site import QUICK, WORDS, contents, new_state, sealed

STABLE = "willowmere"
# Shorter words come up by chance in some hundred thousand random bytes.
SHORTEST = 7


def sealed_files(site: Path, folder: Path) -> dict[str, bytes]:
    """The files of the sealed site by their paths."""
    sealed(site, new_state(folder), folder / "out")
    return contents(folder / "out")


@pytest.fixture(scope="module")
def published(demo_sites: Path, tmp_path_factory: pytest.TempPathFactory) -> dict[str, bytes]:
    """The sealed site as it is published."""
    return sealed_files(demo_sites / STABLE, tmp_path_factory.mktemp("sealed"))


@pytest.fixture(scope="module")
def unpacked(demo_sites: Path, tmp_path_factory: pytest.TempPathFactory) -> dict[str, bytes]:
    """The sealed site without packing."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(sealing, "frame_body", lambda body, compress: frames.frame_body(body, compress=False))
        return sealed_files(demo_sites / STABLE, tmp_path_factory.mktemp("unpacked"))


@pytest.fixture(scope="module")
def in_clear(demo_sites: Path, tmp_path_factory: pytest.TempPathFactory) -> dict[str, bytes]:
    """The same without encryption."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(sealing, "frame_body", lambda body, compress: frames.frame_body(body, compress=False))
        patch.setattr(frames, "encrypt", lambda key, nonce, plain, bound: plain)
        return sealed_files(demo_sites / STABLE, tmp_path_factory.mktemp("clear"))


@pytest.fixture(scope="module")
def built(demo_sites: Path) -> bytes:
    """All that stands in the built site, names of files too, in small letters."""
    return shown(contents(demo_sites / STABLE))


def shown(files: dict[str, bytes]) -> bytes:
    """Names and bytes of files as one text in small letters."""
    return b"\n".join([*(name.encode() for name in files), *files.values()]).lower()


def names() -> set[bytes]:
    """The names of the stable's horses and of the stable, as folders and as given."""
    folders = [path.name for path in (RECORDS / STABLE).iterdir() if path.is_dir()]
    return {name.encode() for name in (*folders, STABLE) if len(name) >= 5}


def words_of_records() -> set[bytes]:
    """Every longer word that was typed into the stable's records and the practice's own pages."""
    files = [*(RECORDS / STABLE).rglob("*.yaml"), *(RECORDS / "pages").glob("*.md")]
    texts = (file.read_text("utf-8").lower() for file in files)
    return {word.encode() for text in texts for word in re.findall(rf"[a-z]{{{SHORTEST},}}", text)}


def days() -> set[bytes]:
    """The days of all visits, as files name them."""
    return {file.stem[:10].encode() for file in (RECORDS / STABLE).glob("*/2*.yaml")}


def sealed_alone(published: dict[str, bytes]) -> dict[str, bytes]:
    """The sealed files and what names them, without the page in clear, which has words of its own."""
    return {name: content for name, content in published.items() if name.startswith("d/") or name == "manifest.bin"}


MARKUP = {b"<html", b"</svg", b"text/html", b"doctype", b"rg-head", b"sha256-", b"viewbox", b"horses/"}


def test_the_search_finds_where_nothing_is_encrypted(in_clear: dict[str, bytes], built: bytes) -> None:
    """Names, days, words of records and markup all show in blobs that were framed and not encrypted."""
    text = shown(sealed_alone(in_clear))
    told = {word for word in words_of_records() if word in built}

    assert len(told) > 100
    assert [part for part in names() | days() | told | MARKUP if part not in text] == []


def test_no_name_shows_in_any_file_or_file_name(published: dict[str, bytes], unpacked: dict[str, bytes]) -> None:
    """Horses, stable and practice, in whatever is published, the pages in clear too."""
    text = shown(published) + shown(unpacked)

    assert [name for name in names() | {b"horses/", b"hazel hoof"} if name in text] == []


def test_no_day_of_a_visit_shows(published: dict[str, bytes], unpacked: dict[str, bytes]) -> None:
    """Neither in names nor in bytes."""
    assert [day for day in days() if day in shown(published) + shown(unpacked)] == []


def test_no_word_of_a_record_shows(unpacked: dict[str, bytes], built: bytes) -> None:
    """Not one of the words that the built site tells."""
    text, told = shown(sealed_alone(unpacked)), {word for word in words_of_records() if word in built}

    assert [word for word in told if word in text] == []


def test_no_part_of_the_markup_shows(unpacked: dict[str, bytes]) -> None:
    """Nor what every page has: tags, media types, the theme's names."""
    text = shown(sealed_alone(unpacked))

    assert [part for part in MARKUP if part in text] == []


def test_names_in_clear_tell_nothing(published: dict[str, bytes]) -> None:
    """Blobs are named by chance-like letters; the rest are the same names for every site."""
    others = {name for name in published if not re.fullmatch(r"d/[a-z2-7]{26}\.bin", name)}

    assert others == {"index.html", "404.html", "sw.js", "keys.json", "manifest.bin", "robots.txt", ".nojekyll"}


def test_files_of_one_kind_hide_among_others_by_size(published: dict[str, bytes]) -> None:
    """Padding leaves fewer sizes than there are files."""
    sizes = [len(content) for name, content in published.items() if name.startswith("d/")]

    assert len(set(sizes)) < len(sizes)


def test_whoever_has_the_words_reads_it_all(demo_sites: Path, published: dict[str, bytes], tmp_path: Path) -> None:
    """The same files come back, so it is not for want of content that nothing shows."""
    for name, content in published.items():
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / name).write_bytes(content)
    opened = unseal(tmp_path, WORDS, fewest=QUICK)

    assert all(name in shown(opened) for name in names())
    assert opened["search/index.js"] == (demo_sites / STABLE / "search" / "index.js").read_bytes()
