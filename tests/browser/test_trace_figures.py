"""The scripts of the tracing screen reckon as Python does, on the table of shared cases."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import numpy as np
import pytest
from playwright.sync_api import Browser, Page

from recordgen.site.single_page import read_part
from recordgen.site.trace.page import FOLDER, screen_data, usual_outlines
from tests.tapped.cases import in_python_alone, written

CASES = written()
SCRIPTS = "\n".join(
    read_part(FOLDER, f"{name}.js") for name in ("lines", "usual", "ridge", "sole", "upright", "faults", "draft")
)


def usual(case: dict[str, Any]) -> dict[str, Any] | None:
    """By how much a tap may be off, px, and the table of usual outlines, where a case follows them."""
    sd = (case["hand_error"] or 0) * case["image"][0] / 1000
    return {"sd": sd, "table": usual_outlines()} if case["model"] else None


@pytest.fixture(scope="module")
def scripts(browser: Browser) -> Iterator[Page]:
    """A page with the scripts that reckon."""
    page = browser.new_page()
    page.add_script_tag(
        content=SCRIPTS + "\nObject.assign(window, {traceFigures, traceRidge, traceFaults, traceDraft});"
    )
    yield page
    page.close()


@pytest.fixture(scope="module")
def reckoned(scripts: Page) -> dict[str, dict[str, float]]:
    """The figures of all cases as the browser tells them."""
    asked = "(cases) => Object.fromEntries(Object.entries(cases).map(([name, one]) => [name, traceFigures(one)]))"
    cases = {name: case | {"usual": usual(case)} for name, case in CASES.items()}
    found: dict[str, Any] = scripts.evaluate(asked, cases)
    return found


@pytest.mark.parametrize("name", CASES)
def test_the_browser_tells_what_python_tells(reckoned: dict[str, dict[str, float]], name: str) -> None:
    """Within a tenth of the unit, and every figure but those that hang on the hand's error or on the flares."""
    told = CASES[name]["figures"]
    shared = {one: value for one, value in told.items() if not in_python_alone(one)}

    assert reckoned[name] == pytest.approx(shared, abs=0.1)


def moved(case: dict[str, Any], **landmarks: Any) -> dict[str, Any]:
    """A case with other landmarks."""
    return case | {"landmarks": case["landmarks"] | landmarks}


def test_each_mistake_is_told_on_the_screen(scripts: Page) -> None:
    """By its name, as `check` tells it by a code; what is right tells none."""
    sole, side = CASES["straight"], CASES["side"]
    marks, scale = sole["landmarks"], sole["scale"]
    wall, white = marks["wall"], marks["white_line"]
    ground = [[x, y - 800] for x, y in side["landmarks"]["ground"]]
    swapped = {f"frog_{one}": marks[f"frog_{other}"] for one, other in (("medial", "lateral"), ("lateral", "medial"))}
    asked = {
        "off_picture": moved(sole, buttress_medial=[[-4, 10]]),
        "scale_same": sole | {"scale": scale | {"to": scale["from"]}},
        "scale_short": sole | {"scale": scale | {"to": [scale["from"][0] + 5, scale["from"][1]]}},
        "crosses": moved(sole, wall=[*wall[:4], wall[20], *wall[4:]]),
        "outside": moved(sole, white_line=[*white[:4], [wall[4][0] - 200, wall[4][1]], *white[5:]]),
        "sides_disagree": moved(sole, **swapped),
        "upside_down": moved(side, ground=ground),
    }
    ask = "([one, foot]) => traceFaults.found(one, foot, one.image).map(([name]) => name)"
    found = {name: scripts.evaluate(ask, [one, "left_fore"]) for name, one in asked.items()}

    assert {name: name in told for name, told in found.items()} == dict.fromkeys(asked, True), found
    assert scripts.evaluate(ask, [sole, "right_fore"]) == ["other_side"]
    assert scripts.evaluate(ask, [sole, "left_fore"]) == scripts.evaluate(ask, [side, "left_fore"]) == []


# A streak 5 px wide in the picture of a round sole, 8 px outside the line at the toe and less at the heels; or a step
# of brightness there, or nothing. All on a noisy ground, the same on every run.
SEEN = """(kind) => {
  const line = Array.from({length: 97}, (_, i) => -2.6 + (5.2 * i) / 96).map(
    (t) => [400 + 330 * Math.sin(t), 400 - 330 * Math.cos(t)]);
  let seed = 7;
  const chance = () => ((seed = (seed * 1664525 + 1013904223) % 4294967296) / 4294967296);
  const noise = Array.from({length: 800 * 800}, () => 24 * (chance() - 0.5));
  const pixel = (x, y) => {
    const far = Math.hypot(x - 400, y - 400), off = 4 + 4 * Math.cos(Math.atan2(x - 400, 400 - y));
    const away = far - 330 - off;
    const shades = {streak: 60 * Math.exp(-0.5 * (away / 3) ** 2), step: 60 / (1 + Math.exp(-away)), none: 0};
    const shade = shades[kind], speck = noise[800 * Math.round(y) + Math.round(x)];
    return [120 + shade, 110 + shade, 90].map((one) => one + speck);
  };
  const {ridge, clear} = traceRidge.looked(pixel, line);
  return {ridge, clear, found: traceRidge.found(pixel, line) !== null};
}"""


def test_the_ridge_is_found_to_less_than_a_px(scripts: Page) -> None:
    """Where a streak runs beside the line; a change of brightness for good, or noise alone, is none."""
    streak, step, none = (scripts.evaluate(SEEN, kind) for kind in ("streak", "step", "none"))
    true = 4 + 4 * np.cos(np.linspace(-2.6, 2.6, 25))

    assert streak["found"]
    assert np.abs(np.array(streak["ridge"]) - true).max() < 1
    assert (step["found"], none["found"]) == (False, False)


REOPENED = """([data, version]) => {
  data.model.version = version;
  const draft = traceDraft(data, {read: () => null, length: () => 100, write: async () => true});
  return [draft.source, draft.tracing().ridge];
}"""


@pytest.mark.parametrize(("model", "kept"), [(1, True), ("own-0a1b2c3d", False), (None, False)])
def test_a_ridge_is_kept_with_the_table_of_outlines_it_was_found_by(
    scripts: Page, model: int | str | None, kept: bool
) -> None:
    """Told from another line it would lie elsewhere, so a tracing opened again leaves it out and says so."""
    case = CASES["usual to the ridge"]
    earlier = {"number": 0, "same": True} | {name: case[name] for name in ("scale", "drawn", "ridge", "landmarks")}
    data = {"view": "sole", "size": case["image"], **screen_data(), "earlier": [earlier | {"model": model}]}

    assert scripts.evaluate(REOPENED, [data, 1]) == (["from_visit", case["ridge"]] if kept else ["ridge_gone", None])
    assert scripts.evaluate(REOPENED, [data, "own-11112222"]) == ["ridge_gone", None]


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
