"""The field page published sealed: opened by the trimmer's own words, and then as good in the barn as any."""

from __future__ import annotations

import datetime as dt
import os
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, expect

from tests.support.commands import run, small_practice
from tests.support.field import Hand, hosted, phone
from tests.support.publishing import WORDS
from tests.support.sealed_host import unlock, until

TOE = "feet.left_fore.after.toe_length"


@dataclass
class Published:
    """The field page as it was published. address: where this machine serves it. words: what opens it."""

    records: Path
    public: Path
    address: str = ""
    words: str = ""

    def publish(self) -> str:
        """Publish it as of today; what is said."""
        told = run("publish", "field-notes", "--yes", "--records", self.records)
        assert told.exit_code == 0, told.output
        return told.output


@pytest.fixture(scope="module")
def published(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Published]:
    """The field page of a small practice, sealed into a folder that is served over https."""
    folder = tmp_path_factory.mktemp("sealed-field")
    made = Published(small_practice(folder), folder / "public")
    with (made.records / "practice.yaml").open("a") as file:
        file.write("field_page: {address: 'https://field.example.org/', to: ../public}\n")
    before = os.environ.get("RECORDGEN_PRIVATE")
    os.environ["RECORDGEN_PRIVATE"] = str(folder / "keys")
    try:
        (made.words,) = WORDS.findall(made.publish())
        with hosted(made.public, https=True) as made.address:
            yield made
    finally:
        os.environ.pop("RECORDGEN_PRIVATE")
        os.environ.update({"RECORDGEN_PRIVATE": before} if before else {})


@pytest.fixture
def context(browser: Browser) -> Iterator[BrowserContext]:
    """A phone that has never seen the page."""
    found = phone(browser)
    yield found
    found.close()


def unlocked(context: BrowserContext, published: Published) -> Hand:
    """The page opened by its words on the trimmer's own phone, and kept there."""
    page = context.new_page()
    hand = Hand(page)
    page.on("console", lambda told: hand.said.append(told.text) if told.type == "error" else None)
    page.on("pageerror", lambda told: hand.said.append(str(told)))
    page.goto(published.address)
    unlock(page, published.words, own_device=True)
    page.wait_for_selector("body[data-offline=yes]")
    return hand


def measure(hand: Hand, value: int = 75) -> None:
    """Enter the length of one toe."""
    for key in ("horse-willowmere/bramble", "tile-left_fore", f"{TOE}-{value}"):
        hand.tap(key)
    hand.settled()


def test_the_host_holds_nothing_of_the_horses(published: Published) -> None:
    """No file that lies there names a horse, a measure or the practice's key."""
    files = [path for path in published.public.rglob("*") if path.is_file()]
    told = b"".join(path.read_bytes() for path in files)

    assert len(files) > 5
    assert [name for name in (b"Bramble", b"Fennel", b"Willowmere", b"toe_length") if name in told] == []


def test_its_words_open_it_and_it_works_without_a_signal(context: BrowserContext, published: Published) -> None:
    """Opened once; then with no network it opens by itself, takes an entry, keeps it, and builds the file."""
    hand = unlocked(context, published)
    context.set_offline(True)
    hand.page.reload()
    hand.page.wait_for_selector("body[data-ready]")
    measure(hand)
    hand.page.reload()
    hand.page.wait_for_selector("body[data-ready]")
    hand.page.evaluate("location.hash = '#/hand'")
    with hand.page.expect_download() as download:
        hand.tap("save")
    notes = Path(download.value.path()).read_text()

    assert hand.record() == {"feet": {"left_fore": {"after": {"toe_length": 75}}}}
    assert "toe_length" not in notes
    assert len(notes.splitlines()) == 4
    assert [line for line in hand.said if "ERR_INTERNET_DISCONNECTED" not in line] == []


def test_a_browser_finds_what_it_needs_for_the_home_screen(context: BrowserContext, published: Published) -> None:
    """The manifest and its icon are read through the lock, though neither lies readable on the host."""
    hand = unlocked(context, published)
    session = context.new_cdp_session(hand.page)
    found = session.send("Page.getAppManifest")
    icon = hand.page.evaluate("fetch('icon.svg').then((answer) => answer.headers.get('content-type'))")

    assert (found["errors"], '"Field notes"' in found["data"]) == ([], True)
    assert icon.startswith("image/svg+xml")
    assert not (published.public / "app.webmanifest").exists()


def test_locking_hides_the_horses_and_keeps_the_entries(context: BrowserContext, published: Published) -> None:
    """The lock stands with the settings; the words bring back what was entered."""
    hand = unlocked(context, published)
    measure(hand)
    hand.page.evaluate("location.hash = '#/settings'")
    hand.page.locator(".private-foot button", has_text="Lock").tap()
    expect(hand.page.locator("#words")).to_be_visible()
    hidden = "Bramble" not in hand.page.content()
    unlock(hand.page, published.words, own_device=True)
    hand.page.wait_for_selector("body[data-ready]")

    assert hidden
    assert hand.record() == {"feet": {"left_fore": {"after": {"toe_length": 75}}}}


def test_forgetting_leaves_nothing_on_the_device(context: BrowserContext, published: Published) -> None:
    """No entry, no copy of the page, and no key: it asks for the words again."""
    hand = unlocked(context, published)
    measure(hand)
    hand.page.on("dialog", lambda dialog: dialog.accept())
    hand.page.evaluate("location.hash = '#/settings'")
    hand.tap("forget")
    expect(hand.page.locator("#words")).to_be_visible()
    left = hand.page.evaluate("Promise.all([caches.keys(), indexedDB.databases()])")
    hand.page.reload()

    assert left[0] == []
    assert [one["name"] for one in left[1] if one["name"] == "recordgen-field"] == []
    expect(hand.page.locator("#words")).to_be_visible()


def reloaded(hand: Hand) -> str:
    """The text of the page once it is loaded again; the worker asks the host for a new edition every other second."""
    hand.page.reload()
    hand.page.wait_for_selector("body[data-ready]")
    return hand.page.locator("main").inner_text()


def test_a_new_edition_comes_with_the_next_signal(context: BrowserContext, published: Published) -> None:
    """Entries stay, and the horses are those of today's records."""
    hand = unlocked(context, published)
    measure(hand)
    horse = published.records / "willowmere" / "larkspur" / "horse.yaml"
    horse.parent.mkdir()
    horse.write_text(f"name: Larkspur\nborn: {dt.date.today().year - 9}\n")
    published.publish()
    hand.page.evaluate("location.hash = ''")

    assert until(hand.page, lambda: "Larkspur" in reloaded(hand))
    assert hand.record() == {"feet": {"left_fore": {"after": {"toe_length": 75}}}}
