"""Pictures among prose: each loaded when its reader comes near, into a place that is kept free for it."""

from __future__ import annotations

from pathlib import Path
from xml.etree.ElementTree import Element

from markdown import Markdown
from markdown.extensions import Extension
from markdown.treeprocessors import Treeprocessor

# In pixels of the page. A phone's screen is photographed at twice its size, and would else stand higher than a window.
MOST_HIGH = 680
# After own pages are read, which leaves no size on a picture, and before the page is parted.
_AFTER_READING = -8


class SizedPictures(Extension):
    """Gives each picture its size on the page, and loads none before it is wanted. folder: where their addresses begin.

    Raises OSError where a picture is not there.
    """

    def __init__(self, folder: Path) -> None:
        super().__init__()
        self.folder = folder

    def extendMarkdown(self, md: Markdown) -> None:
        """Add the step that looks at each picture."""
        md.treeprocessors.register(_Sizing(md, self.folder), "sized-pictures", _AFTER_READING)


class _Sizing(Treeprocessor):
    def __init__(self, md: Markdown, folder: Path) -> None:
        super().__init__(md)
        self.folder = folder

    def run(self, root: Element) -> None:
        for picture in root.iter("img"):
            width, height = shown_size(self.folder / picture.attrib["src"])
            picture.attrib |= {"width": str(width), "height": str(height), "loading": "lazy"}


def shown_size(file: Path) -> tuple[int, int]:
    """Width and height of a picture on a page, in pixels: its own, or so that it is no higher than `MOST_HIGH`.

    Raises OSError.
    """
    from PIL import Image

    with Image.open(file) as picture:
        width, height = picture.size
    shown = min(1, MOST_HIGH / height)
    return round(width * shown), round(height * shown)
