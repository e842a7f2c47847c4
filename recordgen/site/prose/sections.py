"""The form of a page of prose: a header, then a section from each heading of the second level to the next.

A heading of the class `rg-fold` folds its section: the heading alone stands open.
"""

from __future__ import annotations

from xml.etree.ElementTree import Element, SubElement

from markdown import Markdown
from markdown.extensions import Extension
from markdown.treeprocessors import Treeprocessor

# The classes by which the styles know a list and a list of terms.
CLASSES = {"ul": "rg-changes", "dl": "rg-facts"}
FOLDED = "rg-fold"
# After ids and classes of headings are read, which Markdown's own list of priorities puts at 8, and those of own pages.
_LATE = -10


class Sections(Extension):
    """Parts a page into its header and its sections, which take the id and class of their heading."""

    def extendMarkdown(self, md: Markdown) -> None:
        """Add the step that parts the page."""
        md.treeprocessors.register(_Parting(md), "sections", _LATE)


class _Parting(Treeprocessor):
    def run(self, root: Element) -> None:
        for element in root.iter():
            if element.tag in CLASSES and not element.get("class"):
                element.set("class", CLASSES[element.tag])
        parts: list[Element] = []
        for element in list(root):
            root.remove(element)
            if not parts or _begins(element, parts[-1]):
                parts.append(_part(element))
            parts[-1].append(element)
        root.extend(_fold(part) if part.get("class") == FOLDED else part for part in parts)


def _begins(element: Element, part: Element) -> bool:
    """Tell whether an element begins a new part: a heading of the second level, and the first text below the header."""
    return element.tag == "h2" or (part.tag == "header" and element.get("class") != "rg-sub")


def _part(first: Element) -> Element:
    """A part with nothing in it yet; the id and class of its first heading move to it."""
    if first.tag == "h1":
        return Element("header")
    part = Element("section")
    for name in ("id", "class"):
        if first.tag == "h2" and name in first.attrib:
            part.set(name, first.attrib.pop(name))
    return part


def _fold(part: Element) -> Element:
    """The part with all but its heading folded; a link to its id opens it."""
    section = Element("section")
    fold = SubElement(section, "details", {name: value for name, value in part.attrib.items() if name != "class"})
    heading, *rest = part
    SubElement(fold, "summary").append(heading)
    fold.extend(rest)
    return section
