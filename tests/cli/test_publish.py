"""recordgen publish: a real site, sealed, into a folder, a branch and the hands of a program."""

from __future__ import annotations

import json
import os
import pty
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from recordgen.files import fingerprints
from recordgen.private.keystore.lock import alone
from recordgen.private.sealing.unseal import read_manifest, unseal
from tests.conftest import TODAY
from tests.support import practice_folders
from tests.support.commands import run, run_today
from tests.support.publishing import ADDRESS, TO_FOLDER, WORDS, Desk, amend, git


def test_a_dry_run_lists_pages_by_their_titles_and_keeps_nothing(new: Desk) -> None:
    """No keys, no words, no folder."""
    result = new.publish("--dry-run")

    assert result.exit_code == 0
    lines = result.output.splitlines()
    assert lines[:2] == [f"Willowmere, for {ADDRESS}", "  new       Bramble"]
    assert {"  new       Bramble: sheet for the vet", "  new       Fennel"} <= set(lines)
    assert result.output.endswith("Nothing was published.\n")
    assert WORDS.findall(result.output) == []
    assert not new.public.exists()
    assert [path.suffix for path in new.keys.iterdir()] == [".lock"]


def test_the_first_time_shows_six_words_that_open_the_site(once: tuple[Desk, str]) -> None:
    """Once, and they are kept nowhere; the site behind them is whole."""
    desk, told = once

    assert WORDS.findall(told) == [desk.words]
    assert b"Bramble" in unseal(desk.public, desk.words)["index.html"]
    kept = b"".join(path.read_bytes() for path in desk.keys.rglob("*") if path.is_file())
    assert desk.words.encode() not in kept
    assert " ".join(desk.words.split()[:2]).encode() not in kept


def test_nothing_readable_leaves(once: tuple[Desk, str], tmp_path: Path) -> None:
    """No name of a horse, a stable or a person in a byte or a file name; the unsealed site is full of them."""
    desk, _ = once
    run_today("build", "--stable", "willowmere", "--out", tmp_path, records=desk.records)
    names = re.compile(rb"bramble|fennel|willowmere(?!\.example)|ashdown|hazel", re.IGNORECASE)

    assert found(names, tmp_path)
    assert found(names, desk.public) == set()


def found(names: re.Pattern[bytes], folder: Path) -> set[bytes]:
    """Those of some names that stand in the files of a folder and in their paths."""
    files = [path for path in folder.rglob("*") if path.is_file()]
    texts = [path.read_bytes() + str(path.relative_to(folder)).encode() for path in files]
    return {name for text in texts for name in names.findall(text)}


def test_pages_have_names_that_tell_a_host_nothing(published: Desk) -> None:
    """A reader's first request may reach the host with its path. The names stay from edition to edition."""
    before = set(read_manifest(published.public, published.state.reader_key).files)
    amend(published)
    assert published.publish("--yes").exit_code == 0

    horses = {path for path in before if path.startswith("horses/")}
    pages = {path for path in horses if path.endswith(".html")}
    assert all(re.fullmatch(r"horses/[a-z2-7]{6}(_sheet)?\.html", path) for path in pages)
    assert all(re.fullmatch(r"horses/[a-z2-7]{6}(/[^/]+\.jpg|\.ics)", path) for path in horses - pages)
    assert len(pages) == 4
    assert set(read_manifest(published.public, published.state.reader_key).files) == before


def test_the_page_for_unknown_addresses_finds_its_styles_below_the_address(once: tuple[Desk, str]) -> None:
    """It is shown at any depth, so its links begin at the host, with the path of the address."""
    page = unseal(once[0].public, once[0].words)["404.html"].decode()
    links = re.findall(r'(?:href|src|data-base)="(/[^"]*)"', page)

    assert len(links) >= 5
    assert [link for link in links if not link.startswith("/w/")] == []


def test_publishing_again_without_a_change_changes_no_byte(published: Desk) -> None:
    """No words, no new number, the very same folder."""
    before, serial = published.public.stat().st_ino, published.state.serial
    result = published.publish("--yes")

    assert "No page is different from the last time." in result.output
    assert "The same was there already." in result.output
    assert WORDS.findall(result.output) == []
    assert (published.public.stat().st_ino, published.state.serial) == (before, serial)


@pytest.mark.usefixtures("quick_build")
def test_another_program_gets_one_document_and_no_words(new: Desk) -> None:
    """A dry run tells the pages by title; the first time, which shows words, is refused, and nothing is kept."""
    told = json.loads(new.publish("--dry-run", "--json").output)
    refused = new.publish("--yes", "--json")

    assert (told["site"], told["address"], told["published"], told["same"]) == ("willowmere", ADDRESS, False, False)
    assert {"Bramble", "Fennel"} <= set(told["new"])
    assert (refused.exit_code, json.loads(refused.output)["error"]) == (
        1,
        "this makes six words, which somebody must see",
    )
    assert not new.public.exists()


@pytest.mark.usefixtures("quick_build")
def test_a_change_is_listed_and_the_words_still_open(published: Desk) -> None:
    """New, changed and removed pages by title; the blobs of the edition before stay for whoever is reading."""
    before = set(fingerprints(published.public))
    shutil.rmtree(published.records / "willowmere/fennel")
    (published.records / "willowmere/sorrel").mkdir()
    (published.records / "willowmere/sorrel/horse.yaml").write_text("name: Sorrel\nnote: Sorrel is new\n")
    result = published.publish("--yes")

    assert "  new       Sorrel\n" in result.output
    assert "  changed   Willowmere\n" in result.output
    assert "  removed   Fennel\n" in result.output
    assert b"Sorrel" in unseal(published.public, published.words)["index.html"]
    assert before - set(fingerprints(published.public)) == set()


def test_nobody_to_ask_is_wrong_use(new: Desk) -> None:
    """Without a terminal --yes must be said; nothing goes before."""
    result = new.publish()

    assert result.exit_code == 2
    assert "--yes" in result.output
    assert not new.public.exists()


@pytest.mark.parametrize(("answer", "code"), [("n", 1), ("y", 0)])
def test_on_a_terminal_it_asks(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, answer: str, code: int) -> None:
    """After the list; no means that nothing is published and no words are made."""
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(tmp_path / "keys"))
    new = Desk(tmp_path)
    practice_folders.build(new.records, {"willowmere/stable.yaml": f"name: Willowmere\n{TO_FOLDER}"})
    told, ended = on_terminal(answer, "publish", "willowmere", "--records", new.records, "--today", TODAY.isoformat())

    assert ended == code
    assert told.index("new       Bramble") < told.index("Publish it? [y/N]")
    assert new.public.exists() == (code == 0)
    assert bool(WORDS.findall(told.replace("\r", ""))) == (code == 0)


def on_terminal(answer: str, *words: str | Path) -> tuple[str, int]:
    """The output of a command on a terminal where somebody gives an answer, and its exit code."""
    ours, theirs = pty.openpty()
    command = [sys.executable, "-m", "recordgen", *(str(word) for word in words)]
    with subprocess.Popen(command, stdin=theirs, stdout=subprocess.PIPE, stderr=subprocess.STDOUT) as running:
        os.write(ours, f"{answer}\n".encode())
        told = running.communicate(timeout=120)[0].decode()
    os.close(ours)
    os.close(theirs)
    return told, running.returncode


def test_unsealed_only_with_a_warning_and_sealed_again_later(published: Desk) -> None:
    """--plain says what it means; what is served can then be read, until the next sealed edition takes its place."""
    result = published.publish("--plain", "--yes")

    assert "This is not sealed: whoever has the address" in result.output
    assert "Bramble" in (published.public / "horses" / "bramble.html").read_text()
    assert run("verify", "willowmere", "--folder", published.public, "--records", published.records).exit_code == 0

    assert published.publish("--yes").exit_code == 0
    assert not (published.public / "horses").exists()
    assert b"Bramble" in unseal(published.public, published.words)["index.html"]


@pytest.mark.usefixtures("quick_build")
def test_a_branch_gets_the_sealed_site(new: Desk) -> None:
    """A real repository; the records' own is refused."""
    git(new.folder, "init", "--quiet", "--bare", "public.git")
    git(new.folder, "init", "--quiet", "--bare", "kept.git")
    git(new.records, "remote", "add", "origin", "../kept.git")
    new.say(f"publish: {{address: '{ADDRESS}', git: {{remote: ../kept.git}}}}\n")
    refused = new.publish("--yes")
    new.say(f"publish: {{address: '{ADDRESS}', git: {{remote: ../public.git, branch: w}}}}\n")
    done = new.publish("--yes")
    assert WORDS.findall(refused.output) == []
    git(new.folder, "clone", "--quiet", "--branch", "w", "public.git", "out")

    assert (refused.exit_code, done.exit_code) == (1, 0), done.output
    assert "The records go to that remote" in refused.output
    assert b"Bramble" in unseal(new.folder / "out", WORDS.findall(done.output)[0])["index.html"]


@pytest.mark.usefixtures("quick_build")
def test_a_program_that_fails_is_told_and_the_words_hold(new: Desk) -> None:
    """Its output is shown; the next try needs no new words, and takes a higher number."""
    new.say(f"publish:\n  address: {ADDRESS}\n  command: ls {{folder}}/no-such-file\n")
    failed = new.publish("--yes")
    new.say(f"publish:\n  address: {ADDRESS}\n  command: cp -R {{folder}} ../public\n")
    done = new.publish("--yes")
    words = WORDS.findall(failed.output)

    assert failed.exit_code == 1
    assert "no-such-file" in failed.output
    assert "'ls' ended with exit code" in failed.output
    assert (done.exit_code, WORDS.findall(done.output)) == (0, [])
    assert "  new       Bramble\n" in done.output
    assert b"Bramble" in unseal(new.public, words[0])["index.html"]
    assert new.state.serial == 2


def test_a_killed_run_leaves_the_served_edition_and_the_keys(published: Desk) -> None:
    """Killed by its own program in the middle of sending; the next run goes on with a higher number."""
    before, serial = fingerprints(published.public), published.state.serial
    amend(published)
    kill = f"{sys.executable} -c 'import os, signal; os.kill(os.getppid(), signal.SIGKILL)' {{folder}}"
    published.say(f'publish:\n  address: {ADDRESS}\n  command: "{kill}"\n')
    words = ["publish", "willowmere", "--yes", "--records", published.records, "--today", TODAY.isoformat()]
    killed = subprocess.run([sys.executable, "-m", "recordgen", *map(str, words)], capture_output=True)
    published.say(TO_FOLDER)
    again = published.publish("--yes")

    assert (killed.returncode, again.exit_code) == (-9, 0)
    assert before.keys() <= fingerprints(published.public).keys()
    assert "  changed   Bramble\n" in again.output
    assert published.state.serial == serial + 2
    assert b"Likes carrots" in b"".join(unseal(published.public, published.words).values())
    assert sorted(path.suffix for path in published.keys.iterdir()) == [".keys", ".lock", ".sealed"]


@pytest.mark.usefixtures("quick_build")
def test_http_is_warned_about(new: Desk) -> None:
    """A browser's worker needs https, except on this machine."""
    new.say("publish: {address: 'http://willowmere.example.org/', to: ../public}\n")
    far = new.publish("--dry-run").output
    new.say("publish: {address: 'http://localhost:8000/', to: ../public}\n")

    assert "http://willowmere.example.org/ is not https." in far
    assert "is not https" not in new.publish("--dry-run").output


@pytest.mark.usefixtures("quick_build")
def test_a_clock_set_back_is_told_and_the_day_does_not_go_back(published: Desk) -> None:
    """The number of the edition grows all the same."""
    serial = published.state.serial
    result = run("publish", "willowmere", "--yes", "--records", published.records, "--today", "2026-11-24")

    assert "The last edition is of 25 November 2026, which is after today" in result.output
    assert read_manifest(published.public, published.state.reader_key).time == "2026-11-25"
    assert published.state.serial == serial + 1


def test_two_at_once(published: Desk) -> None:
    """The second is told, and nothing changes."""
    before = fingerprints(published.public)
    with alone(published.state.file):
        result = published.publish("--yes")

    assert result.exit_code == 1
    assert "in another window. Wait until that is done." in result.output
    assert fingerprints(published.public) == before


@pytest.mark.parametrize(
    ("told", "expected"),
    [
        ("", "willowmere/stable.yaml does not say where its site is published. Write there: publish:"),
        (TO_FOLDER.replace("../public", "../records/willowmere"), "does not lie apart from the records"),
        (TO_FOLDER.replace("../public", ".."), "does not lie apart from the records"),
        (f"publish: {{address: '{ADDRESS}'}}\n", "it holds one of to, git and command"),
        ("publish: {to: x, address: willowmere.example.org}\n", "is not the address of a site"),
        ("publish: {address: 'https://a.example/?x', to: x}\n", "is not the address of a site"),
        (f"publish: {{address: '{ADDRESS}', command: rsync}}\n", "the command does not name {folder}"),
        (f"publish: {{address: '{ADDRESS}', git: {{remote: x, branch: --all}}}}\n", "is not the name of a branch"),
        (f"publish: {{address: '{ADDRESS}', git: {{remote: 'https://a:b@c/d'}}}}\n", "a password stands in this"),
    ],
)
def test_a_stable_that_does_not_tell_where_is_told(new: Desk, told: str, expected: str) -> None:
    """Nowhere, inside the records, no way or no address, in a sentence."""
    new.say(told)
    result = new.publish("--yes")

    assert result.exit_code == 1
    assert expected in result.output


@pytest.mark.usefixtures("quick_build")
@pytest.mark.parametrize(
    ("other", "expected"),
    [
        ("{address: 'https://other.example.org/', to: ../records/../public/}", "mill is published at the same place"),
        (f"{{address: '{ADDRESS}', to: ../mill}}", "mill is published at the same place"),
        ("{address: 'https://willowmere.example.org/m/', to: ../mill}", "mill is published at the same host"),
    ],
)
def test_another_stable_at_the_same_place_is_refused_and_at_the_same_host_told(
    new: Desk, other: str, expected: str
) -> None:
    """Two sites in one folder would write each other over; two at one host can use each other's kept keys."""
    (new.records / "mill").mkdir()
    (new.records / "mill" / "stable.yaml").write_text(f"name: Mill\npublish: {other}\n")

    assert expected in new.publish("--dry-run").output


@pytest.mark.usefixtures("quick_build")
def test_lost_keys_do_not_write_over_what_is_served(published: Desk) -> None:
    """Without the keys a first time would shut everybody out without a word; so the place must be emptied by hand."""
    shutil.rmtree(published.keys)
    result = published.publish("--yes")

    assert result.exit_code == 1
    assert "holds the sealed site of another stable, or one whose keys were lost" in result.output
    assert WORDS.findall(result.output) == []
    assert b"Bramble" in unseal(published.public, published.words)["index.html"]


@pytest.mark.usefixtures("quick_build")
def test_after_lost_keys_and_an_emptied_place_it_begins_anew(published: Desk) -> None:
    """With new words, whatever else the lost keys left on this computer."""
    published.state.file.unlink()
    shutil.rmtree(published.public)
    result = published.publish("--yes")

    assert result.exit_code == 0
    assert b"Bramble" in unseal(published.public, WORDS.findall(result.output)[0])["index.html"]
    assert published.publish("--yes").exit_code == 0
