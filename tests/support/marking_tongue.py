"""A tongue that marks the words of each template and leaves what is filled in bare, so that plain text shows."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import date
from string import Formatter

OPEN, CLOSE = "\u27e6", "\u27e7"
MARKED = re.compile(f"{OPEN}[^{OPEN}{CLOSE}]*{CLOSE}")


class MarkingTongue:
    """Every language at once: what it did not tell stands outside its marks."""

    def gettext(self, message: str) -> str:
        """The template with each piece between its values in marks."""
        return "".join(_piece(*part) for part in Formatter().parse(message))

    def ngettext(self, one: str, several: str, count: int) -> str:
        """The template for several, whatever the number."""
        return self.gettext(several)

    def day(self, day: date) -> str:
        """The day, in marks."""
        return f"{OPEN}{day}{CLOSE}"

    def listed(self, parts: Sequence[str], joined_by: str) -> str:
        """The parts bare, what joins them in marks."""
        return f"{OPEN}{joined_by}{CLOSE}".join(parts)


def outside(text: str) -> str:
    """A text less all that stands in marks."""
    return MARKED.sub(" ", text)


def _piece(words: str, name: str | None, form: str | None, conversion: str | None) -> str:
    told = f"{OPEN}{words.replace('{', '{{').replace('}', '}}')}{CLOSE}" if words else ""
    return told + (f"{{{name}{':' if form else ''}{form or ''}}}" if name is not None else "")
