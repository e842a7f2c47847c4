"""The guide for the trimmer: on one site alone, plain, with lines that run and links that lead somewhere."""

from __future__ import annotations

import re
import shlex
from collections.abc import Iterator
from pathlib import Path

import click
import pytest

from recordgen.cli import main
from recordgen.cli.main import COMMANDS
from recordgen.language.catalogs import Listening, catalog_of, languages
from recordgen.records.load.everything import read_whole
from recordgen.records.load.folders import SLUG
from recordgen.site.build_context import BuildContext
from recordgen.site.pages.sites import PRACTICE, render_site
from recordgen.site.prose.guide import FOLDER, GUIDE, guide_file, guide_source, guide_text
from recordgen.site.prose.in_language import in_language
from tests.conftest import ROOT, TODAY
from tests.guide.outputs import COMMANDS_PAGE, with_outputs
from tests.support.pages import soup
from tests.support.practice_folders import build
from tests.support.reading_age import grade, joined

# The year of school is a judgement on what people are given to read (see test_reading_age.py).
HARDEST = 7
_BLOCK = re.compile(r"^```.*?^```", re.MULTILINE | re.DOTALL)
_CODE = re.compile(r"`[^`\n]*`")
_PASTED = re.compile(r"^recordgen .*", re.MULTILINE)
_QUOTED = re.compile(r"(?<=`)recordgen\s[^`]+(?=`)")


def source(uri: str) -> str:
    """The Markdown of a page."""
    return guide_file(uri).read_text("utf-8")


def lines(text: str) -> Iterator[tuple[str, list[str]]]:
    """The commands that a text shows, each with its options."""
    blocks, words_between = "".join(_BLOCK.findall(text)), _BLOCK.sub("", text)
    for line in [*_PASTED.findall(blocks), *_QUOTED.findall(words_between)]:
        _, command, *words = shlex.split(line, comments=True)
        yield command, [word for word in words if word.startswith("--")]


def known_options(command: str) -> set[str]:
    """The options that a command takes."""
    found = main.get_command(click.Context(main), command)
    return {"--help"} | {name for param in found.params for name in param.opts} if found else set()


@pytest.fixture(scope="module")
def renewed(tmp_path_factory: pytest.TempPathFactory) -> str:
    """The page of commands, its outputs taken now."""
    return with_outputs(COMMANDS_PAGE.read_text("utf-8"), tmp_path_factory.mktemp("guide"))


def test_outputs_are_those_of_today(renewed: str) -> None:
    """`python -m tests.guide` writes them anew."""
    assert renewed.splitlines() == COMMANDS_PAGE.read_text("utf-8").splitlines()


def test_every_command_is_shown_with_its_output() -> None:
    """Under its name, by a line that runs it."""
    parts = dict(re.findall(r"^### (\w+)\n(.*?)(?=^##|\Z)", COMMANDS_PAGE.read_text("utf-8"), re.MULTILINE | re.DOTALL))

    assert sorted(parts) == sorted(COMMANDS)
    assert [
        name for name, text in parts.items() if f"```sh\nrecordgen {name}" not in text or "```text" not in text
    ] == []


@pytest.mark.parametrize("text", [*GUIDE, "README.md"])
def test_each_line_is_one_that_recordgen_knows(text: str) -> None:
    """No command and no option is named that is not there."""
    shown = list(lines(source(text) if text in GUIDE else (ROOT / text).read_text("utf-8")))
    unknown = [
        (command, option)
        for command, options in shown
        for option in [command, *options]
        if option not in {"--version", *COMMANDS} | known_options(command)
    ]

    assert shown
    assert unknown == []


@pytest.mark.parametrize("uri", GUIDE)
def test_a_page_of_the_guide_is_plain(uri: str) -> None:
    """Nobody needs more than seven years of school for it; what is typed is no text."""
    text = re.sub(r"\]\([^)]*\)|[*#\[\]|]", "", _CODE.sub("this", _BLOCK.sub("", source(uri))))
    paragraphs = (" ".join(part.split()) for part in re.split(r"\n\s*\n|\n(?=(?:-|\d\.) )", text))

    assert grade(joined(part for part in paragraphs if re.search(r"[a-z]{3}", part))) <= HARDEST


def test_twenty_tasks_are_told() -> None:
    """Each under a heading of its own that can be linked to."""
    assert len(guide_text("user_guide/tasks.md").headings) >= 20


def test_links_lead_to_pages_and_parts_in_the_repository() -> None:
    """From file to file, so that the guide is read there as well."""
    links = [(guide_file(uri), link.address) for uri in GUIDE for link in guide_text(uri).links]
    astray = [(page.name, address) for page, address in links if not leads_somewhere(page, address)]

    assert links
    assert astray == []


def leads_somewhere(page: Path, address: str) -> bool:
    """Whether a link leads to a file, and to a heading of it where it names one."""
    file, _, part = address.partition("#")
    there = (page.parent / file).resolve() if file else page
    if not there.is_file():
        return False
    uris = {guide_file(uri).resolve(): uri for uri in GUIDE}
    return not part or (there.resolve() in uris and part in guide_text(uris[there.resolve()]).headings)


@pytest.mark.parametrize("uri", GUIDE)
@pytest.mark.parametrize("code", languages()[1:])
def test_another_language_has_the_same_parts_links_and_lines(code: str, uri: str) -> None:
    """Keep what is typed, what is answered and addresses as they are; all else is in the other language."""
    english, other = guide_text(uri), guide_text(uri, code)
    told = guide_source(uri, catalog_of(code))

    assert (other.headings, sorted(other.links, key=str)) == (english.headings, sorted(english.links, key=str))
    assert _BLOCK.findall(told) == _BLOCK.findall(source(uri))
    assert sorted(_CODE.findall(told)) == sorted(_CODE.findall(source(uri)))
    assert other.title != english.title
    assert all(f'id="{heading}"' in other.html for heading in english.headings)
    assert 'class="language-text"' not in other.html.replace('class="language-text" lang="en"', "")


def test_no_stable_takes_the_guides_addresses(tmp_path: Path) -> None:
    """One in the folder guide, whose horses are called as its pages, has its own; and no folder can be the guide's."""
    horses = {f"guide/{Path(uri).stem}/horse.yaml": f"name: {Path(uri).stem}\n" for uri in GUIDE}
    records = build(tmp_path, {"guide/stable.yaml": "name: Guide\n", **horses})
    pages = render_site(BuildContext.of(read_whole(records, TODAY), TODAY, None), PRACTICE).pages
    uris = [page.uri for page in pages]

    assert set(uris) > {*GUIDE, *(f"guide/{Path(uri).name}" for uri in GUIDE)}
    assert len(uris) == len(set(uris))
    assert not SLUG.fullmatch(FOLDER)


def test_each_piece_of_text_is_a_message() -> None:
    """A paragraph over several lines as one, items, headings and rows each; code, answers and commands are none."""
    listening = Listening()
    text = "# Title\n\nTwo\nlines.\n\n1. First\n   goes on.\n\n```sh\nls\n```\n\n### begin\n| a b | c |\n|---|\n- it\n"
    told = in_language(text, listening)

    assert [message for _, message in listening.asked] == ["Title", "Two lines.", "First goes on.", "a b | c", "it"]
    assert told == text.replace("Two\nlines", "Two lines").replace("First\n   goes", "First goes")


def test_it_stands_on_the_trimmers_site_alone(demo_sites: Path) -> None:
    """Its front page leads there, and all pages and links are there; owners have none of it."""
    front = soup(demo_sites / "practice" / "index.html")
    pages = [demo_sites / "practice" / uri.replace(".md", ".html") for uri in GUIDE]
    links = [(page, str(link["href"]).partition("#")[0]) for page in pages for link in soup(page).select("article a")]

    assert front.select_one('.rg-line a[href="user_guide/start.html"]')
    assert [page for page, there in links if there.endswith(".html") and not (page.parent / there).is_file()] == []
    assert not list((demo_sites / "willowmere").rglob("*guide*"))
    assert not soup(demo_sites / "willowmere" / "index.html").select('a[href*="user_guide/"]')
