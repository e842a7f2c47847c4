"""Visits that the phone keeps and hands over: killed, full, without a signal, with a clock that is wrong."""

from __future__ import annotations

import datetime as dt
import hashlib
import io
import json
import os
import signal
import subprocess
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from PIL import Image
from playwright.sync_api import Browser, BrowserContext, ViewportSize

from recordgen.private.crypto.key_ring import unb64u
from recordgen.private.keystore.field_key import FieldKey
from recordgen.site.field.build import build_field
from tests.browser.conftest import QUIET
from tests.conftest import RECORDS, TODAY, chromium
from tests.support.field import Hand, field_folder, hosted, opened, phone

KEY = FieldKey.new()


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """The field page of one stable, which seals for a key of the test."""
    with hosted(field_folder(tmp_path_factory.mktemp("field"), key=KEY.public)) as found:
        yield found


@pytest.fixture
def hand(browser: Browser, address: str) -> Iterator[Hand]:
    """A hand at a phone that has never seen the page."""
    context = phone(browser)
    yield opened(context, address)
    context.close()


def one_value(hand: Hand) -> None:
    """Write one length of one horse down."""
    hand.tap("horse-willowmere/tansy")
    hand.tap("tile-left_fore")
    hand.tap("feet.left_fore.after.toe_length-73")
    hand.settled()


def handed_over(hand: Hand) -> str:
    """The file that the page hands over, as text."""
    hand.page.evaluate("location.hash = '#/hand'")
    hand.page.wait_for_selector('[data-key="save"]')
    with hand.page.expect_download() as download:
        hand.tap("save")
    return Path(download.value.path()).read_text("utf-8")


def parts(content: str) -> list[dict[str, Any]]:
    """The parts of a sealed file, opened with the practice's private key."""
    first, *lines = content.splitlines()
    head = json.loads(first)
    opener = KEY.opener(first.encode(), head["key"])
    return [json.loads(opener(int(number), payload)) for number, payload in (line.split(" ", 1) for line in lines)]


def jpeg_with_place() -> bytes:
    """A large picture as a phone's camera writes it, with the place where it was taken."""
    exif = Image.Exif()
    exif[0x8825] = {1: "N", 2: (51.0, 30.0, 0.0), 3: "W", 4: (0.0, 7.0, 0.0)}
    out = io.BytesIO()
    Image.effect_noise((2400, 1800), 40).convert("RGB").save(out, "JPEG", exif=exif, quality=90)
    return out.getvalue()


def photograph(hand: Hand, content: bytes) -> None:
    """Hand the page a file as the camera would."""
    hand.page.set_input_files("input[type=file]", {"name": "a.jpg", "mimeType": "image/jpeg", "buffer": content})


def test_what_was_entered_is_handed_over_sealed(hand: Hand) -> None:
    """Only the practice's key opens it; it holds the record under the names of the visit's file."""
    one_value(hand)
    content = handed_over(hand)
    head, visit, end = parts(content)

    assert "tansy" not in content
    assert (head["kind"], head["visits"], end["kind"]) == ("head", 1, "end")
    assert visit["horse"] == "willowmere/tansy"
    assert visit["record"] == {"feet": {"left_fore": {"after": {"toe_length": 73}}}}
    assert visit["how"] == {"feet.left_fore.after.toe_length": "row"}
    assert visit["date"] == dt.date.today().isoformat()


def test_a_photograph_leaves_small_and_without_its_place(hand: Hand) -> None:
    """1600 pixels at most, no metadata, the checksum of its bytes beside it."""
    one_value(hand)
    hand.page.set_input_files(
        "input[type=file]", {"name": "a.jpg", "mimeType": "image/jpeg", "buffer": jpeg_with_place()}
    )
    hand.page.wait_for_selector(".pictures img")
    _, visit, photo, _ = parts(handed_over(hand))
    picture = unb64u(photo["jpeg"].rstrip("=").replace("+", "-").replace("/", "_"))
    opened_again = Image.open(io.BytesIO(picture))

    assert hashlib.sha256(picture).hexdigest() == photo["sha256"]
    assert max(opened_again.size) == 1600
    assert dict(opened_again.getexif()) == {}
    assert (photo["foot"], photo["view"], photo["moment"]) == ("left_fore", "sole", "after")
    assert visit["photos"] == [{name: photo[name] for name in ("id", "foot", "view", "moment")}]


def test_what_is_no_picture_is_told_and_the_rest_stays(hand: Hand) -> None:
    """A file that no browser can open adds nothing."""
    one_value(hand)
    photograph(hand, b"no picture")
    hand.page.wait_for_selector("#toast")

    assert "is no picture" in hand.page.locator("#toast").inner_text()
    assert hand.record() == {"feet": {"left_fore": {"after": {"toe_length": 73}}}}


def test_a_photograph_that_finds_no_room_stops_no_entry(hand: Hand) -> None:
    """The page says so; lengths go on being kept, and the picture still leaves with the file."""
    one_value(hand)
    session = hand.page.context.new_cdp_session(hand.page)
    used = hand.page.evaluate("navigator.storage.estimate().then((found) => found.usage)")
    session.send(
        "Storage.overrideQuotaForOrigin", {"origin": hand.page.url.split("/#")[0].rstrip("/"), "quotaSize": used}
    )
    photograph(hand, jpeg_with_place())
    hand.page.wait_for_selector(".pictures img")
    hand.tap("feet.left_fore.after.toe_length-74")
    kept = hand.record()
    told = [part["kind"] for part in parts(handed_over(hand))]

    assert kept == {"feet": {"left_fore": {"after": {"toe_length": 74}}}}
    assert told == ["head", "visit", "photo", "end"]


def test_what_left_stays_until_the_computers_word_is_typed(hand: Hand) -> None:
    """A wrong word changes nothing; the right one marks the visit, which still lies there until it is taken off."""
    one_value(hand)
    handed_over(hand)
    (draft,) = hand.drafts()
    word = hand.page.evaluate("async () => receiptOf(memory.meta.get('files')[0].id, drafts())")
    box = hand.page.locator('[data-key="receipt"]')
    for typed in ("zzzz", word):
        box.fill(typed)
        box.press("Enter")
        hand.settled()
    (after,) = hand.drafts()

    assert ("received" in draft, "received" in after) == (False, True)


def test_a_change_after_it_left_goes_again_under_a_higher_number(hand: Hand) -> None:
    """The computer tells a corrected visit by its number."""
    one_value(hand)
    handed_over(hand)
    hand.page.evaluate("location.hash = ''")
    one_value_more(hand)
    visit = next(part for part in parts(handed_over(hand)) if part["kind"] == "visit")

    assert visit["rev"] == 2
    assert visit["record"]["feet"]["left_fore"]["after"]["toe_length"] == 74


def test_a_change_after_the_computers_word_goes_again(hand: Hand) -> None:
    """A mistake that is seen once the computer has the visit waits on the phone, and is not taken off with the rest."""
    one_value(hand)
    handed_over(hand)
    word = hand.page.evaluate("async () => receiptOf(memory.meta.get('files')[0].id, drafts())")
    hand.page.locator('[data-key="receipt"]').fill(word)
    hand.page.locator('[data-key="receipt"]').press("Enter")
    hand.page.wait_for_selector('[data-key="clear"]')
    hand.page.evaluate("location.hash = ''")
    one_value_more(hand)
    visit = next(part for part in parts(handed_over(hand)) if part["kind"] == "visit")

    assert visit["rev"] == 2
    assert visit["record"]["feet"]["left_fore"]["after"]["toe_length"] == 74
    assert hand.page.locator('[data-key="clear"]').count() == 0


def test_a_visit_of_yesterday_stands_first_until_it_left(hand: Hand) -> None:
    """The battery died in the barn: next day the list offers yesterday's visit, and it keeps its day."""
    hand.page.clock.set_fixed_time(dt.datetime.now() - dt.timedelta(days=1))
    one_value(hand)
    hand.page.clock.set_fixed_time(dt.datetime.now())
    hand.page.goto(hand.page.url.split("#")[0])
    hand.page.reload()
    hand.page.wait_for_selector("body[data-ready]")
    (draft,) = hand.drafts()
    hand.tap(f"draft-{draft['id']}")
    hand.tap("tile-left_fore")
    hand.tap("feet.left_fore.after.toe_length-74")

    (kept,) = hand.drafts()
    yesterday = (dt.date.today() - dt.timedelta(days=1)).isoformat()
    assert (kept["date"], kept["record"]) == (yesterday, {"feet": {"left_fore": {"after": {"toe_length": 74}}}})


def test_a_visit_written_down_later_gets_its_own_day(hand: Hand) -> None:
    """The day can be set until the visit has left; none that is still to come is taken."""
    one_value(hand)
    hand.page.go_back()
    day, later = (dt.date.today() + dt.timedelta(days=days) for days in (-2, 2))
    for entered in (day, later):
        hand.page.locator('[data-key="date"]').evaluate(
            "(one, day) => { one.value = day; one.dispatchEvent(new Event('change')); }", entered.isoformat()
        )
        hand.settled()
    visit = next(part for part in parts(handed_over(hand)) if part["kind"] == "visit")
    hand.page.evaluate("location.hash = ''")
    hand.tap(f"draft-{visit['id']}")

    assert visit["date"] == day.isoformat()
    assert hand.page.locator('[data-key="date"]').count() == 0


def one_value_more(hand: Hand) -> None:
    """Change the value of `one_value`."""
    hand.tap("horse-willowmere/tansy")
    hand.tap("tile-left_fore")
    hand.tap("feet.left_fore.after.toe_length-74")
    hand.settled()


def test_a_full_device_is_told_at_once_and_hands_over_all_the_same(hand: Hand) -> None:
    """A visit that cannot be kept is still on the page, and leaves with the file."""
    session = hand.page.context.new_cdp_session(hand.page)
    session.send("Storage.overrideQuotaForOrigin", {"origin": hand.page.url.split("/#")[0].rstrip("/"), "quotaSize": 1})
    hand.tap("horse-willowmere/tansy")
    hand.tap("tile-left_fore")
    hand.tap("feet.left_fore.after.toe_length-73")
    hand.page.wait_for_selector("#toast")
    hand.settled()
    told = hand.page.locator("#kept").inner_text()
    visit = next(part for part in parts(handed_over(hand)) if part["kind"] == "visit")

    assert told == "Not kept yet!"
    assert visit["record"] == {"feet": {"left_fore": {"after": {"toe_length": 73}}}}


@pytest.mark.parametrize(("days", "expected"), [(-365, "Look at its clock"), (365, "This list is 365 days old")])
def test_a_clock_that_is_wrong_is_said(browser: Browser, address: str, days: int, expected: str) -> None:
    """A year back, and a year ahead, which looks like an old list: the page says so and keeps all the same."""
    context = phone(browser)
    page = context.new_page()
    page.clock.set_fixed_time(dt.datetime.now() + dt.timedelta(days=days))
    page.goto(address)
    page.wait_for_selector("body[data-ready]")
    told = page.locator(".warn").inner_text()
    context.close()

    assert expected in told


def test_a_day_that_is_gone_is_due_no_more_by_the_devices_own_calendar(browser: Browser, tmp_path: Path) -> None:
    """The list is of 25 November; read on 14 December one horse is late, one may be trimmed now, one comes later."""
    context = phone(browser)
    page = context.new_page()
    page.clock.set_fixed_time(dt.datetime(2026, 12, 14, 9))
    with hosted(build_field(RECORDS, TODAY, ("willowmere",), tmp_path, b"")) as address:
        page.goto(address)
        page.wait_for_selector("body[data-ready]")
        lines = {
            horse: page.locator(f'[data-key="horse-willowmere/{horse}"]').inner_text()
            for horse in ("bramble", "moss", "tansy")
        }
    context.close()

    assert "12 days over" in lines["bramble"]
    assert "due now, until 20 Dec 2026" in lines["moss"]
    assert "due 17 Dec 2026" in lines["tansy"]


def test_nothing_is_lost_when_the_browser_is_killed(browser: Browser, address: str, tmp_path: Path) -> None:
    """Killed a moment after the last tap, as a battery dies: all of it is there again."""
    profile = str(tmp_path / "profile")

    def start() -> BrowserContext:
        size: ViewportSize = {"width": 390, "height": 844}
        return browser.browser_type.launch_persistent_context(
            profile, executable_path=chromium(), args=QUIET, viewport=size, has_touch=True
        )

    one_value(opened(start(), address))
    for process in _of_profile(profile):
        os.kill(process, signal.SIGKILL)
    hand = opened(start(), address)
    kept = hand.record()
    hand.page.context.close()

    assert kept == {"feet": {"left_fore": {"after": {"toe_length": 73}}}}


def _of_profile(profile: str) -> list[int]:
    found = subprocess.run(["pgrep", "-f", profile], capture_output=True, text=True).stdout
    return [int(number) for number in found.split()]
