"""Sentences: English to Python, and whole in another language, with all that is in them."""

from __future__ import annotations

import json
import pickle
from datetime import date

from recordgen.cache.values import as_json, from_json
from recordgen.language.catalogs import Catalog
from recordgen.language.spoken import language_of
from recordgen.language.translator import Translator
from recordgen.sentences import (
    OR,
    Said,
    and_more,
    counted,
    in_words_of,
    listed,
    say,
    say_counted,
    sentences,
    spoken_day,
    standing_alone,
    worded,
)

TEXTS = {
    "{horse} left on {day}": "{horse} ging am {day}",
    "the file {file} is {what}": "die Datei {file} ist {what}",
    "damaged": "beschädigt",
    "Look at it": "Sieh sie an",
}
PLURALS = {
    "{count} visit": ("{count} Besuch", "{count} Besuche"),
    "{named} and {count} other": ("{named} und {count} weiterer", "{named} und {count} weitere"),
}
GERMAN = Translator(
    language_of("de"),
    Catalog({(None, one): told for one, told in TEXTS.items()}, {(None, one): told for one, told in PLURALS.items()}),
)
DAY = date(2026, 10, 14)
LEFT = say("{horse} left on {day}", horse="Bramble", day=spoken_day(DAY))
BROKEN = sentences(say("the file {file} is {what}", file="a.yaml", what=say("damaged")), "", say("Look at it"))


def test_a_sentence_is_its_english_to_python() -> None:
    """It is compared, joined and written as JSON as any text is; braces that are typed are doubled."""
    assert LEFT == "Bramble left on 14 October 2026"
    assert json.dumps(LEFT) == '"Bramble left on 14 October 2026"'
    assert say("Write next: {{weeks: {weeks:g}}}", weeks=6.0) == "Write next: {weeks: 6}"


def test_a_sentence_is_told_whole_with_the_sentences_and_days_in_it() -> None:
    """Each by the catalog, days by the language; what is no sentence stays."""
    assert in_words_of(GERMAN, LEFT) == "Bramble ging am 14. Oktober 2026"
    assert in_words_of(GERMAN, BROKEN) == "die Datei a.yaml ist beschädigt. Sieh sie an."
    assert in_words_of(GERMAN, "Bramble left") == "Bramble left"


def test_numbers_ask_for_their_plural_and_lists_for_their_words() -> None:
    """A list of what is typed behind a comma stays as it is."""
    told = [in_words_of(GERMAN, one) for one in (counted(1, "visit"), counted(3, "visit"), and_more("a, b", 2))]

    assert told == ["1 Besuch", "3 Besuche", "a, b und 2 weitere"]
    assert in_words_of(GERMAN, listed(["a", "b", "c"])) == "a, b und c"
    assert in_words_of(GERMAN, listed(["a", say("damaged")], OR)) == "a oder beschädigt"
    assert say_counted("{count} horse ends", "{count} horses end", 2) == "2 horses end"
    assert and_more("a, b", 0) == "a, b"


def test_a_sentence_alone_begins_with_a_capital_letter_and_a_name_stays_as_it_is() -> None:
    """Whether a word of the sentence or something typed comes first tells its template."""
    lines = [BROKEN, LEFT, say("{count} is written", count=1), say("keys.json is damaged"), worded("a remark")]

    assert [standing_alone(line, in_words_of(GERMAN, line))[:9] for line in lines] == [
        *("Die Datei", "Bramble g", "1 is writ", "keys.json", "a remark"),
    ]


def test_a_sentence_outlives_a_process_and_the_cache() -> None:
    """Another process, and a later command, can tell it in a language too."""
    kept: list[Said] = [LEFT, BROKEN, counted(3, "visit"), listed(["a", "b"], OR), spoken_day(DAY)]
    for one in kept:
        again = from_json(json.loads(json.dumps(as_json(one, {}))), {})

        assert in_words_of(GERMAN, pickle.loads(pickle.dumps(one))) == in_words_of(GERMAN, one)
        assert (type(again), again, in_words_of(GERMAN, again)) == (type(one), one, in_words_of(GERMAN, one))


def test_an_error_raised_with_a_sentence_keeps_it_in_another() -> None:
    """Such as why a number cannot be read."""
    assert in_words_of(GERMAN, say("the file {file} is {what}", file="x", what=ValueError(say("damaged")))) == (
        "die Datei x ist beschädigt"
    )
