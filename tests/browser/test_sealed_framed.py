"""Inside another page's frame the page that asks for the words asks for nothing and starts nothing."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser, Frame, Page, expect

from recordgen.records.load.tables import read_reference
from tests.support.sealed_host import Host, Stand, asks_for_words, hosted, reader, sealed_small

FRAMED = read_reference(None)[0].phrases["private_unlock_framed"]
BARE = "sandbox='allow-scripts allow-forms'"


def framed_in(page: Page, around: Host, html: str) -> Frame:
    """The frame of a page that stands on another host."""
    around.instead["around.html"] = f"<!doctype html>{html}".encode()
    page.goto(around.address + "around.html")
    return page.frames[1]


def works_not(frame: Frame, host: Host) -> None:
    """The frame says so, has nothing to type into, and asked its host for the page alone."""
    expect(frame.locator("#told")).to_have_text(FRAMED)
    expect(frame.locator("input, button")).to_have_count(0)
    frame.page.wait_for_timeout(300)

    assert [path for path in host.log if path.endswith((".js", ".json", ".bin"))] == []


@pytest.mark.parametrize("tag", ["iframe", f"iframe {BARE}", "embed", "object"])
def test_a_frame_on_another_host_asks_for_nothing(browser: Browser, stand: Stand, tag: str) -> None:
    """Before there is any worker to forbid frames; the same page by itself asks for the words."""
    source = "data" if tag == "object" else "src"
    with reader(browser) as context, hosted(stand) as host, hosted(stand) as around:
        page = context.new_page()
        works_not(framed_in(page, around, f"<{tag} {source}='{host.address}'></{tag.split(maxsplit=1)[0]}>"), host)
        page.goto(host.address)

        asks_for_words(page)


@pytest.mark.parametrize("path", ["", "h/one/"])
def test_a_link_with_a_key_opens_nothing_in_a_frame(browser: Browser, stand: Stand, path: str) -> None:
    """No words need be typed for such a link, so it is not tried there, on the front page or any other."""
    with reader(browser) as context, hosted(stand) as host, hosted(stand) as around:
        page = context.new_page()

        works_not(framed_in(page, around, f"<iframe src='{host.address}{path}#k={stand.link}'></iframe>"), host)


def test_a_frame_on_the_same_host_asks_for_nothing(browser: Browser, tmp_path: Path) -> None:
    """A neighbour's page on one host is another page as well."""
    stand = sealed_small(tmp_path, "/yard/")
    with reader(browser) as context, hosted(stand) as host:
        page = context.new_page()
        page.goto(host.address.removesuffix("yard/"))
        page.evaluate("() => document.body.append(Object.assign(document.createElement('iframe'), { src: '/yard/' }))")

        works_not(page.frames[1], host)


def test_without_its_script_the_page_in_a_frame_shows_no_field(browser: Browser, stand: Stand) -> None:
    """The form that asks for the words is hidden until the script has looked."""
    with reader(browser) as context, hosted(stand) as host, hosted(stand) as around:
        frame = framed_in(context.new_page(), around, f"<iframe sandbox src='{host.address}'></iframe>")

        expect(frame.locator("h1")).to_be_visible()
        expect(frame.locator("#words")).to_be_hidden()
        expect(frame.locator("#open")).to_be_hidden()
