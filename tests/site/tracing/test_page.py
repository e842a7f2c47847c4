"""The section of traced feet on a horse's page, and on the vet's sheet."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from bs4 import Tag

from recordgen.hoof.summary import HorseSummary
from recordgen.records.models.names import Foot
from tests.support.pages import soup, words
from tests.support.sheets import demo_summary

ERROR = re.compile(r"(−?\d+(?:\.\d+)?) ± (\d+(?:\.\d+)?)")


def section(sites: Path, page: str) -> Tag:
    """The section of a page."""
    found = soup(sites / "willowmere" / "horses" / page).select_one("article:has(#tracings)")
    assert found is not None
    return found


def text(found: Tag) -> str:
    """Its words."""
    return " ".join(found.get_text(" ").split())


def figures(found: Tag, foot: str) -> dict[str, list[str]]:
    """The cells of a foot's tables by the name of the row; of several alike the first."""
    (part,) = [one for one in found.select(".rg-part") if one.h3 and one.h3.get_text(strip=True) == foot]
    rows: dict[str, list[str]] = {}
    for row in part.select("tbody tr"):
        assert row.th is not None
        rows.setdefault(row.th.get_text(strip=True), [cell.get_text(strip=True) for cell in row.select("td")])
    return rows


def latest(summary: HorseSummary, foot: Foot, view: str, moment: str, figure: str) -> tuple[float, float]:
    """A figure of the latest visit, and its 95 per cent error."""
    (one,) = [
        one for one in summary.history[0].feet[foot].traced if (one.tracing.view, one.tracing.moment) == (view, moment)
    ]
    return one.figures[figure].value, 1.96 * one.figures[figure].sd


@pytest.mark.parametrize(
    ("row", "figure", "digits"),
    [
        ("mirror match, %", "mirror_match_percent", 1),
        ("turn of the sole, °", "turn_deg", 1),
        ("breakover behind the toe, from below, mm", "sole_breakover_mm", 1),
    ],
)
def test_figures_stand_with_their_error(demo_sites: Path, row: str, figure: str, digits: int) -> None:
    """Of the visit's two moments; the error is that of the figure, 95 times of 100."""
    cells = figures(section(demo_sites, "bramble.html"), "Right hind")[row]
    for cell, moment in zip(cells, ("before", "after"), strict=True):
        found = ERROR.fullmatch(cell)
        assert found is not None
        value, error = latest(demo_summary("bramble"), "right_hind", "sole", moment, figure)

        assert float(found[1].replace("−", "-")) == pytest.approx(value, abs=0.5 * 10**-digits + 1e-9)
        assert float(found[2]) == pytest.approx(error, abs=0.5 * 10**-digits + 1e-9)


def test_the_error_that_stands_there_is_told_whole(demo_sites: Path) -> None:
    """On the page and on the sheet: a figure's error knows the camera, so nobody adds that once more."""
    page, sheet = (demo_sites / "willowmere" / "horses" / name for name in ("bramble.html", "bramble_sheet.html"))

    assert "by the camera and how the rule lay. How the horse stood can add to it." in words(page)
    assert "95 % of the error of hand and camera" in words(sheet)


def test_a_drawing_is_said_to_be_one(demo_sites: Path) -> None:
    """Nobody shall take it for a photograph."""
    assert "traced on a drawing" in text(section(demo_sites, "bramble.html"))


def test_a_flare_that_grew_out_is_told_in_a_sentence(demo_sites: Path) -> None:
    """How much, since when and how fast, among what changed."""
    changed = soup(demo_sites / "willowmere" / "horses" / "bramble.html").select_one("#changed")
    assert changed is not None
    found = re.search(
        r"Right hind: flare, from the ring at the inner toe quarter down by (\d+\.\d) mm \(\d+\.\d to \d+\.\d\) "
        r"since \d+ \w+ 20\d\d, \d+\.\d mm a month; now \d+\.\d mm\.",
        text(changed),
    )

    assert found is not None
    assert float(found[1]) > 1


def test_a_horse_with_recorded_legs_is_compared_with_itself_only(demo_sites: Path) -> None:
    """Both feet are shown on one scale, and no sentence holds one against the other."""
    pair = section(demo_sites, "bramble.html").select_one(".rg-traced-pair")

    assert pair is not None
    assert pair.select_one("svg") is not None
    assert pair.select("li") == []
    assert "compared with itself only" in text(section(demo_sites, "bramble.html"))


def test_the_side_view_lies_over_its_picture(demo_sites: Path) -> None:
    """The lines stand in the frame of the picture, which keeps its place while it loads."""
    over = section(demo_sites, "pippin.html").select_one(".rg-over")
    assert over is not None
    image, lines = over.img, over.select_one("svg")

    assert image is not None
    assert lines is not None
    assert image["loading"] == "lazy"
    _, _, width, height = map(float, str(lines["viewbox" if lines.has_attr("viewbox") else "viewBox"]).split())
    assert width / height == pytest.approx(int(str(image["width"])) / int(str(image["height"])), rel=0.01)


def test_a_horse_without_tracings_has_no_such_section(demo_sites: Path) -> None:
    """Nor has its sheet."""
    for page in ("moss.html", "moss_sheet.html"):
        assert soup(demo_sites / "willowmere" / "horses" / page).select_one("#tracings") is None


def test_the_sheet_holds_the_latest_with_their_trend(demo_sites: Path) -> None:
    """Pictures, and a line a measure like those of the first page."""
    found = section(demo_sites, "pippin_sheet.html")

    assert len(found.select("figure svg")) >= 2
    assert "breakover behind the toe, from the side" in text(found)
    assert "tracing; sd" in text(found)
