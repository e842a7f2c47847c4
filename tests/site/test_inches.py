"""The pages of a practice that measures in inches."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from recordgen.records.load.everything import Whole
from tests.support.inches import HORSES, on_a_rule, read_inches
from tests.support.pages import soup

MILLIMETRES = re.compile(r"\b(mm|cm|kg|millimetres?)\b")
OWNERS = ("index.html", "jobs.html", *(f"horses/{name}.html" for name in HORSES))


@pytest.fixture(scope="module")
def whole(tmp_path_factory: pytest.TempPathFactory) -> Whole:
    """The records of that practice."""
    return read_inches(tmp_path_factory.mktemp("inches"))


def told(path: Path) -> str:
    """All that a page tells an owner, pictures and the words for those who do not see them among it.

    What somebody published stays as it was published.
    """
    page = soup(path)
    for one in page.select("#published, script, style"):
        one.decompose()
    hidden = [one[name] for name in ("title", "aria-label", "alt") for one in page.select(f"[{name}]")]
    return " ".join([page.get_text(" "), *map(str, hidden)])


@pytest.mark.parametrize("page", OWNERS)
def test_an_owner_reads_no_millimetre(inch_sites: Path, page: str) -> None:
    """Neither text nor picture nor what stands for it tells a length in millimetres."""
    text = told(inch_sites / "willowmere" / page)

    assert [text[max(found.start() - 40, 0) : found.end()] for found in MILLIMETRES.finditer(text)] == []


@pytest.mark.parametrize("name", HORSES)
def test_toes_read_as_on_a_rule(inch_sites: Path, whole: Whole, name: str) -> None:
    """The toe of each foot stands under its picture, to the nearest sixteenth by Python's fractions."""
    visits = whole.practice.horse("willowmere", name).visits
    after = {foot: found.after for one in visits for foot, found in one.feet.items() if found.after}
    lengths = [found.toe_length for found in after.values() if found.toe_length is not None]
    shown = soup(inch_sites / f"willowmere/horses/{name}.html").select(".rg-toe-now span")

    assert sorted(one.get_text() for one in shown) == sorted(f"toe {on_a_rule(length)} in" for length in lengths)
    assert len(shown) == 4


def test_charts_are_labelled_at_the_lines_of_a_rule(inch_sites: Path) -> None:
    """Each label of a toe's panel is a whole inch or a plain fraction of it, below the word in."""
    panels = soup(inch_sites / "willowmere/horses/bramble.html").select("#growth svg.panel")
    labels = {one.get_text() for panel in panels for one in panel.select("text")}

    assert panels
    assert {"in", "3", "3½"} <= labels
    assert "mm" not in labels


def test_the_vet_reads_what_an_inch_is(inch_sites: Path) -> None:
    """The sheet tells inches in millimetres once, hands for the height, and a weight by tape in kilograms too."""
    text = " ".join(soup(inch_sites / "willowmere/horses/pippin_sheet.html").get_text(" ").split())

    assert "1 in = 25.4 mm" in text
    assert re.search(r"\b9\.[0-3]( 1/2)? hh\b|\b1[0-4]\.[0-3]( 1/2)? hh\b", text)
    assert re.search(r"Weight by tape : \d+ lb \(\d+ kg\)", text)


def test_ranges_of_the_method_page_are_inches(inch_sites: Path) -> None:
    """The range outside which a toe is looked at again is 45 to 120 mm, and is told in sixteenths."""
    text = soup(inch_sites / "willowmere/method.html").get_text(" ")

    assert f"Looked at again below {on_a_rule(45)} or above {on_a_rule(120)} in." in text
