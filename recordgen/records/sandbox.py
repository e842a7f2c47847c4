"""Templates: ours as they are, and those of a practice with its own in a sandbox.

A template is a program. A practice's own may come from somebody else, and runs on the trimmer's computer over all
records. So it sees the values that a page is made of, and no way out of them: no file, no module, no class, nothing
that changes a value. It can still take all time and memory there is, and what it writes goes to the readers, scripts
included.
"""

from __future__ import annotations

import datetime as dt
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from jinja2.sandbox import ImmutableSandboxedEnvironment
from markupsafe import Markup

from recordgen.packaged import packaged

# Values without a way to anything else; their own attributes may be used.
_PLAIN = (
    *(str, Markup, int, float, bool, type(None), tuple, list, dict, set, frozenset),
    *(dt.date, dt.datetime, dt.time, dt.timedelta),
)
# Packages whose objects are made for templates, methods included; and those of which the values alone may be seen.
_OURS = ("recordgen", "jinja2", "markupsafe")
_VALUES_ALONE = "mkdocs"
_OF_MAPPINGS = ("get", "items", "keys", "values")
_CLASSES = (dict, range)


class Sandbox(ImmutableSandboxedEnvironment):
    """An environment whose templates reach what they are given, and by no chain of attributes anything else."""

    def is_safe_attribute(self, obj: Any, attr: str, value: Any) -> bool:
        """Tell whether a template may see an attribute: judged by the class that defines it."""
        return super().is_safe_attribute(obj, attr, value) and _may_see(obj, attr, value)

    def is_safe_callable(self, obj: Any) -> bool:
        """Tell whether a template may call something; of classes only those that jinja2 hands out."""
        made_for_it = obj in _CLASSES or _package(obj) == "jinja2" if isinstance(obj, type) else True
        return made_for_it and super().is_safe_callable(obj)


def _may_see(obj: Any, attr: str, value: Any) -> bool:
    if isinstance(obj, type):
        return False
    kinds = type(obj).__mro__
    if any(_package(kind) == _VALUES_ALONE for kind in kinds):
        return not callable(value) or attr in _OF_MAPPINGS
    # What no class defines is the object's own.
    home = next((kind for kind in kinds if attr in vars(kind)), type(obj))
    return home in _PLAIN or _package(home) in _OURS


def _package(kind: type) -> str:
    return kind.__module__.partition(".")[0]


def templates_of(part: str, own: Path | None, **options: Any) -> Environment:
    """The templates of `site_templates/<part>`: a practice's own first, and then all of them in the sandbox.

    own: the practice's folder, or None for ours alone. options: as jinja2's Environment takes them.
    """
    places = [place / "site_templates" / part for place in (own, packaged()) if place is not None]
    folders = [place for place in places if place.is_dir()]
    kind = Sandbox if len(folders) > 1 else Environment
    return kind(
        loader=FileSystemLoader(folders),
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        extensions=["jinja2.ext.i18n"],
        **options,
    )


def sandboxed(made: Environment) -> Environment:
    """An environment as somebody else made it, but sandboxed."""
    inside = Sandbox(
        loader=made.loader,
        undefined=made.undefined,
        autoescape=made.autoescape,
        finalize=made.finalize,
        extensions=list(made.extensions),
        auto_reload=made.auto_reload,
    )
    inside.filters, inside.tests, inside.globals = made.filters, made.tests, inside.globals | made.globals
    return inside
