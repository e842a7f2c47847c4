"""Help in the practice's language: each paragraph, option and heading by the catalog `help.po`; lines to paste stay."""

from __future__ import annotations

import inspect
from collections.abc import Iterable, Iterator

import click

from recordgen.cli.language import code_here
from recordgen.language.catalogs import catalog_of

DOMAIN = "help"
# What click says of itself in a help, and what it puts in brackets behind an option.
OF_CLICK = ("Usage", "Options", "Show this message and exit.", "Show the version and exit.", "required", "default")
# How a paragraph begins whose lines stay as they are.
LINES = "\b"


class HelpFormatter(click.HelpFormatter):
    """Writes a help in the language of who reads it here."""

    def write_usage(self, prog: str, args: str = "", prefix: str | None = None) -> None:
        """The line of use."""
        super().write_usage(prog, args, prefix or f"{told('Usage')}: ")

    def write_heading(self, heading: str) -> None:
        """The heading of a part."""
        super().write_heading(told(heading))

    def write_text(self, text: str) -> None:
        """The text of a command, paragraph by paragraph."""
        super().write_text("\n\n".join(map(told_paragraph, text.split("\n\n"))))

    def write_dl(self, rows: Iterable[tuple[str, str]], col_max: int = 30, col_spacing: int = 2) -> None:
        """Options or commands, each with its words."""
        super().write_dl([(name, told_row(words)) for name, words in rows], col_max, col_spacing)


class HelpContext(click.Context):
    """The context of a command, whose help is written so."""

    formatter_class = HelpFormatter


def told(text: str) -> str:
    """One text of a help in the language; English where the catalog does not hold it."""
    return catalog_of(code_here(), DOMAIN).gettext(text)


def told_paragraph(paragraph: str) -> str:
    """A paragraph of a command's text; one of lines to paste as it is."""
    return paragraph if paragraph.startswith(LINES) else told(" ".join(paragraph.split()))


def told_row(words: str) -> str:
    """The words of one option, with what click puts in brackets behind them."""
    text, space, bracket = words.partition("  [")
    for word in ("required", "default") if bracket else ():
        bracket = bracket.replace(word, told(word), 1)
    return f"{told(text)}{space}{bracket}"


def first_sentence(command: click.Command) -> str:
    """The first sentence of what a command does, for the list of all."""
    text, stop, _ = told_paragraph(inspect.cleandoc(command.help or "").split("\n\n")[0]).partition(". ")
    return f"{text}." if stop else text


def texts_of(command: click.Command) -> Iterator[str]:
    """All texts of a command's help that are told in a language."""
    for paragraph in inspect.cleandoc(command.help or "").split("\n\n"):
        if not paragraph.startswith(LINES):
            yield " ".join(paragraph.split())
    yield from (one.help for one in command.params if isinstance(one, click.Option) and one.help)
