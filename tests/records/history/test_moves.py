"""Folders that were renamed or moved: known by what lies in them, kept as one entry, their history with them."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import pytest

from recordgen.git.changes import kinds_of_change
from recordgen.git.keep import commit
from recordgen.records.history.earlier_names import stables_before
from recordgen.records.history.moves import moves
from recordgen.records.load.everything import read_whole
from recordgen.records.write.commits import entries
from tests.support.git_practice import LONGER, Kept, alone, begun
from tests.support.practice_folders import TODAY, VISIT, VISIT_FILE

SECOND = "willowmere/bramble/2026-11-25.yaml"
OTHER_STABLE = {
    "heath/stable.yaml": "name: Heath\nnote: Mind the step at the gate.\n",
    "heath/otter/horse.yaml": "name: Otter\nkind: pony\n",
}


@pytest.fixture
def kept(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Kept:
    """A practice of two stables, with a visit that was amended since."""
    alone(monkeypatch, tmp_path)
    made = begun(tmp_path)
    made.entry("2026-11-25", "more", {**OTHER_STABLE, SECOND: VISIT.replace("2026-10-14", "2026-11-25")})
    made.entry("2026-11-26", "amended", {VISIT_FILE: LONGER})
    return made


def move(kept: Kept, old: str, new: str, by_git: bool = False) -> None:
    """Give a folder another place, by git or behind its back."""
    (kept.records / new).parent.mkdir(exist_ok=True)
    if by_git:
        kept.git("mv", old, new)
    else:
        (kept.records / old).rename(kept.records / new)


def enter(kept: Kept) -> list[str]:
    """Keep all that changed, as `recordgen commit` does; what the entries say."""
    changed = kinds_of_change(kept.records)
    made = entries(read_whole(kept.records, TODAY).practice, changed, moves(kept.records, changed))
    for entry in made:
        commit(kept.records, entry.paths, entry.says)
    return [entry.says for entry in made]


@pytest.mark.parametrize("by_git", [False, True], ids=["mv", "git mv"])
@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("willowmere", "old-mill", "Willowmere: moved from willowmere"),
        ("willowmere/bramble", "willowmere/bram", "Willowmere: Bramble moved from willowmere/bramble"),
        ("willowmere/bramble", "heath/bramble", "Heath: Bramble moved from willowmere/bramble"),
    ],
)
def test_a_folder_that_moved_is_one_entry_and_keeps_its_history(
    kept: Kept, by_git: bool, old: str, new: str, says: str
) -> None:
    """A stable, a horse under another name, a horse at another stable."""
    move(kept, old, new, by_git)

    assert enter(kept) == [says]
    assert kinds_of_change(kept.records) == {}
    trail = kept.trail(VISIT_FILE.replace(old, new))
    assert (trail.first, [change.reason for change in trail.changes]) == (dt.date(2026, 10, 14), ["amended"])


def test_what_was_written_meanwhile_goes_along_or_makes_its_own_entry(kept: Kept) -> None:
    """An amended file moves with its folder; a new visit is told as one."""
    move(kept, "willowmere", "old-mill")
    third = VISIT.replace("2026-10-14", "2026-11-30")
    kept.write({"old-mill/stable.yaml": "name: Old Mill\n", "old-mill/bramble/2026-11-30.yaml": third})
    says = enter(kept)

    assert says == [
        "Old Mill: moved from willowmere",
        "Old Mill, 30 November 2026: Bramble seen",
    ]
    assert kept.trail(VISIT_FILE.replace("willowmere", "old-mill")).first == dt.date(2026, 10, 14)


def test_a_horse_taken_out_and_another_that_came_is_no_move(kept: Kept) -> None:
    """Nothing of the one lies in the other."""
    for file in ("horse.yaml", "2026-10-14.yaml", "2026-11-25.yaml"):
        (kept.records / "willowmere/bramble" / file).unlink()
    (kept.records / "willowmere/bramble").rmdir()
    kept.write({"willowmere/daisy/horse.yaml": "name: Daisy\n"})

    assert moves(kept.records, kinds_of_change(kept.records)) == []
    assert enter(kept) == [
        "Willowmere: 4 other changes\n\nWillowmere: bramble's visit of 14 October 2026 taken out; bramble's visit of "
        "25 November 2026 taken out; bramble taken out; Daisy added"
    ]


def test_records_within_a_larger_repository_move_too(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Git counts names from the top there."""
    alone(monkeypatch, tmp_path)
    within = begun(tmp_path, "all of it/records")
    (within.records / "willowmere").rename(within.records / "old-mill")
    (found,) = moves(within.records, kinds_of_change(within.records))

    assert (str(found.old), str(found.new), found.is_stable) == ("willowmere", "old-mill", True)
    assert stables_before(within.records, "old-mill") == ["willowmere"]


def test_a_copy_is_no_move(kept: Kept) -> None:
    """The first is still there."""
    kept.write({"willowmere/twin/horse.yaml": (kept.records / "willowmere/bramble/horse.yaml").read_bytes()})

    assert moves(kept.records, kinds_of_change(kept.records)) == []
