"""recordgen backup: everything goes, is read back, and comes back; the keys under words alone."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from recordgen.git.copies import MAIN_LINE, SIDE_LINE
from recordgen.private.keystore.location import state_file
from recordgen.private.keystore.site_keys import SiteKeys
from tests.support.two_computers import BRAMBLE, WORDS, Computer, first_computer, second_computer


@pytest.fixture
def one(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Computer:
    """A practice on one computer."""
    return first_computer(tmp_path, monkeypatch)


def with_keys(one: Computer, monkeypatch: pytest.MonkeyPatch) -> SiteKeys:
    """Keys of Willowmere's site on that computer, with one reader."""
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(one.keys))
    keys = SiteKeys.begin(one.records, "willowmere")
    keys.add_words("Mara Tilling", iterations=600_000)
    keys.save()
    return keys


def test_a_stick_gets_everything_and_a_new_computer_has_it_back(one: Computer, tmp_path: Path) -> None:
    """All files with their history, byte for byte."""
    told = one.backup()
    two = second_computer(one, tmp_path)

    assert told.exit_code == 0
    assert "1 entry new, all read back whole." in told.output
    assert "whoever has that place can read them" in told.output
    assert two.files() == one.files()
    assert two.git("log", "--format=%H %s") == one.git("log", "--format=%H %s")


def test_the_second_time_the_place_is_known_and_only_what_is_new_goes(one: Computer) -> None:
    """Without an address."""
    one.backup()
    one.keep((BRAMBLE, "weeks: 6", "weeks: 5"))
    told = one.on_records("backup")

    assert told.exit_code == 0
    assert f"Backed up to {one.stick}: 1 entry new" in told.output


def test_what_is_not_in_git_is_named(one: Computer) -> None:
    """It would not come back."""
    one.write("willowmere/bramble/2026-11-20.yaml", "date: 2026-11-20\n")
    told = one.backup()

    assert "Not in the copy, since it is not kept in git yet: willowmere/bramble/2026-11-20.yaml." in told.output


def test_keys_go_sealed_and_come_back_by_the_words(
    one: Computer, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The words are shown once; nothing of a key can be read on the stick; later copies need no words."""
    keys = with_keys(one, monkeypatch)
    first = one.backup()
    words = WORDS.findall(first.output)
    one.keep((BRAMBLE, "weeks: 6", "weeks: 5"))
    again = one.backup()
    monkeypatch.delenv("RECORDGEN_PRIVATE")
    two = second_computer(one, tmp_path, f"{words[0]}\n")
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(two.keys))

    assert len(words) == 1
    assert WORDS.findall(again.output) == []
    assert b"Mara" not in b"".join(path.read_bytes() for path in one.stick.rglob("*") if path.is_file())
    assert SiteKeys.load(two.records, "willowmere").master == keys.master


def test_other_words_restore_nothing(one: Computer, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """No folder is made; without any words the records come, and the keys wait."""
    with_keys(one, monkeypatch)
    one.backup()
    monkeypatch.delenv("RECORDGEN_PRIVATE")
    two = Computer(tmp_path / "two", tmp_path / "keys-two", one.stick)
    wrong = two.run("backup", two.stick, "--restore", two.records, typed="one two three four five six\n")

    assert wrong.exit_code == 1
    assert "hese words do not open the keys in the copy" in wrong.output
    assert not two.records.exists()
    later = two.run("backup", two.stick, "--restore", two.records, typed="\n")
    assert later.exit_code == 0
    assert "Its keys wait for their six words" in later.output


def test_a_reader_added_on_one_computer_is_known_on_the_other(
    one: Computer, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Keys that one side alone changed take the place of the older ones."""
    with_keys(one, monkeypatch)
    words = WORDS.findall(one.backup().output)[0]
    monkeypatch.delenv("RECORDGEN_PRIVATE")
    two = second_computer(one, tmp_path, f"{words}\n")
    two.on_records("backup")
    one.fetch()
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(one.keys))
    mine = SiteKeys.load(one.records, "willowmere")
    mine.add_words("Tom Larch", iterations=600_000)
    mine.save()
    one.backup()
    told = two.fetch()
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(two.keys))

    assert told.exit_code == 0
    assert re.search("Keys that came: willowmere-", told.output)
    assert [reader.name for reader in SiteKeys.load(two.records, "willowmere").readers] == ["Mara Tilling", "Tom Larch"]
    assert state_file(two.records, "willowmere").exists()


def test_a_damaged_copy_is_told(one: Computer, tmp_path: Path) -> None:
    """Neither backed up to as if it were whole, nor restored from."""
    one.backup()
    for path in (one.stick / "objects").rglob("*"):
        if path.is_file():
            path.chmod(0o644)
            path.write_bytes(path.read_bytes()[: len(path.read_bytes()) // 2])
    told = one.backup()
    restored = one.run("backup", one.stick, "--restore", tmp_path / "two")

    assert (told.exit_code, restored.exit_code) == (1, 1)
    assert "Traceback" not in told.output + restored.output
    assert not (tmp_path / "two").exists()


@pytest.mark.parametrize(
    ("place", "told"),
    [
        ("no/such/stick.git", "look at its name, and whether the stick is in"),
        ("full", "holds other files. name a new folder"),
        ("one/records/copy.git", "lies in the records themselves"),
        ("site.git", "the site of willowmere is served from there"),
        ("code.git", "there is another repository, with the branch 'main'"),
    ],
)
def test_a_place_where_no_copy_may_lie_is_told(one: Computer, tmp_path: Path, place: str, told: str) -> None:
    """Nothing is written there."""
    (tmp_path / "full").mkdir()
    (tmp_path / "full" / "holiday.jpg").write_bytes(b"x")
    one.git("clone", "--quiet", "--bare", one.records, tmp_path / "code.git")
    one.write(
        "willowmere/stable.yaml",
        f"name: Willowmere\npublish: {{address: 'https://w.example.org/', git: {{remote: {tmp_path / 'site.git'}}}}}\n",
    )
    found = one.on_records("backup", tmp_path / place)

    assert found.exit_code == 1
    assert told in found.output.lower().replace("\n", " ")
    assert not (tmp_path / "no").exists()


def test_records_within_another_repository_are_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Its other files would go along."""
    one = first_computer(tmp_path, monkeypatch)
    inner = Computer(one.records / "willowmere", one.keys, one.stick)

    assert "The records share a git repository with other files" in inner.backup().output


def test_the_copy_holds_two_lines_and_only_grows(one: Computer, monkeypatch: pytest.MonkeyPatch) -> None:
    """The records, and the sealed keys beside them."""
    with_keys(one, monkeypatch)
    one.backup()
    names = one.git("ls-remote", "--heads", one.stick)

    assert {line.split("\t")[1] for line in names.splitlines()} == {MAIN_LINE, SIDE_LINE}


def test_the_next_line_holds_a_folder_with_a_blank_together(tmp_path: Path, one: Computer) -> None:
    """It is pasted into a terminal, where an unquoted blank would part it; an umlaut comes through."""
    assert one.backup().exit_code == 0
    folder = tmp_path / "Praxis für Pferde"
    told = one.run("backup", one.stick, "--restore", folder)

    assert f"Next: cd '{folder}', then" in told.output
    assert (folder / "practice.yaml").is_file()
