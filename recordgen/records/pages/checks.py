"""Problems of the own pages of one site taken together: links that lead out or nowhere, one name for two."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from pathlib import Path

from recordgen.problems import Place, Problem, quoted
from recordgen.records.pages.files import EXPLAINING, line_of
from recordgen.records.pages.markdown import CALLS, Link
from recordgen.records.pages.model import OwnPage, OwnPages

Shown = Callable[[Path], str]


def page_problems(shared: OwnPages, own: OwnPages, shown: Shown) -> Iterator[Problem]:
    """The problems of the pages of one folder.

    own: the pages of that folder. shared: those that stand on the same site beside them; the practice's for a stable,
    none for the practice. shown: the path of a file as people see it.
    """
    yield from _named_twice(shared, own, shown)
    yield from _titled_twice((*shared.pages, *own.pages), own.pages, shown)
    headings = {page.name: page.text.headings for page in (*shared.pages, *own.pages)}
    pictures = {path.name for path in own.pictures}
    for page in own.pages:
        # What is wrong with a file was told; that a link leads to it is right.
        for link in dict.fromkeys(page.text.links):
            if link.address.partition("#")[0] not in shared.faulty | own.faulty:
                yield from _link_problems(link, page, headings, pictures, shown)


def _named_twice(shared: OwnPages, own: OwnPages, shown: Shown) -> Iterator[Problem]:
    """Files that would have one address on a site, whether pages or pictures."""
    first = {file.name: file for file in _files(shared)}
    for file in _files(own):
        if file.name in first:
            message = f"two files of one site are named {file.name}: this one and {shown(first[file.name])}"
            yield Problem(Place(shown(file)), "page-name-twice", message, "Give one of them another name")


def _files(pages: OwnPages) -> Iterator[Path]:
    yield from (page.file for page in pages.pages)
    yield from pages.pictures


def _titled_twice(all_of_them: tuple[OwnPage, ...], own: tuple[OwnPage, ...], shown: Shown) -> Iterator[Problem]:
    first: dict[str, OwnPage] = {}
    for page in all_of_them:
        before = first.setdefault(page.text.title.casefold(), page)
        if before is not page and page in own:
            message = f"two pages of one site have the title {quoted(page.text.title)}: this one and "
            place = Place(shown(page.file), line_of(page.source.splitlines(), page.text.title))
            yield Problem(place, "page-title-twice", message + shown(before.file), "Give one of them another title")


def _link_problems(
    link: Link, page: OwnPage, headings: Mapping[str, tuple[str, ...]], pictures: set[str], shown: Shown
) -> Iterator[Problem]:
    told = _picture_told(link, pictures) if link.is_picture else _link_told(link, page, headings)
    if told:
        yield Problem(Place(shown(page.file), line_of(page.source.splitlines(), link.address)), "page-link", *told)


def _picture_told(link: Link, pictures: set[str]) -> tuple[str, str] | None:
    if link.address in pictures:
        return None
    if "/" in link.address or ":" in link.address:
        message = f"this picture lies outside: {quoted(link.address)}"
        return message, "Put the picture beside the page, and name its file alone"
    message = f"there is no picture {quoted(link.address)} beside this page"
    return message, f"Those here: {', '.join(sorted(pictures)) or 'none'}"


def _link_told(link: Link, page: OwnPage, headings: Mapping[str, tuple[str, ...]]) -> tuple[str, str] | None:
    if CALLS.fullmatch(link.address):
        return None
    file, _, part = link.address.partition("#")
    name = file.removesuffix(".md") if file else page.name
    if ":" in file or "/" in file or "?" in file:
        message = f"this link leads out of the site: {quoted(link.address)}"
        return message, "Tell here what is to be known, or link to a page of the site, such as safety.md"
    if file and (not file.endswith(".md") or name not in (*headings, *EXPLAINING)):
        known = ", ".join(f"{one}.md" for one in (*headings, *EXPLAINING))
        return f"there is no page {quoted(link.address)} on this site", f"Those there are: {known}"
    if part and name in headings and part not in headings[name]:
        known = ", ".join(headings[name]) or "none"
        return f"there is no heading {quoted('#' + part)} on that page", f"Those there are: {known}"
    return None
