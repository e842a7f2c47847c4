"""The styles that a page wants, to be written into it: those of every page, and those of its kind."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache

from recordgen.packaged import packaged

EVERY_PAGE = ("frame", "recordgen")
# In this order, which decides between rules of one weight.
OF_A_KIND = ("board", "horse", "sheet")

_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
_BETWEEN = re.compile(r"\s*([{};,])\s*")
_BLOCK = re.compile(r"\{[^{}]*\}")
_CLASS = re.compile(r"\.([a-z][\w-]*)")
_CLASSES = re.compile(r"\bclass=\"([^\"]*)\"")


def style_of(*parts: str) -> str:
    """The rules for a page of these parts, packed: those of every page, and of each kind with a class there."""
    used = {name for part in parts for names in _CLASSES.findall(part) for name in names.split()}
    return style_text((*EVERY_PAGE, *(kind for kind in OF_A_KIND if _own_classes(kind) & used)))


def style_text(names: Sequence[str]) -> str:
    """The rules of some style files, packed, in this order."""
    return "\n".join(_minify(name) for name in names)


def light_colour(name: str) -> str:
    """A colour of the light pages by its name, such as paper: the first that the styles of every page give it."""
    found = re.search(rf"--{name}:\s*(#[0-9a-f]{{6}})", _minify("recordgen"))
    assert found is not None, name
    return found[1]


@cache
def _minify(name: str) -> str:
    """The text of a style file without comments, line breaks and indents."""
    text = (packaged() / "site_templates" / "styles" / f"{name}.css").read_text("utf-8")
    return _BETWEEN.sub(r"\1", " ".join(_COMMENT.sub("", text).split())).replace(";}", "}")


@cache
def _own_classes(kind: str) -> frozenset[str]:
    """The classes that only the styles of this kind name."""
    return _classes(kind) - {name for other in EVERY_PAGE for name in _classes(other)}


def _classes(name: str) -> frozenset[str]:
    return frozenset(_CLASS.findall(_BLOCK.sub("{}", _minify(name))))
