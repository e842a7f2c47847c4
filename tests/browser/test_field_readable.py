"""The field page for tired eyes and dirty thumbs: contrast, size of targets, width, in every light and hand."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.support.access import COLOUR_RULES, SIZE_RULES, violations
from tests.support.field import Hand, opened, phone
from tests.support.field_tracing import photographed, tracing
from tests.support.readable import faint_texts, small_targets, width_of
from tests.support.seen import unseen_stops
from tests.support.tracing_screen import PUT, marks_of

SHEETS = (
    "chip--lameness",
    "chip--condition",
    "chip--signs",
    "chip--keeping",
    "chip--vet",
)
SHEETS_OF_A_FOOT = (
    "feet.right_fore.after.toe_length-keys",
    "zone-lateral quarter",
    "zone-frog",
    "chip-right_fore-marks",
    "chip-right_fore-wound",
)


def walked(hand: Hand) -> Iterator[str]:
    """Every screen and sheet in turn, each by name while it stands there."""
    yield "today"
    for where in ("settings", ""):
        hand.page.evaluate(f"location.hash = '#/{where}'")
        hand.settled()
        yield where or "today again"
    hand.tap("horse-willowmere/fennel")
    hand.settled()
    yield "a horse with an open caution"
    hand.page.evaluate("location.hash = ''")
    hand.tap("horse-willowmere/tansy")
    hand.settled()
    yield "horse"
    yield from _sheets(hand, SHEETS)
    hand.tap("tile-right_fore")
    hand.tap("feet.right_fore.after.toe_length-73")
    hand.settled()
    yield "foot, with what was entered last"
    yield from _sheets(hand, SHEETS_OF_A_FOOT)
    hand.tap("more-measures")
    hand.settled()
    yield "all measures of a foot"
    key = photographed(hand, foot="right_fore")
    yield "photographs"
    hand.tap("hold")
    yield "how to hold the camera"
    hand.tap("sheet-close")
    tapper = tracing(hand, key)
    yield "tracing"
    tapper.press("camera")
    yield "what the tracing screen tells of the camera"
    tapper.press("close")
    tapper.tap(*marks_of()["scale"])
    yield "the scale"
    tapper.press("lay-on-foot")
    hand.page.evaluate(PUT, marks_of())
    hand.page.evaluate("location.hash = '#/hand'")
    hand.page.wait_for_selector('[data-key="save"]')
    yield "hand over"


def _sheets(hand: Hand, keys: tuple[str, ...]) -> Iterator[str]:
    for key in keys:
        hand.tap(key)
        hand.settled()
        yield key
        hand.tap("sheet-close")


@pytest.mark.parametrize(
    ("width", "height", "more"),
    [
        (390, 844, {}),
        (390, 844, {"color_scheme": "dark"}),
        (320, 640, {}),
        (430, 932, {"forced": "left"}),
        (844, 390, {}),
        (390, 844, {"forced": "200%"}),
    ],
    ids=["usual", "dark", "narrow", "left hand", "landscape", "text at 200 %"],
)
def test_every_screen_can_be_read_and_tapped(
    browser: Browser, field_address: str, width: int, height: int, more: dict[str, str]
) -> None:
    """7 to 1 for all text, 48 px for all targets, and nothing runs off the side. Source: WCAG 2.2, 1.4.4, 1.4.6."""
    forced = more.pop("forced", "")
    context = phone(browser, viewport={"width": width, "height": height}, **more)
    hand = opened(context, field_address)
    if forced == "left":
        hand.page.evaluate("memory.meta.set('left_handed', true); look()")
    elif forced:
        hand.page.evaluate(f"document.documentElement.style.fontSize = '{forced}'")
    found = {
        name: told
        for name in walked(hand)
        if (told := [*faint_texts(hand.page), *small_targets(hand.page), *_wide(hand, width)])
    }
    context.close()

    assert (found, hand.said) == ({}, [])


def test_nobody_is_kept_out_of_any_screen(browser: Browser, field_address: str) -> None:
    """By keyboard and screen reader too. Source: WCAG 2.2, levels A and AA, by axe-core, but for what is held above."""
    context = phone(browser)
    hand = opened(context, field_address)
    without = (*COLOUR_RULES, *SIZE_RULES)
    found = {
        name: told
        for name in walked(hand)
        if (told := [*violations(hand.page, without=without), *unseen_stops(hand.page)])
    }
    context.close()

    assert found == {}


def _wide(hand: Hand, width: int) -> list[str]:
    found = width_of(hand.page)
    return [f"{found} px wide"] if found > width else []


def test_the_measures_of_contrast_and_size_find_what_they_should(browser: Browser, tmp_path: Path) -> None:
    """Black on white is 21 to 1, #767676 on white 4.54, the known grey just above 4.5. Source: WCAG 2.2, 1.4.3."""
    page = browser.new_page()
    page.set_content(
        "<p>black</p><p style='color:#767676'>grey</p><p style='opacity:.5'>faint</p>"
        "<div style='background:#000;color:rgb(255 255 255 / 50%)'>half</div>"
        "<button style='width:47px;height:60px;padding:0'>small</button>"
    )
    found = faint_texts(page, 21.1)
    small = small_targets(page)
    page.close()

    assert found[:4] == ["black: 21.00", "grey: 4.54", "faint: 0.00", "half: 5.28"]
    assert small == ["small: 47 x 60"]
