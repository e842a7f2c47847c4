"""The folder of the records as seen from a place, and its language, at a glance: nothing heavy is loaded for it."""

from __future__ import annotations

import os
import re
from pathlib import Path

from recordgen.language.catalogs import ENGLISH_CODE

_LANGUAGE = re.compile(r"^language:[ \t]*[\"']?([A-Za-z_-]+)", re.MULTILINE)
# More than any practice's own file has; a longer one is not read to its end.
_MOST_BYTES = 65536


def home_above(folder: Path) -> Path | None:
    """The nearest folder, this one or one around it, that holds practice.yaml; None where none does."""
    here = folder.absolute()
    return next((one for one in (here, *here.parents) if (one / "practice.yaml").is_file()), None)


def found_records() -> Path:
    """The folder of the records as seen from here: this one or one around it with practice.yaml, else ./records."""
    home = home_above(Path())
    return Path(os.path.relpath(home)) if home else Path("records")


def language_in(records: Path) -> str | None:
    """The code of the language that practice.yaml names, even where it cannot be read as a whole; None without one.

    Of a practice that names none it is English.
    """
    try:
        with (records / "practice.yaml").open("rb") as opened:
            text = opened.read(_MOST_BYTES).decode("utf-8-sig", "replace").replace("\r", "")
    except OSError:
        return None
    found = _LANGUAGE.search(text)
    return found[1] if found else ENGLISH_CODE
