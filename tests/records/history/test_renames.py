"""Files followed through renamed folders and joined lines of work, with a real git."""

import datetime as dt
import shutil
import subprocess
from pathlib import Path

import pytest

from tests.support.git_practice import LONGER, OTHER, SHORTER, TOE, Kept, alone, begun
from tests.support.practice_folders import VISIT, VISIT_FILE


@pytest.fixture(autouse=True)
def _somebody(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """Git knows who we are."""
    alone(monkeypatch, tmp_path)


@pytest.fixture
def kept(tmp_path: Path) -> Kept:
    """A practice with one visit, kept on 14 October."""
    return begun(tmp_path)


@pytest.mark.parametrize(
    ("old", "new", "now"),
    [
        ("willowmere/bramble", "willowmere/daisy", OTHER),
        ("willowmere", "old-mill", "old-mill/bramble/2026-10-14.yaml"),
        (VISIT_FILE, "willowmere/bramble/2026-10-13.yaml", "willowmere/bramble/2026-10-13.yaml"),
    ],
)
def test_a_renamed_folder_or_file_is_followed(kept: Kept, old: str, new: str, now: str) -> None:
    """Values before and after belong to one visit."""
    day = now[-15:-5]
    kept.entry("2026-10-20", "first", {VISIT_FILE: LONGER.replace("2026-10-14", day)})
    kept.git("mv", old, new)
    kept.entry("2026-10-25", "renamed")
    kept.entry("2026-10-30", "second", {now: SHORTER.replace("2026-10-14", day)})
    trail = kept.trail(now)

    assert (trail.first, trail.doubts) == (dt.date(2026, 10, 14), ())
    assert [(change.reason, change.parts[-1].before, change.parts[-1].after) for change in trail.changes] == [
        ("first", "75 mm", "77 mm"),
        ("second", "77 mm", "74 mm"),
    ]


def test_a_folder_renamed_with_all_its_files_rewritten_is_followed_by_its_horse(kept: Kept) -> None:
    """No two contents are alike; the horse's own file tells."""
    kept.git("mv", "willowmere/bramble", "willowmere/daisy")
    kept.entry("2026-10-20", "renamed", {OTHER: "date: 2026-10-14\nnote: nothing like before\n"})

    assert kept.trail(OTHER).first == dt.date(2026, 10, 14)
    assert ("note", None, "nothing like before") in kept.told(OTHER)[0][2]


def test_records_moved_out_of_a_folder_are_followed(tmp_path: Path) -> None:
    """The whole tree one step up, so that the repository is theirs alone."""
    kept = begun(tmp_path, "records")
    for name in ("practice.yaml", "willowmere"):
        kept.git("mv", f"records/{name}", name)
    shutil.rmtree(kept.top / "records")
    kept.entry("2026-10-20", "moved")

    assert Kept(kept.top, kept.top).trail().first == dt.date(2026, 10, 14)


def test_a_name_that_is_used_again_for_another_visit_is_not_mixed_up(kept: Kept) -> None:
    """A horse's folder is renamed, and another horse comes into the old one."""
    kept.entry("2026-10-16", "first", {VISIT_FILE: LONGER})
    kept.git("mv", "willowmere/bramble", "willowmere/daisy")
    kept.entry("2026-10-20", "renamed")
    kept.entry("2026-10-25", "came", {"willowmere/bramble/horse.yaml": "name: Otter\n", VISIT_FILE: SHORTER})

    assert (kept.trail(OTHER).first, kept.trail().first) == (dt.date(2026, 10, 14), dt.date(2026, 10, 25))
    assert [change.reason for change in kept.trail(OTHER).changes] == ["first"]
    assert kept.trail().changes == ()


def test_a_visit_of_another_day_that_only_looks_alike_is_not_taken_for_the_same(kept: Kept) -> None:
    """One horse's visit goes, another's comes, in one entry."""
    new = "heath/otter/2026-11-18.yaml"
    more = {"heath/stable.yaml": "name: Heath\n", "heath/otter/horse.yaml": "name: Otter\n"}
    kept.entry("2026-11-18", "x", {VISIT_FILE: None, new: VISIT.replace("2026-10-14", "2026-11-18"), **more})

    assert (kept.trail(new).first, kept.trail(new).changes) == (dt.date(2026, 11, 18), ())


def test_a_visit_filed_under_another_horse_is_followed_as_a_guess(kept: Kept) -> None:
    """It is alike, and so it is said that this is not sure."""
    kept.entry("2026-10-15", "came", {"willowmere/daisy/horse.yaml": "name: Daisy\nborn: 2019\n"})
    kept.entry("2026-10-20", "other horse", {VISIT_FILE: None, OTHER: LONGER})

    assert kept.trail(OTHER).first == dt.date(2026, 10, 14)
    assert kept.trail(OTHER).doubts == (
        "Its file seems to have had another name before; whether that was this visit is not sure",
    )


def test_a_visit_that_moved_alone_between_stables_begins_anew_and_says_so(kept: Kept) -> None:
    """Something told at one stable is never guessed at another."""
    new = "heath/otter/2026-10-14.yaml"
    more = {"heath/stable.yaml": "name: Heath\n", "heath/otter/horse.yaml": "name: Otter\n"}
    kept.entry("2026-10-16", "first", {VISIT_FILE: LONGER, **more})
    kept.entry("2026-10-20", "moved", {VISIT_FILE: None, new: LONGER})

    assert (kept.trail(new).first, kept.trail(new).changes) == (dt.date(2026, 10, 20), ())
    assert kept.trail(new).doubts == ("Its file may have had another name before; nothing is told from then",)


def side_and_main(kept: Kept, side: dict[str, str], main: dict[str, str]) -> None:
    """Two lines of work from here: an entry each, and main checked out."""
    kept.git("checkout", "--quiet", "-b", "side")
    kept.entry("2026-10-20", "side", side)
    kept.git("checkout", "--quiet", "main")
    kept.entry("2026-10-21", "main", main)


def test_a_change_from_a_line_that_was_joined_is_told_once(kept: Kept) -> None:
    """With its own day and reason, and no doubt."""
    side_and_main(kept, {VISIT_FILE: LONGER}, {"practice.yaml": "name: A\ntrimmer: B\n"})
    kept.git("merge", "--quiet", "--no-edit", "side", day="2026-10-22T12:00:00Z")

    assert kept.told() == [("2026-10-20", "side", [(TOE, "75 mm", "77 mm")])]
    assert kept.trail().doubts == ()


def test_a_visit_that_came_by_a_joined_line_was_first_kept_there(kept: Kept) -> None:
    """Not when the lines were joined."""
    named = "willowmere/bramble/2026-10-20.yaml"
    side_and_main(kept, {named: "date: 2026-10-20\nnote: x\n"}, {})
    kept.git("merge", "--quiet", "--no-edit", "side", day="2026-10-22T12:00:00Z")

    assert kept.trail(named).first == dt.date(2026, 10, 20)


def test_a_joint_that_settles_two_values_is_told_and_doubted(kept: Kept) -> None:
    """The value it settled on is new to both lines."""
    side_and_main(kept, {VISIT_FILE: LONGER}, {VISIT_FILE: SHORTER})
    with pytest.raises(subprocess.CalledProcessError):
        kept.git("merge", "--quiet", "side")
    kept.entry(
        "2026-10-22", "joined", {VISIT_FILE: VISIT.replace("after:  {toe_length: 75", "after:  {toe_length: 76")}
    )
    told = kept.told()

    assert sorted(reason for _, reason, _ in told) == ["joined", "main", "side"]
    assert told[-1] == ("2026-10-22", "joined", [(TOE, "74 mm", "76 mm")])
    assert kept.trail().doubts == (
        "Lines of work were joined in the history, so one of these changes may not have lasted",
    )


def test_a_joint_that_drops_a_line_is_doubted(kept: Kept) -> None:
    """A change by the dropped line is told, and does not stand."""
    side_and_main(kept, {VISIT_FILE: LONGER}, {"practice.yaml": "name: A\ntrimmer: B\n"})
    kept.git("merge", "--quiet", "--strategy=ours", "--no-edit", "side", day="2026-10-22T12:00:00Z")

    assert len(kept.trail().doubts) == 1
    assert kept.trail().first == dt.date(2026, 10, 14)


def test_a_change_under_the_old_name_on_another_line_is_followed(kept: Kept) -> None:
    """One line renames, the other corrects, and they are joined."""
    kept.git("checkout", "--quiet", "-b", "side")
    kept.entry("2026-10-20", "side", {VISIT_FILE: LONGER})
    kept.git("checkout", "--quiet", "main")
    kept.git("mv", "willowmere/bramble", "willowmere/daisy")
    kept.entry("2026-10-21", "renamed")
    kept.git("merge", "--quiet", "--no-edit", "side", day="2026-10-22T12:00:00Z")

    assert kept.trail(OTHER).first == dt.date(2026, 10, 14)
    assert kept.told(OTHER) == [("2026-10-20", "side", [(TOE, "75 mm", "77 mm")])]


def test_visits_at_two_places_with_one_content_keep_their_own_trails(kept: Kept) -> None:
    """Horses whose visits read alike, moved in one entry."""
    text = "date: 2026-10-14\ntrimmed: no\nnote: Not caught\n"
    horses = {f"willowmere/{name}/horse.yaml": f"name: {name}\n" for name in ("fern", "gale")}
    fern, gale = (f"willowmere/{name}/2026-10-14.yaml" for name in ("fern", "gale"))
    kept.entry("2026-10-15", "both", {**horses, fern: "date: 2026-10-14\nnote: x\n", gale: text})
    kept.entry("2026-10-16", "fern", {fern: text})
    kept.git("mv", "willowmere/gale", "willowmere/a-gale")
    kept.git("mv", "willowmere/fern", "willowmere/z-fern")
    kept.entry("2026-10-17", "renamed")

    assert [reason for _, reason, _ in kept.told("willowmere/z-fern/2026-10-14.yaml")] == ["fern"]
    assert kept.told("willowmere/a-gale/2026-10-14.yaml") == []
