"""Nothing leaks: not to the host's log, another host, a page around ours, or the disk of a device."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.conftest import QUIET
from tests.conftest import chromium
from tests.support.sealed_host import SECRET, Host, Stand, hosted, opened, reader, sealed, unlock

# Not covered here: other engines than Chromium, phones, prefetch hints, search in other languages than English, loading
# without a full page load (the theme's option is off), and a host without a page for unknown addresses.
OPAQUE = re.compile(r"/(?:sw\.js|keys\.json|manifest\.bin|d/[a-z2-7]{26}\.bin)?")


@pytest.fixture(scope="module")
def demo(demo_sites: Path, tmp_path_factory: pytest.TempPathFactory) -> Stand:
    """A stable of the demo practice, sealed."""
    folder = tmp_path_factory.mktemp("demo")
    site = folder / "site"
    shutil.copytree(demo_sites / "willowmere", site)
    return sealed(folder, site, "/")


def test_the_host_sees_only_opaque_names(browser: Browser, host: Host) -> None:
    """Reading, following links, an unknown page and locking leave no name of a page in the log."""
    with reader(browser) as context:
        page = context.new_page()
        page.goto(host.address + "#p=h/one/")
        unlock(page)
        expect(page.locator("h1")).to_have_text("One")
        page.locator("a", has_text="Two").click()
        expect(page.locator("h1")).to_have_text("Two")
        page.goto(host.address + "h/none/")
        page.locator(".private-foot button", has_text="Lock").click()
        expect(page.locator("#words")).to_be_visible()

    assert len(host.log) > 6
    assert [path for path in host.log if not OPAQUE.fullmatch(path)] == []


def test_what_lies_on_the_host_tells_nothing(stand: Stand) -> None:
    """No published byte or name holds a word or a path of the site, which its own pages do."""
    published = b"\n".join([*stand.published.values(), *(name.encode() for name in stand.published)])

    assert SECRET.encode() in (stand.site / "index.html").read_bytes()
    assert [word for word in (SECRET, "h/one", "picture.png", "look.css") if word.encode() in published] == []


SEND = """async (to) => {
  const blocked = new Set();
  addEventListener("securitypolicyviolation", (event) => blocked.add(event.effectiveDirective));
  const add = (name, set) => document.body.append(Object.assign(document.createElement(name), set));
  fetch(to + "fetch", { mode: "no-cors" }).catch(() => {});
  add("img", { src: to + "img" });
  add("script", { src: to + "script" });
  add("iframe", { src: to + "iframe" });
  add("link", { rel: "stylesheet", href: to + "style" });
  navigator.sendBeacon(to + "beacon", "x");
  try { new EventSource(to + "events"); } catch {}
  try { new Worker(URL.createObjectURL(new Blob([`fetch("${to}worker", { mode: "no-cors" })`]))); } catch {}
  add("iframe", { name: "form-goal" });
  add("form", { action: to + "form", method: "post", target: "form-goal" });
  document.querySelector("form").submit();
  await new Promise((resolve) => setTimeout(resolve, 400));
  return [...blocked];
}"""
WAYS = {"fetch", "img", "script", "iframe", "style", "beacon", "events", "worker", "form"}


# Each is shut by a part of the policy: fetch, beacon and events by the first.
SHUT = {"connect-src", "img-src", "script-src-elem", "frame-src", "style-src-elem", "worker-src", "form-action"}


def sent(page: Page, other: Host, wait: bool) -> tuple[set[str], set[str]]:
    """The ways by which a script on a page reaches another host, and what the page's policy shut."""
    shut = page.evaluate(SEND, other.address)
    for _ in range(50 if wait else 1):
        if {path.strip("/") for path in other.log} >= WAYS:
            break
        page.wait_for_timeout(100)
    return {path.strip("/") for path in other.log} & WAYS, set(shut)


def test_a_script_on_a_page_cannot_send_anything_away(browser: Browser, stand: Stand) -> None:
    """Every way that a page without a policy has to another host is shut on ours."""
    with reader(browser) as context, hosted(stand) as host, hosted(stand) as other:
        page = context.new_page()
        host.instead["plain.html"] = b"<!doctype html><title>Plain</title><body></body>"
        page.goto(host.address + "plain.html")
        assert sent(page, other, wait=True) == (WAYS, set())

    with reader(browser) as context, hosted(stand) as host, hosted(stand) as other:
        assert sent(opened(context, host), other, wait=False) == (set(), SHUT)


def test_no_page_can_be_framed(browser: Browser, stand: Stand) -> None:
    """A page around ours shows nothing of it, while it does show a page that allows it."""
    with reader(browser) as context, hosted(stand) as host, hosted(stand) as around:
        page = opened(context, host)
        around.instead["plain.html"] = b"<p>plain</p>"
        frames = f"<iframe src='{host.address}'></iframe><iframe src='plain.html'></iframe>"
        around.instead["around.html"] = frames.encode()
        page.goto(around.address + "around.html")
        framed, plain = page.frames[1:]

        assert "plain" in plain.content()
        assert SECRET not in framed.content()
        assert "words" not in framed.content()


@pytest.mark.parametrize("own_device", [True, False])
def test_the_key_is_on_the_disk_of_an_own_device_only(
    browser: Browser, stand: Stand, tmp_path: Path, own_device: bool
) -> None:
    """The bytes of the key lie in the profile where its owner ticked so, and nowhere in it otherwise."""
    key = stand.state.keys.enc
    with hosted(stand) as host:
        start = browser.browser_type.launch_persistent_context
        context = start(tmp_path, executable_path=chromium(), args=QUIET)
        page = opened(context, host, own_device=own_device)
        page.goto(host.address + "h/one/")
        running = holding(tmp_path, key)
        context.close()

    assert (bool(running), bool(holding(tmp_path, key))) == (own_device, own_device)
    assert holding(tmp_path, SECRET.encode()) == []


def holding(folder: Path, content: bytes) -> list[str]:
    """The files of a folder that hold these bytes."""
    files = [path for path in folder.rglob("*") if path.is_file()]
    return [path.name for path in files if content in path.read_bytes()]


def test_a_stable_of_the_demo_reads_as_unsealed(browser: Browser, demo: Stand) -> None:
    """Search finds, dark pages stay dark on the next page and on the unlock page, and no other host is asked."""
    with reader(browser) as context, hosted(demo) as host:
        asked: list[str] = []
        context.on("request", lambda request: asked.append(request.url))
        page = context.new_page()
        troubles: list[str] = []
        page.on("pageerror", lambda error: troubles.append(str(error)))
        page.on("console", lambda told: troubles.append(told.text) if "Content Security" in told.text else None)
        page.goto(host.address)
        unlock(page)
        page.locator("[data-scheme-change]").click()
        page.locator("[data-search-open]").click()
        page.keyboard.type("Bramble")
        page.locator("#search a[href*='horses/bramble.html']").first.click()
        expect(page.locator("h1")).to_have_text("Bramble")

        assert page.locator("svg.picture").count() > 10
        assert page.evaluate("() => document.body.dataset.scheme") == "dusk"
        page.locator(".private-lock").click()
        expect(page.locator("html")).to_have_attribute("data-scheme", "dusk")
        assert [url for url in asked if not url.startswith((host.address, "data:", "blob:"))] == []
        assert troubles == []


def test_a_calendar_file_can_be_taken_along(browser: Browser, demo: Stand) -> None:
    """A link to a file opens it from the seal, and the host hears nothing of it."""
    with reader(browser) as context, hosted(demo) as host:
        page = opened(context, host, "Willowmere")
        with page.expect_download() as waiting:
            page.locator("a[download]").first.click()
        content = Path(waiting.value.path()).read_bytes()

    assert waiting.value.suggested_filename == "dates.ics"
    assert content == (demo.site / "dates.ics").read_bytes()
    assert [path for path in host.log if "dates" in path] == []
