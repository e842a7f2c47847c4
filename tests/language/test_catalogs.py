"""The catalogs that are shipped: whole, with the same placeholders, and as the messages are today."""

from __future__ import annotations

import re
from string import Formatter
from typing import Any

import pytest

from recordgen.language.catalogs import Catalog, catalog_of, languages
from recordgen.records.load.tables import read_reference
from recordgen.records.load.translated import translate_tables
from tests.catalogs import DOMAINS, held, path_of, renewed

OTHERS = languages()[1:]
MARKUP = re.compile(r"</?\w+|&\w+;|\*\*|%%")


def facts(text: str) -> set[str]:
    """The placeholders of a message, of both kinds: %(day)s and {day}."""
    braces = {name for _, name, _, _ in Formatter().parse(re.sub(r"%\(\w+\)s", "", text)) if name}
    return braces | set(re.findall(r"%\((\w+)\)s", text))


def forms(text: Any) -> tuple[str, ...]:
    """A message as its forms; one without a plural has one."""
    return (text,) if isinstance(text, str) else tuple(text)


def test_german_is_shipped() -> None:
    """Beside English."""
    assert languages() == ("en", "de")


@pytest.mark.parametrize("domain", DOMAINS)
@pytest.mark.parametrize("code", OTHERS)
def test_a_catalog_is_as_the_messages_are_today(code: str, domain: str) -> None:
    """`python -m tests.catalogs` changes nothing: no message is missing, and none is held that nothing asks for."""
    assert path_of(code, domain).read_text("utf-8") == renewed(code, domain)


@pytest.mark.parametrize("domain", DOMAINS)
@pytest.mark.parametrize("code", OTHERS)
def test_every_message_has_words_with_the_same_placeholders(code: str, domain: str) -> None:
    """In every form of a plural, and none fuzzy."""
    for message in (one for one in held(code, domain) if one.id):
        asked, told = forms(message.id), forms(message.string)

        assert all(told), message.id
        assert not message.fuzzy, message.id
        assert {frozenset(facts(one) - {"num"}) for one in told} == {frozenset(facts(asked[-1]) - {"num"})}, message.id
        assert sorted(MARKUP.findall(told[-1])) == sorted(MARKUP.findall(asked[-1])), message.id


@pytest.mark.parametrize("code", OTHERS)
def test_a_caution_keeps_its_urgency_and_its_rules(code: str) -> None:
    """Words alone are translated."""
    english, other = read_reference(None)[0], read_reference(None, code)[0]

    assert other.cautions.keys() == english.cautions.keys()
    for key, words in english.cautions.items():
        one = other.cautions[key]
        assert (one.level, one.ring, one.no_trim, one.not_while) == (
            words.level,
            words.ring,
            words.no_trim,
            words.not_while,
        )
        assert one.seen != words.seen
        assert (one.do_not is None) == (words.do_not is None)


def test_without_words_a_message_stays_in_english() -> None:
    """And a plural that English has not is added to the phrases."""
    tables = read_reference(None)[0]
    polish = Catalog({("phrases.day_few", "{count} days"): "{count} dni", ("phrases.toe", "toe"): "palec"})
    found = translate_tables(tables, polish)

    assert found.cautions == tables.cautions
    assert (found.phrases["day_few"], found.phrases["day_one"]) == ("{count} dni", tables.phrases["day_one"])
    assert Catalog().ngettext("one", "several", 2) == "several"


def test_a_citation_stays_as_it_was_published() -> None:
    """Our own words about a source are translated."""
    assert catalog_of("de").gettext("Common practice, no source") == "Übliche Praxis, keine Quelle"
    assert read_reference(None, "de")[0].scales["Obel"].source == read_reference(None)[0].scales["Obel"].source
