"""The keys of all stables as one encrypted file."""

import json
import stat
from pathlib import Path

import pytest

from recordgen.private.crypto.primitives import NotOpened
from recordgen.private.keystore.backup import SERIALS_AHEAD, backup, restore
from recordgen.private.keystore.checksum import verified_content, with_checksum
from recordgen.private.keystore.site_keys import SiteKeys
from recordgen.problems import Trouble
from tests.support.sealed_site import QUICK, WORDS


@pytest.fixture
def states(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> list[SiteKeys]:
    """The keys of two stables, in a folder of keys."""
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(tmp_path / "keys"))
    found = [SiteKeys.begin(tmp_path, slug) for slug in ("tithe-barn", "willowmere")]
    for state in found:
        state.serial, state.digest = 5, "of edition 5"
        state.save()
    return found


@pytest.fixture
def copy(states: list[SiteKeys], tmp_path: Path) -> Path:
    """Their copy."""
    made = backup(tmp_path / "copy", WORDS, QUICK)
    made.write()
    assert made.stables == 2
    return made.path


def test_lost_keys_come_back(states: list[SiteKeys], copy: Path) -> None:
    """With the words, however they are typed, each stable has its keys again."""
    for state in states:
        state.file.unlink()
    restored = restore(copy, WORDS.upper().replace(" ", "-"), QUICK)

    assert restored.put_back == tuple(state.file.name for state in states)
    assert [SiteKeys.read(state.file).master for state in states] == [state.master for state in states]


def test_an_edition_after_a_restore_is_newer_than_any_that_readers_saw(states: list[SiteKeys], copy: Path) -> None:
    """The copy may be some editions old, and readers refuse a lower number."""
    states[0].file.unlink()
    restore(copy, WORDS, QUICK)
    back = SiteKeys.read(states[0].file)

    assert back.serial == 5 + SERIALS_AHEAD
    assert back.digest == ""


def test_keys_that_are_here_stay_as_they_are(states: list[SiteKeys], copy: Path) -> None:
    """An old copy overwrites nothing newer."""
    states[0].serial = 9
    states[0].save()
    restored = restore(copy, WORDS, QUICK)

    assert (restored.put_back, len(restored.already_here)) == ((), 2)
    assert SiteKeys.read(states[0].file) == states[0]


def test_damaged_keys_are_brought_back_and_put_aside(states: list[SiteKeys], copy: Path) -> None:
    """Nothing is deleted, not even what cannot be read; a file put aside before stays as well."""
    kept, damaged = states[0].file, states[0].file.read_bytes().replace(b'"v": 1', b'"v": 3')
    for _ in range(2):
        kept.write_bytes(damaged)
        restored = restore(copy, WORDS, QUICK)

    assert restored.put_back == (kept.name,)
    assert restored.damaged == (f"{kept.name}.damaged1",)
    assert SiteKeys.read(kept).master == states[0].master
    assert [path.read_bytes() for path in kept.parent.glob("*.damaged*")] == [damaged, damaged]


def test_damaged_keys_are_not_copied(states: list[SiteKeys], tmp_path: Path) -> None:
    """A copy that brings back nothing would be taken for a good one."""
    states[0].file.write_bytes(b"x")

    with pytest.raises(Trouble, match="are damaged"):
        backup(tmp_path / "copy", WORDS, QUICK)


def test_a_damaged_copy_is_not_blamed_on_the_words(copy: Path) -> None:
    """Nor is anything put back from it."""
    content = copy.read_bytes()
    copy.write_bytes(content[:300] + bytes([content[300] ^ 1]) + content[301:])

    with pytest.raises(Trouble, match="no copy of keys, or a damaged one"):
        restore(copy, WORDS, QUICK)


def test_a_copy_shows_nothing(states: list[SiteKeys], copy: Path) -> None:
    """Neither keys nor the names of stables stand in it; the file of keys holds both."""
    shown = copy.read_text()
    master = json.loads(verified_content(states[0].file.read_bytes()) or b"")["master"]

    assert master in states[0].file.read_text()
    assert not [secret for secret in (master, "willowmere", "tithe", WORDS) if secret in shown]
    assert stat.S_IMODE(copy.stat().st_mode) == 0o600


def test_other_words_do_not_open_it(copy: Path) -> None:
    """It says so, and puts nothing back."""
    with pytest.raises(NotOpened, match="do not open"):
        restore(copy, "other words", QUICK)


def test_few_rounds_are_refused(copy: Path) -> None:
    """A copy that was weakened is not tried."""
    with pytest.raises(NotOpened, match="1000 rounds"):
        restore(copy, WORDS)


def test_a_changed_copy_is_refused(copy: Path) -> None:
    """Its rounds and its bytes are held by the seal."""
    told = json.loads(verified_content(copy.read_bytes()) or b"")
    copy.write_bytes(with_checksum(json.dumps(told | {"iter": QUICK + 1}).encode()))

    with pytest.raises(NotOpened, match="do not open"):
        restore(copy, WORDS, QUICK)


def test_another_file_is_told(tmp_path: Path) -> None:
    """It is no copy of keys."""
    (tmp_path / "other.json").write_text("{}")

    with pytest.raises(Trouble, match="no copy of keys"):
        restore(tmp_path / "other.json", WORDS, QUICK)


def test_a_copy_is_not_written_over_a_file(copy: Path) -> None:
    """An older copy may be the only good one."""
    before = copy.read_bytes()

    with pytest.raises(Trouble, match="is there already"):
        backup(copy, WORDS, QUICK)
    assert copy.read_bytes() == before


def test_a_copy_does_not_go_into_a_repository(states: list[SiteKeys], tmp_path: Path) -> None:
    """Not even encrypted: what is once in git cannot be taken back."""
    (tmp_path / "records" / ".git").mkdir(parents=True)

    with pytest.raises(Trouble, match="git repository"):
        backup(tmp_path / "records" / "copy", WORDS, QUICK)


def test_no_keys_make_no_copy(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """An empty copy would be taken for a good one."""
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(tmp_path / "none"))

    with pytest.raises(Trouble, match="no keys on this computer"):
        backup(tmp_path / "copy", WORDS, QUICK)
