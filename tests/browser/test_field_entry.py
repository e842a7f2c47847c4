"""A visit written down on the phone, tapped as a hand would."""

from __future__ import annotations

import datetime as dt
import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from recordgen.records.models.visit import Visit
from recordgen.site.field.build import build_field
from tests.conftest import TODAY
from tests.support.commands import small_practice
from tests.support.field import MOST_BYTES, MOST_CONTACTS, Hand, field_folder, opened, phone, usual_visit


@pytest.fixture
def hand(browser: Browser, field_address: str) -> Iterator[Hand]:
    """A hand at a phone that has never seen the page."""
    context = phone(browser)
    found = opened(context, field_address)
    yield found
    context.close()
    assert found.said == []


def test_a_usual_visit_takes_few_contacts(hand: Hand) -> None:
    """Four feet, two findings, what was done and the next visit, scrolls counted."""
    usual_visit(hand)

    assert hand.contacts <= MOST_CONTACTS, hand.scrolled
    record = hand.record()
    assert record["next"] == {"weeks": 6}
    assert record["feet"]["left_fore"] == {
        "after": {"toe_length": 73, "heel_height": {"medial": 33, "lateral": 33}},
        "done": ["walls levelled"],
        "wall": {"lateral quarter": {"flare": 3}},
    }
    assert set(record["feet"]) == {"left_fore", "right_fore", "left_hind", "right_hind"}


def test_nothing_is_filled_in_from_last_time(hand: Hand) -> None:
    """A horse that was only looked at has an empty record, whatever stood there before."""
    hand.tap("horse-willowmere/tansy")
    hand.tap("tile-left_fore")
    hand.tap("next-foot")

    assert hand.record() == {}


def test_everything_is_there_again_after_the_page_was_closed(hand: Hand) -> None:
    """Kept as it is typed: no button saves."""
    usual_visit(hand)
    before = hand.drafts()
    hand.page.reload()
    hand.page.wait_for_selector("body[data-ready]")

    assert hand.drafts() == before


def test_each_step_can_be_taken_back_also_after_a_restart(hand: Hand) -> None:
    """The last value goes first, and what stood there before comes back."""
    hand.tap("horse-willowmere/tansy")
    hand.tap("tile-left_fore")
    hand.tap("feet.left_fore.after.toe_length-73")
    hand.tap("feet.left_fore.after.toe_length-74")
    hand.settled()
    hand.page.reload()
    hand.page.wait_for_selector("body[data-ready]")
    hand.tap("undo")
    first = hand.record()
    hand.tap("undo")

    assert first == {"feet": {"left_fore": {"after": {"toe_length": 73}}}}
    assert hand.record() == {}


def test_what_is_unlikely_is_asked_about_once_more(hand: Hand) -> None:
    """A value far from the last one is kept when it is set twice, and one that is impossible is not kept at all."""
    hand.tap("horse-willowmere/tansy")
    hand.tap("tile-left_fore")
    hand.tap("feet.left_fore.after.toe_length-keys")
    for key in ("9", "5", "half"):
        hand.tap(f"pad-{key}")
    hand.tap("pad-set")
    asked = hand.record()
    hand.tap("pad-set")
    kept = hand.record()["feet"]["left_fore"]["after"]["toe_length"]
    hand.tap("feet.left_fore.after.toe_length-keys")
    for key in ("back", "back", "back", "back", "9", "9", "9"):
        hand.settled()
        hand.tap(f"pad-{key}")
    hand.tap("pad-set")

    assert (asked, kept) == ({}, 95.5)
    assert "is possible" in hand.page.locator(".sheet .room").inner_text()


def test_a_trembling_hand_presses_once(hand: Hand) -> None:
    """The same key twice within a moment is one press; two keys are two."""
    hand.tap("horse-willowmere/tansy")
    hand.tap("tile-left_fore")
    hand.page.wait_for_selector('[data-key="feet.left_fore.after.toe_length-73"]')
    hand.page.evaluate(
        """() => { const key = (name) => document.querySelector(`[data-key="${name}"]`);
        key('feet.left_fore.after.toe_length-73').click(); key('feet.left_fore.after.toe_length-73').click(); }"""
    )

    assert hand.record()["feet"]["left_fore"]["after"] == {"toe_length": 73}


def test_a_second_window_does_not_write(hand: Hand) -> None:
    """Two would write over each other; the second says so and what to do."""
    other = hand.page.context.new_page()
    other.goto(hand.page.url)
    other.wait_for_selector("h1")

    assert other.locator("h1").inner_text() == "Open elsewhere"


def test_without_a_signal_the_page_opens_and_keeps(hand: Hand) -> None:
    """Once opened, it needs no network: not to open again, not to write."""
    hand.page.evaluate("navigator.serviceWorker.ready.then(() => true)")
    hand.page.context.set_offline(True)
    hand.page.reload()
    hand.page.wait_for_selector("body[data-ready]")
    hand.tap("horse-willowmere/tansy")
    hand.tap("tile-left_fore")
    hand.tap("feet.left_fore.after.toe_length-73")
    hand.settled()
    hand.page.reload()
    hand.page.wait_for_selector("body[data-ready]")
    hand.page.context.set_offline(False)
    hand.said.clear()

    assert hand.record()["feet"]["left_fore"]["after"] == {"toe_length": 73}


def test_open_cautions_stand_before_the_first_foot(hand: Hand) -> None:
    """Feet that must not be trimmed are said before anything is trimmed, on the horse and on the foot."""
    hand.tap("horse-willowmere/fennel")
    told = hand.page.locator(".cautions").inner_text()

    assert told.startswith("Before you trim")
    assert hand.page.locator(".cautions").bounding_box()["y"] < hand.page.locator(".four").bounding_box()["y"]  # type: ignore[index]


def test_covered_last_values_do_not_tempt(hand: Hand) -> None:
    """Where they are covered no number of last time stands on the screen of a foot."""
    hand.tap("settings")
    hand.tap("covered")
    hand.tap("back")
    hand.tap("horse-willowmere/tansy")
    hand.tap("tile-left_fore")

    assert "last 7" not in hand.page.locator("main").inner_text()
    assert hand.page.locator('[data-key="feet.left_fore.after.toe_length-73"]').count() == 0


def test_a_horse_that_is_not_in_the_list_can_be_begun(hand: Hand) -> None:
    """By stable and name; the computer asks which horse it is."""
    hand.page.locator("input[name=name]").fill("Bilberry")
    hand.page.get_by_role("button", name="Begin").tap()
    hand.tap("tile-left_fore")
    (draft,) = hand.drafts()

    assert (draft["horse"], draft["newHorse"], draft["date"]) == (
        "willowmere/?",
        "Bilberry",
        dt.date.today().isoformat(),
    )


def test_lameness_is_graded_on_its_scale_and_no_sign_can_be_said(hand: Hand) -> None:
    """Nothing to tap before the scale is chosen; then its own grades. No sign seen is said, and is not unsaid."""
    hand.tap("horse-willowmere/tansy")
    hand.tap("chip--lameness")
    before = hand.page.locator('[data-key="lameness.grade-3"]').count()
    hand.tap("lameness.scale-Obel")
    hand.settled()
    grades = hand.page.locator('.sheet [data-key^="lameness.grade-"]').all_inner_texts()
    hand.tap("lameness.grade-3")
    hand.tap("sheet-close")
    hand.tap("chip--signs")
    hand.tap("signs-none")
    record = hand.record()

    assert (before, grades) == (0, ["0", "1", "2", "3", "4", "123"])
    assert record == {"lameness": {"scale": "Obel", "grade": 3}, "signs": "none"}
    assert Visit.model_validate({**record, "date": "2026-11-27"}).showed_no_sign


def test_a_vets_words_begin_with_their_day(hand: Hand) -> None:
    """Today's, which can be changed; the visit is one that the records take."""
    hand.tap("horse-willowmere/tansy")
    hand.tap("chip--vet")
    hand.tap("vet-more")
    hand.tap("vet.0.kind-advised")
    hand.write("vet.0.by", "Dr Sage")
    record = hand.record()

    assert record["vet"] == [{"date": dt.date.today().isoformat(), "kind": "advised", "by": "Dr Sage"}]
    assert Visit.model_validate({**record, "date": dt.date.today().isoformat()}).vet[0].by == "Dr Sage"


def test_the_next_visit_can_be_a_day_with_a_reason(hand: Hand) -> None:
    """In place of weeks, and weeks tapped afterwards take the place of the day."""
    hand.tap("horse-willowmere/tansy")
    hand.tap("weeks-6")
    hand.page.locator("summary", has_text="A day, or a reason").tap()
    hand.write("next.date", "2027-03-02")
    hand.settled()
    hand.write("next.reason", "before the show")
    by_day = hand.record()["next"]
    hand.tap("weeks-5")

    assert by_day == {"date": "2027-03-02", "reason": "before the show"}
    assert hand.record()["next"] == {"weeks": 5, "reason": "before the show"}


def test_a_horse_that_was_only_opened_is_not_handed_over(hand: Hand) -> None:
    """Nothing was entered, so there is no visit to take in."""
    hand.tap("horse-willowmere/tansy")
    hand.tap("back")
    waiting = hand.page.locator('[data-key="hand"]')

    assert (waiting.inner_text(), waiting.is_disabled()) == ("Nothing waits to be handed over.", True)


def test_the_page_is_light(tmp_path: Path) -> None:
    """With a whole stable, all words and the vocabulary in it."""
    folder = field_folder(tmp_path)

    assert sum(path.stat().st_size for path in folder.iterdir()) < MOST_BYTES


def test_a_practice_may_have_words_of_its_own(tmp_path: Path) -> None:
    """Entries of a file of the same name in its own folder of templates go before ours, which fill its gaps."""
    records = small_practice(tmp_path)
    own = records / "site_templates" / "field" / "words.yaml"
    own.parent.mkdir(parents=True)
    own.write_text('today: The round\ntitle: My "notes"\nnames: {toe_length: toe wall}\n', "utf-8")
    made = build_field(records, TODAY, (), tmp_path / "sites")
    told = (made / "index.html").read_text("utf-8")
    entries = ('"today":"The round"', '"horses":"Horses"', '"toe_length":"toe wall"', '"view_sole":"sole"')

    assert [one for one in entries if one not in told] == []
    assert json.loads((made / "app.webmanifest").read_text("utf-8"))["name"] == 'My "notes"'
