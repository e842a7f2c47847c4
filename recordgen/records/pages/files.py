"""The files of a folder of own pages: `pages/winter-mud.md`, and the pictures that they show, `pages/gate.jpg`."""

from __future__ import annotations

import os
import re
from pathlib import Path

from recordgen.problems import Place, Problem, is_visible, quoted, warning
from recordgen.records.load.folders import LEFT_BEHIND, SLUG, Walk, slug_of
from recordgen.records.pages.model import OwnPage, OwnPages
from recordgen.records.photos.metadata import metadata_in
from recordgen.records.yaml.text import decode, unfinished_merge
from recordgen.sentences import listed, say

PAGES = "pages"
# The pages of every site that explain; a link names them like an own page.
EXPLAINING = ("words", "method", "safety")
# Some 8,000 words, or a picture as large as a photograph of the records.
MOST_BYTES_OF_TEXT = 50_000
MOST_BYTES_OF_PICTURE = 3_000_000
PICTURES_OF_PAGES = (".jpg", ".jpeg", ".png", ".webp")
# Of brackets that are open at once in one paragraph, reading which takes the longer the more they are. Judgement.
DEEPEST = 20
_TOO_DEEP = say("brackets, lists or quotes are nested too deep")
# What a picture of these kinds begins with. From memory, not read: JPEG (ITU-T T.81), PNG (W3C), WebP's container.
_BEGINS = re.compile(rb"\xff\xd8\xff|\x89PNG\r\n\x1a\n|RIFF....WEBP", re.DOTALL)


def read_pages(walk: Walk, parent: Path) -> OwnPages:
    """The own pages in a practice's or a stable's folder; what is wrong with a file is kept in the walk's problems."""
    folder = parent / PAGES
    if not os.path.isdir(folder) or walk.leads_out(folder):
        return OwnPages()
    pages: list[OwnPage] = []
    pictures: list[Path] = []
    faulty: list[str] = []
    for path in walk.entries(folder):
        if LEFT_BEHIND.fullmatch(path.name):
            continue
        if path.suffix.lower() == ".md":
            page = _page(walk, path)
            pages += [page] if page else []
            faulty += [] if page else [path.name]
        elif path.suffix.lower() in PICTURES_OF_PAGES:
            is_good = _is_picture(walk, path)
            pictures += [path] if is_good else []
            faulty += [] if is_good else [path.name]
        else:
            message = say("this is neither a page nor a picture, and is not read")
            walk.problems.add(warning(Place(walk.shown(path)), "file-not-read", message, say("Move it elsewhere")))
    return OwnPages(tuple(pages), tuple(pictures), frozenset(faulty))


def _page(walk: Walk, path: Path) -> OwnPage | None:
    if not _is_named(walk, path) or (content := _content(walk, path, MOST_BYTES_OF_TEXT)) is None:
        return None
    shown = walk.shown(path)
    text, problems = decode(shown, content)
    source = "\n".join(text.splitlines())
    # Seven equals signs alone may underline a title.
    if "<<<<<<<" in source:
        problems += unfinished_merge(shown, source)
    walk.problems.extend(problems)
    if problems:
        return None
    page = OwnPage(path.stem, path, source)
    told = list(_text_problems(page, shown))
    walk.problems.extend(told)
    return None if told else page


def _text_problems(page: OwnPage, shown: str) -> list[Problem]:
    """The problems of a page taken alone: what cannot be read, and its title."""
    if line := _too_deep(page.source):
        return [Problem(Place(shown, line), "nested-too-deep", _TOO_DEEP, say("Write it flatter"))]
    try:
        text = page.text
    except RecursionError:
        return [Problem(Place(shown), "nested-too-deep", _TOO_DEEP, say("Write it flatter"))]
    begins = next(number for number, line in enumerate(page.source.splitlines(), 1) if line.strip())
    if not text.title:
        way_out = say("Begin it with a line such as: # {title}", title=page.name.replace("-", " ").capitalize())
        return [Problem(Place(shown, begins), "page-title", say("the page has no title"), way_out)]
    if not all(map(is_visible, text.title)):
        return [
            Problem(
                Place(shown, begins), "page-title", say("a sign in the title does not show"), say("Type the title anew")
            )
        ]
    lines = page.source.splitlines()
    return [
        Problem(
            Place(shown, line_of(lines, one, after=begins)),
            "page-title",
            say("a second title stands here: {title}", title=quoted(one)),
            say("Begin it with ## instead of #"),
        )
        for one in text.further
    ]


def _too_deep(source: str) -> int:
    """The number of the first line in which too many brackets are open, or 0."""
    depth = 0
    for number, line in enumerate(source.splitlines(), 1):
        depth = depth if line.strip() else 0
        for sign in line:
            depth = depth + 1 if sign in "([" else max(0, depth - 1) if sign in ")]" else depth
            if depth > DEEPEST:
                return number
    return 0


def line_of(lines: list[str], words: str, after: int = 0) -> int:
    """The number of the first line behind a line that holds these words; the one behind it where none does."""
    return next((number for number, line in enumerate(lines, 1) if number > after and words in line), after or 1)


def _is_named(walk: Walk, path: Path) -> bool:
    """Tell whether a file's name can be part of an address; a problem where not."""
    stem, ending = os.path.splitext(path.name)
    if SLUG.fullmatch(stem) and stem not in EXPLAINING and ending == ending.lower():
        return True
    if stem in EXPLAINING:
        walk.tell(
            path,
            "page-name",
            say("the name {stem} is taken by a page of every site", stem=stem),
            say("Give the file another name"),
        )
    else:
        way_out = say(
            "Use small letters, digits and hyphens, such as {stem}{ending}",
            stem=slug_of(stem) or "winter-mud",
            ending=ending.lower(),
        )
        walk.tell(path, "page-name", say("{name} cannot be part of an address", name=quoted(path.name)), way_out)
    return False


def _is_picture(walk: Walk, path: Path) -> bool:
    """Tell whether a picture may stand on a page; a problem where not."""
    if not _is_named(walk, path) or (content := _content(walk, path, MOST_BYTES_OF_PICTURE)) is None:
        return False
    if not _BEGINS.match(content):
        walk.tell(path, "page-picture", say("this is no picture"), say("Save it again as JPEG, PNG or WebP"))
        return False
    if carried := metadata_in(content):
        message = say(
            "this picture carries {carried}, which may tell where, when and by whom it was taken",
            carried=listed(carried),
        )
        walk.tell(path, "picture-tells-where", message, say("Save it again without them"))
        return False
    return True


def _content(walk: Walk, path: Path, most: int) -> bytes | None:
    """The bytes of a file; None, and a problem, where it cannot be read or is too large."""
    if not walk.may_read(path):
        return None
    try:
        with path.open("rb") as file:
            content = file.read(most + 1)
    except OSError:
        walk.tell(path, "file-not-opened", say("the file cannot be opened"), say("Look whether you may open it"))
        return None
    if len(content) > most:
        size = f"{most // 1_000_000} MB" if most >= 1_000_000 else f"{most // 1000} kB"
        walk.tell(
            path, "file-too-large", say("the file is larger than {size}", size=size), say("Make it smaller, or part it")
        )
        return None
    return content
