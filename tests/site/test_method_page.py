"""The page of methods: short while it is folded, and whole once it is opened or printed."""

from __future__ import annotations

from pathlib import Path

from tests.support.horse_records import REFERENCE
from tests.support.pages import soup


def test_its_limits_alone_stand_open(demo_sites: Path) -> None:
    """The reader meets what the figures cannot tell; the rest is there to look things up in."""
    page = soup(demo_sites / "willowmere/method.html")
    folded = [str(fold["id"]) for fold in page.select("section > details")]

    assert page.select_one("#limits > ul")
    assert folded == ["computed", "classes", "tracings", "measures", "cautions"]


def test_each_measure_tells_its_error_with_the_unit(demo_sites: Path) -> None:
    """An assumed one stands in brackets; the gauge's is published."""
    page = soup(demo_sites / "willowmere/method.html")
    told = {fold.b.text: fold.small.text for fold in page.select("#measures summary") if fold.b and fold.small}

    assert list(told) == [words.name for words in REFERENCE.measures.values()]
    assert told["toe length"] == "rule (1 mm) · photograph (2 mm) · tracing (2 mm)"
    assert told["toe angle"] == "protractor (1°) · gauge 0.133° · photograph (1°) · tracing (1°)"
    assert told["heels, outer less inner"] == "from its two parts"


def test_each_reason_of_an_error_is_told_once(demo_sites: Path) -> None:
    """A rule that is read to the millimetre is named once, for eleven measures."""
    text = soup(demo_sites / "willowmere/method.html").get_text()
    reasons = {method.source for words in REFERENCE.measures.values() for method in words.methods.values()}

    assert len(reasons) > 10
    assert [reason for reason in reasons if text.count(reason) < 1] == []
    assert text.count("a reading to the millimetre is out by about a millimetre") == 1
