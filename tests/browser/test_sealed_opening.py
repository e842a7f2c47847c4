"""A sealed site opens for whoever has the words or a link, and tells everybody else kindly why it does not."""

from __future__ import annotations

import json
import unicodedata
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from recordgen.private.keystore.site_keys import SiteKeys
from recordgen.records.load.tables import read_reference
from tests.support.sealed_host import (
    WORDS,
    Host,
    Stand,
    asks_for_words,
    hosted,
    opened,
    reader,
    sealed_small,
    unlock,
    until,
)

TOLD = read_reference(None)[0].phrases
SUB = "/yard/books/"


@pytest.fixture(scope="module")
def sub_stand(tmp_path_factory: pytest.TempPathFactory) -> Stand:
    """The small site, sealed for a path below the root."""
    return sealed_small(tmp_path_factory.mktemp("sealed"), SUB)


@pytest.fixture
def sub_host(sub_stand: Stand) -> Iterator[Host]:
    """A host of the small site below the root."""
    with hosted(sub_stand) as host:
        yield host


def told(page: Page, name: str) -> None:
    """The unlock page tells this."""
    expect(page.locator("#told")).to_have_text(TOLD[f"private_unlock_{name}"])


@pytest.mark.parametrize("where", ["host", "sub_host"])
def test_a_deep_link_opens_on_its_own_page(browser: Browser, where: str, request: pytest.FixtureRequest) -> None:
    """The words lead to the page of the address, with its question and its place on the page."""
    address = request.getfixturevalue(where).address + "h/one/?q=1#part"
    with reader(browser) as context:
        page = context.new_page()
        page.goto(address)
        asks_for_words(page)
        unlock(page)

        expect(page.locator("h1")).to_have_text("One")
        assert page.url == address


def test_a_page_link_keeps_its_page_from_the_host(browser: Browser, sub_host: Host) -> None:
    """Words behind `#p=` open the site, and the host never hears of it."""
    with reader(browser) as context:
        page = context.new_page()
        page.goto(sub_host.address + "#p=h/two/%23part")
        unlock(page)

        expect(page.locator("h1")).to_have_text("Two")
        assert page.url == sub_host.address + "h/two/#part"
        assert [path for path in sub_host.log if "two" in path] == []


HOSTILE = ["{other}", "/.//{name}/x", "..%2f..%2foutside", "javascript:document.title='x'", "\\\\{name}\\x", "/outside"]


@pytest.mark.parametrize("hostile", HOSTILE[:2])
def test_a_hostile_page_link_leads_nowhere_else(browser: Browser, stand: Stand, host: Host, hostile: str) -> None:
    """A link to another host opens our front page instead."""
    with reader(browser) as context, hosted(stand) as other:
        page = context.new_page()
        page.goto(host.address + "#p=" + hostile.format(other=other.address, name=other.address[7:-1]))
        unlock(page)

        expect(page.locator("h1")).to_have_text("Front" if "other" in hostile else "No such page")
        assert page.url.startswith(host.address)
        assert other.log == []


def test_hostile_page_links_lead_nowhere_while_unlocked(browser: Browser, stand: Stand, sub_host: Host) -> None:
    """On the pages themselves such a link goes to the front page as well."""
    with reader(browser) as context, hosted(stand) as other:
        page = opened(context, sub_host)
        for hostile in HOSTILE:
            page.goto("about:blank")
            page.goto(sub_host.address + "h/one/#p=" + hostile.format(other=other.address, name=other.address[7:-1]))
            expect(page).to_have_url(sub_host.address)

        assert other.log == []


def test_a_key_link_opens_at_once(browser: Browser, stand: Stand, host: Host) -> None:
    """Nothing is typed, the page is the one asked for, and the key is out of the address bar."""
    with reader(browser) as context:
        page = context.new_page()
        page.goto(f"{host.address}#k={stand.link}&p=h/two/")

        expect(page.locator("h1")).to_have_text("Two")
        assert page.url == host.address + "h/two/"


def test_a_key_link_that_does_not_fit_says_so(browser: Browser, host: Host) -> None:
    """The address is clean, and the words still open."""
    with reader(browser) as context:
        page = context.new_page()
        page.goto(f"{host.address}#k={'A' * 43}")
        told(page, "link")
        assert page.url == host.address
        unlock(page)

        expect(page.locator("h1")).to_have_text("Front")


def test_a_key_leaves_the_address_while_unlocked(browser: Browser, stand: Stand, host: Host) -> None:
    """On a page that is open already, loaded anew or not, the key goes out of the address bar too."""
    with reader(browser) as context:
        page = opened(context, host)
        page.goto(f"{host.address}h/one/#k={stand.link}")
        expect(page).to_have_url(host.address + "h/one/")
        page.goto(f"{host.address}h/one/#k={stand.link}&part")

        expect(page).to_have_url(host.address + "h/one/#part")


def test_wrong_words_may_be_mended(browser: Browser, host: Host) -> None:
    """A kind message, the field ready to type in, and then it opens."""
    with reader(browser) as context:
        page = context.new_page()
        page.goto(host.address)
        unlock(page, "larch pebble otter")
        told(page, "wrong")
        expect(page.locator("#words")).to_be_focused()
        unlock(page)

        expect(page.locator("h1")).to_have_text("Front")


@pytest.mark.parametrize(
    "typed",
    [
        "  LARCH-pebble\tOtter -- moss willow  finch ",
        unicodedata.normalize("NFKC", WORDS).translate({code: code + 0xFEE0 for code in range(ord("a"), ord("z") + 1)}),
        f"“1. {WORDS.replace(' ', '.  ')}.\u200b”",
    ],
    ids=["capitals and hyphens", "full width", "as a keyboard or a note puts them"],
)
def test_words_fit_however_they_are_typed(browser: Browser, host: Host, typed: str) -> None:
    """Capitals, hyphens, gaps and full-width letters do not matter, and the Enter key opens."""
    with reader(browser) as context:
        page = context.new_page()
        page.goto(host.address)
        page.locator("#words").fill(typed)
        page.locator("#words").press("Enter")

        expect(page.locator("h1")).to_have_text("Front")


@pytest.mark.parametrize("iterations", [599_999, 10_000_001])
def test_a_ring_that_is_easy_or_endless_to_try_is_refused(
    browser: Browser, stand: Stand, host: Host, iterations: int, tmp_path: Path
) -> None:
    """Words do not fit a slot with too few rounds of hashing, however right they are; too many are not begun."""
    state = SiteKeys.new(tmp_path / "state.json")
    state.site_id, state.master = stand.state.site_id, stand.state.master
    state.add_words(words=WORDS, iterations=min(iterations, 600_000))
    ring = json.loads(state.ring)
    ring["slots"][0]["iter"] = iterations
    host.instead["keys.json"] = state.ring if iterations < 600_000 else json.dumps(ring).encode()
    with reader(browser) as context:
        page = context.new_page()
        page.goto(host.address)
        unlock(page)

        told(page, "wrong")


def test_a_damaged_ring_is_told(browser: Browser, host: Host) -> None:
    """A key ring that is none is not blamed on the words."""
    host.instead["keys.json"] = b"<!doctype html>"
    with reader(browser) as context:
        page = context.new_page()
        page.goto(host.address)
        unlock(page)

        told(page, "broken")


def test_a_host_that_is_gone_is_told(browser: Browser, host: Host) -> None:
    """Without a connection the words are not blamed either."""
    with reader(browser) as context:
        page = context.new_page()
        page.goto(host.address)
        host.down = True
        unlock(page)

        told(page, "unreachable")


@pytest.mark.parametrize("width", [390, 1280])
def test_the_unlock_page_fits_its_screen(browser: Browser, host: Host, width: int) -> None:
    """No sideways scroll, no script's error, and the message stands above the field, where no keyboard hides it."""
    with reader(browser, width=width) as context:
        page = context.new_page()
        troubles: list[str] = []
        page.on("pageerror", lambda error: troubles.append(str(error)))
        page.goto(host.address)
        unlock(page, "other words")
        told(page, "wrong")
        told_at, words_at = (page.locator(one).bounding_box() for one in ("#told", "#words"))

        assert told_at
        assert words_at
        assert told_at["y"] < words_at["y"]
        assert page.evaluate("() => document.documentElement.scrollWidth - innerWidth") <= 0
        assert troubles == []


MISSING = {
    "no_worker": "Object.defineProperty(Navigator.prototype, 'serviceWorker', { get: () => undefined })",
    "no_storage": "IDBFactory.prototype.open = () => { throw new DOMException('', 'SecurityError') }",
}


@pytest.mark.parametrize("name", MISSING)
def test_a_browser_that_lacks_something_is_told(browser: Browser, host: Host, name: str) -> None:
    """No box for words where they could not open anything."""
    with reader(browser) as context:
        context.add_init_script(MISSING[name])
        page = context.new_page()
        page.goto(host.address)

        told(page, name)
        expect(page.locator("#words")).to_be_hidden()


def test_an_address_without_encryption_is_told(browser: Browser, stand: Stand) -> None:
    """On plain http, other than on this very machine, words are not asked for."""
    with reader(browser) as context:
        page = context.new_page()
        page.route("http://stable.example/**", lambda route: route.fulfill(body=stand.published["index.html"]))
        page.goto("http://stable.example/")

        told(page, "insecure")
        expect(page.locator("#words")).to_be_hidden()


def test_a_file_is_told(browser: Browser, stand: Stand) -> None:
    """Opened from a disk, the page says that it needs its address."""
    with reader(browser) as context:
        page = context.new_page()
        page.goto((stand.out / "index.html").as_uri())

        told(page, "file")


def test_a_browser_without_scripts_is_told(browser: Browser, host: Host) -> None:
    """There is a note, and no box that would do nothing."""
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(host.address)

    expect(page.locator("noscript p")).to_have_text(TOLD["private_unlock_no_script"])
    expect(page.locator("#words")).to_be_hidden()
    context.close()


def test_a_hard_reload_heals(browser: Browser, host: Host) -> None:
    """Loading past the worker comes back to the page without asking for the words."""
    with reader(browser) as context:
        page = opened(context, host, "One", "h/one/")
        context.new_cdp_session(page).send("Page.reload", {"ignoreCache": True})

        assert until(page, lambda: host.log.count("/h/one/") == 2)
        expect(page.locator("h1")).to_have_text("One")
