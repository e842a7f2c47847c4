"""The phone's page of a practice that measures in inches, tapped in Chromium, and what it hands over."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser

from recordgen.records.models.visit import Visit
from recordgen.site.field.build import build_field
from tests.support.field import Hand, hosted, opened, phone
from tests.support.inches import inch_records

TOE = "feet.left_fore.after.toe_length"


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """The page of that practice at an address of this machine."""
    folder = tmp_path_factory.mktemp("inches")
    built = build_field(inch_records(folder), dt.date.today(), ("willowmere",), folder / "page", b"")
    with hosted(built) as found:
        yield found


@pytest.fixture
def hand(browser: Browser, address: str) -> Iterator[Hand]:
    """A hand beside Bramble's left fore foot."""
    context = phone(browser)
    found = opened(context, address)
    found.tap("horse-willowmere/bramble")
    found.tap("tile-left_fore")
    yield found
    context.close()
    assert found.said == []


def millimetres(hand: Hand) -> float | None:
    """The toe of the left fore as the computer reads it from what the phone holds."""
    visit = Visit.model_validate({"date": "2026-11-28", **hand.record()})
    after = visit.feet["left_fore"].after
    return after.toe_length if after else None


def typed(hand: Hand, *keys: str) -> None:
    """Type on the big keys of the toe, and set."""
    hand.tap(f"{TOE}-keys")
    for key in keys:
        hand.settled()
        hand.tap(f"pad-{key}")
    hand.settled()
    hand.tap("pad-set")


def test_inches_are_typed_as_a_rule_reads(hand: Hand) -> None:
    """Whole inches by digits and sixteenths by a tap; what is handed over names its unit, so nobody can misread it."""
    typed(hand, "3", "part-3")

    assert hand.record() == {"feet": {"left_fore": {"after": {"toe_length": "3 3/16 in"}}}}
    assert millimetres(hand) == pytest.approx(3.1875 * 25.4)


def test_a_tap_in_the_row_sets_a_sixteenth(hand: Hand) -> None:
    """Around the last value stand the lines of a rule; the last one is told in inches and marked."""
    row = hand.page.locator(f'[data-key="{TOE}-keys"]').locator("xpath=..")
    hand.tap(f"{TOE}-3 in")

    assert row.locator(".was").all_inner_texts() == ["2 15/16"]
    assert "2 15/16" in (row.locator(".strip").get_attribute("aria-label") or "")
    assert hand.record()["feet"]["left_fore"]["after"]["toe_length"] == "3 in"
    assert millimetres(hand) == pytest.approx(76.2)
    assert "+1/16" in hand.page.locator(".measure").first.inner_text()


def test_decimals_of_an_inch_are_kept_as_typed(hand: Hand) -> None:
    """A point stands instead of a fraction, and comes back into the keys as it was typed."""
    typed(hand, "3", ",", "2", "5")
    hand.tap(f"{TOE}-keys")

    assert hand.record()["feet"]["left_fore"]["after"]["toe_length"] == "3.25 in"
    assert hand.page.locator(".sheet output").inner_text() == "3.25"


def test_a_range_is_told_in_inches(hand: Hand) -> None:
    """Eighty inches are not kept, and what is possible is told as a rule reads."""
    typed(hand, "8", "0")
    told = hand.page.locator(".sheet .room").inner_text()

    assert hand.record() == {}
    assert told == "Only 13/16 to 9 13/16 in is possible."


def test_no_millimetre_stands_on_the_page(hand: Hand) -> None:
    """Names, helps, last values and tiles tell inches alone."""
    hand.tap("more-measures")
    foot = hand.page.locator("main, #page, body").first.inner_text()
    hand.tap(f"{TOE}-keys")

    assert " mm" not in foot
    assert "(mm)" not in hand.page.locator(".sheet").inner_text()
    assert ", in" in foot


def test_it_fits_a_narrow_phone(hand: Hand) -> None:
    """No sideways scroll at 340 px, on a foot and among the keys."""
    hand.page.set_viewport_size({"width": 340, "height": 700})
    wide = "document.documentElement.scrollWidth - innerWidth"
    beside_foot = hand.page.evaluate(wide)
    hand.tap(f"{TOE}-keys")

    assert (beside_foot <= 1, hand.page.evaluate(wide) <= 1) == (True, True)
