"""A horse whose legs explain its feet is compared with itself alone; for others, published classes are context."""

from __future__ import annotations

from pathlib import Path

from tests.support.pages import soup

OWN_PAST = "compared with its own past alone"


def side_by_side(sites: Path, horse: str) -> str:
    """The words of a horse's section on its feet side by side."""
    section = soup(sites / "willowmere" / "horses" / f"{horse}.html").select_one("#side-by-side")
    assert section is not None
    return " ".join(section.get_text(" ").split())


def test_recorded_conformation_ends_comparing_with_others(demo_sites: Path) -> None:
    """Left is not held against right, nor the horse against published classes; the page says so."""
    told = side_by_side(demo_sites, "bramble")

    assert OWN_PAST in told
    assert "both hinds turn out a little" in told
    assert "Left against right" not in told
    assert "Published classes" not in told


def test_a_horse_without_it_is_shown_the_published_classes_with_their_shares(demo_sites: Path) -> None:
    """Context, and a sentence that it is no verdict."""
    told = side_by_side(demo_sites, "moss")

    assert OWN_PAST not in told
    assert "Left against right" in told
    assert "none is a verdict" in told
    assert "of 225 horses" in told
