"""From the phone to the records: written on the page, handed over, taken in, and read back."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from playwright.sync_api import Browser

from recordgen.private.keystore.field_key import FieldKey, field_key
from recordgen.records.load.tables import read_reference
from recordgen.records.models.visit import Visit
from recordgen.records.receive.doubts import settle
from recordgen.records.receive.incoming import IncomingVisit
from recordgen.records.receive.notes_file import read_notes
from recordgen.records.receive.questions import Answers, phrases_of
from recordgen.records.receive.take_in import receipt_word
from recordgen.records.receive.visits import visit_text
from recordgen.records.yaml.tree import document
from tests.support.any_visit import visits
from tests.support.commands import run, small_practice
from tests.support.field import Hand, field_folder, hosted, opened, phone
from tests.support.photographs import drawn, file_of

KEY = FieldKey.new()
SAY = phrases_of(read_reference(None)[0].phrases)
# Puts records into the page as drafts of visits, and hands them over: the file, and the word that it waits for.
HAND_OVER = """async (records) => {
  const drafts = records.map((record) => beginDraft('willowmere/tansy', { record }));
  const made = await buildFile(drafts);
  return [made.content, made.receipt];
}"""


@pytest.fixture(scope="module")
def hand(browser: Browser, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Hand]:
    """A hand at a page that seals for KEY."""
    with hosted(field_folder(tmp_path_factory.mktemp("field"), key=KEY.public)) as address:
        context = phone(browser)
        yield opened(context, address)
        context.close()


def settled(visit: IncomingVisit) -> Visit:
    """The visit that the file of a brought one tells."""
    found = settle(visit, visit.day.isoformat(), "Tansy", Answers(), SAY)
    assert found.questions == ()
    return Visit.model_validate(document("visit", visit_text(found.record).encode()).values)


@settings(max_examples=3, suppress_health_check=list(HealthCheck))
@given(records=st.lists(visits(), min_size=8, max_size=8))
def test_any_visit_goes_through_the_page_and_reads_back_equal(hand: Hand, records: list[dict[str, Any]]) -> None:
    """Whatever the models allow, through the page's own state, its seal and the lines of its file."""
    undated = [{key: value for key, value in record.items() if key != "date"} for record in records]
    content, word = hand.page.evaluate(HAND_OVER, undated)
    brought = read_notes(content.encode(), "notes", lambda head, first: KEY.opener(first, head.key))
    day = dt.date.today().isoformat()

    assert (list(brought.problems), brought.whole) == ([], True)
    assert [settled(visit) for visit in brought.visits] == [
        Visit.model_validate({**one, "date": day}) for one in undated
    ]
    assert receipt_word(brought.id, brought.visits) == word


def test_what_a_hand_tapped_stands_in_the_records(
    browser: Browser, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A length and a photograph; the word that the computer prints is the one the phone takes."""
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(tmp_path / "keys"))
    records = small_practice(tmp_path, ["tansy"])
    folder = field_folder(tmp_path / "field", key=field_key(records).public)
    with hosted(folder) as address:
        hand = opened(phone(browser), address)
        for key in ("horse-willowmere/tansy", "tile-left_fore", "feet.left_fore.after.toe_length-73"):
            hand.tap(key)
        picture = {"name": "a.jpg", "mimeType": "image/jpeg", "buffer": file_of(drawn())}
        hand.page.set_input_files("input[type=file]", picture)  # type: ignore[arg-type]
        hand.page.wait_for_selector(".pictures img")
        hand.settled()
        hand.page.evaluate("location.hash = '#/hand'")
        with hand.page.expect_download() as download:
            hand.tap("save")
        download.value.save_as(tmp_path / "field-notes.txt")
        told = run("receive", tmp_path / "field-notes.txt", "--records", records)
        box = hand.page.locator('[data-key="receipt"]')
        box.fill(told.output.partition("field-notes.txt: ")[2][:4])
        box.press("Enter")
        (draft,) = hand.drafts()

    day = dt.date.today().isoformat()
    text = (records / "willowmere" / "tansy" / f"{day}.yaml").read_text()
    assert told.exit_code == 0, told.output
    assert text.partition("\n")[2] == f"date: {day}\nfeet:\n  left_fore:\n    after:  {{toe_length: 73}}\n"
    assert (records / f"willowmere/tansy/photos/{day}-left-fore-sole-after.jpg").exists()
    assert "received" in draft
