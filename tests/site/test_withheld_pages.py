"""On each page a job that may not stand beside an open caution waits, and each caution gives the number to ring."""

from __future__ import annotations

from pathlib import Path

import pytest
from bs4 import BeautifulSoup, Tag

from recordgen.records.load.everything import read_whole
from recordgen.site.build_context import BuildContext
from recordgen.site.pages.sites import render_site
from tests.support.practice_folders import TODAY, build

SORE = """\
date: 2026-10-14
feet: {left_hind: {frog: {infection: deep groove, painful: yes}}}
care: [daily-grooves, dry-bed]
"""
NAIL = "date: 2026-10-14\nfeet: {LF: {object: {what: nail, where: sole}}}\ncare: [Walk out, hardening-off]\n"
VISIT = "willowmere/bramble/2026-10-14.yaml"
WITH_VET = "name: Willowmere\nvet: {name: Fold Gate Vets, phone: 01632 960856}\n"
WAITS = "Pick out and brush the grooves of the frog The groove of the left hind was deep and sore on 14 October 2026."


def pages(folder: Path, visit: str, stable: str = WITH_VET, site: str = "willowmere") -> dict[str, BeautifulSoup]:
    """The pages of a stable with one horse, by their place."""
    build(folder, {VISIT: visit, "willowmere/stable.yaml": stable})
    context = BuildContext.of(read_whole(folder, TODAY), TODAY, None)
    return {page.uri: BeautifulSoup(page.html, "lxml") for page in render_site(context, site).pages}


def text(page: Tag, part: str = "body") -> str:
    """The words of a part of a page."""
    found = page.select_one(part)
    assert found is not None
    return " ".join(found.get_text(" ").split())


@pytest.mark.parametrize(
    ("uri", "part"), [("horses/bramble.md", "#jobs"), ("index.md", "#jobs"), ("jobs.md", "#not-now")]
)
def test_a_job_that_waits_is_told_with_its_reason(tmp_path: Path, uri: str, part: str) -> None:
    """On the horse's page, the stable's, and the list for the wall; the other job goes on."""
    page = pages(tmp_path, SORE)[uri]

    assert WAITS in text(page, part)
    assert text(page).count("brush the grooves") == 1
    assert "Give it a dry place to stand" in text(page)


def test_the_vets_sheet_tells_what_the_owner_does_not_do(tmp_path: Path) -> None:
    """Among the care in force, with the caution because of which it waits."""
    kept = text(pages(tmp_path, SORE)["horses/bramble_sheet.md"], "#keeping")

    assert "Withheld from the owner : Pick out and brush the grooves of the frog, while this is open" in kept
    assert "Give it a dry place to stand, some hours every day" in kept


def test_jobs_in_own_words_stand_below_what_is_said_first(tmp_path: Path) -> None:
    """Beside a call to the vet: nobody but the trimmer can tell what they ask of the horse."""
    jobs = text(pages(tmp_path, NAIL)["horses/bramble.md"], "#jobs")

    assert (
        jobs.removeprefix("Until next time ")
        .removeprefix("ticks stay on this device ")
        .startswith("What is said above goes before these jobs. Walk out")
    )
    assert "Not now" in jobs
    assert "Walk on firm ground" in jobs.split("Not now")[1]


@pytest.mark.parametrize("uri", ["horses/bramble.md", "index.md"])
@pytest.mark.parametrize(
    ("stable", "told"),
    [
        (WITH_VET, "Ring Fold Gate Vets, 01632 960856"),
        ("name: Willowmere\nvet: {name: Fold Gate Vets}\n", "Ring Fold Gate Vets"),
        ("name: Willowmere\n", "Ring your vet"),
    ],
)
def test_each_caution_gives_the_number_to_ring(tmp_path: Path, uri: str, stable: str, told: str) -> None:
    """As recorded; and no number is made up."""
    (card,) = pages(tmp_path, SORE, stable)[uri].select(".rg-caution")

    assert told == text(card, ".rg-vet")


def test_for_a_trim_the_card_gives_the_trimmers_number(tmp_path: Path) -> None:
    """A horse that is overdue, in a practice with a telephone."""
    build(tmp_path, {"practice.yaml": "name: Hazel\ntrimmer: Wren Ashdown\nphone: 07700 900142\n"})
    (tmp_path / VISIT).unlink()
    (tmp_path / VISIT.replace("10-14", "07-01")).write_text("date: 2026-07-01\nfeet: {LF: {note: x}}\n")
    context = BuildContext.of(read_whole(tmp_path, TODAY), TODAY, None)
    page = next(one for one in render_site(context, "willowmere").pages if one.uri == "horses/bramble.md")

    assert text(BeautifulSoup(page.html, "lxml"), ".rg-caution .rg-vet") == "Ring Wren Ashdown, 07700 900142"


def test_the_trimmers_page_says_which_numbers_are_missing(tmp_path: Path) -> None:
    """The own one, and the vet's of each horse."""
    gaps = text(pages(tmp_path, SORE, "name: Willowmere\n", "practice")["index.md"], "#gaps")

    assert "Your own telephone number is missing" in gaps
    assert "Willowmere : no vet's telephone number is recorded for Bramble" in gaps
