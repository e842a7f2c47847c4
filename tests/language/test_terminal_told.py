"""The terminal speaks the practice's language: no sentence is plain text, and German leaves no English."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from recordgen.cli.main import COMMANDS
from recordgen.language.translator import translator_of
from recordgen.problems import Problem
from recordgen.records.load.practice import read_practice
from recordgen.records.load.tables import read_reference
from recordgen.records.models.names import FEET
from recordgen.sentences import in_words_of, sentences
from tests.conftest import ROOT
from tests.support.commands import run
from tests.support.first_week_mistakes import RUN, TYPED, Run, Typed
from tests.support.marked_language import words_in
from tests.support.marking_tongue import MarkingTongue, outside
from tests.support.practice_folders import FILES, TODAY, build

REFERENCE = read_reference(None)[0]
# Calls that hand a sentence to a person.
SPEAKING = {"echo", "fail", "UsageError", "ask", "agrees", "Problem", "warning", "Trouble", "refusal", "steps"}
# Words that German has not, and that stand in nearly every English sentence of ours.
ENGLISH = {"the", "this", "that", "there", "which", "write", "with", "not", "and", "look", "take", "name", "should"}
# Typed in files, or names of options and formats.
TYPED_WORDS = {"name", "with", "take", "look", "write"}


def plain_sentences(file: Path) -> Iterator[str]:
    """Sentences that a file hands to a person as plain text, each with its line."""
    for node in ast.walk(ast.parse(file.read_text("utf-8"))):
        if isinstance(node, ast.Call):
            called = node.func.id if isinstance(node.func, ast.Name) else getattr(node.func, "attr", "")
            for given in node.args if called in SPEAKING else ():
                pieces = given.values if isinstance(given, ast.JoinedStr) else [given]
                texts = [one.value for one in pieces if isinstance(one, ast.Constant) and isinstance(one.value, str)]
                if any(re.search(r"[a-z]{2,} +[a-z]{2,}", text) for text in texts):
                    yield f"{file.name}:{node.lineno}: {texts}"


def test_no_sentence_is_handed_to_a_person_as_plain_text() -> None:
    """Each goes through `say`, by which the catalogs find it; types hold the same for problems."""
    files = sorted((ROOT / "recordgen").rglob("*.py"))

    assert [found for file in files for found in plain_sentences(file)] == []


def problems_of(one: Typed, folder: Path) -> list[Problem]:
    """The problems of a mistake in a file."""
    records = build(folder / "records", {one.file: one.text})
    return list(read_practice(records, TODAY, None, REFERENCE)[1])


def typed_in(one: Typed) -> set[str]:
    """The words of a mistaken file and its neighbours, and the names that records are written in."""
    text = one.text if isinstance(one.text, str) else one.text.decode("latin-1")
    told = " ".join([text, one.way_out, *FILES.values(), *FEET])
    return words_in(told.replace("_", " ").replace("-", " "))


@pytest.mark.parametrize("one", TYPED, ids=lambda one: f"{one.file}-{str(one.text)[-40:]}")
def test_what_is_wrong_in_a_file_is_told_by_templates_and_by_what_was_typed(one: Typed, tmp_path: Path) -> None:
    """In German no English word is left; outside the templates stand no sentences."""
    problems = problems_of(one, tmp_path)
    told = [sentences(problem.message, problem.way_out) for problem in problems]
    german = " ".join(str(in_words_of(translator_of("de"), one)) for one in told)
    bare = outside(" ".join(str(in_words_of(MarkingTongue(), one)) for one in told))

    assert told
    assert words_in(german) & ENGLISH - typed_in(one) - TYPED_WORDS == set(), german
    assert words_in(bare) & ENGLISH - typed_in(one) - TYPED_WORDS == set(), bare


@pytest.mark.parametrize("one", RUN, ids=lambda one: " ".join(one.words))
def test_a_mistake_in_a_command_is_told_in_german(one: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """With the same end, and no English word."""
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(tmp_path / "keys"))
    records = build(tmp_path / "records", {"practice.yaml": f"{FILES['practice.yaml']}language: de\n"})
    monkeypatch.chdir(records)
    result = run(*(word.replace("{}", str(tmp_path)) for word in one.words))
    said = " ".join(line for line in result.output.splitlines() if not line.startswith(("Aufruf:", "Hilfe")))

    assert (result.exit_code, words_in(said) & ENGLISH - TYPED_WORDS) == (one.code, set()), result.output


@pytest.mark.parametrize("command", ["", *COMMANDS])
def test_help_is_told_in_german_and_its_lines_to_paste_stay(
    command: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """By the language of the computer, where there is no practice."""
    monkeypatch.chdir(tmp_path)
    english = run(*filter(None, [command]), "--help").output
    monkeypatch.setenv("LC_ALL", "de_DE.UTF-8")
    german = run(*filter(None, [command]), "--help").output
    lines = [line for line in english.splitlines() if line.startswith("      recordgen")]

    assert lines
    assert [line for line in german.splitlines() if line.startswith("      recordgen")] == lines
    assert words_in(german) & ENGLISH - TYPED_WORDS - words_in(" ".join(lines)) == set(), german
