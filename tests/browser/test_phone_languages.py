"""The field page and the tracing screen in another language: words from catalogs, what is handed over unchanged."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path
from typing import NoReturn

import pytest
from playwright.sync_api import Browser

from recordgen.records.receive.notes_file import Head, read_notes
from recordgen.site.field.build import build_field
from tests.support.commands import small_practice
from tests.support.field import Hand, hosted, opened, phone
from tests.support.field_tracing import handed, photographed
from tests.support.marked_language import CODE, Left, marked_practice
from tests.support.tracing_screen import PUT, marks_of

STABLE = "willowmere"
# Presses keys one after another, tells after each what is shown, and what is told to a reader of screens.
WALK = """async (keys) => {
  const said = [];
  for (const key of keys) {
    const found = document.querySelector(`[data-key="${CSS.escape(key)}"]`);
    if (key.startsWith('#')) location.hash = key;
    else if (found) found.dispatchEvent(new MouseEvent('click', {bubbles: true}));
    else throw new Error(`there is no ${key}`);
    await new Promise((done) => setTimeout(done, 20));
    document.querySelectorAll('details').forEach((one) => { one.open = true; });
    const told = [...document.querySelectorAll('[aria-label], [placeholder], [alt]')];
    said.push([document.title, document.body.innerText, ...told.flatMap((one) =>
      ['aria-label', 'placeholder', 'alt'].map((name) => one.getAttribute(name)))].filter(Boolean).join(' \\u2022 '));
  }
  return said;
}"""
KEYS = "(start) => [...document.querySelectorAll(start)].map((one) => one.dataset.key)"


@pytest.fixture(scope="module")
def marked(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """The field page of two horses in the language of marks."""
    folder = tmp_path_factory.mktemp("marked")
    with marked_practice(folder, STABLE, ("tansy", "bramble")) as records:
        made = build_field(records, date.today(), (STABLE,), folder / "out")
    with hosted(made) as address:
        yield address


def walked(hand: Hand, *keys: str) -> list[str]:
    """Press keys; the texts of the page after each."""
    return list(hand.page.evaluate(WALK, keys))


def sheets(hand: Hand, start: str) -> Iterator[str]:
    """Open each sheet that has such a key; the texts of it and of the page behind it."""
    keys = [one for key in hand.page.evaluate(KEYS, start) for one in (key, "sheet-close")]
    yield from walked(hand, *keys)


def field_screens(hand: Hand) -> Iterator[str]:
    """Texts of all screens and sheets of a visit."""
    yield from walked(hand, "#/settings", "#/hand", "#", f"horse-{STABLE}/bramble")
    yield from sheets(hand, "[data-key^=chip-]")
    yield from walked(hand, "weeks-6", "weeks-keys", "pad-half", "sheet-close", "#", f"horse-{STABLE}/tansy")
    yield from walked(hand, "tile-left_fore", "more-measures", "feet.left_fore.after.toe_length-keys", "pad-2")
    yield from walked(hand, "pad-set", "pad-9", "pad-8", "pad-set", "sheet-close", "hold", "sheet-close")
    yield from sheets(hand, "[data-key^=chip-], [data-key^=zone-]")


def tracing_screens(hand: Hand, view: str) -> Iterator[str]:
    """Texts of the tracing screen of a view, step by step, with its sheets."""
    key = photographed(hand, view=view)
    yield from walked(hand, key)
    hand.page.wait_for_selector("#trace[data-ready]")
    yield from walked(hand, "camera", "close", "no-scale")
    put(hand, view)
    steps = hand.page.evaluate("tracing.draft.steps().length")
    yield from walked(hand, "take-back", *["back"] * (steps - 1), "next", "lay-on-foot")
    put(hand, view)
    yield from walked(hand, "take-back", "done", "write", "#/hand")


def put(hand: Hand, view: str) -> None:
    """Put all points on the screen twice, so that taking one back shows them."""
    for _ in range(2):
        hand.page.evaluate(PUT, marks_of(view))


def test_every_word_of_the_field_page_comes_from_a_catalog_or_the_records(browser: Browser, marked: str) -> None:
    """On each screen and in each sheet, in the language the page says it is in."""
    with phone(browser) as context:
        hand = opened(context, marked)
        said = [*field_screens(hand)]
        traced = [text for view in ("sole", "side", "front") for text in tracing_screens(hand, view)]
        language = hand.page.evaluate("document.documentElement.lang")
    left = Left()

    assert (language, hand.said) == (CODE, [])
    assert (len(said) > 80, len(traced) > 40) == (True, True)
    assert set().union(*map(left.of, [*said, *traced])) == set()


def unsealed(head: Head, first: bytes) -> NoReturn:
    """Open no seal: this page has no key."""
    raise AssertionError("the file is sealed")


def test_what_a_german_phone_hands_over_is_in_the_records_own_words(browser: Browser, tmp_path: Path) -> None:
    """Keys, choices and numbers as an English one does, whatever stands on its buttons; 72,5 is typed with a comma."""
    records = small_practice(tmp_path, ["tansy"])
    with (records / "practice.yaml").open("a", encoding="utf-8") as file:
        file.write("language: de\n")
    made = build_field(records, date.today(), (), tmp_path / "out")
    with hosted(made) as address, phone(browser, locale="de-DE") as context:
        hand = opened(context, address)
        weeks = walked(hand, f"horse-{STABLE}/tansy", "weeks-keys", "pad-5", "pad-half", "pad-set")
        walked(hand, "weeks-6", "tile-left_fore", "feet.left_fore.after.toe_length-keys")
        typed = walked(hand, "pad-7", "pad-2", "pad-,", "pad-5", "pad-set")
        walked(hand, "zone-frog", "feet.left_fore.frog.infection-deep groove", "sheet-close")
        walked(hand, "chip-left_fore-landing", "feet.left_fore.landing-heel first", "sheet-close")
        (visit,) = read_notes(handed(hand), "notes", unsealed).visits

    assert "5,5 Wochen" in weeks[4]
    assert "72,5" in typed[3]
    assert visit.record == {
        "next": {"weeks": 6},
        "feet": {
            "left_fore": {
                "after": {"toe_length": 72.5},
                "frog": {"infection": "deep groove"},
                "landing": "heel first",
            }
        },
    }
