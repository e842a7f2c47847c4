"""Files a host changed, cut, swapped, took away or put back are refused, told, and forgiven once they are mended."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Browser, expect

from tests.support.sealed_host import (
    SECRET,
    Host,
    Stand,
    copied,
    opened,
    page_html,
    reader,
    sealed_small,
    stop_workers,
    write,
)

TWO, PICTURE, MANIFEST, LOCK = "h/two/index.html", "assets/picture.png", "manifest.bin", "assets/lock.js"
ALTERED, UPDATING = "This page was changed on its way", "One moment"


def flipped(content: bytes) -> bytes:
    """The bytes with one bit turned near the end."""
    return content[:-20] + bytes([content[-20] ^ 1]) + content[-19:]


Damage = Callable[[Stand, str], bytes | None]
DAMAGE: dict[str, tuple[Damage, str]] = {
    "changed": (lambda stand, name: flipped(stand.published[name]), ALTERED),
    "cut": (lambda stand, name: stand.published[name][:-1], ALTERED),
    "emptied": (lambda stand, name: b"", ALTERED),
    "swapped": (lambda stand, name: stand.published[stand.blob_of("h/one/index.html")], ALTERED),
    "in clear": (lambda stand, name: page_html("Forged", "/").encode(), ALTERED),
    "missing": (lambda stand, name: None, UPDATING),
}


@pytest.mark.parametrize("damage", DAMAGE)
def test_a_damaged_page_is_refused_and_comes_back(browser: Browser, stand: Stand, host: Host, damage: str) -> None:
    """Nothing of it is shown; once the host is right again, so is the page."""
    name = stand.blob_of(TWO)
    harm, expected = DAMAGE[damage]
    host.instead[name] = harm(stand, name)
    with reader(browser) as context:
        page = opened(context, host)
        answer = page.goto(host.address + "h/two/")
        expect(page.locator("h1")).to_have_text(expected)
        assert SECRET not in page.content()
        assert answer is not None
        assert answer.status in (502, 503)
        host.instead.clear()
        page.locator("a", has_text="Try again").click()

        expect(page.locator("h1")).to_have_text("Two")


def test_a_damaged_picture_is_told_in_a_bar(browser: Browser, stand: Stand, host: Host) -> None:
    """The page stands, without the picture, and says so."""
    name = stand.blob_of(PICTURE)
    host.instead[name] = flipped(stand.published[name])
    with reader(browser) as context:
        page = opened(context, host)

        expect(page.locator("#private-bar")).to_contain_text("A part of this page was changed")
        assert page.evaluate("() => document.querySelector('img').naturalWidth") == 0


def test_a_damaged_lock_script_takes_nothing_away(browser: Browser, stand: Stand, host: Host) -> None:
    """Without its script a page still tells of it, and holds the session for a worker that was stopped."""
    name = stand.blob_of(LOCK)
    with reader(browser) as context:
        page = opened(context, host)
        page.evaluate("() => caches.keys().then((names) => Promise.all(names.map((name) => caches.delete(name))))")
        host.instead[name] = flipped(stand.published[name])
        page.goto(host.address + "h/one/")
        expect(page.locator("#private-bar")).to_contain_text("A part of this page was changed")
        stop_workers(page)
        page.goto(host.address + "h/two/")

        expect(page.locator("h1")).to_have_text("Two")


def test_a_damaged_copy_on_the_device_is_fetched_anew(browser: Browser, host: Host) -> None:
    """Changes in the browser's own cache are not believed either."""
    with reader(browser) as context:
        page = opened(context, host)
        page.evaluate(
            """async () => {
              const cache = await caches.open("sld1:/");
              for (const one of await cache.keys()) await cache.put(one, new Response("damaged"));
            }"""
        )
        page.reload()

        expect(page.locator("h1")).to_have_text("Front")


@pytest.mark.parametrize("damage", ["changed", "cut", "in clear"])
def test_a_damaged_manifest_is_refused(browser: Browser, stand: Stand, host: Host, damage: str) -> None:
    """Without a list of files that is as it was sealed, no page is shown."""
    with reader(browser) as context:
        page = opened(context, host)
        host.instead[MANIFEST] = DAMAGE[damage][0](stand, MANIFEST)
        stop_workers(page)
        page.goto(host.address + "h/one/")
        expect(page.locator("h1")).to_have_text(ALTERED)
        host.instead.clear()
        page.goto(host.address + "h/one/")

        expect(page.locator("h1")).to_have_text("One")


def test_an_older_edition_is_refused(browser: Browser, stand: Stand, tmp_path: Path) -> None:
    """Whoever has seen the later one on this device is told, even after locking and closing."""
    with reader(browser) as context, copied(stand, tmp_path) as (own, host):
        before = own.published
        write(own.site / TWO, page_html("Two, later", "/").encode())
        own.publish()
        page = opened(context, host)
        page.locator(".private-foot button", has_text="Lock").click()
        expect(page.locator("#words")).to_be_visible()
        host.instead.update({name: before.get(name) for name in {*before, *own.published}})
        page.locator("#words").fill("larch pebble otter moss willow finch")
        page.locator("#open").click()

        expect(page.locator("h1")).to_have_text("This is an older edition")


def test_a_manifest_of_another_site_is_not_taken(browser: Browser, stand: Stand, host: Host, tmp_path: Path) -> None:
    """Sealed with other keys, it ends the session rather than showing anything."""
    host.instead[MANIFEST] = sealed_small(tmp_path).published[MANIFEST]
    with reader(browser) as context:
        page = context.new_page()
        page.goto(host.address)
        page.locator("#words").fill("larch pebble otter moss willow finch")
        page.locator("#open").click()

        expect(page.locator("#told")).to_contain_text("locked anew")
