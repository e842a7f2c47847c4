"""Text that is written from right to left is set apart from what stands beside it."""

from __future__ import annotations

import unicodedata

import pytest
from jinja2 import Environment

from recordgen.language.catalogs import Catalog
from recordgen.language.direction import isolated, with_isolated_facts
from recordgen.site.templates import dialled, speak


@pytest.mark.parametrize(
    ("typed", "shown"),
    [
        ("Bramble", "Bramble"),
        ("Ärger · 5 mm", "Ärger · 5 mm"),
        ("דנה", "<דנה>"),
        ("نجمة 3", "<نجمة 3>"),
        ("3 דנה", "<3 דנה>"),
        ("seen by דנה לוי, 5", "seen by <דנה לוי>, 5"),
        ("a \u202enail\u202c", "<a \u202enail\u202c>"),
        ("left\u200f", "<left\u200f>"),
    ],
)
def test_what_is_written_the_other_way_is_set_apart(typed: str, shown: str) -> None:
    """As a whole where it begins so or turns by itself; otherwise its own words alone; and nothing else is touched."""
    assert isolated(typed) == shown.replace("<", "\u2068").replace(">", "\u2069")


def test_each_block_that_is_written_from_right_to_left_is_known() -> None:
    """Source: Unicode Character Database, property Bidi_Class, as Python carries it: classes R and AL."""
    letters = [chr(code) for code in range(0x110000) if unicodedata.bidirectional(chr(code)) in ("R", "AL")]
    written = [letter for letter in letters if letter != "\u200f"]

    assert len(written) > 1000
    assert [ascii(letter) for letter in written if isolated(f"a{letter}") == f"a{letter}"] == []


@pytest.mark.parametrize("typed", ["x\u2069y", "\u2067x", "\u2069\u2066\u2069\u2069 x", "x\u2068\u2068"])
def test_no_sign_that_was_typed_ends_what_is_set_apart(typed: str) -> None:
    """Nothing is open at the end, and the text is in there at every sign of it, whatever it ends itself."""
    depth, depths = 0, []
    for sign in isolated(typed):
        depth += (sign in "\u2066\u2067\u2068") - (sign == "\u2069")
        depths.append(depth)

    assert (depths[-1], min(depths[:-1])) == (0, 1)


def test_a_template_sets_apart_what_it_is_filled_with() -> None:
    """Whether it prints a value or says a sentence with it; what is marked up stands as it is."""
    made = Environment(extensions=["jinja2.ext.i18n"], autoescape=True, finalize=isolated)
    speak(made, Catalog())
    made.globals["phrase"] = with_isolated_facts(lambda key, **facts: f"{facts['name']} {key}")
    told = made.from_string("{{ n }}|{{ _('of %(n)s', n=n) }}|{{ phrase('x', name=n) }}|{{ n | e }}").render(n="דנה")

    assert told == "<דנה>|of <דנה>|<<דנה> x>|דנה".replace("<", "\u2068").replace(">", "\u2069")


def test_a_number_is_dialled_in_the_digits_of_every_keypad() -> None:
    """Typed with spaces, or in the digits of another script."""
    assert [dialled(phone) for phone in ("+44 7700 900142", "٠٧٧٠ ٠٩٠")] == ["+447700900142", "0770090"]
