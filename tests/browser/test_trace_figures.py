"""The scripts of the tracing screen reckon as Python does, on the table of shared cases."""

from __future__ import annotations

from typing import Any

import pytest
from playwright.sync_api import Browser

from recordgen.site.single_page import read_part
from recordgen.site.trace.page import FOLDER, usual_outlines
from tests.tapped.cases import in_python_alone, written

CASES = written()
SCRIPTS = "\n".join(read_part(FOLDER, f"{name}.js") for name in ("lines", "usual", "sole", "upright"))


def usual(case: dict[str, Any]) -> dict[str, Any] | None:
    """By how much a tap may be off, px, and the table of usual outlines, where a case follows them."""
    sd = (case["hand_error"] or 0) * case["image"][0] / 1000
    return {"sd": sd, "table": usual_outlines()} if case["model"] else None


@pytest.fixture(scope="module")
def reckoned(browser: Browser) -> dict[str, dict[str, float]]:
    """The figures of all cases as the browser tells them."""
    page = browser.new_page()
    asked = "(cases) => Object.fromEntries(Object.entries(cases).map(([name, one]) => [name, traceFigures(one)]))"
    page.add_script_tag(content=SCRIPTS + "\nwindow.traceFigures = traceFigures;")
    cases = {name: case | {"usual": usual(case)} for name, case in CASES.items()}
    found: dict[str, Any] = page.evaluate(asked, cases)
    page.close()
    return found


@pytest.mark.parametrize("name", CASES)
def test_the_browser_tells_what_python_tells(reckoned: dict[str, dict[str, float]], name: str) -> None:
    """Within a tenth of the unit, and every figure but those that hang on the hand's error or on the flares."""
    told = CASES[name]["figures"]
    shared = {one: value for one, value in told.items() if not in_python_alone(one)}

    assert reckoned[name] == pytest.approx(shared, abs=0.1)


def test_most_are_far_nearer(reckoned: dict[str, dict[str, float]]) -> None:
    """A thousandth: the rules are the same, and only the mirror match is summed up in steps."""
    off = {
        (case, name): abs(value - CASES[case]["figures"][name])
        for case, found in reckoned.items()
        for name, value in found.items()
        if not name.startswith("mirror_match")
    }

    assert len(off) > 300
    assert max(off.values()) < 2e-3
