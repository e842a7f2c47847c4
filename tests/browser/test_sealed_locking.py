"""Locking closes everything at once; what is kept on the device is sealed, and opens there without a connection."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.support.sealed_host import (
    SECRET,
    Host,
    Stand,
    asks_for_words,
    copied,
    fetched,
    opened,
    page_html,
    reader,
    stop_workers,
    unlock,
    until,
    write,
)

CACHED = """async () => {
  const found = {};
  for (const name of await caches.keys()) {
    const cache = await caches.open(name);
    for (const request of await cache.keys()) {
      found[new URL(request.url).pathname] = [...new Uint8Array(await (await cache.match(request)).arrayBuffer())];
    }
  }
  return found;
}"""


def lock(page: Page) -> None:
    """Press the lock."""
    page.locator(".private-foot button", has_text="Lock").click()


def save(page: Page) -> None:
    """Save for offline and wait until it is done."""
    page.locator(".private-foot button", has_text="Save").click()
    expect(page.locator(".private-foot")).to_contain_text("Saved on this device")


@pytest.mark.parametrize("own_device", [True, False])
def test_one_lock_closes_all_tabs(browser: Browser, host: Host, own_device: bool) -> None:
    """Each tab asks for the words, and so does Back."""
    with reader(browser) as context:
        page = opened(context, host, own_device=own_device)
        page.goto(host.address + "h/one/")
        second = context.new_page()
        second.goto(host.address + "h/two/")
        expect(second.locator(".private-foot")).to_be_visible()
        lock(second)

        asks_for_words(second)
        asks_for_words(page)
        expect(page.locator("#told")).to_have_text("The pages are locked.")
        page.go_back()
        asks_for_words(page)


def test_a_stopped_worker_locks_too(browser: Browser, host: Host) -> None:
    """The lock holds although the worker had to start for it."""
    with reader(browser) as context:
        page = opened(context, host)
        stop_workers(page)
        lock(page)
        asks_for_words(page)
        page.goto(host.address + "h/one/")

        asks_for_words(page)


def test_locked_pages_give_out_no_part(browser: Browser, host: Host) -> None:
    """Once locked, neither pictures nor styles are answered, and nothing is left in the caches."""
    with reader(browser) as context:
        page = opened(context, host)
        lock(page)
        asks_for_words(page)

        assert fetched(page, "/assets/picture.png")["status"] == 401
        assert page.evaluate(CACHED) == {}


def test_a_page_that_lost_its_session_says_so(browser: Browser, host: Host) -> None:
    """A part that is asked for after the session's end is refused, and the page shows a bar."""
    with reader(browser) as context:
        page = opened(context, host)
        forget(page)

        assert until(page, lambda: fetched(page, "/assets/picture.png")["status"] == 401)
        expect(page.locator("#private-bar")).to_contain_text("locked by now")


def forget(page: Page) -> None:
    """End the session as its time being over would, with the page still open."""
    page.evaluate(
        """() => new Promise((resolve) => {
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = resolve;
          const session = { exp: 0 };
          navigator.serviceWorker.controller.postMessage({ say: "open", session, keeping: false }, [port2]);
        })"""
    )
    # The page's own copy goes as well: a channel of the same name reaches it.
    page.evaluate("() => new BroadcastChannel('sld1:/').postMessage({ forget: true })")


def test_caches_hold_only_what_was_sealed(browser: Browser, stand: Stand, host: Host) -> None:
    """Every kept copy is byte for byte a published file; the page itself shows the words that are looked for."""
    with reader(browser) as context:
        page = opened(context, host)
        assert SECRET in page.content()
        kept = page.evaluate(CACHED)

    assert len(kept) >= 5
    assert {path: bytes(content) for path, content in kept.items()} == {
        path: stand.published[path[1:]] for path in kept
    }


def test_the_key_cannot_be_read_out(browser: Browser, host: Host) -> None:
    """A page may hold the session, but no script gets the bytes of its key."""
    with reader(browser) as context:
        page = opened(context, host)
        found = page.evaluate(
            """async () => {
              const session = await new Promise((resolve) => {
                const { port1, port2 } = new MessageChannel();
                port1.onmessage = (event) => resolve(event.data);
                navigator.serviceWorker.controller.postMessage({ say: "session" }, [port2]);
              });
              const raw = await crypto.subtle.exportKey("raw", session.key).catch((fault) => fault.name);
              return [session.key.extractable, session.key.usages, raw];
            }"""
        )

    assert found == [False, ["decrypt"], "InvalidAccessError"]


def test_saved_pages_open_without_a_connection(browser: Browser, stand: Stand, host: Host) -> None:
    """Pages that were never looked at are there, with their pictures."""
    with reader(browser) as context:
        page = opened(context, host)
        save(page)
        host.down = True
        page.goto(host.address + "h/two/")

        expect(page.locator("h1")).to_have_text("Two")
        assert page.evaluate("() => document.querySelector('img').naturalWidth") == 8


def test_saved_pages_can_be_unlocked_without_a_connection(browser: Browser, host: Host) -> None:
    """The words fit offline as well, after all pages were closed."""
    with reader(browser) as context:
        page = opened(context, host)
        save(page)
        page.goto(host.address + "robots.txt")
        stop_workers(page)
        host.down = True
        page.goto(host.address + "h/one/")
        asks_for_words(page)
        unlock(page)

        expect(page.locator("h1")).to_have_text("One")


def test_what_is_not_saved_says_so(browser: Browser, host: Host) -> None:
    """Without a connection, a page that was not saved tells why it is missing."""
    with reader(browser) as context:
        page = opened(context, host)
        host.down = True
        page.goto(host.address + "h/two/")

        expect(page.locator("h1")).to_have_text("No connection")


def test_what_is_saved_follows_the_editions(browser: Browser, stand: Stand, tmp_path: Path) -> None:
    """A new edition is saved when it is first met, and the blobs of the old one go."""
    with reader(browser) as context, copied(stand, tmp_path) as (own, host):
        page = opened(context, host)
        save(page)
        old = own.blob_of("h/two/index.html")
        write(own.site / "h/two/index.html", page_html("Two, later", "/").encode())
        own.publish()
        stop_workers(page)
        page.goto(host.address + "h/one/")
        gone = until(page, lambda: f"/{old}" not in page.evaluate(CACHED))
        fresh = until(page, lambda: f"/{own.blob_of('h/two/index.html')}" in page.evaluate(CACHED))
        host.down = True
        page.goto(host.address + "h/two/")

        expect(page.locator("h1")).to_have_text("Two, later")
        assert (gone, fresh) == (True, True)
