"""Grades and scores as they are typed: their scale, their steps, and what a vet's finding ends."""

from __future__ import annotations

from pathlib import Path

import pytest

from recordgen.records.load.practice import read_practice
from recordgen.records.load.tables import read_reference
from tests.support.practice_folders import TODAY, VISIT_FILE, build, line_of, lines_of

DAY = "date: 2026-10-14\n"
FEET = "feet: {left_fore: {landing: flat}}\n"
SCALES = "AAEP, 0-10, Obel, modified Obel, Horse Grimace"


@pytest.mark.parametrize("typed", ["2", "{grade: 2}", "{scale: , grade: 2}"])
def test_a_grade_without_a_scale_is_told_kindly(tmp_path: Path, typed: str) -> None:
    """A number tells nothing without its scale; the scales are named, with an example to copy."""
    (found,) = lines_of(tmp_path, f"{DAY}lameness: {typed}\n")

    assert found == (
        "file.yaml:2:1: error: lameness: a grade tells nothing without the name of its scale. "
        f"Write it like {{scale: AAEP, grade: 2}}; the scales are {SCALES}."
    )


def test_a_scale_without_a_grade_is_asked_for_it(tmp_path: Path) -> None:
    """The scale is there, and the grade is not."""
    assert [line.split("error: ")[1] for line in lines_of(tmp_path, f"{DAY}lameness: {{scale: AAEP}}\n")] == [
        "lameness, grade is missing. Add grade."
    ]


@pytest.mark.parametrize("typed", ["AEAP", "obel", "0 - 10"])
def test_a_slip_in_a_scale_names_the_scales(tmp_path: Path, typed: str) -> None:
    """All of them, after the nearest one."""
    (found,) = lines_of(tmp_path, f"{DAY}lameness: {{scale: {typed}, grade: 2}}\n")

    assert f"Choose from {SCALES}." in found


@pytest.mark.parametrize(
    ("typed", "way_out"),
    [
        (
            "lameness: {scale: AAEP, grade: 2.3}",
            "the AAEP scale has no 2.3, only whole and half numbers. Write 2 or 2.5",
        ),
        (
            "lameness: {scale: 0-10, grade: 3.7}",
            "the 0-10 scale has no 3.7, only whole and half numbers. Write 3.5 or 4",
        ),
        ("lameness: {scale: Obel, grade: 1.5}", "the Obel scale has no 1.5, only whole numbers. Write 1 or 2"),
        (
            "condition: {henneke: 6.3}",
            "the body condition scale has no 6.3, only whole and half numbers. Write 6 or 6.5",
        ),
        ("condition: {crest: 2.9}", "the crest scale has no 2.9, only whole and half numbers. Write 2.5 or 3"),
    ],
)
def test_a_grade_between_the_steps(tmp_path: Path, typed: str, way_out: str) -> None:
    """Both neighbours are named."""
    (found,) = lines_of(tmp_path, f"{DAY}{typed}\n")

    assert way_out in found


@pytest.mark.parametrize("typed", ["AAEP, grade: 2.5", "0-10, grade: 3.5", "Obel, grade: 2", "Horse Grimace, grade: 7"])
def test_halves_where_people_write_them(tmp_path: Path, typed: str) -> None:
    """On the scales of five and of ten."""
    assert lines_of(tmp_path, f"{DAY}lameness: {{scale: {typed}}}\n") == []


@pytest.mark.parametrize(("typed", "expected"), [("100", 0), ("40 in", 0), ("20", 1), ("300", 1)])
def test_the_middle_of_the_neck(tmp_path: Path, typed: str, expected: int) -> None:
    """In centimetres or inches, within what is possible."""
    assert len(lines_of(tmp_path, f"{DAY}condition: {{neck: {typed}}}\n")) == expected


def ended(folder: Path, ends: str, kind: str = "seen") -> list[str]:
    """Problems of a vet's entry with these ends, by our own tables."""
    text = f"{DAY}{FEET}vet: [{{date: 2026-10-13, by: Dr Sage, kind: {kind}, ends: {ends}}}]\n"
    _, problems = read_practice(build(folder, {VISIT_FILE: text}), TODAY, None, read_reference(None)[0])
    return [f"{problem.place.line}: {problem.message}. {problem.way_out}" for problem in problems]


@pytest.mark.parametrize("ends", ["[stance, pulse]", "[{caution: wound, foot: NF}]", "[stance, {caution: heat}]"])
def test_a_vets_finding_names_what_it_ends(tmp_path: Path, ends: str) -> None:
    """By name, or with the foot, however it is spelled."""
    assert ended(tmp_path, ends) == []


@pytest.mark.parametrize("ends", ["[stanc]", "[{caution: stanc}]"])
def test_an_unknown_caution_is_told_with_the_nearest(tmp_path: Path, ends: str) -> None:
    """As in `resolved`."""
    assert ended(tmp_path, ends) == ["3: no caution is named 'stanc'. Did you mean stance?"]


def test_a_vet_who_was_only_asked_ends_nothing(tmp_path: Path) -> None:
    """Somebody has to have seen the horse."""
    assert ended(tmp_path, "[stance]", "advised") == [
        "3: vet, number 1: a vet ends a caution only after seeing the horse. Write kind: seen, or take out ends"
    ]


@pytest.mark.parametrize(
    ("entry", "words"),
    [
        ("AEAP: {name: n, called: grade, meaning: m, low: 0, high: 5, step: 0.5, source: s}", "Did you mean AAEP?"),
        (
            "AAEP: {name: n, called: grade, meaning: m, low: 0, high: 6, step: 0.5, source: s}",
            "low: 0, high: 5, step: 0.5",
        ),
        (
            "Obel: {name: n, called: grade, meaning: m, low: 0, high: 4, step: 0.5, source: s}",
            "low: 0, high: 4, step: 1",
        ),
        (
            "Obel: {name: n, called: grade, meaning: m, low: 0, high: 4, step: 1, grades: {5: x}, source: s}",
            "5 is not a whole grade of the scale Obel. That scale runs from 0 to 4",
        ),
        ("Obel: {name: n, called: grade, meaning: m, low: 0, high: 4, step: 1, grades: {1: x}}", "source is missing"),
        ("Obel: {name: n, called: grade, meaning: m, low: 0, high: 4, step: 1, grades: {1: x}, source: s}", ""),
    ],
)
def test_a_practice_may_say_a_scale_in_its_own_words(tmp_path: Path, entry: str, words: str) -> None:
    """But not make another scale of it, nor leave out where it comes from."""
    file = tmp_path / "site_templates" / "words" / "own.yaml"
    file.parent.mkdir(parents=True)
    file.write_text(f"scales:\n  {entry}\n", "utf-8")
    found = [line_of(problem) for problem in read_reference(tmp_path)[1]]

    assert len(found) == bool(words)
    assert all(words in line and "words/own.yaml:2:" in line for line in found)
