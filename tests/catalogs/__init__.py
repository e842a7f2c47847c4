"""The messages that a language must hold, taken out of templates and tables, and the catalogs that hold them."""

from __future__ import annotations

from collections.abc import Iterator
from importlib import import_module
from io import BytesIO
from pathlib import Path

import yaml
from babel.messages.catalog import Catalog
from babel.messages.extract import extract, extract_from_dir
from babel.messages.pofile import read_po, write_po

import recordgen
from recordgen.cli.help import OF_CLICK, texts_of
from recordgen.cli.main import COMMANDS, GROUPS, main
from recordgen.hoof.naming import Naming
from recordgen.language.catalogs import Listening, catalogs_folder
from recordgen.packaged import packaged
from recordgen.records.load.tables import read_reference
from recordgen.records.load.translated import messages
from recordgen.records.models import ranges
from recordgen.site.field.vocabulary import foot_entries, visit_entries
from recordgen.site.field.words import names_of_page, translate_help, words_of_page
from recordgen.site.prose.guide import GUIDE, guide_source
from recordgen.site.trace.page import words_of_screen

TEMPLATES = packaged() / "site_templates"
PACKAGE = Path(recordgen.__file__).parent
# The guide has a catalog of its own.
APART = ("guide/",)
DATA = ("dictionary.yaml",)
_FORM = {"encoding": "utf-8", "newstyle_gettext": "true", "trim_blocks": "true", "lstrip_blocks": "true"}
READ = dict.fromkeys(("**.html", "**.md", "**.jinja"), _FORM)
# One message, or the forms of a plural; and the place it stands at, where it has one.
Asked = tuple[str | None, str | tuple[str, ...]]

HEADER = (
    'msgid ""\nmsgstr ""\n"Language: {code}\\n"\n"MIME-Version: 1.0\\n"\n"Content-Type: text/plain; charset=utf-8\\n"\n'
    '"Content-Transfer-Encoding: 8bit\\n"\n"Plural-Forms: {plurals}\\n"\n\n'
)


def asked_of_templates() -> Iterator[Asked]:
    """The messages of the templates of the pages and of their frame."""
    for part in ("pages", "theme", "private"):
        found = extract_from_dir(TEMPLATES / part, [(ending, "jinja2") for ending in READ], READ)
        for name, _, message, _, place in found:
            if not name.startswith(APART):
                yield place, message


def asked_of_tables() -> Iterator[Asked]:
    """The messages of the tables, without those of data for programs, and words about ranges."""
    texts = [(TEMPLATES / "words" / name).read_text("utf-8") for name in DATA]
    left_out = {f"phrases.{key}" for text in texts for key in yaml.safe_load(text)["phrases"]}
    yield from (one for one in messages(read_reference(None)[0]) if one[0] not in left_out)
    yield from ((None, basis) for basis in (ranges.JUDGEMENT, ranges.COMMON_PRACTICE, ranges.BY_DEFINITION))


def asked_of_phone() -> Iterator[Asked]:
    """The messages of the field page and of the tracing screen: sentences, names of keys, help of fields."""
    listening = Listening()
    names = words_of_page(listening).pop("names")
    naming = Naming(read_reference(None)[0].phrases)
    names_of_page(names, naming, listening)
    for entries in (visit_entries(), foot_entries()):
        translate_help(entries, listening, naming)
    words_of_screen(listening)
    yield from listening.asked


def asked_of_guide() -> Iterator[Asked]:
    """The messages of the guide: its paragraphs, headings, items and rows."""
    listening = Listening()
    for uri in GUIDE:
        guide_source(uri, listening)
    yield from listening.asked


def asked_of_terminal() -> Iterator[Asked]:
    """The messages of the commands: all that `say`, `say_counted` and `counted` are called with."""
    for file in sorted(PACKAGE.rglob("*.py")):
        found = extract("python", BytesIO(file.read_bytes()), {"say": None, "say_counted": (1, 2)})
        yield from ((None, message) for _, message, _, _ in found)
        nouns = extract("python", BytesIO(file.read_bytes()), {"counted": (2,)})
        yield from ((None, (f"{{count}} {noun}", f"{{count}} {noun}s")) for _, noun, _, _ in nouns)


def asked_of_help() -> Iterator[Asked]:
    """The messages of `--help`: what click says, the heads of the groups, and each command's paragraphs and options."""
    commands = [main, *(import_module(f"recordgen.cli.{name}").command for name in COMMANDS)]
    texts = [*OF_CLICK, *GROUPS, *(text for command in commands for text in texts_of(command))]
    yield from ((None, text) for text in dict.fromkeys(texts))


# The files of a language, and what each holds.
DOMAINS = {
    "pages": asked_of_templates,
    "words": asked_of_tables,
    "phone": asked_of_phone,
    "guide": asked_of_guide,
    "terminal": asked_of_terminal,
    "help": asked_of_help,
}


def path_of(code: str, domain: str) -> Path:
    """The file of a language for one domain."""
    return catalogs_folder() / code / f"{domain}.po"


def held(code: str, domain: str) -> Catalog:
    """The catalog that a language has of a domain; an empty one where it has no such file."""
    path = path_of(code, domain)
    return read_po(BytesIO(path.read_bytes()) if path.is_file() else BytesIO(), locale=code)


def renewed(code: str, domain: str) -> str:
    """The text of a catalog with all messages of today in their order: those it holds translated, the others empty."""
    before = {(one.context, one.id): one.string for one in held(code, domain)}
    after = Catalog(locale=code)
    for place, message in DOMAINS[domain]():
        key = message if isinstance(message, str) else tuple(message)
        after.add(key, before.get((place, key), ""), context=place)
    out = BytesIO()
    write_po(out, after, omit_header=True, width=0)
    return HEADER.format(code=code, plurals=after.plural_forms) + out.getvalue().decode()
