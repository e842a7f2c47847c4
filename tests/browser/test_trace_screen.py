"""A photograph traced on the screen by touch: any order, wrong taps, pinch, a turned phone, a killed page."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from playwright.sync_api import Browser, BrowserContext

from recordgen.hoof.tracing.figures import plain_values
from recordgen.language.catalogs import catalog_of
from recordgen.records.models.tracing import Tracing
from recordgen.site.trace.page import words_of_screen
from recordgen.site.trace.photo import PhotoToTrace
from tests.support.practice_folders import VISIT
from tests.support.tracing_screen import (
    PUT,
    Served,
    Tapper,
    marks_of,
    opened,
    phone,
    served,
    traced_practice,
    tracings_in,
)
from tests.support.typed_tracings import tapped

MOST_CONTACTS = 32
MARKS = marks_of()


@pytest.fixture
def photo(tmp_path: Path) -> PhotoToTrace:
    """A photograph of a sole."""
    return traced_practice(tmp_path)


@pytest.fixture
def shown(tmp_path: Path, photo: PhotoToTrace) -> Iterator[Served]:
    """Its screen."""
    with served(tmp_path, photo) as found:
        yield found


@pytest.fixture
def context(browser: Browser) -> Iterator[BrowserContext]:
    """A phone that has never seen the screen."""
    found = phone(browser)
    yield found
    found.close()


@pytest.fixture
def hand(context: BrowserContext, shown: Served) -> Iterator[Tapper]:
    """A hand at that phone."""
    found = opened(context, shown.address)
    yield found
    assert found.said == []


def test_a_sole_takes_few_contacts_and_is_written(hand: Tapper, photo: PhotoToTrace, shown: Served) -> None:
    """From the rule to the visit, and then the program ends."""
    hand.sole(MARKS)
    hand.press("write")
    hand.page.wait_for_selector("#trace[data-written]")
    shown.thread.join(10)

    assert hand.contacts <= MOST_CONTACTS
    assert not shown.thread.is_alive()
    (found,) = tracings_in(photo)
    true, told = plain_values(Tracing.model_validate(tapped())), plain_values(found)
    # Quick touches are thought to be off by far, so that the line leaves them a little.
    assert {name: told[name] for name in told if abs(true[name] - told[name]) > 0.015 * abs(true[name]) + 1} == {}
    assert (found.drawn, found.model, found.sha256, found.file) == ("smooth", 1, photo.sha256, photo.file.name)
    assert all(line in photo.visit.read_text().splitlines() for line in VISIT.splitlines())


def test_lines_may_be_tapped_in_any_order(hand: Tapper) -> None:
    """They come out from the inner heel round the toe."""
    hand.sole(MARKS)
    landmarks = hand.page.evaluate("tracing.draft.tracing().landmarks")

    for name in ("wall", "white_line"):
        apart = [
            abs(a - b)
            for spot, true in zip(landmarks[name], MARKS[name], strict=True)
            for a, b in zip(spot, true, strict=True)
        ]
        assert max(apart) < 3


def test_the_figures_are_those_of_python_as_it_goes(hand: Tapper) -> None:
    """Width and mirror match stand at the top while the wall is being tapped."""
    hand.scale(MARKS)
    hand.singles(MARKS, "frog_apex", "frog_medial", "frog_lateral", "buttress_medial", "buttress_lateral")
    hand.tap(*MARKS["wall"][:6])
    assert "width" not in hand.words()
    hand.tap(*MARKS["wall"][6:])

    wide = hand.page.locator('[data-figure="sole_width_mm"] dd').inner_text()
    assert float(wide) == pytest.approx(hand.figures()["sole_width_mm"], abs=0.06)


@pytest.mark.parametrize("width", [320, 360, 390])
def test_the_names_of_figures_stand_whole(hand: Tapper, width: int) -> None:
    """With their units, at least 11 px high, four beside each other, in English and German."""
    hand.page.set_viewport_size({"width": width, "height": 640})
    hand.page.evaluate(PUT, MARKS)
    hand.page.reload()
    hand.page.wait_for_selector("body[data-ready]")
    tables = [words_of_screen(catalog_of(code)) for code in ("en", "de")]
    labels = {
        ", ".join(filter(None, (short, table["figures"][name][1])))
        for table in tables
        for shorts in table["headline"].values()
        for name, short in shorts.items()
    }
    label = hand.page.locator("#trace .live dt").first
    whole = "(one, words) => (one.textContent = words, one.scrollWidth <= one.clientWidth)"

    assert hand.page.locator("#trace .live dt").count() == 4
    assert [words for words in sorted(labels) if not label.evaluate(whole, words)] == []
    assert float(label.evaluate("one => parseFloat(getComputedStyle(one).fontSize)")) >= 11


def test_a_tap_beside_the_picture_sets_nothing(hand: Tapper) -> None:
    """And says so."""
    hand.tap([600, -60])

    assert hand.points().get("scale", []) == []
    assert "That is beside the picture." in hand.words()


def test_a_pinch_ends_the_tap_that_had_begun(hand: Tapper) -> None:
    """No point stays, and the picture is larger."""
    unit = hand.page.evaluate("tracing.view.unit")
    hand.pinch([600, 500])

    assert hand.points().get("scale", []) == []
    assert hand.page.evaluate("tracing.view.unit") > 1.5 * unit


def test_a_finger_that_slides_moves_the_point_slowly_under_the_loupe(hand: Tapper) -> None:
    """A third of its way; the loupe stands in the other corner."""
    touch = hand.page.context.new_cdp_session(hand.page)
    x, y = hand.at([300, 500])
    touch.send("Input.dispatchTouchEvent", {"type": "touchStart", "touchPoints": [{"x": x, "y": y}]})
    touch.send("Input.dispatchTouchEvent", {"type": "touchMove", "touchPoints": [{"x": x + 30, "y": y}]})
    hand.page.wait_for_selector("canvas[data-loupe]")
    corner = hand.page.evaluate("document.querySelector('canvas').dataset.loupe")
    touch.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})

    unit = hand.page.evaluate("tracing.view.unit")
    assert hand.points()["scale"][0] == pytest.approx([300 + 10 / unit, 500], abs=1.5)
    assert corner == "right"


def test_a_turned_phone_keeps_points_and_place(hand: Tapper) -> None:
    """Points are those of the picture, so the next tap falls where it is meant."""
    hand.scale(MARKS)
    hand.tap(*MARKS["frog_apex"])
    before = hand.points()
    hand.turn()
    hand.tap(*MARKS["frog_medial"])

    assert {name: hand.points()[name] for name in before} == before
    assert hand.points()["frog_medial"][0] == pytest.approx(MARKS["frog_medial"][0], abs=3)


def test_a_phone_turned_during_a_tap_sets_nothing(hand: Tapper) -> None:
    """The picture moves under the finger, which would else set a point where nobody looked."""
    touch = hand.page.context.new_cdp_session(hand.page)
    x, y = hand.at(MARKS["scale"][0])
    touch.send("Input.dispatchTouchEvent", {"type": "touchStart", "touchPoints": [{"x": x, "y": y}]})
    hand.turn()
    touch.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
    held = hand.points()
    hand.tap(*MARKS["scale"])

    assert [points for points in held.values() if points] == []
    assert np.array(hand.points()["scale"]) == pytest.approx(np.array(MARKS["scale"]), abs=2)


def test_a_finger_that_was_lost_on_its_way_bars_no_other(hand: Tapper) -> None:
    """A call may come in the middle of a tap, and nobody tells the page that the finger has left."""
    hand.page.evaluate("""() => {
      const canvas = document.querySelector("canvas");
      canvas.setPointerCapture = () => {};
      const down = { pointerId: 77, pointerType: "touch", isPrimary: true, clientX: 150, clientY: 400 };
      canvas.dispatchEvent(new PointerEvent("pointerdown", down));
    }""")
    hand.tap(*MARKS["scale"])

    assert np.array(hand.points()["scale"]) == pytest.approx(np.array(MARKS["scale"]), abs=1)


@pytest.mark.parametrize("size", [(320, 568), (667, 375), (844, 390)])
def test_all_words_of_a_step_are_seen_on_small_phones(hand: Tapper, size: tuple[int, int]) -> None:
    """Title, count and what is said, in the longer German words, upright and on its side."""
    hand.page.set_viewport_size({"width": size[0], "height": size[1]})
    hand.page.evaluate(PUT, MARKS)
    hand.page.reload()
    hand.page.wait_for_selector("body[data-ready]")
    hand.press("back")
    words = words_of_screen(catalog_of("de"))
    longest = max(words["marks"].values(), key=len)
    hand.page.evaluate(
        """([title, count, said]) => {
          document.querySelector("#trace h1").firstChild.textContent = title;
          document.querySelector("#trace .count").textContent = count;
          document.querySelector("#trace .say").textContent = said;
        }""",
        [longest + " ", "10 von 11", words["needs"].replace("{least}", "7")],
    )
    cut = hand.page.evaluate("""() => {
      const told = document.querySelector("#trace .told"), bottom = one => one.getBoundingClientRect().bottom;
      const low = bottom(document.querySelector("#trace header")) + 1, live = document.querySelector("#trace .live");
      return [told.scrollHeight > told.clientHeight + 1, bottom(told) > low, bottom(live) > low];
    }""")

    assert cut == [False, False, False]


def test_a_page_killed_in_the_middle_is_there_again(
    hand: Tapper, context: BrowserContext, tmp_path: Path, photo: PhotoToTrace, shown: Served
) -> None:
    """Also from a program that was started again, under another secret address of the same port."""
    hand.scale(MARKS)
    hand.tap(*MARKS["frog_apex"], *MARKS["frog_medial"])
    hand.page.close()
    again = opened(context, shown.address)

    assert (again.step(), set(again.points())) == ("frog_lateral", {"scale", "frog_apex", "frog_medial"})
    assert "What you had tapped is here again." in again.words()


def test_every_step_can_be_taken_back(hand: Tapper) -> None:
    """The length of the scale too, down to the first tap."""
    hand.scale(MARKS)
    hand.tap(*MARKS["frog_apex"], *MARKS["frog_medial"])
    while hand.page.locator('[data-key="take-back"]').is_enabled():
        hand.press("take-back")

    assert (hand.step(), hand.points()) == ("scale", {})


def test_a_point_is_taken_again(hand: Tapper) -> None:
    """Back at its step a tap anywhere sets it anew."""
    hand.scale(MARKS)
    hand.tap([500, 300])
    hand.press("back")
    hand.tap(*MARKS["frog_apex"])

    assert hand.points()["frog_apex"] == [pytest.approx(MARKS["frog_apex"][0], abs=3)]


def test_without_a_rule_shares_alone_are_told(hand: Tapper) -> None:
    """No length stands at the top."""
    hand.press("no-scale")
    hand.singles(MARKS, "frog_apex", "frog_medial", "frog_lateral", "buttress_medial", "buttress_lateral")
    hand.tap(*MARKS["wall"])

    assert "mirror, %" in hand.words()
    assert "mm" not in hand.words()


@pytest.mark.parametrize(
    ("foot", "change", "said"),
    [
        ("right-fore", {}, "as in a foot of the other side"),
        ("left-fore", {"scale": [[100, 950], [100, 950]]}, "Both ends of the scale are one point"),
        ("left-fore", {"white_line": [[x, y - 90] for x, y in MARKS["white_line"]]}, "stands outside the wall"),
    ],
)
def test_what_cannot_be_is_said_at_once(
    browser: Browser, tmp_path: Path, foot: str, change: dict[str, Any], said: str
) -> None:
    """On the screen, and again by the program, which writes nothing; the points stay."""
    photo = traced_practice(tmp_path, foot=foot)
    with served(tmp_path, photo) as shown:
        hand = opened(phone(browser), shown.address)
        points = MARKS | change
        hand.page.evaluate(PUT, points)
        hand.page.reload()
        hand.page.wait_for_selector("body[data-ready]")
        assert said in hand.words()
        hand.press("done")
        hand.press("write")
        hand.page.wait_for_selector('.sheet[aria-label="Not written:"]')

    assert tracings_in(photo) == ()
    assert hand.points()["wall"] == points["wall"]


@pytest.mark.parametrize("view", ["side", "front"])
def test_other_views_are_traced_as_well(browser: Browser, tmp_path: Path, view: str) -> None:
    """The walls come out from the hairline down whatever the order of the taps; the small drawing looks as the foot."""
    photo, marks = traced_practice(tmp_path, view), marks_of(view)
    with served(tmp_path, photo) as shown:
        hand = opened(phone(browser), shown.address)
        hand.scale(marks)
        while (step := hand.step()) != "review":
            hand.tap(*marks[step][::-1])
            if hand.step() == step:
                hand.press("next")
        assert hand.page.locator("#trace .which.turned").count() == (view == "side")
        hand.press("write")
        hand.page.wait_for_selector("#trace[data-written]")

    (found,) = tracings_in(photo)
    true = plain_values(
        Tracing.model_validate({"view": view, "moment": "after", "image": [1200, 1000]} | _typed(marks))
    )
    told = plain_values(found)
    assert told == pytest.approx({name: true[name] for name in told}, abs=1.2)
    assert hand.said == []


def _typed(marks: dict[str, Any]) -> dict[str, Any]:
    scale = {"from": marks["scale"][0], "to": marks["scale"][1], "length": 100}
    single = {name: points[0] if len(points) == 1 else points for name, points in marks.items() if name != "scale"}
    return {"scale": scale} | single
