"""Nothing is loaded from another host, which would learn who reads."""

from pathlib import Path

import pytest

from recordgen.private.keystore.site_keys import SiteKeys
from recordgen.private.sealing.seal import seal
from recordgen.private.sealing.site_files import SiteFile, foreign_addresses
from recordgen.problems import Trouble
from tests.conftest import TODAY

FAR = "https://example.org/a.js"


@pytest.mark.parametrize(
    "page",
    [
        f'<script src="{FAR}"></script>',
        f"<img SRC = {FAR} alt=x>",
        f'<img srcset="{FAR} 2x">',
        f'<link rel="stylesheet" href="{FAR}">',
        f'<link href="{FAR}" rel="preload" as="script">',
        f"<style>a {{ background: url( '{FAR}' ) }}</style>",
        f'<style>@import "{FAR}";</style>',
    ],
)
def test_what_a_page_would_load_is_found(page: str) -> None:
    """Scripts, pictures, styles, what a style asks for."""
    assert foreign_addresses(SiteFile("a.html", page.encode())) == [FAR]


@pytest.mark.parametrize(
    "page",
    [
        f'<a href="{FAR}">read on</a>',
        f'<link rel="canonical" href="{FAR}">',
        '<img src="foot.jpg"><script src="/assets/a.js"></script>',
        '<img src="data:image/png;base64,AA//BB">',
        '<svg xmlns="http://www.w3.org/2000/svg"></svg>',
    ],
)
def test_what_loads_nothing_from_elsewhere_is_let_stand(page: str) -> None:
    """Links to follow, own files, pictures inside the page, names of formats."""
    assert foreign_addresses(SiteFile("a.html", page.encode())) == []


def test_styles_are_looked_through_and_data_is_not() -> None:
    """A style sheet is; a calendar or a search index is text alone."""
    text = b"a { background: url(//example.org/a.png) }"

    assert foreign_addresses(SiteFile("a.css", text)) == ["//example.org/a.png"]
    assert foreign_addresses(SiteFile("a.json", text)) == []


def test_a_site_that_loads_from_elsewhere_is_not_sealed(tmp_path: Path) -> None:
    """The page and the address are named, with the way out, and nothing is written."""
    site, out = tmp_path / "site", tmp_path / "out"
    site.mkdir()
    (site / "index.html").write_text(f'<title>Front</title><script src="{FAR}"></script>')
    state = SiteKeys.new(tmp_path / "state.json")
    state.add_link()

    with pytest.raises(Trouble, match=r"index\.html from https://example\.org/a\.js") as refused:
        seal(site, state, "/", out, today=TODAY)

    assert "site_templates" in refused.value.way_out
    assert not out.exists()
