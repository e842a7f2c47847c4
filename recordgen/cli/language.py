"""The language of a terminal: the practice's, whose records a command is about; else the computer's."""

from __future__ import annotations

import os
from pathlib import Path

import click

from recordgen.sentences import Said, in_words_of

# What tells the language of a computer, the first that is set. Source: GNU gettext, Locale Environment Variables.
ENVIRONMENT = ("LC_ALL", "LC_MESSAGES", "LANG")
_KEPT = f"{__name__}.code"


def in_our_words(text: object) -> str:
    """A text in the language of who reads it here; what is no sentence, such as a name, as it is."""
    if not isinstance(text, Said):
        return str(text)
    from recordgen.language.translator import translator_of

    return str(in_words_of(translator_of(code_here()), text))


def is_english() -> bool:
    """Tell whether who reads it here reads English."""
    from recordgen.language.catalogs import ENGLISH_CODE

    return code_here() == ENGLISH_CODE


def settle_language(ctx: click.Context) -> None:
    """Look for the language of a command, once; from then on all that it prints is told in it."""
    meta = ctx.find_root().meta
    if _KEPT not in meta:
        meta[_KEPT] = language_code(ctx.params.get("records"))


def code_here() -> str:
    """The code of the language of who reads it here."""
    ctx = click.get_current_context(silent=True)
    if ctx is None:
        return language_code(None)
    settle_language(ctx)
    return str(ctx.find_root().meta[_KEPT])


def language_code(records: Path | None) -> str:
    """The code of a language that we have. records: else the folder around this one; English where nothing tells."""
    from recordgen.language.catalogs import ENGLISH_CODE, languages
    from recordgen.records.home import found_records, language_in

    told = language_in(records or found_records()) or next(filter(None, map(os.environ.get, ENVIRONMENT)), "")
    code = told.partition(".")[0].partition("_")[0]
    return code if code in languages() else ENGLISH_CODE
