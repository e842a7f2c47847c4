"""Files that are no records, and pictures that tell a place: named by check, never kept, stopped by the hook."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.support.commands import run, run_today, small_practice
from tests.support.photographs import drawn, file_of, with_place
from tests.support.publishing import git

PHOTO = "willowmere/bramble/photos/2026-10-14-left-fore-front-after.jpg"
STRAYS = {
    "passwords.txt": b"word word word\n",
    "bramble-2026-11-25.html": b"<title>Bramble</title>",
    "willowmere.ics": b"BEGIN:VCALENDAR\n",
    "willowmere/bramble/invoice.pdf": b"%PDF-1.7\n",
    "letters/2026/to the vet.txt": b"Dear\n",
    "letters/2027/more.txt": b"Dear\n",
    "yard.jpg": file_of(drawn()),
}


def write(kept_records: Path, files: dict[str, bytes]) -> None:
    """Put files into the records."""
    for name, content in files.items():
        (kept_records / name).parent.mkdir(parents=True, exist_ok=True)
        (kept_records / name).write_bytes(content)


def a_visit(kept_records: Path) -> None:
    """A visit that is worth an entry."""
    text = "date: 2026-11-25\nfeet: {LF: {before: {toe_length: 90}}}\n"
    (kept_records / "willowmere/bramble/2026-11-25.yaml").write_text(text)


def kept(kept_records: Path) -> set[str]:
    """The files of the present entry."""
    return set(git(kept_records, "ls-tree", "-r", "--name-only", "HEAD").splitlines())


@pytest.mark.parametrize("by_hand", [False, True], ids=["untracked", "staged by hand"])
def test_a_commit_takes_the_visit_and_names_the_rest(kept_records: Path, by_hand: bool) -> None:
    """Also what a person staged before does not slip in; it stays as it was."""
    before = kept(kept_records)
    write(kept_records, {name: content for name, content in STRAYS.items() if not name.startswith("letters")})
    a_visit(kept_records)
    if by_hand:
        git(kept_records, "add", "--all")
    result = run_today("commit", records=kept_records)

    assert result.exit_code == 0, result.output
    assert kept(kept_records) - before == {"willowmere/bramble/2026-11-25.yaml"}
    assert all(f"records/{name}:1:1: warning: this" in result.output for name in STRAYS if "letters" not in name)
    assert ("but git knows it" in result.output) is by_hand
    assert (kept_records / "passwords.txt").is_file()


def test_nothing_but_strays_makes_no_entry(kept_records: Path) -> None:
    """Each is named with what to do."""
    write(kept_records, {"notes.txt": b"x", "yard.jpg": file_of(drawn())})
    result = run_today("commit", records=kept_records)

    assert "write /notes.txt into .gitignore" in result.output
    assert "Take it in: recordgen photo STABLE/HORSE yard.jpg --foot LF --view sole" in result.output
    assert result.output.endswith("Nothing has changed since the last entry.\n")
    assert git(kept_records, "log", "--oneline").count("\n") == 1


def test_check_tells_the_same_and_a_folder_once(kept_records: Path) -> None:
    """Warnings, which stop nothing; what git ignores is the person's own affair."""
    write(
        kept_records,
        STRAYS | {"letters/2028/yard.jpg": file_of(drawn()), ".gitignore": b"/passwords.txt\n/letters/2026\n"},
    )
    result = run_today("check", records=kept_records)

    assert result.exit_code == 0, result.output
    assert "passwords" not in result.output
    assert "records/letters:1:1: warning: this folder holds no record (2 files)" in result.output
    assert "letters/20" not in result.output
    assert "records/willowmere/bramble/invoice.pdf:1:1: warning: this file is no record" in result.output


def test_one_stable_is_looked_at_alone(kept_records: Path) -> None:
    """Files elsewhere are not its affair."""
    write(kept_records, {"notes.txt": b"x", "willowmere/notes.txt": b"x"})
    result = run_today("check", "--stable", "willowmere", records=kept_records)

    assert "records/willowmere/notes.txt:1:1: warning" in result.output
    assert "records/notes.txt" not in result.output


def test_records_without_git_are_looked_through_too(tmp_path: Path) -> None:
    """They may get into git later; the built sites are no strays."""
    kept_records = small_practice(tmp_path)
    write(kept_records, {"yard.jpg": with_place(), "sites/index.html": b"x", "notes.txt": b"x"})
    result = run_today("check", records=kept_records)

    assert result.exit_code == 1
    assert "records/yard.jpg:1:1: error: this picture carries" in result.output
    assert "records/notes.txt:1:1: warning" in result.output
    assert "sites" not in result.output


@pytest.mark.parametrize("name", ["IMG_0412.jpg", "willowmere/bramble/IMG_0412.jpg", "willowmere/no-ending", PHOTO])
@pytest.mark.parametrize("command", ["check", "commit"])
def test_a_picture_that_tells_a_place_is_refused(kept_records: Path, name: str, command: str) -> None:
    """Wherever it lies, whatever its name; the way out is the command that takes it in."""
    write(kept_records, {name: with_place()})
    a_visit(kept_records)
    before = git(kept_records, "rev-parse", "HEAD")
    result = run_today(command, records=kept_records)

    assert result.exit_code == 1
    assert f"records/{name}:1:1: error: th" in result.output
    assert "recordgen photo" in result.output
    assert git(kept_records, "rev-parse", "HEAD") == before


def test_the_way_out_leads_out(kept_records: Path) -> None:
    """The command that is told makes a plain photograph of it."""
    write(kept_records, {"willowmere/bramble/IMG_0412.jpg": with_place()})
    told = run_today("check", records=kept_records).output
    words = told.split("Take it in: recordgen ")[1].split(";")[0].split()
    file = str(kept_records / words[2])
    result = run(*words[:2], file, *words[3:], "--date", "2026-10-14", "--records", kept_records)
    (kept_records / "willowmere/bramble/IMG_0412.jpg").unlink()

    assert result.exit_code == 0, result.output
    assert run_today("check", records=kept_records).exit_code == 0


def commit_by_git(kept_records: Path) -> subprocess.CompletedProcess[str]:
    """A plain git commit of what is staged, with the hook of the records on its way."""
    hook = kept_records / ".githooks" / "pre-commit"
    hook.parent.mkdir(exist_ok=True)
    hook.write_bytes((Path(__file__).parents[2] / "site_templates/records/pre-commit").read_bytes())
    hook.chmod(0o755)
    git(kept_records, "config", "core.hooksPath", ".githooks")
    path = f"{Path(sys.executable).parent}{os.pathsep}{os.environ['PATH']}"
    command = ["git", "-C", str(kept_records), "commit", "--quiet", "--message", "by hand"]
    return subprocess.run(command, capture_output=True, text=True, env=os.environ | {"PATH": path})


def test_the_hook_lets_a_plain_photograph_through(kept_records: Path) -> None:
    """So that what it refuses below is refused for what it is."""
    write(kept_records, {PHOTO: file_of(drawn())})
    git(kept_records, "add", "--all")
    done = commit_by_git(kept_records)

    assert done.returncode == 0, done.stdout + done.stderr
    assert PHOTO in kept(kept_records)


@pytest.mark.parametrize("name", ["IMG_0412.jpg", PHOTO])
def test_the_hook_refuses_what_is_staged_whatever_lies_on_the_disk(kept_records: Path, name: str) -> None:
    """A picture taken off the disk, or made plain there, still goes into git as it was staged."""
    write(kept_records, {name: with_place()})
    git(kept_records, "add", "--all")
    if name == PHOTO:
        write(kept_records, {name: file_of(drawn())})
    else:
        (kept_records / name).unlink()
    done = commit_by_git(kept_records)

    assert done.returncode == 1
    assert f"{name}:1:1: error: this picture carries" in done.stderr
    assert name not in kept(kept_records)


def test_the_hook_refuses_a_stray_that_is_about_to_come_in(kept_records: Path) -> None:
    """Once it is in git it stays there for good; whoever wants it all the same can say so."""
    write(kept_records, {"passwords.txt": b"x", "notes.txt": b"x"})
    git(kept_records, "add", "passwords.txt")
    done = commit_by_git(kept_records)

    assert done.returncode == 1
    assert "passwords.txt:1:1: error: this file is no record, and git is about to keep it for good" in done.stderr
    assert "notes.txt:1:1: warning" in done.stderr
    assert "passwords.txt" not in kept(kept_records)


def test_a_stray_that_git_keeps_is_taken_out_with_its_deletion(kept_records: Path) -> None:
    """Kept once by hand and deleted now, it leaves the repository; amended, it is named and left alone."""
    write(kept_records, {"notes.txt": b"x", "more.txt": b"x"})
    git(kept_records, "add", "--all")
    git(kept_records, "commit", "--quiet", "--message", "by hand")
    (kept_records / "notes.txt").unlink()
    (kept_records / "more.txt").write_text("y")
    result = run_today("commit", records=kept_records)

    assert "other files taken out" in result.output
    assert "records/more.txt:1:1: warning: this file is no record, but git knows it" in result.output
    assert git(kept_records, "status", "--porcelain") == " M more.txt\n"
