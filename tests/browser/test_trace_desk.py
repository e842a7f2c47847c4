"""A photograph traced with mouse and keyboard, and one that was traced before."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
from playwright.sync_api import Browser, ViewportSize

from recordgen.site.trace.keep import keep_tracing
from recordgen.site.trace.photo import PhotoToTrace, photo_to_trace
from tests.support.photographs import drawn, file_of
from tests.support.tracing_screen import PUT, Tapper, marks_of, opened, served, traced_practice, tracings_in

MARKS = marks_of()
DESK: ViewportSize = {"width": 1280, "height": 800}


@pytest.fixture
def photo(tmp_path: Path) -> PhotoToTrace:
    """A photograph of a sole."""
    return traced_practice(tmp_path)


@pytest.fixture
def hand(browser: Browser, tmp_path: Path, photo: PhotoToTrace) -> Iterator[Tapper]:
    """A hand at the mouse and the keyboard."""
    context = browser.new_context(viewport=DESK)
    with served(tmp_path, photo) as shown:
        found = opened(context, shown.address)
        yield found
        context.close()
    assert found.said == []


def click(hand: Tapper, *spots: list[float]) -> None:
    """Click spots of the picture."""
    for spot in spots:
        hand.page.mouse.click(*hand.at(spot))


def through_the_scale(hand: Tapper) -> None:
    """Click both ends of the rule, which lay on the foot."""
    click(hand, *MARKS["scale"])
    hand.press("lay-on-foot")


def test_arrow_keys_move_the_point_that_was_set_last(hand: Tapper) -> None:
    """By a px of the picture, with Shift by ten."""
    through_the_scale(hand)
    for name in ("frog_apex", "frog_medial", "frog_lateral", "buttress_medial", "buttress_lateral"):
        click(hand, *MARKS[name])
    click(hand, *MARKS["wall"][:3])
    *others, (x, y) = hand.points()["wall"]
    for key in ("ArrowLeft", "Shift+ArrowDown"):
        hand.page.keyboard.press(key)

    assert hand.points()["wall"] == [*others, pytest.approx([x - 1, y + 10])]


def test_a_whole_line_is_set_by_keys_alone(hand: Tapper) -> None:
    """Enter sets a point where the cross stands, arrows move it, Delete takes it away."""
    hand.page.locator("canvas").focus()
    for key in ("ArrowLeft", "Shift+ArrowUp", "Enter"):
        hand.page.keyboard.press(key)
    (first,) = hand.points()["scale"]
    for key in ("ArrowRight", "Shift+ArrowDown"):
        hand.page.keyboard.press(key)
    (moved,) = hand.points()["scale"]
    hand.page.keyboard.press("Control+z")
    (back,) = hand.points()["scale"]
    hand.page.keyboard.press("Delete")

    assert moved == pytest.approx([first[0] + 1, first[1] + 10])
    assert back == pytest.approx([first[0] + 1, first[1]])
    assert hand.points()["scale"] in ([], [back])


def test_the_wheel_zooms_about_the_mouse(hand: Tapper) -> None:
    """The spot under it stays under it."""
    for _ in range(2):
        x, y = hand.at([600, 500])
        hand.page.mouse.move(x, y)
        hand.page.mouse.wheel(0, -400)
        hand.page.evaluate("() => new Promise((done) => setTimeout(done, 50))")
    before = hand.page.evaluate("tracing.view.unit")
    x, y = hand.at([640, 460])
    hand.page.mouse.move(x, y)
    hand.page.mouse.wheel(0, -200)
    hand.page.evaluate("() => new Promise((done) => setTimeout(done, 50))")

    assert hand.page.evaluate("tracing.view.unit") > 1.3 * before
    assert hand.at([640, 460]) == pytest.approx([x, y], abs=1.5)


def test_a_picture_traced_before_is_opened_with_its_points(
    hand: Tapper, browser: Browser, photo: PhotoToTrace, tmp_path: Path
) -> None:
    """From another browser too, since they stand in the visit; the new one takes the place of the old, or both stay."""
    hand.page.evaluate(PUT, MARKS)
    hand.page.reload()
    hand.page.wait_for_selector("body[data-ready]")
    hand.press("done")
    hand.press("write")
    hand.page.wait_for_selector("#trace[data-written]")
    again = photo_to_trace(tmp_path, photo.file)
    with served(tmp_path, again) as shown:
        other = opened(browser.new_context(viewport=DESK), shown.address)
        points = other.points()
        other.page.evaluate("tracing.draft.go(99)")
        other.page.reload()
        other.page.wait_for_selector("body[data-ready]")
        other.press("done")
        other.press("write-instead")
        other.page.wait_for_selector("#trace[data-written]")

    assert np.array(points["wall"]) == pytest.approx(np.array(MARKS["wall"]), abs=0.06)
    assert [one.file for one in tracings_in(photo)] == [photo.file.name]


def test_the_white_line_is_drawn_to_the_ridge_at_a_press(hand: Tapper, photo: PhotoToTrace, tmp_path: Path) -> None:
    """Off at first, then shown and kept or dropped; gone where a point moves, kept in the record where it stands."""
    hand.page.evaluate(PUT, MARKS | {"white_line": MARKS["white_line"][::2]})
    hand.page.reload()
    hand.page.wait_for_selector("body[data-ready]")
    hand.press("back")
    off = hand.page.evaluate("tracing.draft.tracing().ridge")
    hand.press("ridge")
    shown, counted = hand.words(), hand.page.evaluate("tracing.draft.tracing().ridge")
    hand.press("ridge-drop")
    dropped = hand.page.evaluate("tracing.draft.ridge()")
    hand.press("ridge")
    hand.press("ridge-keep")
    kept = hand.page.evaluate("tracing.draft.tracing().ridge")
    hand.press("next")
    hand.press("write")
    hand.page.wait_for_selector("#trace[data-written]")
    hand.page.evaluate("tracing.draft.change((now) => { now.points.white_line[1][0] += 3; })")

    assert (off, counted, dropped) == (None, None, None)
    assert "Dashed: a streak of the picture." in shown
    (found,) = tracings_in(photo)
    assert found.ridge is not None
    assert list(found.ridge) == kept
    assert photo_to_trace(tmp_path, photo.file).earlier[0][1].ridge == found.ridge
    assert hand.page.evaluate("tracing.draft.tracing().ridge") is None


def test_a_program_that_has_ended_is_told_and_the_points_stay(
    browser: Browser, tmp_path: Path, photo: PhotoToTrace
) -> None:
    """The page does not lose what was tapped."""
    with served(tmp_path, photo) as shown:
        hand = opened(browser.new_context(viewport=DESK), shown.address)
    hand.page.route("**/done", lambda route: route.abort())
    hand.page.evaluate(PUT, MARKS)
    hand.page.reload()
    hand.page.wait_for_selector("body[data-ready]")
    hand.press("done")
    hand.press("write")

    hand.page.wait_for_selector("text=does not answer")
    assert hand.points()["wall"] == MARKS["wall"]


def test_a_picture_that_was_changed_since_is_told(browser: Browser, tmp_path: Path, photo: PhotoToTrace) -> None:
    """The points come up as they were, with the question whether they still fit, and one that does not is named."""
    sent = {"landmarks": {"frog_apex": [[1150, 500]]}, "scale": None, "drawn": "straight"}
    assert keep_tracing(photo, json.dumps(sent).encode()).written
    photo.file.write_bytes(file_of(drawn(800, 600)))
    with served(tmp_path, photo_to_trace(tmp_path, photo.file)) as shown:
        hand = opened(browser.new_context(viewport=DESK), shown.address)

        assert "A point stands outside the picture." in hand.words()
        hand.page.evaluate("tracing.draft.change((now) => { now.points = {frog_apex: [[500, 300]]}; })")
        assert hand.page.evaluate("tracing.draft.source") == "changed"
