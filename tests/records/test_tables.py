"""The reference tables, and a practice's own entries over them."""

from __future__ import annotations

from pathlib import Path

import pytest

from recordgen.records.tables import read_reference


def told(folder: Path, text: str) -> list[str]:
    """The problems of a practice's own table."""
    file = folder / "site_templates" / "words" / "own.yaml"
    file.parent.mkdir(parents=True)
    file.write_text(text, "utf-8")
    return [problem.as_line() for problem in read_reference(folder)[1]]


def test_our_own_tables_are_right() -> None:
    """Every entry of ours reads without a problem."""
    assert read_reference(None)[1] == []


def test_a_practice_adds_and_replaces_entries_by_key(tmp_path: Path) -> None:
    """An own care note stands beside ours; an own phrase takes the place of ours."""
    own = "care:\n  own-note: {what: W, why: Y, how_often: daily, source: own}\nphrases: {place_toe: front}\n"
    assert told(tmp_path, own) == []

    reference, _ = read_reference(tmp_path)
    assert reference.care["own-note"].what == "W"
    assert "daily-grooves" in reference.care
    assert reference.phrases["place_toe"] == "front"


@pytest.mark.parametrize(
    ("text", "line", "words"),
    [
        ("phrases: {plaice_toe: x}", 1, "Did you mean place_toe?"),
        ("phrases:\n  due_vet: '{weeks} for {nobody}'", 2, "nobody fills in {nobody}"),
        ("phrases: {due_vet: 'open {'}", 1, "a brace is open or empty"),
        ("cautions:\n  wounds: {level: call now, seen: s, meanwhile: m, source: s}", 2, "Did you mean wound?"),
        ("cautions:\n  wound: {level: call now, seen: s, meanwhile: m}", 2, "source is missing"),
        ("cautions:\n  wound: {level: call now, seen: '{size}', meanwhile: m, source: s}", 2, "nobody fills in {size}"),
        ("measures:\n  own: {name: n, plain: p, landmarks: l, view: side, path: '@.nose'}", 2, "stands nowhere"),
        ("measures:\n  own: {name: n, plain: p, landmarks: l, view: side, minus: [toe_length]}", 2, "from nothing"),
        ("measures:\n  own: {name: n, plain: p, landmarks: l, view: side, path: '@.toe_length'}", 2, "has no way"),
    ],
)
def test_a_wrong_entry_is_told_with_its_line(tmp_path: Path, text: str, line: int, words: str) -> None:
    """The file, the line and the way out are named."""
    problems = told(tmp_path, text)

    assert any(words in problem and f"words/own.yaml:{line}:" in problem for problem in problems), problems
