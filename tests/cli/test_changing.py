"""Stables and horses begun, renamed, moved, ended and taken up again; visits corrected; the last change taken back."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from recordgen.cli import begin, main
from tests.support.commands import run
from tests.support.git_practice import Kept, alone
from tests.support.git_practice import begun as begun_practice
from tests.support.practice_folders import TODAY

VISIT = "willowmere/bramble/2026-10-14.yaml"
TWO = {
    "hazel-bottom/stable.yaml": "# By the ford.\nname: Hazel Bottom\nnear: [willowmere]   # same lane\n",
    "hazel-bottom/clover/horse.yaml": "name: Clover\nmicrochip: 826098100012345\n",
    "willowmere/bramble/horse.yaml": "name: Bramble   # the bay\n\nborn: 2015\nprivate_note: bites\n",
}


@pytest.fixture
def kept(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Kept:
    """A practice of two stables in a real git."""
    alone(monkeypatch, tmp_path)
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(tmp_path / "keys"))
    made = begun_practice(tmp_path)
    made.entry("2026-10-20", "Hazel Bottom begun", TWO)
    return made


def do(kept: Kept, *words: str) -> Result:
    """A command on these records, as of the fixed day where it takes one."""
    day = () if words[0] == "undo" else ("--today", TODAY.isoformat())
    return run(*words, "--records", kept.records, *day)


def state(kept: Kept) -> tuple[bytes, bytes]:
    """All that git knows: the last entry, and what is not as it keeps it."""
    return kept.git("rev-parse", "HEAD"), kept.git("status", "--porcelain", "--untracked-files=all")


def last(kept: Kept) -> str:
    """The first line of the last entry."""
    return kept.git("log", "-1", "--format=%s").decode().strip()


CHANGES = [
    (("begin", "Three Oaks"), "Three Oaks: begun"),
    (("begin", "Hazel Bottom/Bilberry", "--kind", "pony", "--born", "2014"), "Hazel Bottom: Bilberry begun"),
    (("begin", "Moss", "--at", "willowmere"), "Willowmere: Moss begun"),
    (("rename", "bramble", "Old Bramble"), "Willowmere: Bramble is called Old Bramble now"),
    (("rename", "willowmere", "Willow Mere Yard"), "Willow Mere Yard: was Willowmere before"),
    (("move", "bramble", "Hazel Bottom"), "Hazel Bottom: Bramble moved from willowmere/bramble"),
    (("move", "bramble", "hazel-bottom", "--without-past"), "Hazel Bottom: Bramble begun anew, from willowmere"),
    (("end", "bramble", "--why", "died", "--date", "2026-11-20"), "Willowmere: the record of Bramble ends, died"),
    (("end", "Hazel Bottom", "--why", "left"), "Hazel Bottom: visited no more, left"),
    (("contact", "bramble", "--owner", "Jonah Peake", "--phone", "07700 900317"), "Willowmere: owner of Bramble noted"),
    (
        ("correct", "bramble", "2026-10-14", "--because", "misread the rule", "--set", "feet.LF.before.toe_length=83"),
        "misread the rule",
    ),
]


@pytest.mark.parametrize(("words", "says"), CHANGES)
def test_each_change_is_one_entry_that_undo_takes_back(kept: Kept, words: tuple[str, ...], says: str) -> None:
    """It names what comes next; the records hold no error after it, and are what they were once it is taken back."""
    files = kept.git("ls-tree", "-r", "HEAD")
    done = do(kept, *words)

    assert done.exit_code == 0, done.output
    assert "Next: recordgen " in done.output
    assert last(kept) == says
    assert kept.git("status", "--porcelain") == b""
    assert do(kept, "check").exit_code == 0
    assert do(kept, "undo").exit_code == 0
    assert last(kept) == f"Taken back: {says}"
    assert kept.git("ls-tree", "-r", "HEAD") == files
    assert kept.git("status", "--porcelain", "--untracked-files=all") == b""


@pytest.mark.parametrize(("words", "says"), CHANGES)
def test_a_dry_run_does_nothing(kept: Kept, words: tuple[str, ...], says: str) -> None:
    """It tells what would be done."""
    before = state(kept)
    told = do(kept, *words, "--dry-run")

    assert told.exit_code == 0, told.output
    assert told.output.endswith("Nothing was changed.\n")
    assert state(kept) == before


def test_what_was_typed_stays_as_it_was(kept: Kept) -> None:
    """Comments, blank lines and order, in the file and in those that name it."""
    do(kept, "rename", "bramble", "Old Bramble")
    do(kept, "rename", "willowmere", "Willow Mere Yard")
    horse = (kept.records / "willow-mere-yard/old-bramble/horse.yaml").read_text()
    other = (kept.records / "hazel-bottom/stable.yaml").read_text()

    assert horse == "name: Old Bramble   # the bay\n\nborn: 2015\nprivate_note: bites\n"
    assert other == "# By the ford.\nname: Hazel Bottom\nnear: [willow-mere-yard]   # same lane\n"


def test_a_horse_without_its_past_brings_nothing_private_along(kept: Kept) -> None:
    """Neither visits nor the private note; the record it leaves says where it went."""
    do(kept, "move", "bramble", "hazel-bottom", "--without-past", "--date", "2026-11-20")
    there = kept.records / "hazel-bottom/bramble"

    assert [file.name for file in there.iterdir()] == ["horse.yaml"]
    assert "bites" not in (there / "horse.yaml").read_text()
    assert (
        "left: {date: 2026-11-20, why: moved to Hazel Bottom}\n"
        in (kept.records / "willowmere/bramble/horse.yaml").read_text()
    )


def test_an_ended_stable_comes_back_with_the_horses_that_ended_with_it(kept: Kept) -> None:
    """And with no other."""
    do(kept, "begin", "hazel-bottom/Bilberry")
    do(kept, "end", "bilberry", "--why", "sold", "--date", "2026-11-01")
    do(kept, "end", "hazel-bottom", "--why", "left", "--date", "2026-11-20")
    back = do(kept, "resume", "hazel-bottom")
    texts = {name: (kept.records / f"hazel-bottom/{name}/horse.yaml").read_text() for name in ("clover", "bilberry")}

    assert "Hazel Bottom is visited again, with 1 horse" in back.output
    assert "left:" not in texts["clover"]
    assert "left: {date: 2026-11-01, why: sold}" in texts["bilberry"]


def test_a_visit_corrected_by_hand_is_kept_with_its_reason(kept: Kept) -> None:
    """The pages tell it beside the visit."""
    file = kept.records / VISIT
    file.write_text(file.read_text().replace("toe_length: 86", "toe_length: 84"))
    done = do(kept, "correct", "bramble", "2026-10-14", "--because", "misread  the rule")

    assert done.exit_code == 0, done.output
    assert [(change.reason, [part.after for part in change.parts]) for change in kept.trail(VISIT).changes] == [
        ("misread the rule", ["84 mm"])
    ]


@pytest.mark.parametrize(
    ("words", "code", "told"),
    [
        (("begin", "willowmere/Bramble"), 1, "There is"),
        (("begin", "  "), 1, "A name is empty. Give it one"),
        (("begin", "Practice"), 1, "'practice' cannot be the name of a folder here. Name another with --folder"),
        (("begin",), 2, "Say what to begin"),
        (("begin", "nowhere/Moss"), 1, "There is no stable 'nowhere'"),
        (("begin", "willowmere/Moss", "--born", "soon"), 1, "willowmere/moss/horse.yaml:6:1: error: born:"),
        (("rename", "bramble", "Bramble"), 1, "It is called Bramble already"),
        (("rename", "clover", "x", "--folder", "Not Good"), 1, "cannot be the name of a folder"),
        (("move", "bramble", "willowmere"), 1, "Bramble is at Willowmere already"),
        (("end", "bramble", "--why", "died", "--date", "2026-10-01"), 1, "was visited on 14 October 2026, after that"),
        (("end", "bramble", "--why", "died", "--date", "2027-10-01"), 1, "is in the future"),
        (("end", "bramble"), 2, "--why"),
        (("end", "bramble", "--why", " "), 1, "A reason is empty"),
        (("resume", "bramble"), 1, "Bramble never ended"),
        (("contact", "bramble"), 2, "Say one of --owner NAME"),
        (("contact", "bramble", "--drop", "payer"), 1, "No payer of Bramble is noted"),
        (
            ("correct", "bramble", "2026-10-15", "--because", "x"),
            1,
            "no visit '2026-10-15'. The last ones are 2026-10-14",
        ),
        (("correct", "bramble", "2026-10-14", "--because", "x"), 1, "The visit is as git keeps it"),
        (("correct", "bramble", "2026-10-14", "--because", "x", "--set", "feet.LF.sole=3"), 1, "No single value"),
        (("correct", "bramble", "2026-10-14", "--because", "x", "--set", "feet.LF.before.toe_length=long"), 1, "long"),
    ],
)
def test_what_cannot_be_done_is_told_and_nothing_is_half_done(
    kept: Kept, words: tuple[str, ...], code: int, told: str
) -> None:
    """No file, folder or entry is other than before."""
    before = state(kept)
    found = do(kept, *words)

    assert found.exit_code == code
    assert told in " ".join(found.output.split())
    assert state(kept) == before


def test_on_a_terminal_it_asks_for_what_was_not_said(kept: Kept, monkeypatch: pytest.MonkeyPatch) -> None:
    """An empty answer leaves a thing out."""
    monkeypatch.setattr(begin, "can_ask", lambda: True)
    answers = "Bilberry\nHazel Bottom\npony\n\n2014\n\n"
    words = ["begin", "--records", str(kept.records), "--today", TODAY.isoformat()]
    done = CliRunner().invoke(main, words, input=answers)
    lines = (kept.records / "hazel-bottom/bilberry/horse.yaml").read_text().splitlines()

    assert done.exit_code == 0, done.output
    assert [line for line in lines if not line.startswith("#")] == ["name: Bilberry", "kind: pony", "born: 2014"]


def test_an_entry_that_git_refuses_leaves_everything_as_it_was(kept: Kept) -> None:
    """Here a hook of the trimmer's own says no; git has nothing of it in mind afterwards."""
    hook = kept.top / ".git/hooks/pre-commit"
    hook.parent.mkdir(exist_ok=True)
    hook.write_text("#!/bin/sh\necho not today\nexit 1\n")
    hook.chmod(0o755)
    before = state(kept)

    assert do(kept, "begin", "hazel-bottom/Moss").exit_code == 1
    assert do(kept, "move", "bramble", "hazel-bottom").exit_code == 1
    assert do(kept, "undo").exit_code == 1
    assert state(kept) == before


def test_what_is_not_kept_yet_is_kept_first(kept: Kept) -> None:
    """So that an entry tells of one thing; a visit that is only begun goes along."""
    kept.write({"willowmere/bramble/2026-11-30.yaml": "date: 2026-11-30\nfeet:\n"})
    assert do(kept, "rename", "bramble", "Old Bramble").exit_code == 0
    assert (kept.records / "willowmere/old-bramble/2026-11-30.yaml").is_file()

    kept.write({"willowmere/old-bramble/2026-11-30.yaml": "date: 2026-11-30\nlameness: {scale: AAEP, grade: 0}\n"})
    told = do(kept, "move", "old bramble", "hazel-bottom")
    assert told.exit_code == 1
    assert "Not in git yet as it is now: willowmere/old-bramble/2026-11-30.yaml. Keep it first" in told.output


def test_undo_once_more_does_it_again(kept: Kept) -> None:
    """Three entries tell all of it, and none is rewritten."""
    do(kept, "rename", "bramble", "Old Bramble")
    do(kept, "undo")
    do(kept, "undo")
    says = kept.git("log", "-3", "--format=%s").decode().splitlines()
    change = "Willowmere: Bramble is called Old Bramble now"

    assert says == [f"Done again: {change}", f"Taken back: {change}", change]
    assert (kept.records / "willowmere/old-bramble/horse.yaml").is_file()


def test_undo_takes_back_nothing_that_is_not_kept(kept: Kept) -> None:
    """Nor the first entry of all."""
    do(kept, "begin", "hazel-bottom/Moss")
    kept.write({"hazel-bottom/moss/2026-11-30.yaml": "date: 2026-11-30\nlameness: {scale: AAEP, grade: 0}\n"})
    told = do(kept, "undo")
    kept.git("checkout", "--quiet", "--orphan", "new")
    kept.git("commit", "--quiet", "--message=all anew")

    assert "Not in git yet: hazel-bottom/moss/2026-11-30.yaml" in told.output
    assert "The last entry is the first of all" in do(kept, "undo").output


def test_an_error_that_was_there_before_stands_in_nobodys_way(kept: Kept) -> None:
    """A change is made all the same, since it is not to blame."""
    kept.entry("2026-10-21", "a slip", {"willowmere/bramble/2026-10-21.yaml": "date: soon\n"})
    done = do(kept, "begin", "hazel-bottom/Moss")

    assert done.exit_code == 0, done.output
    assert last(kept) == "Hazel Bottom: Moss begun"


def test_without_git_changes_are_made_and_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """They are only in no entry."""
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path))
    run("begin", "Three Oaks", "--records", tmp_path / "none")
    made = tmp_path / "records"
    made.mkdir()
    (made / "practice.yaml").write_text("name: Hazel Hoof Care\ntrimmer: Wren Ashdown\n")
    done = run("begin", "Three Oaks", "--records", made, "--today", TODAY.isoformat())

    assert done.exit_code == 0, done.output
    assert "Done. These records are in no git repository." in done.output
    assert (made / "three-oaks/stable.yaml").is_file()
