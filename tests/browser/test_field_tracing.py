"""Photographs traced on the field page: into the records, wrong taps, killed in the middle, pictures that are gone."""

from __future__ import annotations

import datetime as dt
import hashlib
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from recordgen.hoof.tracing.figures import plain_values
from recordgen.private.keystore.field_key import field_key
from recordgen.records.models.tracing import Tracing
from recordgen.records.models.visit import Visit
from recordgen.records.yaml.tree import document
from tests.support.access import COLOUR_RULES, WCAG_2_2_AA, violations
from tests.support.commands import run, small_practice
from tests.support.field import Hand, field_folder, hosted, opened, phone
from tests.support.field_tracing import handed, kept, photographed, traced, tracing
from tests.support.tracing_screen import marks_of
from tests.support.typed_tracings import tapped

MOST_CONTACTS = 32
MARKS = marks_of()


@pytest.fixture(scope="module")
def page(browser: Browser, field_address: str) -> Iterator[Hand]:
    """One phone for all."""
    context = phone(browser)
    context.set_default_timeout(8000)
    yield opened(context, field_address)
    context.close()


@pytest.fixture
def hand(page: Hand) -> Iterator[Hand]:
    """A hand at it, which leaves nothing behind."""
    yield page
    assert page.said == []
    page.page.once("dialog", lambda dialog: dialog.accept())
    page.page.evaluate("(async () => { for (const draft of drafts()) await throwAway(draft); })()")


def test_what_was_traced_stands_in_the_records(
    browser: Browser, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A sole by few contacts in any order, and a side: each with its photograph, whose checksum it bears."""
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(tmp_path / "keys"))
    records = small_practice(tmp_path, ["tansy"])
    with hosted(field_folder(tmp_path / "field", key=field_key(records).public)) as address:
        hand = opened(phone(browser), address)
        sole = tracing(hand, photographed(hand))
        sole.sole(MARKS)
        figures = sole.figures()
        kept(sole)
        side = traced(hand, photographed(hand, view="side"), marks_of("side"))
        covering = hand.page.locator("#toast").count()
        side.press("done")
        kept(side)
        (tmp_path / "field-notes.txt").write_bytes(handed(hand))
        hand.page.context.close()
    told = run("receive", tmp_path / "field-notes.txt", "--records", records)
    found = _tracings(records)

    assert (told.exit_code, hand.said) == (0, []), told.output
    assert sole.contacts <= MOST_CONTACTS
    assert covering == 0
    assert [one.view for one in found] == ["sole", "side"]
    assert [one.sha256 for one in found] == [_sum(records, one) for one in found]
    true, read = plain_values(Tracing.model_validate(tapped())), plain_values(found[0])
    assert {name: figures[name] for name in figures} == pytest.approx({name: read[name] for name in figures}, abs=0.1)
    assert {name: read[name] for name in read if abs(true[name] - read[name]) > 0.015 * abs(true[name]) + 1} == {}
    assert "tracing" not in run("check", records).output


def _tracings(records: Path) -> tuple[Tracing, ...]:
    file = records / "willowmere" / "tansy" / f"{dt.date.today()}.yaml"
    return Visit.model_validate(document(file.name, file.read_bytes()).values).feet["left_fore"].tracings


def _sum(records: Path, traced: Tracing) -> str:
    return hashlib.sha256((records / "willowmere" / "tansy" / "photos" / str(traced.file)).read_bytes()).hexdigest()


def test_wrong_taps_a_pinch_and_a_turn_leave_the_points_alone(hand: Hand) -> None:
    """A tap beside the picture is said; two fingers end a tap that had begun; a turned phone keeps what was tapped."""
    tapper = tracing(hand, photographed(hand))
    tapper.tap([600, -60])
    beside = tapper.words()
    unit = hand.page.evaluate("tracing.view.unit")
    tapper.pinch([400, 700])
    zoomed = hand.page.evaluate("tracing.view.unit")
    after_pinch = tapper.points().get("scale", [])
    hand.page.evaluate("tracing.view.fit()")
    tapper.scale(MARKS)
    tapper.tap(*MARKS["frog_apex"])
    before = tapper.points()
    tapper.turn()
    tapper.tap(*MARKS["frog_medial"])
    turned = tapper.points()
    hand.page.set_viewport_size({"width": 390, "height": 844})

    assert "That is beside the picture." in beside
    assert (after_pinch, zoomed > 1.5 * unit) == ([], True)
    assert {name: turned[name] for name in before} == before
    assert turned["frog_medial"][0] == pytest.approx(MARKS["frog_medial"][0], abs=3)


def test_what_was_tapped_is_there_again_after_a_kill(browser: Browser, field_address: str) -> None:
    """The page goes in the middle, unasked; every point is there, and can be taken back one by one."""
    context = phone(browser)
    context.set_default_timeout(8000)
    hand = opened(context, field_address)
    key = photographed(hand)
    tapper = tracing(hand, key)
    tapper.scale(MARKS)
    tapper.singles(MARKS, "frog_apex", "frog_medial", "frog_lateral")
    hand.settled()
    before = tapper.points()
    hand.page.close()
    again = opened(context, field_address)
    again.page.evaluate("location.hash = '#/foot/' + drafts()[0].id + '/left_fore'")
    label = again.page.locator(f'[data-key="{key}"]').inner_text()
    tapper = tracing(again, key)
    points, words = tapper.points(), tapper.words()
    while again.page.locator('[data-key="take-back"]').is_enabled():
        tapper.press("take-back")
    emptied = tapper.points()
    context.close()

    assert (points, label) == (before, "Go on tracing")
    assert "What you had tapped is here again." in words
    assert emptied == {}


def test_a_mistake_is_said_and_the_tracing_kept(hand: Hand) -> None:
    """Points of a left foot on a right one; the button then tells that it was traced."""
    key = photographed(hand, foot="right_fore")
    tapper = traced(hand, key, MARKS)
    said = tapper.words()
    tapper.press("done")
    kept(tapper)

    assert "as in a foot of the other side" in said
    assert hand.page.locator(f'[data-key="{key}"]').inner_text() == "Traced; look again"
    assert hand.record()["feet"]["right_fore"]["tracings"][0]["wall"] == MARKS["wall"]


def test_a_picture_that_is_changed_or_gone_is_said(hand: Hand) -> None:
    """On the tracing screen, and beside the photographs; what was traced stays with the visit."""
    key = photographed(hand)
    traced(hand, key, MARKS)
    hand.page.evaluate("history.back()")
    hand.page.wait_for_selector('body[data-screen="foot"]')
    id_ = key.removeprefix("trace-")
    hand.page.evaluate("(id) => { memory.tracings.get(id).sum = '0'; }", id_)
    tapper = tracing(hand, key)
    changed = tapper.words()
    tapper.press("done")
    kept(tapper)
    hand.page.once("dialog", lambda dialog: dialog.accept())
    hand.tap(f"photo-{id_}")
    gone = hand.page.locator(".note").last.inner_text()
    (stays,) = hand.record()["feet"]["left_fore"]["tracings"]

    assert "The picture was changed since it was traced." in changed
    assert gone.startswith("Traced, but its photograph is gone: sole, after the trim.")
    assert stays["file"] == id_


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_nobody_is_kept_out_of_tracing(hand: Hand, scheme: str) -> None:
    """Neither where it is opened nor on its screen and sheets. Source: WCAG 2.2, levels A and AA, by axe-core."""
    hand.page.emulate_media(color_scheme="dark" if scheme == "dark" else "light")
    key = photographed(hand)
    found = violations(hand.page, COLOUR_RULES if scheme == "dark" else WCAG_2_2_AA)
    tapper = tracing(hand, key)
    found += violations(hand.page)
    tapper.press("camera")
    found += violations(hand.page)
    tapper.press("close")
    tapper.tap(*MARKS["scale"])
    found += violations(hand.page)

    assert found == []
