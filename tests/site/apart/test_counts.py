"""Counts that stables are told of each other: what they hold, and what is refused."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from recordgen.cache.entries import Cache
from recordgen.problems import Trouble
from recordgen.site.apart.count import read_counted
from recordgen.site.apart.counts import read_counts
from recordgen.site.build_context import BuildContext
from tests.conftest import TODAY
from tests.support.apart import copied_alone, counted, git, tangled_practice


@pytest.fixture(scope="module")
def practice(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path, BuildContext]:
    """The records, their counts, and the context of all of it."""
    folder = tmp_path_factory.mktemp("counted")
    records = tangled_practice(folder / "records")
    return records, folder / "counts.json", counted(records, folder / "counts.json")


Practice = tuple[Path, Path, BuildContext]


def test_a_stable_is_compared_with_others_that_are_not_here(practice: Practice, tmp_path: Path) -> None:
    """Its patterns, its errors of reading and of the hand, and its trail are those of the practice as a whole."""
    records, file, context = practice
    own, counts = copied_alone(records, "willowmere", tmp_path / "own"), read_counts(file)
    alone = BuildContext.of(
        read_counted(own, TODAY, "willowmere", counts, Cache(None)), TODAY, Cache(None), counts=counts
    )

    assert alone.patterns["willowmere"] == context.patterns["willowmere"]
    assert any(one.than_others == "more" for one in alone.patterns["willowmere"])
    assert alone.ways.hand_times == context.ways.hand_times != 1.0
    assert alone.ways.toe_reading_sd_mm == context.ways.toe_reading_sd_mm != 1.0
    assert alone.trails["willowmere", "horse-1"] == context.trails["willowmere", "horse-1"]
    assert not any(
        change.for_all for trail in alone.trails["willowmere", "horse-1"] if trail for change in trail.changes
    )


def test_they_hold_no_word_of_a_record(practice: Practice) -> None:
    """Numbers by the folders of stables and the keys of findings; no horse, no reading of one."""
    text = practice[1].read_text()

    assert not [word for word in ("Horse", "horse-", "Yard", "bill") if word in text]
    assert practice[1].stat().st_mode & 0o777 == 0o600


def _digit(text: str) -> str:
    return text.replace('"looked": 4', '"looked": 3').replace("    4\n", "    5\n", 1)


def _newer(text: str) -> str:
    return text.replace('"version": "0', '"version": "9')


@pytest.mark.parametrize(
    ("spoil", "says"),
    [
        (lambda text: text[:-40], "holds no counts"),
        (lambda text: "[]", "holds no counts"),
        (lambda text: "[" * 100_000, "holds no counts"),
        (lambda text: text.replace("bruise", "bruises"), "holds no counts"),
        (_digit, "was changed or damaged"),
    ],
)
def test_counts_that_were_damaged_are_refused(
    practice: Practice, tmp_path: Path, spoil: Callable[[str], str], says: str
) -> None:
    """In a sentence with the way out; no figure of them is used."""
    (tmp_path / "counts.json").write_text(spoil(practice[1].read_text()))

    with pytest.raises(Trouble, match=says) as told:
        read_counts(tmp_path / "counts.json")
    assert "recordgen stables --counts" in told.value.way_out


def test_counts_of_another_version_are_refused(practice: Practice, tmp_path: Path) -> None:
    """They may be counted otherwise."""
    counts = read_counts(practice[1]).model_copy(update={"version": "99"})
    counts.write(tmp_path / "counts.json")

    with pytest.raises(Trouble, match="made by recordgen 99"):
        read_counts(tmp_path / "counts.json")


@pytest.mark.parametrize(
    ("other", "says"),
    [
        ({"today": TODAY.replace(day=1)}, "as of 2026-11-01"),
        ({"shared": "0"}, "practice.yaml"),
        ({"history": "nothing"}, "where git tells 'nothing'"),
        ({"stables": {}}, "no stable 'willowmere'"),
    ],
)
def test_counts_that_do_not_fit_what_is_here_are_refused(practice: Practice, other: dict[str, Any], says: str) -> None:
    """The site would be another than in a build of all."""
    counts = read_counts(practice[1]).model_copy(update=other)

    with pytest.raises(Trouble, match=says):
        read_counted(practice[0], TODAY, "willowmere", counts, Cache(None))


def test_a_history_that_was_cut_short_is_refused(practice: Practice, tmp_path: Path) -> None:
    """As many services of CI fetch it unless they are told otherwise."""
    git(tmp_path, "clone", "--quiet", "--depth=1", f"file://{practice[0]}", "short")

    with pytest.raises(Trouble, match="cut short") as told:
        read_counted(tmp_path / "short", TODAY, "willowmere", read_counts(practice[1]), Cache(None))
    assert "whole history" in told.value.way_out


def test_what_others_have_is_told_only_where_it_can_be_seen(practice: Practice) -> None:
    """A finding at one stable changes what the other two are told, and not what it is told itself."""
    counts = read_counts(practice[1])
    stables = {slug: dict(found) for slug, found in counts.stables.items()}
    stables["old-mill"]["crack"] = (1, 4, 4)
    after = counts.model_copy(update={"stables": stables})
    other = {slug for slug in stables if counts.told_to(slug) != after.told_to(slug)}

    assert other == {"willowmere", "hazel-bottom"}
