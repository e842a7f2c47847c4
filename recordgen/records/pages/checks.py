"""Problems of the own pages of one site taken together: links that lead out or nowhere, one name for two."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from pathlib import Path

from recordgen.problems import Place, Problem, quoted
from recordgen.records.pages.files import EXPLAINING, line_of
from recordgen.records.pages.markdown import CALLS, Link
from recordgen.records.pages.model import OwnPage, OwnPages
from recordgen.sentences import Said, say

Shown = Callable[[Path], str]


def page_problems(shared: OwnPages, own: OwnPages, shown: Shown) -> Iterator[Problem]:
    """The problems of the pages of one folder.

    own: the pages of that folder. shared: those that stand on the same site beside them; the practice's for a stable,
    none for the practice. shown: the path of a file as people see it.
    """
    yield from _name_problems(shared, own, shown)
    yield from _title_problems((*shared.pages, *own.pages), own.pages, shown)
    headings = {page.name: page.text.headings for page in (*shared.pages, *own.pages)}
    pictures = {path.name for path in own.pictures}
    for page in own.pages:
        # What is wrong with a file was told; that a link leads to it is right.
        for link in dict.fromkeys(page.text.links):
            if link.address.partition("#")[0] not in shared.faulty | own.faulty:
                yield from _link_problems(link, page, headings, pictures, shown)


def _name_problems(shared: OwnPages, own: OwnPages, shown: Shown) -> Iterator[Problem]:
    """Files that would have one address on a site, whether pages or pictures."""
    first = {file.name: file for file in _files(shared)}
    for file in _files(own):
        if file.name in first:
            message = say(
                "two files of one site are named {file}: this one and {shown}",
                file=file.name,
                shown=shown(first[file.name]),
            )
            yield Problem(Place(shown(file)), "page-name-twice", message, say("Give one of them another name"))


def _files(pages: OwnPages) -> Iterator[Path]:
    yield from (page.file for page in pages.pages)
    yield from pages.pictures


def _title_problems(all_of_them: tuple[OwnPage, ...], own: tuple[OwnPage, ...], shown: Shown) -> Iterator[Problem]:
    first: dict[str, OwnPage] = {}
    for page in all_of_them:
        before = first.setdefault(page.text.title.casefold(), page)
        if before is not page and page in own:
            message = say(
                "two pages of one site have the title {title}: this one and {other}",
                title=quoted(page.text.title),
                other=shown(before.file),
            )
            place = Place(shown(page.file), line_of(page.source.splitlines(), page.text.title))
            yield Problem(place, "page-title-twice", message, say("Give one of them another title"))


def _link_problems(
    link: Link, page: OwnPage, headings: Mapping[str, tuple[str, ...]], pictures: set[str], shown: Shown
) -> Iterator[Problem]:
    told = _picture_fault(link, pictures) if link.is_picture else _link_fault(link, page, headings)
    if told:
        yield Problem(Place(shown(page.file), line_of(page.source.splitlines(), link.address)), "page-link", *told)


def _picture_fault(link: Link, pictures: set[str]) -> tuple[Said, Said] | None:
    if link.address in pictures:
        return None
    if "/" in link.address or ":" in link.address:
        message = say("this picture lies outside: {address}", address=quoted(link.address))
        return message, say("Put the picture beside the page, and name its file alone")
    message = say("there is no picture {address} beside this page", address=quoted(link.address))
    return message, say("Those here: {pictures}", pictures=", ".join(sorted(pictures)) or say("none"))


def _link_fault(link: Link, page: OwnPage, headings: Mapping[str, tuple[str, ...]]) -> tuple[Said, Said] | None:
    if CALLS.fullmatch(link.address):
        return None
    file, _, part = link.address.partition("#")
    name = file.removesuffix(".md") if file else page.name
    if ":" in file or "/" in file or "?" in file:
        message = say("this link leads out of the site: {address}", address=quoted(link.address))
        return message, say("Tell here what is to be known, or link to a page of the site, such as safety.md")
    if file and (not file.endswith(".md") or name not in (*headings, *EXPLAINING)):
        known = ", ".join(f"{one}.md" for one in (*headings, *EXPLAINING))
        message = say("there is no page {page} on this site", page=quoted(link.address))
        return message, say("Those there are: {known}", known=known)
    if part and name in headings and part not in headings[name]:
        message = say("there is no heading {heading} on that page", heading=quoted(f"#{part}"))
        return message, say("Those there are: {known}", known=", ".join(headings[name]) or say("none"))
    return None
