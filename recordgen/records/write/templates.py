"""Texts that are written for a trimmer to fill in, from `site_templates/records`."""

from __future__ import annotations

import json
import re
from functools import cache
from pathlib import Path
from typing import Any

from jinja2 import Environment

from recordgen.days import spoken_day
from recordgen.records.sandbox import templates_of

# Text that YAML reads back as it is without quotes.
_NEEDS_NO_QUOTES = re.compile(r"[^\W\d_]+(?:[ '-][^\W\d_]+)*")


def render_template(name: str, own: Path | None = None, **given: Any) -> str:
    """The text of a template in `site_templates/records`, filled in.

    own: a practice's folder, whose template of the same name is taken before ours.
    """
    return _environment(own).get_template(name).render(given)


@cache
def _environment(own: Path | None) -> Environment:
    environment = templates_of("records", own, keep_trailing_newline=True)
    environment.filters |= {"day": spoken_day, "yaml": yaml_text, "line": one_line}
    return environment


def yaml_text(text: str) -> str:
    """Text as it stands in a YAML file: plain where that is safe, otherwise in quotes."""
    plain = _NEEDS_NO_QUOTES.fullmatch(text) and text.lower() not in ("null", "true", "false", "yes", "no", "on", "off")
    return text if plain else json.dumps(text, ensure_ascii=False)


def one_line(value: Any) -> str:
    """A value for a comment: yes or no, a number without needless digits, text on one line."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    return f"{value:g}" if isinstance(value, float) else " ".join(str(value).split())
