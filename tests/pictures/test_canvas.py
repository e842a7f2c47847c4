"""The sheet: what becomes of forms and words on their way into a page."""

from __future__ import annotations

import re

import pytest

from recordgen.pictures.canvas import Canvas
from recordgen.pictures.pen import COLOURS, Colour, Pen
from recordgen.pictures.shapes import circle, curve, dots, line
from tests.support.svg import SVG, root_of, strokes_of, words_in

NASTY = r"""<script>alert('x')</script> & "quoted" $x_1$ a_b \n #fe0100 style="fill: #fe0101" """.strip()


def drawn(title: str = "a title", words: str = "some words") -> str:
    """A small picture with a form, a word and a group."""
    canvas = Canvas(100, 50)
    canvas.draw(line([(1, 2), (30, 40)]), Pen("lf", 2))
    canvas.write(words, (5, 20))
    with canvas.group(words):
        canvas.draw(circle((20, 20), 5), Pen(fill="clay"))
    return canvas.picture(title)


def test_the_same_drawing_gives_the_same_bytes() -> None:
    """Nothing in a picture depends on when it was drawn."""
    assert drawn() == drawn()


def test_a_picture_is_one_svg_element_without_prolog_or_metadata() -> None:
    """A picture stands inside a page as it is: one element, sized by its view box alone."""
    root = root_of(drawn())

    assert drawn().startswith("<svg ")
    assert root.tag == f"{SVG}svg"
    assert root.attrib["viewBox"] == "0 0 100 50"
    assert not {"width", "height"} & root.attrib.keys()
    assert {child.tag.removeprefix(SVG) for child in root} == {"title", "path", "text", "g"}


def test_a_picture_is_named_by_its_title() -> None:
    """A screen reader announces an image with the title's words."""
    root = root_of(drawn("left fore"))
    title = root.find(f"{SVG}title")

    assert root.attrib["role"] == "img"
    assert title is not None
    assert (title.text, title.attrib["id"]) == ("left fore", root.attrib["aria-labelledby"])


def test_words_are_shown_as_typed() -> None:
    """Markup, quotes and what looks like a formula or a colour come out letter for letter."""
    picture = drawn(NASTY, NASTY)

    assert words_in(picture) == [NASTY]
    assert [title.text for title in root_of(picture).iter(f"{SVG}title")] == [NASTY, NASTY]
    assert "<script" not in picture


@pytest.mark.parametrize("letter", ["\x00", "\x0b", "\x1b", "\ud800", "\ufffe"])
def test_letters_no_page_can_hold_are_left_out(letter: str) -> None:
    """A stray control character in a record does not break the page."""
    assert words_in(drawn(f"a{letter}b", f"a{letter}b")) == ["ab"]


def test_different_pictures_share_no_id() -> None:
    """Many pictures stand in one page, so what differs has ids of its own."""
    pictures = [drawn(), drawn("another title"), drawn(words="other words")]
    ids = [title.get("id") for picture in pictures for title in root_of(picture).findall(f"{SVG}title")]

    assert len(ids) == len(set(ids)) == 3
    assert all(picture.count(' id="') == 1 for picture in pictures)


@pytest.mark.parametrize("colour", COLOURS)
def test_colours_are_variables_of_the_page(colour: Colour) -> None:
    """Light and dark are the page's to decide: no colour of its own stands in a picture."""
    canvas = Canvas(10, 10)
    canvas.draw(line([(1, 1), (9, 9)], closed=True), Pen(colour, 1.5, colour))
    picture = canvas.picture("t")

    assert strokes_of(picture, fill=f"var(--{colour})", stroke=f"var(--{colour})")
    assert not re.search(r"#[0-9a-f]{6}", picture)


def test_no_font_and_no_style_are_set() -> None:
    """The page's own font is used, and nothing in a picture needs styles to be allowed inline."""
    tags = {name for element in root_of(drawn()).iter() for name in element.attrib}

    assert not {"style", "font-family", "font"} & tags


def test_points_stand_where_they_were_put() -> None:
    """The sheet's y runs downwards, and a tenth of a unit is kept."""
    assert strokes_of(drawn(), stroke="var(--lf)") == [[(1, 2), (30, 40)]]


def test_dots_are_strokes_without_length() -> None:
    """A dot keeps its place although it has no length."""
    canvas = Canvas(100, 50)
    canvas.draw(dots([(10, 20), (30, 33.3)]), Pen("ink", 5, round_ends=True))

    assert strokes_of(canvas.picture("t"), stroke_linecap="round") == [[(10, 20)] * 2, [(30, 33.3)] * 2]


def test_a_curve_passes_through_its_points() -> None:
    """A smooth curve is drawn through the points given, not near them."""
    through = [(0.0, 0.0), (10.0, 5.0), (20.0, 0.0)]

    assert [curve(through).points[i] for i in (0, 3, 6)] == through
