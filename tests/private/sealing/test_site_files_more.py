"""Which files of a built site are sealed, and what is told of them."""

import base64
import hashlib
from pathlib import Path

import pytest

from recordgen.private.sealing.site_files import SiteFile, script_hashes, site_files, title_of
from recordgen.problems import Trouble
from tests.support.sealed_site import small_site


def paths(site: Path) -> list[str]:
    """The paths that are sealed."""
    return [file.path for file in site_files(site)]


def test_files_that_no_reader_needs_are_left_out(tmp_path: Path) -> None:
    """Source maps and the packed map of the site; the rest comes in the order of its paths."""
    assert paths(small_site(tmp_path)) == [
        "404.html",
        "assets/a.css",
        "assets/foot.png",
        "horses/bramble.html",
        "horses/moss.html",
        "index.html",
        "sitemap.xml",
    ]


def test_the_worker_of_a_plain_site_is_not_sealed(tmp_path: Path) -> None:
    """It would stand in the way of the one that opens pages; what the home screen wants is there."""
    site = small_site(tmp_path)
    for name in ("worker.js", "app.webmanifest", "assets/icon.png"):
        (site / name).write_text("x")

    assert {"app.webmanifest", "assets/icon.png"} <= set(paths(site))
    assert "worker.js" not in paths(site)


def test_a_folder_without_a_site_is_told(tmp_path: Path) -> None:
    """Nothing is sealed by mistake."""
    with pytest.raises(Trouble, match="holds no built site"):
        paths(tmp_path)


def test_a_file_too_large_is_named(tmp_path: Path) -> None:
    """With its size and the limit, since a reader opens a whole file in memory."""
    site = small_site(tmp_path)
    with (site / "film.mp4").open("wb") as film:
        film.truncate(25_100_000)

    with pytest.raises(Trouble, match=r"film\.mp4 is 25\.1 MB; a reader opens 25 MB at the most"):
        paths(site)


def test_a_file_at_the_limit_is_sealed(tmp_path: Path) -> None:
    """Twenty-five megabytes to the byte."""
    site = small_site(tmp_path)
    with (site / "film.mp4").open("wb") as film:
        film.truncate(25_000_000)

    assert "film.mp4" in paths(site)


@pytest.mark.parametrize(
    ("path", "media_type", "compressible"),
    [
        ("horses/bramble.html", "text/html; charset=utf-8", True),
        ("assets/a.JS", "text/javascript; charset=utf-8", True),
        ("foot.jpg", "image/jpeg", False),
        ("font.woff2", "font/woff2", False),
        ("dates.ics", "text/calendar; charset=utf-8", True),
        ("unknown", "application/octet-stream", False),
    ],
)
def test_a_file_is_known_by_its_ending(path: str, media_type: str, compressible: bool) -> None:
    """The same on every computer."""
    file = SiteFile(path, b"")

    assert (file.media_type, file.compressible) == (media_type, compressible)


def test_scripts_in_a_page_are_named_by_their_hash() -> None:
    """Those that stand in it and run: not those of other files, and not data.

    Source: W3C Content Security Policy Level 3, hash sources: base64 of the SHA-256 of the script's text. From memory,
    not read.
    """
    page = b"""<script>one()</script><SCRIPT type="module">two()</SCRIPT ><script src="a.js"></script>
        <script type="application/json">{}</script><script defer src=b.js></script>"""
    wanted = {base64.b64encode(hashlib.sha256(text).digest()).decode() for text in (b"one()", b"two()")}

    assert script_hashes(page) == {f"'sha256-{text}'" for text in wanted}


def test_scripts_are_hashed_as_a_browser_reads_them() -> None:
    """Line ends of one computer count as those of another."""
    assert script_hashes(b"<script>a\r\nb</script>") == script_hashes(b"<script>a\nb</script>")


@pytest.mark.parametrize(
    ("page", "title"),
    [(b"<title>Bramble &amp;\n Moss</title>", "Bramble & Moss"), (b"<p>none</p>", ""), (b"\xff", "")],
)
def test_a_page_tells_its_title(page: bytes, title: str) -> None:
    """As a reader sees it, or nothing."""
    assert title_of(page) == title
