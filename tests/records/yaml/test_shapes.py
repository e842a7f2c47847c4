"""A value in the wrong shape is told with the corrected line."""

from __future__ import annotations

from pathlib import Path

import pytest

from recordgen.problems import is_visible
from recordgen.records.models.fields import Record
from recordgen.records.models.horse import Horse
from recordgen.records.models.visit import Visit
from tests.support.practice_folders import problems_of

DAY = "date: 2026-10-14\n"


@pytest.mark.parametrize(
    ("model", "typed", "way_out"),
    [
        (Visit, f"{DAY}next: 6\n", "Write next: {weeks: 6}"),
        (Visit, f"{DAY}next: 2026-11-25\n", "Write next: {date: 2026-11-25}"),
        (Horse, "name: Bramble\nleft: 2026-09-01\n", "Write left: {date: 2026-09-01}"),
        (Horse, "name: Bramble\nleft: died\n", "Write left: {date: …, why: died}"),
        (Horse, "name: Bramble\nconsent: yes\n", "Write consent: {vet: yes, by: …, date: …}"),
        (Horse, "name: Bramble\nconformation: toes in, base narrow\n", "Write conformation: [toes in, base narrow]"),
        (Visit, f"{DAY}care: dry-bed\n", "Write care: [dry-bed]"),
        (Visit, f"{DAY}next: 6 weeks\n", "Write next: {weeks: 6}"),
        (Visit, f"{DAY}next: 25.11.2026\n", "Write next: {date: 2026-11-25}"),
        (Visit, f"{DAY}next: soon\n", "Write next: {weeks: …}"),
    ],
)
def test_the_corrected_line_is_told(tmp_path: Path, model: type[Record], typed: str, way_out: str) -> None:
    """Typed text stays; what is missing besides is left to fill in."""
    (problem,) = problems_of(tmp_path, typed, model)

    assert problem.way_out == way_out


@pytest.mark.parametrize("typed", ['next: "{6}"', f"next: '{'6 ' * 40}'"])
def test_nothing_is_guessed_of_what_fits_no_key(tmp_path: Path, typed: str) -> None:
    """Then the form alone is told."""
    (problem,) = problems_of(tmp_path, f"{DAY}{typed}\n")

    assert problem.way_out == "Write key: value, each on its own line"


def test_what_is_told_is_right(tmp_path: Path) -> None:
    """The corrected line, typed as it is told, has no problem."""
    (problem,) = problems_of(tmp_path, f"{DAY}next: 6\n")

    assert problems_of(tmp_path, f"{DAY}{problem.way_out.removeprefix('Write ')}\n") == []


FOOT = f"{DAY}feet:\n  left_fore:\n    "


@pytest.mark.parametrize("sign", ["\t", "\u202e", "\u2066", "x" * 500, "1" * 500, " " * 500])
@pytest.mark.parametrize(
    ("code", "typed"),
    [
        ("key-unknown", f"{FOOT}before: {{toe_length: 8§6,5}}\n"),
        ("key-unknown", f"{DAY}comment: calm§\n"),
        ("name-unknown", f"{DAY}feet:\n  front left§: {{landing: flat}}\n"),
        ("word-unknown", f"{FOOT}landing: fl§ta\n"),
        ("keys-expected", f'{FOOT}before: {{heel_height: "33§/32"}}\n'),
        ("list-expected", f"{DAY}care: dry§-bed\n"),
        ("number-form", f"{FOOT}before: {{toe_length: 8.8 §q}}\n"),
        ("value-impossible", f'{FOOT}before: {{toe_length: "8.6§"}}\n'),
        ("space-missing", f"{DAY}no§te:calm§\n"),
        ("yaml-colon", f"{FOOT}be§fore: toe_length: 8§6\n"),
        ("yaml-quote", f"{DAY}no§te: 'It's calm§'\n"),
        ("yaml-dash", f"{DAY}care:\n• dry§-bed\n"),
    ],
)
def test_what_was_typed_stays_within_its_line(tmp_path: Path, code: str, typed: str, sign: str) -> None:
    """No tab, no turn of direction and no endless word is told again; without it the slip is known."""
    told = [problem.message + problem.way_out for problem in problems_of(tmp_path, typed.replace("§", sign))]

    assert code in {problem.code for problem in problems_of(tmp_path, typed.replace("§", ""))}
    assert told
    assert all(len(text) < 400 and all(map(is_visible, text)) for text in told)


def test_a_key_that_is_meant_is_known_by_its_capitals_too(tmp_path: Path) -> None:
    """An age is no year of birth, however it is typed."""
    (problem,) = problems_of(tmp_path, "name: Bramble\nAge: 11\n", Horse)

    assert problem.way_out == "Write the year of birth, such as born: 2015, since an age is soon wrong"
