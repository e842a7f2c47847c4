"""The tracing screen in inches: the length of a rule is typed in them, and figures are told so."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.support.tracing_screen import marks_of, opened, phone, served, traced_practice, tracings_in

PRACTICE = "name: A\ntrimmer: B\nunits: inches\ninches_since: 2026-12-01\n"
MARKS = marks_of()


def test_a_rule_in_inches_is_kept_in_millimetres(browser: Browser, tmp_path: Path) -> None:
    """Three and a half inches of a rule are 88.9 mm in the visit; widths are told in inches, with their error."""
    photo = traced_practice(tmp_path, **{"practice.yaml": PRACTICE})
    context = phone(browser)
    with served(tmp_path, photo) as shown:
        hand = opened(context, shown.address)
        hand.tap(*MARKS["scale"])
        asked = hand.page.locator("section[role=dialog]").inner_text()
        lengths = hand.page.locator("section[role=dialog] .choices button").all_inner_texts()
        hand.page.locator("section[role=dialog] input").fill("3 1/2")
        hand.press("lay-on-foot")
        hand.singles(MARKS, "frog_apex", "frog_medial", "frog_lateral", "buttress_medial", "buttress_lateral")
        for name in ("wall", "white_line"):
            hand.tap(*MARKS[name])
            hand.press("next")
        width = hand.figures()["sole_width_mm"]
        told = hand.page.locator('[data-figure="sole_width_mm"]').inner_text().split()
        hand.press("write")
        hand.page.wait_for_selector("#trace[data-written]")
        written = hand.page.locator("#trace").inner_text()
    context.close()

    assert "How long is it truly, in inches?" in asked
    assert lengths == ["1", "2", "4", "6", "8"]
    (found,) = tracings_in(photo)
    assert found.scale is not None
    assert found.scale.length == pytest.approx(3.5 * 25.4)
    assert (told[-2:-1], float(told[-1])) == (["in"], pytest.approx(width / 25.4, abs=0.005))
    assert " mm" not in written
    assert " in" in written
