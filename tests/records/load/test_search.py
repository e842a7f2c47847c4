"""Everything that was typed, found again."""

from __future__ import annotations

from pathlib import Path

import pytest

from recordgen.records.load.search import search
from tests.support.practice_folders import build

FILES = {
    "willowmere/bramble/2026-11-20.yaml": (
        "date: 2026-11-20   # late, by lamp #2\n"
        "note: >\n"
        "  Stood well. # no remark\n"
        "  Thrush is gone.\n"
        "# ask about boots\n"
        "feet: {LF: {before: {toe_length: 91}, done: [toe taken back]}}\n"
    ),
    "willowmere/bramble/2026-11-21.yaml": "date: 2026-11-21\nnote: 'thrush\n",
    "pages/lane.md": "# The lane\n\nBy the top gate, at the thrush's nest.\n",
    "care/own.yaml": "what: Look for thrush\nwhy: x\n",
    "willowmere/bramble/original.txt": "thrush\n",
}


@pytest.fixture(scope="module")
def records(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A practice with remarks, folded text, pages of its own, and a file that is no YAML."""
    return build(tmp_path_factory.mktemp("searched") / "records", FILES)


def told(records: Path, *words: str) -> list[str]:
    """The hits as file:line: where: text."""
    return [
        f"{hit.file.relative_to(records).as_posix()}:{hit.line}: {hit.where}: {hit.text}"
        for hit in search(records, words)
    ]


def test_words_are_found_wherever_they_were_typed(records: Path) -> None:
    """In any case; in folded text, a broken file, a care note and a page; in no file that is no record."""
    assert told(records, "THRUSH") == [
        "care/own.yaml:1: what: Look for thrush",
        "willowmere/bramble/2026-11-20.yaml:2: note: Stood well. # no remark Thrush is gone.",
        "willowmere/bramble/2026-11-21.yaml:2: : note: 'thrush",
        "pages/lane.md:3: : By the top gate, at the thrush's nest.",
    ]


@pytest.mark.parametrize(
    ("words", "found"),
    [
        (("boots",), ["willowmere/bramble/2026-11-20.yaml:5: : # ask about boots"]),
        (("lamp",), ["willowmere/bramble/2026-11-20.yaml:1: : # late, by lamp #2"]),
        (("infection", "surface"), ["willowmere/bramble/2026-10-14.yaml:9: feet, left_fore, frog, infection: surface"]),
        (("toe length", "91"), ["willowmere/bramble/2026-11-20.yaml:6: feet, LF, before, toe_length: 91"]),
        (("toe_length>86",), ["willowmere/bramble/2026-11-20.yaml:6: feet, LF, before, toe_length: 91"]),
        (
            ("toe length >= 86", "14 October"),
            ["willowmere/bramble/2026-10-14.yaml:7: feet, left_fore, before, toe_length: 86"],
        ),
        (("20 November 2026", "taken back"), ["willowmere/bramble/2026-11-20.yaml:6: feet, LF, done: toe taken back"]),
        (("2026-11-20", "lamp"), ["willowmere/bramble/2026-11-20.yaml:1: : # late, by lamp #2"]),
        (("bramble", "2015"), ["willowmere/bramble/horse.yaml:2: born: 2015"]),
        (("willowmere", "nothing of the kind"), []),
        (("toe_length<1",), []),
    ],
)
def test_all_words_must_fit(records: Path, words: tuple[str, ...], found: list[str]) -> None:
    """A name, a value, a remark, a day as people say it, a limit; the file's own name with one of them."""
    assert told(records, *words) == found
