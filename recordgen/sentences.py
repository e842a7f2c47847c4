"""Sentences for people: English that keeps what it was made of, so that each language can say it.

`say` makes one. To Python it is its English, which goes into JSON, records and comparisons; whoever prints it asks for
`in_words_of` the language of whoever reads. A sentence is translated whole, its values after it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Any, Protocol, Self

from recordgen import days

# What joins the last two of several parts; any other text stands between all of them as it is.
AND, OR = "and", "or"


class Tongue(Protocol):
    """A language that something is said in: its catalog, and how it writes days and lists."""

    def gettext(self, message: Said) -> str:
        """A message in this language."""

    def ngettext(self, one: str, several: str, count: int) -> str:
        """A message that goes by a number."""

    def day(self, day: date) -> str:
        """A day in words."""

    def listed(self, parts: Sequence[str], joined_by: str) -> str:
        """Several parts as one, joined by AND or OR."""


class Said(str):
    """English that another language can say. made_of: what its class makes it of again; plain values and such text."""

    made_of: tuple[Any, ...]

    @classmethod
    def _as(cls, english: str, *made_of: Any) -> Self:
        made = super().__new__(cls, english)
        made.made_of = made_of
        return made

    def __reduce__(self) -> tuple[type[Self], tuple[Any, ...]]:
        return type(self), self.made_of

    def told(self, tongue: Tongue) -> str:
        """The same in a language."""
        raise NotImplementedError

    @property
    def begins_with_a_word(self) -> bool:
        """Tell whether it begins with a word of a sentence, rather than with a name or what was typed."""
        return False


class Sentence(Said):
    """A template with its values; with two templates, one that goes by the value `count`."""

    def __new__(cls, template: str, values: Mapping[str, Any], several: str = "") -> Self:
        """several: the template for a count other than one."""
        chosen = several if several and values["count"] != 1 else template
        return cls._as(chosen.format(**values), template, values, several)

    def told(self, tongue: Tongue) -> str:  # noqa: D102
        template, values, several = self.made_of
        template = tongue.ngettext(template, several, values["count"]) if several else tongue.gettext(template)
        return str(template.format(**{name: in_words_of(tongue, value) for name, value in values.items()}))

    @property
    def begins_with_a_word(self) -> bool:  # noqa: D102
        template, values, _ = self.made_of
        if template.startswith("{"):
            return any(template.startswith(f"{{{name}}}") and _begins(value) for name, value in values.items())
        return bool(template.partition(" ")[0].rstrip(",").isalpha())


class Listed(Said):
    """Several parts as one."""

    def __new__(cls, parts: Sequence[str], joined_by: str) -> Self:
        """joined_by: AND, OR, or what stands between them."""
        parts = tuple(parts)
        english = days.listed(parts, joined_by) if joined_by in (AND, OR) else joined_by.join(parts)
        return cls._as(english, parts, joined_by)

    def told(self, tongue: Tongue) -> str:  # noqa: D102
        parts, joined_by = self.made_of
        said = [in_words_of(tongue, part) for part in parts]
        return tongue.listed(said, joined_by) if joined_by in (AND, OR) else joined_by.join(said)

    @property
    def begins_with_a_word(self) -> bool:  # noqa: D102
        return bool(self.made_of[0]) and _begins(self.made_of[0][0])


def _closed(parts: Sequence[str]) -> str:
    return " ".join(part if part.endswith(("?", ".", "!")) else f"{part}." for part in parts if part)


class Closed(Said):
    """Parts as sentences."""

    def __new__(cls, *parts: str) -> Self:
        """parts: each without its full stop."""
        return cls._as(_closed(parts), *parts)

    def told(self, tongue: Tongue) -> str:  # noqa: D102
        return _closed([in_words_of(tongue, part) for part in self.made_of])

    @property
    def begins_with_a_word(self) -> bool:  # noqa: D102
        return bool(self.made_of) and _begins(self.made_of[0])


class SpokenDay(Said):
    """A day in words."""

    def __new__(cls, day: date) -> Self:
        """day: any."""
        return cls._as(days.spoken_day(day), day)

    def told(self, tongue: Tongue) -> str:  # noqa: D102
        return tongue.day(self.made_of[0])


NOTHING = Closed()
SAID = {one.__name__: one for one in (Sentence, Listed, Closed, SpokenDay)}


def said_again(kind: str, made_of: tuple[Any, ...]) -> Said:
    """The sentence again, by the name of its class and what it was made of. Raises KeyError for a name of none."""
    return SAID[kind](*made_of)


def say(template: str, **values: object) -> Sentence:
    """A sentence: its English as a literal, with the names of its values in braces. Babel finds it by this call.

    values: numbers and days stay what they are, so that a format such as `{weeks:g}` fits; anything else as its text.
    """
    return Sentence(template, {name: _plain(value) for name, value in values.items()})


def say_counted(one: str, several: str, count: int, **values: object) -> Sentence:
    """The same for a sentence that goes by a number: one template for 1, and one for several, with {count} in them."""
    return Sentence(one, {"count": count, **{name: _plain(value) for name, value in values.items()}}, several)


def counted(count: int, noun: str) -> Sentence:
    """A number with its noun: 1 visit, 3 visits."""
    return Sentence(f"{{count}} {noun}", {"count": count}, f"{{count}} {noun}s")


def listed(parts: Sequence[str], joined_by: str = AND) -> Listed:
    """Parts as a list in a sentence: `Bramble, Otter and Pippin`. joined_by: AND, OR, or what stands between all."""
    return Listed(parts, joined_by)


def and_more(named: str, others: int) -> str:
    """Some names, and of how many others there are none: `a, b and 3 others`; the names alone where that is none."""
    return (
        say_counted("{named} and {count} other", "{named} and {count} others", others, named=named)
        if others > 0
        else named
    )


def worded(text: str) -> Said:
    """Words that are in the reader's language already, such as those of a table or of another program."""
    return Listed((text,), "")


def sentences(*parts: str) -> Closed:
    """The parts as sentences, each closed by a full stop unless it ends in a mark of its own; empty ones left out."""
    return Closed(*parts)


def spoken_day(day: date) -> SpokenDay:
    """A day in words: 14 October 2026."""
    return SpokenDay(day)


def in_words_of(tongue: Tongue, text: Any) -> Any:
    """A text in a language; what is no sentence, such as a name or a number, as it is."""
    return text.told(tongue) if isinstance(text, Said) else text


def standing_alone(text: object, told: str) -> str:
    """Text as it is told, with a capital letter where it begins with a word, as a line of its own does."""
    return told[:1].upper() + told[1:] if _begins(text) else told


def _begins(text: Any) -> bool:
    return isinstance(text, Said) and text.begins_with_a_word


def _plain(value: object) -> str | int | float | date:
    """A value that can be kept; of an error that was raised with a sentence, that sentence."""
    if isinstance(value, Exception) and value.args and isinstance(value.args[0], Said):
        return value.args[0]
    return value if isinstance(value, (str, int, float, date)) else str(value)
