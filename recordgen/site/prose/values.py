"""Values in a text of Markdown: covered while Markdown reads the text, and shown again, escaped, once it is HTML.

So nothing that was typed in a record is read as Markdown or HTML, wherever it stands: in a list, a table, a link.
"""

from __future__ import annotations

import re

from markupsafe import Markup, escape

# A covered value stands between two signs for private use, as hexadecimal digits, in which Markdown sees a plain word.
_OPEN, _CLOSE = "\ue000", "\ue001"
_COVERED = re.compile(f"{_OPEN}((?:[0-9a-f]{{2}})*){_CLOSE}")


def cover(value: object) -> Markup:
    """Cover a value that a template fills in; markup of the program's own goes as it is, and so does empty text."""
    if hasattr(value, "__html__"):
        return Markup(value)
    text = str(value)
    return Markup(f"{_OPEN}{text.encode().hex()}{_CLOSE}") if text else Markup()


def uncover(html: str) -> Markup:
    """Show the covered values, escaped, in a text of HTML."""
    return Markup(_COVERED.sub(lambda found: escape(bytes.fromhex(found[1]).decode(errors="replace")), html))
