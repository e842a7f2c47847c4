"""An unlocked site behaves as the unsealed one does, and stays open only as long as it should."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from recordgen.private.crypto.passphrases import FEWEST_ITERATIONS
from tests.support.sealed_host import (
    Host,
    Stand,
    asks_for_words,
    copied,
    fetched,
    hosted,
    opened,
    page_html,
    reader,
    stop_workers,
    unlock,
    write,
)


def shows(page: Page, title: str) -> None:
    """The page has this title."""
    expect(page.locator("h1")).to_have_text(title)


def test_a_page_comes_whole(browser: Browser, host: Host) -> None:
    """Its picture, its style and its own script are there, it tells when it was published, and links lead on."""
    with reader(browser) as context:
        page = opened(context, host)

        assert page.evaluate("() => document.querySelector('img').naturalWidth") == 8
        assert page.evaluate("() => getComputedStyle(document.querySelector('h1')).color") == "rgb(1, 2, 3)"
        assert page.evaluate("() => document.documentElement.dataset.inline") == "ran"
        expect(page.locator(".private-foot")).to_contain_text("published on 25 November 2026")
        page.locator("a", has_text="Two").click()
        shows(page, "Two")


def test_an_address_without_its_slash_leads_to_the_page(browser: Browser, host: Host) -> None:
    """A folder's address is completed, its question kept."""
    with reader(browser) as context:
        page = opened(context, host)
        page.goto(host.address + "h/two?q=1")

        shows(page, "Two")
        assert page.url == host.address + "h/two/?q=1"


def test_an_unknown_address_gets_the_sites_own_page(browser: Browser, host: Host) -> None:
    """With the status of a page that is not there, and without asking the host."""
    with reader(browser) as context:
        page = opened(context, host)
        answer = page.goto(host.address + "h/none.html")

        shows(page, "No such page")
        assert answer is not None
        assert answer.status == 404
        assert [path for path in host.log if "none" in path] == []


def test_answers_carry_their_guards(browser: Browser, host: Host) -> None:
    """The kind of file as sealed, nothing kept by caches, no referrer, no framing."""
    with reader(browser) as context:
        page = opened(context, host)
        headers = fetched(page, "/h/one/")["headers"]

    told = {
        name: headers[name] for name in ("content-type", "cache-control", "referrer-policy", "x-content-type-options")
    }
    assert list(told.values()) == ["text/html; charset=utf-8", "no-store", "no-referrer", "nosniff"]
    assert "frame-ancestors 'none'" in headers["content-security-policy"]
    assert "unsafe-eval" not in headers["content-security-policy"]


@pytest.mark.parametrize(
    ("asked", "status", "text"),
    [
        ("bytes=3-7", 206, "34567"),
        ("bytes=-3", 206, "789"),
        ("bytes=997-", 206, "789"),
        ("bytes=998-5000", 206, "89"),
        ("bytes=1000-", 416, ""),
    ],
)  # fmt: skip
def test_a_part_of_a_file_is_answered(unlocked: Page, asked: str, status: int, text: str) -> None:
    """First to last byte, the last few, from one byte on, beyond the end."""
    answer = fetched(unlocked, "/assets/numbers.txt", {"headers": {"Range": asked}})

    assert (answer["status"], answer["text"]) == (status, text)


@pytest.fixture(scope="module")
def unlocked(browser: Browser, stand: Stand) -> Iterator[Page]:
    """One unlocked page for tests that change nothing."""
    with hosted(stand) as host, reader(browser) as context:
        yield opened(context, host)


def test_nothing_but_asking_reaches_the_host(browser: Browser, host: Host) -> None:
    """A request of another kind is refused by the worker, since it would carry the address to the host."""
    with reader(browser) as context:
        page = opened(context, host)

        assert fetched(page, "/h/one/", {"method": "POST"})["status"] == 405
        assert [path for path in host.log if "one" in path] == []


def test_reload_and_second_tab_ask_nothing(browser: Browser, host: Host) -> None:
    """The words hold for all tabs, and for loading again."""
    with reader(browser) as context:
        page = opened(context, host)
        page.reload()
        shows(page, "Front")
        second = context.new_page()
        second.goto(host.address + "h/one/")

        shows(second, "One")


def test_a_stopped_worker_finds_the_session_in_an_open_page(browser: Browser, host: Host) -> None:
    """Nothing is asked although the browser stopped the worker."""
    with reader(browser) as context:
        page = opened(context, host)
        stop_workers(page)
        page.goto(host.address + "h/one/")

        shows(page, "One")


def test_an_error_page_holds_the_session(browser: Browser, stand: Stand, host: Host) -> None:
    """The worker may stop while a page of its own about some trouble is the only one open."""
    with reader(browser) as context:
        page = opened(context, host)
        host.instead[stand.blob_of("h/two/index.html")] = None
        page.goto(host.address + "h/two/")
        shows(page, "One moment")
        stop_workers(page)
        page.locator("a", has_text="front page").click()

        shows(page, "Front")


@pytest.mark.parametrize("own_device", [True, False])
def test_only_an_own_device_stays_open(browser: Browser, host: Host, own_device: bool) -> None:
    """With all pages closed and the worker stopped, an own device needs no words; another one does."""
    with reader(browser) as context:
        page = opened(context, host, own_device=own_device)
        last = context.new_page()
        page.close()
        last.goto("about:blank")
        stop_workers_of(last, host)
        last.goto(host.address)

        if own_device:
            shows(last, "Front")
        else:
            asks_for_words(last)


def stop_workers_of(page: Page, host: Host) -> None:
    """Stop the worker from a page of its origin that is none of the sealed pages."""
    page.goto(host.address + "robots.txt")
    stop_workers(page)
    page.goto("about:blank")


EXPIRE = """() => new Promise((resolve) => {
  const asked = indexedDB.open("sld1:/");
  asked.onsuccess = () => {
    const store = asked.result.transaction("kept", "readwrite").objectStore("kept");
    store.get("session").onsuccess = (event) => {
      store.put({ ...event.target.result, exp: Date.now() - 1 }, "session").onsuccess = () => resolve();
    };
  };
})"""


def test_an_own_device_closes_in_the_end(browser: Browser, host: Host) -> None:
    """A session whose time is over opens nothing."""
    with reader(browser) as context:
        page = opened(context, host, own_device=True)
        page.evaluate(EXPIRE)
        stop_workers_of(page, host)
        page.goto(host.address)

        asks_for_words(page)


def test_a_new_worker_asks_nothing(browser: Browser, stand: Stand, host: Host) -> None:
    """A renewed worker takes over and finds the session in the open page."""
    with reader(browser) as context:
        page = opened(context, host)
        host.instead["sw.js"] = stand.published["sw.js"] + b"// newer\n"
        page.evaluate(
            """async () => {
              const container = navigator.serviceWorker;
              const taken = new Promise((resolve) => container.addEventListener("controllerchange", resolve));
              await (await container.getRegistration()).update();
              await taken;
            }"""
        )
        page.goto(host.address + "h/one/")

        shows(page, "One")


def test_a_new_edition_is_read_with_the_same_words(browser: Browser, stand: Stand, tmp_path: Path) -> None:
    """A new edition is there at the next look."""
    with reader(browser) as context, copied(stand, tmp_path) as (own, host):
        page = opened(context, host)
        write(own.site / "h/one/index.html", page_html("One, later", "/").encode())
        own.publish()
        stop_workers(page)
        page.goto(host.address + "h/one/")

        shows(page, "One, later")


def test_after_a_rotation_the_new_words_are_asked_for(browser: Browser, stand: Stand, tmp_path: Path) -> None:
    """The old session ends, the page tells why, the old words do not fit, and the new ones open."""
    with reader(browser) as context, copied(stand, tmp_path) as (own, host):
        page = opened(context, host)
        (_, words), _ = own.state.rotate(iterations=FEWEST_ITERATIONS)
        own.publish()
        stop_workers(page)
        page.goto(host.address + "h/one/")
        expect(page.locator("#told")).to_contain_text("locked anew")
        unlock(page)
        expect(page.locator("#told")).to_contain_text("does not fit")
        unlock(page, words)

        shows(page, "One")
