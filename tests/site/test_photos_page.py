"""The photographs on a horse's page, and their files."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from bs4.element import Tag

from recordgen.cache.entries import Cache
from recordgen.pictures.cache import PictureCache
from recordgen.problems import Trouble
from recordgen.records.load.folders import Walk
from recordgen.records.photos.files import Photo, read_photos
from recordgen.records.photos.jpeg import picture_alone
from recordgen.site import photographs
from recordgen.site.drawings.pictures import Pictures
from recordgen.site.model import Page
from recordgen.site.photographs import SMALL_WIDTH, Album, PhotoFiles, album
from recordgen.site.templates import environment, render
from tests.support.horse_records import NAMING, practice
from tests.support.photographs import drawn, file_of, opened

TODAY = dt.date(2026, 12, 1)
PAGE = "horses/bramble.md"
TRIMMED = [
    "2026-10-14-left-fore-sole-before.jpg",
    "2026-10-14-left-fore-sole-after.jpg",
    "2026-10-14-right-hind-side-found.jpg",
]


def photos(folder: Path, names: Sequence[str], size: tuple[int, int] = (1600, 1200)) -> tuple[Photo, ...]:
    """Photographs of these names in a horse's folder, as the records hold them."""
    (folder / "photos").mkdir()
    for name in names:
        (folder / "photos" / name).write_bytes(file_of(drawn(*size)))
    walk = Walk(folder)
    found = read_photos(walk, folder, TODAY)
    assert list(walk.problems) == []
    return found


def section(shown: Album) -> BeautifulSoup:
    """The part of a page that shows an album."""
    pictures = Pictures(PictureCache(None), NAMING)
    values = {"album": shown, "pictures": pictures, "practice": practice()}
    html = render(environment(Path("none"), NAMING), "horse/photos.html", **values)
    return BeautifulSoup(Page(PAGE, "", html, tuple(pictures.late)).complete(html), "html.parser")


def images(found: BeautifulSoup | Tag) -> list[Tag]:
    """The images in a part of a page."""
    return list(found.select("img"))


def test_a_horse_without_photographs_shows_nothing() -> None:
    """No heading, no empty frame."""
    assert section(album((), PAGE)).get_text().strip() == ""


def test_before_and_after_stand_side_by_side(tmp_path: Path) -> None:
    """As a named group; what has no counterpart stands apart."""
    found = section(album(photos(tmp_path, TRIMMED), PAGE))
    (pair,) = found.select(".rg-pair")

    assert (pair["role"], pair["aria-label"]) == ("group", "Left fore, from below")
    assert [caption.get_text() for caption in pair.select("figcaption")] == ["Before the trim", "After the trim"]
    assert [one.get_text() for one in found.select(".rg-singles figcaption")] == ["Right hind, from the side, as found"]


def test_each_image_says_what_it_shows(tmp_path: Path) -> None:
    """Foot, view, moment and day. Source: WCAG 2.2, success criterion 1.1.1."""
    assert [image["alt"] for image in images(section(album(photos(tmp_path, TRIMMED), PAGE)))] == [
        "Left fore, from below, before the trim, 14 October 2026",
        "Left fore, from below, after the trim, 14 October 2026",
        "Right hind, from the side, as found, 14 October 2026",
    ]


@pytest.mark.parametrize("size", [(1600, 1200), (1067, 1600), (1600, 901), (300, 400)])
def test_width_height_and_sizes_are_those_of_the_files(tmp_path: Path, size: tuple[int, int]) -> None:
    """So that nothing jumps while loading, and a browser chooses rightly."""
    shown = album(photos(tmp_path, TRIMMED[:1], size), PAGE)
    files = PhotoFiles([shown], None)
    (image,) = images(section(shown))
    sizes = {path: opened(files[path]).size for path in files}
    told = [part.split() for part in str(image.get("srcset", f"{image['src']} {size[0]}w")).split(", ")]

    assert (int(str(image["width"])), int(str(image["height"]))) == sizes[f"horses/{image['src']}"]
    assert {f"horses/{address}": width for address, width in told} == {
        path: f"{width}w" for path, (width, _) in sizes.items()
    }
    assert min(width for width, _ in sizes.values()) <= SMALL_WIDTH


def test_images_load_when_they_are_looked_at(tmp_path: Path) -> None:
    """On a telephone in a barn the first words come first; a touch opens the large one, which is the stored one."""
    held = photos(tmp_path, TRIMMED[:1])
    shown = album(held, PAGE)
    (image,) = images(section(shown))
    link = image.parent

    assert (image["loading"], image["decoding"], bool(image["sizes"])) == ("lazy", "async", True)
    assert link is not None
    assert PhotoFiles([shown], None)[f"horses/{link['href']}"] == held[0].file.read_bytes()


def test_earlier_days_are_folded_and_the_first_of_all_stays(tmp_path: Path) -> None:
    """The latest lies open; of many days the newest are shown, the first to compare, and how many more there are."""
    names = [f"2026-{month:02}-01-left-fore-sole-before.jpg" for month in range(1, 13)]
    found = section(album(photos(tmp_path, names), PAGE, most_days=3))

    assert [one.get_text() for one in found.select("h4")] == ["1 December 2026"]
    assert [one.get_text() for one in found.select("summary")] == [
        "1 November 2026, 1 photograph",
        "1 October 2026, 1 photograph",
        "1 January 2026, 1 photograph",
    ]
    assert "Photographs of 8 more days are kept by Wren Ashdown." in found.get_text()


def test_files_are_named_by_what_they_show_and_each_once(tmp_path: Path) -> None:
    """Also where two names in the records mean the same."""
    held = photos(tmp_path, ["2026-10-14-left-fore-sole.jpg", "2026-10-14-left-fore-sole-found.jpg"])

    assert sorted(PhotoFiles([album(held, PAGE)], None)) == [
        "horses/bramble/2026-10-14-left-fore-sole-found-2-small.jpg",
        "horses/bramble/2026-10-14-left-fore-sole-found-2.jpg",
        "horses/bramble/2026-10-14-left-fore-sole-found-small.jpg",
        "horses/bramble/2026-10-14-left-fore-sole-found.jpg",
    ]


def test_nothing_beside_the_picture_reaches_a_site(tmp_path: Path) -> None:
    """Not even what hides where the check does not look."""
    held = photos(tmp_path, TRIMMED[:1])
    plain = held[0].file.read_bytes()
    held[0].file.write_bytes(plain + b"a film with its place" + plain)
    files = PhotoFiles([album(held, PAGE)], None)

    assert [picture_alone(files[path]) == files[path] for path in files] == [True, True]
    assert files["horses/bramble/2026-10-14-left-fore-sole-before.jpg"] == plain


def test_a_small_photograph_is_made_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A second build reads the kept one; one that was cut short is made again."""
    shown = album(photos(tmp_path, TRIMMED[:1]), PAGE)
    first = dict(PhotoFiles([shown], Cache(tmp_path / "kept")))
    (kept,) = (tmp_path / "kept" / "photographs").rglob("?" * 64)
    kept.write_bytes(kept.read_bytes()[:-9])
    again = dict(PhotoFiles([shown], Cache(tmp_path / "kept")))
    monkeypatch.setattr(photographs, "resized", lambda *_: pytest.fail("a photograph was made again"))

    assert dict(PhotoFiles([shown], Cache(tmp_path / "kept"))) == again == first


def test_another_photograph_under_the_same_name_is_made_anew(tmp_path: Path) -> None:
    """It is kept by content."""
    held = photos(tmp_path, TRIMMED[:1])
    small = "horses/bramble/2026-10-14-left-fore-sole-before-small.jpg"
    before = PhotoFiles([album(held, PAGE)], Cache(tmp_path / "kept"))[small]
    held[0].file.write_bytes(file_of(drawn(1600, 1200).rotate(180)))

    assert PhotoFiles([album(held, PAGE)], Cache(tmp_path / "kept"))[small] != before


def test_the_other_files_of_a_site_stand_beside_the_photographs(tmp_path: Path) -> None:
    """One mapping holds all of them."""
    files = PhotoFiles([album(photos(tmp_path, TRIMMED[:1]), PAGE)], None, {"dates.ics": b"x"})

    assert (len(files), next(iter(files)), files["dates.ics"]) == (3, "dates.ics", b"x")


def test_a_photograph_that_is_gone_is_told(tmp_path: Path) -> None:
    """In a sentence."""
    held = photos(tmp_path, TRIMMED[:1])
    held[0].file.unlink()
    with pytest.raises(Trouble, match="cannot be read"):
        dict(PhotoFiles([album(held, PAGE)], None))
