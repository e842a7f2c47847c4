"""The encrypted single file in Chromium: from a disk, on a phone, printed, and where it cannot open."""

from __future__ import annotations

import base64
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from recordgen.private.sharing.single_file import single_file
from tests.support.single_file import DOCUMENT, WORDS, sealed_of

STORED = """async () => [localStorage.length, sessionStorage.length, document.cookie.length,
  (await indexedDB.databases()).length, (await caches.keys()).length, Object.keys(history.state || {}).length]"""


@pytest.fixture(scope="module")
def file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A sealed document on the disk."""
    folder = tmp_path_factory.mktemp("shared")
    made = folder / "record-abcdefgh.html"
    made.write_text(single_file(DOCUMENT, WORDS, folder), "utf-8")
    return made


@pytest.fixture
def context(browser: Browser) -> Iterator[BrowserContext]:
    """A phone that has never seen the file."""
    found = browser.new_context(viewport={"width": 390, "height": 844}, is_mobile=True, has_touch=True)
    yield found
    found.close()


@pytest.fixture
def page(context: BrowserContext, file: Path) -> Page:
    """The locked file on a phone."""
    made = context.new_page()
    made.goto(file.as_uri())
    return made


def type_words(page: Page, words: str = WORDS) -> None:
    """Types the words and presses the button."""
    page.get_by_label("The six words that you were sent").fill(words)
    page.get_by_role("button", name="Open").click()


def test_the_words_open_it(page: Page) -> None:
    """The document stands there with its styles; its scripts never ran, and the title tells nothing."""
    type_words(page)
    heading = page.get_by_role("heading", name="Bramble")

    expect(heading).to_have_css("color", "rgb(10, 120, 60)")
    expect(page.locator("html")).to_have_class("sheet")
    expect(page.locator("body")).to_have_attribute("data-kind", "sheet")
    assert page.title() == "Protected record"


def test_enter_opens_it_and_words_may_be_typed_otherwise(page: Page) -> None:
    """Capitals, marks and more spaces do no harm."""
    page.get_by_label("The six words that you were sent").fill(" Amber-lotus DRUM.  fig, harbor nine. ")
    page.keyboard.press("Enter")

    expect(page.get_by_role("heading", name="Bramble")).to_be_visible()


def test_a_screen_reader_begins_at_the_opened_document(page: Page) -> None:
    """The keyboard's place is the document, no longer the button that is gone."""
    type_words(page)
    expect(page.locator("body")).to_be_focused()


def test_wrong_words_are_told_and_may_be_typed_again(page: Page) -> None:
    """A sentence, nothing of the document, and another try."""
    type_words(page, "amber lotus drum fig harbor ten")
    expect(page.get_by_role("alert")).to_contain_text("These words do not open it.")
    expect(page.get_by_text("Bramble")).to_have_count(0)

    type_words(page)
    expect(page.get_by_role("heading", name="Bramble")).to_be_visible()


def test_no_words_are_told(page: Page) -> None:
    """Without words nothing is tried."""
    type_words(page, "  ")
    expect(page.get_by_role("alert")).to_have_text("Type the six words first.")


@pytest.mark.parametrize("where", ["changed", "cut", "no code"])
def test_a_tampered_file_does_not_open(context: BrowserContext, file: Path, tmp_path: Path, where: str) -> None:
    """A changed byte, a part that is gone, and what is no sealed document at all."""
    text = file.read_text("utf-8")
    sealed = base64.b64encode(sealed_of(text)).decode()
    swapped = ("B" if sealed[40] == "A" else "A").join((sealed[:40], sealed[41:]))
    other = {"changed": swapped, "cut": sealed[: len(sealed) // 8 * 4], "no code": "-"}[where]
    (tmp_path / "changed.html").write_text(text.replace(sealed, other), "utf-8")
    page = context.new_page()
    page.goto((tmp_path / "changed.html").as_uri())
    type_words(page)

    told = "The file is not whole." if where == "no code" else "the file was changed on its way"
    expect(page.get_by_role("alert")).to_contain_text(told)
    expect(page.get_by_text("Bramble")).to_have_count(0)


def test_a_changed_script_does_not_run(context: BrowserContext, file: Path, tmp_path: Path) -> None:
    """Whoever changes the code alone gets no box for the words."""
    changed = tmp_path / "changed.html"
    changed.write_text(file.read_text("utf-8").replace('"use strict";', '"use strict"; '), "utf-8")
    page = context.new_page()
    page.goto(changed.as_uri())

    expect(page.get_by_role("button")).to_have_count(0)
    expect(page.get_by_text("If no box for the words appears here")).to_be_visible()


def test_it_asks_no_network_and_stores_nothing(page: Page) -> None:
    """No request and no entry in any storage, from the locked file to the opened one; asked again, it is locked."""
    requests: list[str] = []
    page.on("request", lambda request: requests.append(request.url))
    type_words(page)
    expect(page.get_by_role("heading", name="Bramble")).to_be_visible()

    assert [url for url in requests if not url.startswith("data:")] == []
    assert page.evaluate(STORED) == [0, 0, 0, 0, 0, 0]
    page.reload()
    expect(page.get_by_role("button", name="Open")).to_be_visible()
    assert page.get_by_label("The six words that you were sent").input_value() == ""


@pytest.mark.parametrize(("guard", "sent"), [("Content-Security-Policy", []), ("X-Nothing", ["a", "b"])])
def test_an_opened_document_cannot_send_anything(
    context: BrowserContext, tmp_path: Path, guard: str, sent: list[str]
) -> None:
    """A picture and a style that found their way into the document are refused; without the policy they are not."""
    bad = "<img src='http://outside.example/a'><link rel=stylesheet href='http://outside.example/b'>"
    made = single_file(DOCUMENT.replace("<h1>", f"{bad}<h1>"), WORDS, tmp_path)
    (tmp_path / "bad.html").write_text(made.replace("Content-Security-Policy", guard), "utf-8")
    page, asked, refused = context.new_page(), list[str](), list[str]()
    page.route("http://outside.example/*", lambda route: (asked.append(route.request.url[-1]), route.fulfill())[1])
    page.on("console", lambda told: refused.append(told.text) if "outside.example" in told.text else None)
    page.goto((tmp_path / "bad.html").as_uri())
    type_words(page)
    expect(page.get_by_role("heading", name="Bramble")).to_be_visible()
    for _ in range(100):
        if len(asked) + len(refused) >= 2:
            break
        page.wait_for_timeout(50)

    assert (sorted(asked), len(refused)) == (sent, 2 - len(sent))


def test_it_fits_a_phone(page: Page) -> None:
    """No sideways scroll; what is touched is at least 44 px high. Source: WCAG 2.2, criterion 2.5.5."""
    heights = page.locator("button, .tick, input[type=password]").evaluate_all(
        "all => all.map(one => one.getBoundingClientRect().height)"
    )

    assert page.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0
    assert min(heights) >= 44


def test_the_words_are_hidden_until_asked_for(page: Page) -> None:
    """The box is one for passwords, so that no keyboard learns the words; a tick shows them."""
    box = page.get_by_label("The six words that you were sent")
    expect(box).to_have_attribute("type", "password")
    page.get_by_label("show the words").check()

    expect(box).to_have_attribute("type", "text")


def test_it_prints_as_the_document_asks(page: Page) -> None:
    """Locked one page; opened a page for each visit, without what is for screens alone."""
    locked = page.pdf(format="A4")
    type_words(page)
    expect(page.get_by_text("Only on a screen")).to_be_visible()
    opened = page.pdf(format="A4")
    page.emulate_media(media="print")

    assert (pages_of(locked), pages_of(opened)) == (1, 2)
    expect(page.get_by_text("Only on a screen")).to_be_hidden()


def pages_of(pdf: bytes) -> int:
    """How many pages a PDF has."""
    return len(re.findall(rb"/Type ?/Page\b", pdf))


def test_a_preview_that_forbids_forms_can_open_it(context: BrowserContext, file: Path, tmp_path: Path) -> None:
    """Inside a frame that allows scripts alone."""
    (tmp_path / "record.html").write_bytes(file.read_bytes())
    (tmp_path / "preview.html").write_text("<iframe sandbox='allow-scripts' src='record.html'></iframe>")
    page = context.new_page()
    page.goto((tmp_path / "preview.html").as_uri())
    frame = page.frame_locator("iframe")
    frame.get_by_label("The six words that you were sent").fill(WORDS)
    frame.get_by_role("button", name="Open").click()

    expect(frame.get_by_role("heading", name="Bramble")).to_be_visible()


def test_without_scripts_it_says_what_to_do(browser: Browser, file: Path) -> None:
    """No box that does nothing, but the way out."""
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(file.as_uri())

    expect(page.get_by_text("save this file and open it in a web browser")).to_be_visible()
    expect(page.get_by_role("button")).to_have_count(0)
    context.close()


def test_on_an_open_connection_it_says_what_to_do(context: BrowserContext, file: Path) -> None:
    """Where the browser withholds its encryption, the way out is to save the file."""
    page = context.new_page()
    page.route("http://records.example/**", lambda route: route.fulfill(path=file, content_type="text/html"))
    page.goto("http://records.example/record.html")

    expect(page.get_by_role("alert")).to_contain_text("Save the file, then open it from your own disk")
    expect(page.get_by_role("button")).to_have_count(0)
