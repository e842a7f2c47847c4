"""A record that ended, as the pages tell it; and who owns and pays, for the trimmer alone."""

from __future__ import annotations

import pytest
from bs4 import BeautifulSoup

from recordgen.records.load.everything import read_whole
from recordgen.site.build_context import BuildContext
from recordgen.site.pages.sites import render_site
from tests.support.practice_folders import TODAY, build

SORE = "date: 2026-10-21\nfeet: {LF: {pulse: strong}}\ncare: [pick-out-daily]\n"
FILES = {
    "willowmere/stable.yaml": "name: Willowmere\nleft: {date: 2026-11-20, why: left}\n",
    "willowmere/bramble/horse.yaml": "name: Bramble\nborn: 2015\nleft: {date: 2026-11-02, why: died}\n",
    "willowmere/bramble/2026-10-21.yaml": SORE,
    "willowmere/fennel/horse.yaml": "name: Fennel\nleft: {date: 2026-11-20, why: sold}\n",
    "willowmere/fennel/2026-10-21.yaml": SORE,
    "willowmere/moss/horse.yaml": (
        "name: Moss\n"
        "owner: {name: Jonah Peake, phone: 07700 900317}\npayer: {name: Mara Tilling, email: m@example.org}\n"
    ),
}


@pytest.fixture(scope="module")
def pages(tmp_path_factory: pytest.TempPathFactory) -> dict[str, BeautifulSoup]:
    """The pages of the stable's site and of the trimmer's own."""
    folder = build(tmp_path_factory.mktemp("ended") / "records", FILES)
    context = BuildContext.of(read_whole(folder, TODAY), TODAY, None)
    return {
        f"{site}/{page.uri}": BeautifulSoup(page.html, "lxml")
        for site in ("willowmere", "practice")
        for page in render_site(context, site).pages
    }


def told(page: BeautifulSoup) -> str:
    """The words of a page."""
    return " ".join(page.get_text(" ").split())


def test_a_horse_that_died_is_spoken_of_kindly(pages: dict[str, BeautifulSoup]) -> None:
    """Nothing calls for the vet, no job waits and no day is due any more."""
    page = pages["willowmere/horses/bramble.md"]

    assert "Bramble died on 2 November 2026. We are sorry. All that was written here stays." in told(page)
    assert not page.select("#act, #jobs, #next, #ring")
    assert "Not over on the last visit" not in told(page)


def test_what_was_open_when_a_horse_was_sold_is_told(pages: dict[str, BeautifulSoup]) -> None:
    """In a quiet line, since somebody may look after it now."""
    page = told(pages["willowmere/horses/fennel.html".replace(".html", ".md")])

    assert "Fennel was sold on 20 November 2026. The record ends there, and all of it stays." in page
    assert "Not over on the last visit: A strong pulse" in page


def test_a_stable_tells_who_is_there_no_longer(pages: dict[str, BeautifulSoup]) -> None:
    """And that it is visited no more."""
    page = told(pages["willowmere/index.md"])

    assert "Visited no more since 20 November 2026." in page
    assert "Bramble , died on 2 November 2026; Fennel , since 20 November 2026" in page


def test_owner_and_payer_stand_on_the_trimmers_own_site_alone(pages: dict[str, BeautifulSoup]) -> None:
    """With the number to ring; no page of the stable knows them."""
    known = ("Jonah Peake", "07700 900317", "Mara Tilling", "m@example.org")
    shared = " ".join(str(page) for name, page in pages.items() if name.startswith("willowmere/"))
    own = [str(page) for name, page in pages.items() if name.startswith("practice/") and "moss" in name]

    assert own
    assert all(word in " ".join(own) for word in known)
    assert [word for word in known if word in shared] == []
