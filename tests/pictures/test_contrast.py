"""Whether what is drawn can be seen: contrast of the colours of pictures in both schemes.

Source: WCAG 2.2, success criteria 1.4.3 (words, 4.5 to 1) and 1.4.11 (graphical objects, 3 to 1), and the definitions
of relative luminance and contrast ratio there.
"""

from __future__ import annotations

import re
from itertools import product

import pytest

from recordgen.pictures.feet import foot
from recordgen.pictures.pen import COLOURS, DEEP_GROOVE, FOOT_COLOUR, GROOVE, Colour, Pen
from recordgen.pictures.tracing import sole
from tests.conftest import ROOT

STYLES = (ROOT / "site_templates/styles/recordgen.css").read_text("utf-8")
SHEET = (ROOT / "site_templates/pictures/pictures.mplstyle").read_text("utf-8")
BLOCKS = [dict(re.findall(r"--(\w+): (#[0-9a-f]{6})", block)) for block in re.findall(r"\{([^}]*)\}", STYLES)]
LIGHT, DARK = (block for block in BLOCKS if {"paper", "lf"} <= block.keys())
# `line` is left out: it only carries the eye along, and every value has its figure.
MARKS: tuple[Colour, ...] = ("ink", "quiet", "moss", "clay", "straw", *FOOT_COLOUR.values())
WORDS: tuple[Colour, ...] = ("ink", "quiet", "clay")


def luminance(colour: str) -> float:
    """The relative luminance of `#rrggbb`, 0 for black to 1 for white."""
    parts = [int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5)]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """The contrast ratio of two colours, 1 to 21."""
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def blended(over: str, under: str, opacity: float) -> str:
    """The colour of a see-through one over another, as browsers mix them: each channel by its share."""
    pairs = [(int(over[place : place + 2], 16), int(under[place : place + 2], 16)) for place in (1, 3, 5)]
    return "#" + "".join(f"{round(opacity * a + (1 - opacity) * b):02x}" for a, b in pairs)


def filled(pen: Pen, under: str, scheme: dict[str, str]) -> str:
    """The colour of what a pen fills over another colour."""
    assert pen.fill is not None
    return blended(scheme[pen.fill], under, pen.opacity * pen.fill_opacity)


def test_the_formula_gives_the_known_ends() -> None:
    """Black on white is 21 to 1; #767676 is the lightest grey that passes 4.5 to 1 on white.

    Source: WCAG 2.2, and the W3C's Understanding 1.4.3.
    """
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#767676", "#ffffff") >= 4.5 > contrast("#777777", "#ffffff")


@pytest.mark.parametrize(("scheme", "colour"), list(product((LIGHT, DARK), MARKS)))
def test_every_mark_stands_out_from_the_card(scheme: dict[str, str], colour: Colour) -> None:
    """Three to one at least, in light and in dark."""
    assert contrast(scheme[colour], scheme["card"]) >= 3


@pytest.mark.parametrize(("scheme", "colour"), list(product((LIGHT, DARK), MARKS)))
def test_marks_stand_out_from_the_band_behind_them(scheme: dict[str, str], colour: Colour) -> None:
    """The shaded band of growth and heels takes away little: still three to one."""
    assert contrast(scheme[colour], blended(scheme["moss"], scheme["card"], 0.16)) >= 3


@pytest.mark.parametrize("scheme", [LIGHT, DARK])
def test_findings_stand_out_from_what_they_lie_on(scheme: dict[str, str]) -> None:
    """Sole, frog and wall are light enough, or in dark dark enough, for a finding to be seen."""
    grounds = [blended(scheme[name], scheme["card"], share) for name, share in (("straw", 0.3), ("quiet", 0.3))]

    assert all(contrast(scheme["clay"], ground) >= 3 for ground in grounds)


@pytest.mark.parametrize("scheme", [LIGHT, DARK])
@pytest.mark.parametrize(("ground", "frog"), [(foot.GROUND, foot.FROG_TINT), (sole.GROUND, sole.FROG)])
def test_grooves_are_darker_than_what_they_lie_in(scheme: dict[str, str], ground: Pen, frog: Pen) -> None:
    """A groove is deep: darker than the sole beside it, and clearly darker than the frog, in light and in dark.

    Judgement: one and a half to one; a groove tells no finding.
    """
    flat, raised = (filled(pen, scheme["card"], scheme) for pen in (ground, frog))
    grooves = filled(GROOVE, flat, scheme), filled(DEEP_GROOVE, raised, scheme)

    assert luminance(grooves[0]) < luminance(flat)
    assert all(luminance(one) < luminance(raised) and contrast(one, raised) >= 1.5 for one in grooves)


@pytest.mark.parametrize(("scheme", "colour"), list(product((LIGHT, DARK), WORDS)))
def test_words_in_pictures_are_readable(scheme: dict[str, str], colour: Colour) -> None:
    """Four and a half to one at least."""
    assert contrast(scheme[colour], scheme["card"]) >= 4.5


def test_the_pens_have_the_colours_of_the_light_theme() -> None:
    """A colour that a pen names is the page's variable of that name, and its stand-in is that of the light theme."""
    assert {name: LIGHT[name] for name in COLOURS} == COLOURS


def test_the_style_sheet_has_no_colour_that_is_not_the_pages() -> None:
    """Each of its colours becomes a variable."""
    used = re.findall(r"color: ([0-9a-f]{6})$", SHEET, re.MULTILINE)

    assert len(used) > 5
    assert {f"#{colour}" for colour in used} <= set(COLOURS.values())
