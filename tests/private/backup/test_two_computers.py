"""Two computers and a stick: each brings what the other kept, and nothing of either is lost."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from recordgen.git import join
from recordgen.git.copies import entry_of
from tests.conftest import ROOT
from tests.support.two_computers import BRAMBLE, Computer, first_computer, second_computer

Both = tuple[Computer, Computer]


@pytest.fixture
def both(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Both:
    """One computer that backed up, and a second one restored from it."""
    one = first_computer(tmp_path, monkeypatch)
    assert one.backup().exit_code == 0
    return one, second_computer(one, tmp_path)


def test_what_one_kept_comes_to_the_other(both: Both) -> None:
    """By one command each way; the second time there is nothing new."""
    one, two = both
    one.keep((BRAMBLE, "weeks: 6", "weeks: 5"))
    one.backup()
    told = two.fetch()

    assert (told.exit_code, two.files()) == (0, one.files())
    assert "From the other computer:\n    changed" in told.output
    assert "Nothing new" in two.fetch().output
    assert two.git("status", "--porcelain") == ""


def test_a_file_that_was_saved_again_as_it_was_stops_nothing(both: Both) -> None:
    """An editor wrote the same bytes anew, so the disk has another moment for it than git remembers."""
    one, two = both
    one.keep((BRAMBLE, "weeks: 6", "weeks: 5"))
    one.backup()
    os.utime(two.records / BRAMBLE, (1, 1))
    told = two.fetch()

    assert (told.exit_code, two.files()) == (0, one.files())


def test_readings_that_each_changed_are_joined_where_lines_could_not_be(both: Both) -> None:
    """Two values of one line, and two lines below each other; what somebody noted beside them stays."""
    one, two = both
    one.keep((BRAMBLE, "toe_angle: 50", "toe_angle: 51"), (BRAMBLE, "toe_length: 80", "toe_length: 81"))
    one.backup()
    two.keep((BRAMBLE, "toe_length: 88", "toe_length: 87"))
    told = two.fetch()

    assert told.exit_code == 0
    assert "Joined from both: Bramble at Willowmere, 14 October 2026." in told.output
    assert "before: {toe_length: 87, toe_angle: 51}" in two.text()
    assert "after:  {toe_length: 81}" in two.text()
    assert "# in the rain" in two.text()
    assert two.backup().exit_code == 0
    assert one.fetch().exit_code == 0
    assert one.files() == two.files()


def test_a_visit_that_both_began_on_one_day_becomes_one(both: Both) -> None:
    """Each foot from where it was written down."""
    one, two = both
    name = "willowmere/bramble/2026-11-20.yaml"
    for computer, foot in ((one, "left_fore"), (two, "right_fore")):
        computer.write(name, f"date: 2026-11-20\nfeet: {{{foot}: {{landing: flat}}}}\n")
        computer.keep()
    one.backup()

    assert two.fetch().exit_code == 0
    assert two.text(name) == (
        "date: 2026-11-20\nfeet:\n  left_fore:\n    landing: flat\n  right_fore:\n    landing: flat\n"
    )


def test_the_same_reading_changed_on_both_is_asked_with_both_values(both: Both) -> None:
    """By horse and reading, never with git's marks; until then nothing changes, and the answer is taken."""
    one, two = both
    one.keep((BRAMBLE, "toe_length: 80", "toe_length: 81"))
    one.backup()
    two.keep((BRAMBLE, "toe_length: 80", "toe_length: 79"), (BRAMBLE, "weeks: 6", "weeks: 4"))
    before = two.files()
    told = two.fetch()
    answers = two.records / "received" / "answers.yaml"

    assert (told.exit_code, two.files()) == (1, before)
    assert "Bramble at Willowmere, 14 October 2026: left fore, after, toe length was changed on both" in told.output
    assert "here: 79 (this computer)" in told.output
    assert "there: 81 (the other computer)" in told.output
    assert "<<<<" not in told.output
    answers.write_text(answers.read_text().replace("    answer:\n", "    answer: there\n"))
    assert two.fetch().exit_code == 0
    assert "toe_length: 81" in two.text()
    assert "weeks: 4" in two.text()


def test_a_visit_taken_out_on_one_and_changed_on_the_other_is_asked_about(both: Both) -> None:
    """Neither wins by itself."""
    one, two = both
    one.write(BRAMBLE, None)
    one.keep()
    one.backup()
    two.keep((BRAMBLE, "weeks: 6", "weeks: 4"))
    told = two.fetch()

    assert told.exit_code == 1
    assert "there: it is taken out, as on the other computer" in told.output
    assert "weeks: 4" in two.text()


def test_a_horse_moved_on_one_keeps_the_visit_that_the_other_wrote(both: Both) -> None:
    """The visit goes to where the horse is now."""
    one, two = both
    one.write("old-mill/stable.yaml", "name: The Old Mill\n")
    one.git("mv", "willowmere/bramble", "old-mill/bramble")
    one.keep()
    one.backup()
    two.write("willowmere/bramble/2026-11-20.yaml", "date: 2026-11-20\nnote: Seen.\n")
    two.keep()

    assert two.fetch().exit_code == 0
    assert two.text("old-mill/bramble/2026-11-20.yaml") == "date: 2026-11-20\nnote: Seen.\n"
    assert not (two.records / "willowmere" / "bramble" / "2026-11-20.yaml").exists()


def test_a_copy_that_is_ahead_is_never_written_over(both: Both) -> None:
    """The one that comes second is told to fetch first."""
    one, two = both
    one.keep((BRAMBLE, "weeks: 6", "weeks: 5"))
    one.backup()
    two.keep((BRAMBLE, "toe_angle: 50", "toe_angle: 51"))
    told = two.backup()

    assert told.exit_code == 1
    assert "The copy holds an entry that is not here. Bring them first: recordgen fetch." in told.output
    assert "weeks: 5" in one.text()


def test_what_is_not_kept_yet_stops_a_fetch_and_stays(both: Both) -> None:
    """A change in progress is never joined over; a new file that nobody else wrote does not matter."""
    one, two = both
    one.keep((BRAMBLE, "weeks: 6", "weeks: 5"))
    one.backup()
    two.write(BRAMBLE, two.text().replace("weeks: 6", "weeks: 3"))
    told = two.fetch()

    assert told.exit_code == 1
    assert f"'{BRAMBLE}' is not kept in git yet. Keep it first: recordgen commit" in told.output
    assert "weeks: 3" in two.text()
    two.git("checkout", "--quiet", "--", ".")
    two.write("willowmere/bramble/2026-11-20.yaml", "date: 2026-11-20\n")
    assert two.fetch().exit_code == 0
    assert two.text("willowmere/bramble/2026-11-20.yaml") == "date: 2026-11-20\n"


@pytest.mark.parametrize("written", [0, 1, 2])
def test_a_kill_in_the_middle_loses_nothing(both: Both, monkeypatch: pytest.MonkeyPatch, written: int) -> None:
    """Whatever part of the files was in place, the next run goes on to the end."""
    one, two = both
    other = "willowmere/bramble/horse.yaml"
    one.keep((BRAMBLE, "weeks: 6", "weeks: 5"), (other, "born: 2015", "born: 2014"))
    one.backup()

    def killed(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(join, "_end", killed)
    assert two.run("fetch", two.stick, "--records", two.records).exit_code != 0
    monkeypatch.undo()
    assert entry_of(two.records, join.JOINING) is not None
    for name in (BRAMBLE, other)[written:]:
        two.git("show", f"HEAD:{name}")
        (two.records / name).write_text(two.git("show", f"HEAD:{name}"))

    monkeypatch.setenv("GIT_COMMITTER_NAME", "Wren Ashdown")
    assert two.fetch().exit_code == 0
    assert two.files() == one.files()
    assert two.git("status", "--porcelain") == ""
    assert entry_of(two.records, join.JOINING) is None


def test_a_change_after_a_kill_is_not_written_over(both: Both, monkeypatch: pytest.MonkeyPatch) -> None:
    """It is named, and stays."""
    one, two = both
    one.keep((BRAMBLE, "weeks: 6", "weeks: 5"))
    one.backup()

    def killed(*_: object) -> None:
        raise KeyboardInterrupt

    with monkeypatch.context() as patched:
        patched.setattr(join, "_end", killed)
        two.fetch()
    two.write(BRAMBLE, two.text() + "note: Typed since.\n")
    told = two.fetch()

    assert told.exit_code == 1
    assert f"'{BRAMBLE}' was changed while records were being joined" in told.output
    assert two.text().endswith("note: Typed since.\n")


def test_the_copy_of_another_practice_is_told(both: Both, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Neither written to nor joined."""
    one, _ = both
    (tmp_path / "others").mkdir()
    other = first_computer(tmp_path / "others", monkeypatch)
    other.stick = one.stick
    other.git("commit", "--quiet", "--amend", "--message=another beginning")

    assert "That copy is of another practice" in other.fetch().output
    assert "That copy is of another practice" in other.backup().output


def test_a_program_that_git_would_run_is_never_taken_over_unasked(both: Both) -> None:
    """Whoever had the stick could have put it there; what is to be done is told, and works."""
    one, two = both
    one.write(".githooks/pre-commit", "#!/bin/sh\ntouch /tmp/somewhere\n")
    one.keep()
    one.backup()
    told = two.fetch()
    line = "refs/recordgen/there/records"

    assert told.exit_code == 1
    assert "The other computer changed '.githooks/pre-commit', which git runs on this one" in told.output
    assert f"git checkout {line} -- .githooks" in told.output
    assert not (two.records / ".githooks").exists()
    two.git("checkout", line, "--", ".githooks")
    two.git("commit", "--quiet", "--message=taken over")
    assert two.fetch().exit_code == 0


def test_a_restored_practice_runs_no_other_hook_than_ours(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Ours looks the records through before an entry; a changed one is left alone until somebody looked at it."""
    ours = (ROOT / "site_templates" / "records" / "pre-commit").read_text()
    for text, is_set in ((ours, True), (f"{ours}\n", False)):
        folder = tmp_path / str(is_set)
        folder.mkdir()
        one = first_computer(folder, monkeypatch)
        one.write(".githooks/pre-commit", text)
        one.keep()
        one.backup()

        assert ("core.hookspath=.githooks" in second_computer(one, folder).git("config", "--list")) == is_set
