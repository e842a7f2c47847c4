"""Git asked whatever its state, its settings and its days, with a real git."""

import datetime as dt
import os
import shutil
import subprocess
from pathlib import Path

import pytest

from tests.support.git_practice import LONGER, OTHER, SHORTER, TOE, Kept, alone, begun
from tests.support.practice_folders import VISIT_FILE, build


@pytest.fixture(autouse=True)
def _somebody(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """Git knows who we are."""
    alone(monkeypatch, tmp_path)


@pytest.fixture
def kept(tmp_path: Path) -> Kept:
    """A practice with one visit, kept on 14 October."""
    return begun(tmp_path)


def test_a_repository_without_an_entry_keeps_nothing(tmp_path: Path) -> None:
    """Each visit is new."""
    made = Kept(build(tmp_path / "top"), tmp_path / "top")
    made.git("init", "--quiet")

    assert (made.trail().state, made.trail().first) == ("new", None)


def test_records_outside_of_git_have_no_trail(tmp_path: Path) -> None:
    """Why is told."""
    found = Kept(build(tmp_path / "top"), tmp_path / "top").trails()

    assert found.of(tmp_path / "top" / VISIT_FILE) is None
    assert found.trouble.message == "the records are not in a git repository"


def test_a_computer_without_git_has_no_trail(kept: Kept, monkeypatch: pytest.MonkeyPatch) -> None:
    """Why is told."""
    monkeypatch.setenv("PATH", "")

    assert kept.trails().trouble.message == "git is not on this computer"


def test_a_damaged_repository_has_no_trail(kept: Kept) -> None:
    """Why is told, and nothing breaks."""
    shutil.rmtree(kept.top / ".git" / "objects")
    (kept.top / ".git" / "objects").mkdir()

    found = kept.trails()

    assert (found.of(kept.records / VISIT_FILE), found.trouble.way_out) == (None, "Look with: git status")


def test_records_within_a_larger_repository_have_no_trail(tmp_path: Path) -> None:
    """Its entries are about other things too; why is told, with the way out."""
    kept = begun(tmp_path, "all of it/records")
    found = kept.trails()

    assert found.of(kept.records / VISIT_FILE) is None
    assert found.trouble.message == "the records lie within a larger git repository"
    assert "one of their own" in found.trouble.way_out


def test_records_are_found_from_a_link(kept: Kept, tmp_path: Path) -> None:
    """The folder itself may be a link to where they lie."""
    kept.entry("2026-10-20", "more", {VISIT_FILE: LONGER})
    linked = Kept(tmp_path / "link", kept.top)
    linked.records.symlink_to(kept.records)

    assert kept.told() == linked.told() == [("2026-10-20", "more", [(TOE, "75 mm", "77 mm")])]


@pytest.mark.parametrize(
    ("moment", "day"),
    [
        ("2026-10-20T00:30:00+13:00", "2026-10-20"),
        ("2026-10-20T23:30:00-08:00", "2026-10-20"),
        ("2026-10-20T12:00:00Z", "2026-10-20"),
    ],
)
def test_the_day_is_the_one_where_it_was_kept(
    kept: Kept, monkeypatch: pytest.MonkeyPatch, moment: str, day: str
) -> None:
    """Whatever the time zone of this computer."""
    monkeypatch.setenv("TZ", "Asia/Kolkata")
    kept.entry(moment, "x", {VISIT_FILE: LONGER})

    assert kept.told()[0][0] == day


def test_days_that_run_backwards_are_doubted(kept: Kept) -> None:
    """A clock was wrong."""
    kept.entry("2026-10-02", "x", {VISIT_FILE: LONGER})

    assert kept.trail().first == dt.date(2026, 10, 14)
    assert kept.trail().doubts == ("The days of the history run backwards, so a clock was wrong",)


def test_a_history_that_was_written_anew_says_so(kept: Kept) -> None:
    """Only what stands in it now counts."""
    kept.entry("2026-10-20", "x", {VISIT_FILE: LONGER})
    kept.entry("2026-10-21", "y", {VISIT_FILE: SHORTER})
    kept.git("reset", "--quiet", "--soft", "HEAD~2")
    kept.git("commit", "--quiet", "--amend", "--no-edit", day="2026-11-03T12:00:00Z")
    kept.git("commit", "--amend", "--quiet", "--message=all", "--date=2026-10-14T12:00:00Z", day="2026-11-03T12:00:00Z")
    trail = kept.trail()

    assert (trail.first, trail.changes) == (dt.date(2026, 11, 3), ())
    assert trail.doubts[0].startswith("The history was written anew after 14 October 2026")


def test_a_history_that_is_cut_off_says_so(kept: Kept, tmp_path: Path) -> None:
    """The first day may be an earlier one."""
    kept.entry("2026-10-20", "x", {"practice.yaml": "name: A\ntrimmer: B\n"})
    kept.entry("2026-10-21", "y", {VISIT_FILE: LONGER})
    source = f"file://{kept.top}"
    subprocess.run(["git", "clone", "--quiet", "--depth=2", source, tmp_path / "shallow"], check=True)
    trail = Kept(tmp_path / "shallow", tmp_path / "shallow").trail()

    assert (trail.first, trail.or_before, len(trail.changes)) == (dt.date(2026, 10, 20), True, 1)
    assert trail.doubts[0].startswith("The history on this computer is cut off")


def test_a_head_without_a_branch_counts_as_any(kept: Kept) -> None:
    """Entries later on the branch are not looked at."""
    kept.entry("2026-10-20", "x", {VISIT_FILE: LONGER})
    kept.git("checkout", "--quiet", "--detach", "HEAD~1")

    assert kept.told() == []


def test_settings_of_a_person_change_nothing(kept: Kept, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Colours, prefixes, signatures, own ways of printing, a program for differences, variables of a hook."""
    kept.git("mv", "willowmere/bramble", "willowmere/daisy")
    kept.entry("2026-10-15", "renamed")
    kept.entry("2026-10-20", "x", {OTHER: LONGER})
    plain = kept.trails()
    settings = tmp_path / "settings"
    settings.write_text(
        "[color]\nui=always\n[log]\nfollow=true\nshowSignature=true\nshowRoot=false\ndecorate=full\nmailmap=true\n"
        "[diff]\nnoprefix=true\nrelative=true\nrenames=false\nexternal=false\norderFile=/nowhere\nrenameLimit=1\n"
        "[format]\npretty=%B%n%d\n[core]\npager=false\nquotePath=true\nfsmonitor=/nowhere\n[i18n]\nlogOutputEncoding=latin1\n"
        "[status]\nshort=true\nbranch=true\nshowUntrackedFiles=no\nrelativePaths=true\n[pager]\nlog=true\n"
    )
    monkeypatch.setenv("GIT_CONFIG_GLOBAL", str(settings))
    monkeypatch.setenv("GIT_DIR", str(tmp_path / "elsewhere"))
    monkeypatch.setenv("GIT_EXTERNAL_DIFF", "false")

    assert kept.trails() == plain
    assert len(plain.of(kept.records / OTHER).changes) == 1


def test_nothing_is_changed_by_looking(kept: Kept) -> None:
    """Not even git's own notes on the files."""
    os.utime(kept.records / VISIT_FILE)
    index = (kept.top / ".git" / "index").read_bytes()
    kept.trail()

    assert (kept.top / ".git" / "index").read_bytes() == index
    assert kept.trails() == kept.trails()


def test_a_reason_in_other_bytes_is_read_as_far_as_it_goes(kept: Kept) -> None:
    """Its first line alone, on one line, and not endless."""
    kept.entry("2026-10-20", "x", {VISIT_FILE: LONGER})
    kept.rewrite(b"x\n$", b"Gr\xfc\xdfe\x1b[31m\n\nbody\n")
    kept.entry("2026-10-21", "a" * 500, {VISIT_FILE: SHORTER})

    assert [reason for _, reason, _ in kept.told()] == ["Gr\ufffd\ufffde [31m", "a" * 200 + "…"]


def test_a_day_that_cannot_be_read_is_doubted(kept: Kept) -> None:
    """An entry with a broken date."""
    kept.entry("2026-10-20", "x", {VISIT_FILE: LONGER})
    kept.rewrite(rb"committer .*", b"committer Wren <wren@example.org> 99999999999999 +0000")
    trail = kept.trail()

    assert [change.day for change in trail.changes] == [None]
    assert trail.doubts == ("A day in the history cannot be read",)
