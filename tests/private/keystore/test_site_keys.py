"""Keys that the publisher keeps: saved for this user alone, found again, and renewed by a rotation."""

import stat
from pathlib import Path

import pytest

from recordgen.private.crypto.key_ring import open_by_link, open_by_words, parse_ring
from recordgen.private.crypto.primitives import NotOpened
from recordgen.private.keystore.checksum import with_checksum
from recordgen.private.keystore.site_keys import KeysDamaged, KeysMissing, SiteKeys
from recordgen.problems import Trouble
from tests.support.sealed_site import QUICK, WORDS, new_state


@pytest.fixture
def state(tmp_path: Path) -> SiteKeys:
    """Keys with one way in."""
    return new_state(tmp_path)


@pytest.fixture
def records(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder of records, and a folder for its keys."""
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(tmp_path / "keys"))
    (tmp_path / "records").mkdir()
    return tmp_path / "records"


def opens(state: SiteKeys, words: str) -> bool:
    """Whether the words open the ring as it would be published."""
    try:
        return open_by_words(parse_ring(state.ring), words, fewest=QUICK) == state.reader_key
    except NotOpened:
        return False


def test_what_was_saved_is_read_back(state: SiteKeys) -> None:
    """All of it, byte for byte."""
    state.editions, state.serial = [{"d/a.bin": "00"}], 7
    state.save()

    assert SiteKeys.read(state.file) == state


def test_only_this_user_may_read_it(state: SiteKeys) -> None:
    """The file is for its owner alone, the first time and ever after."""
    state.save()
    state.save()

    assert stat.S_IMODE(state.file.stat().st_mode) == 0o600
    assert [path.name for path in state.file.parent.iterdir()] == [state.file.name]


def test_the_part_of_a_killed_save_is_cleared_by_the_next(state: SiteKeys) -> None:
    """It holds keys, so it does not lie about."""
    part = state.file.with_name(f".{state.file.name}.0123abcd.part")
    part.write_bytes(state.file_bytes[:90])
    state.save()

    assert [path.name for path in state.file.parent.iterdir()] == [state.file.name]


def test_a_state_that_cannot_be_written_leaves_the_one_before(state: SiteKeys, monkeypatch: pytest.MonkeyPatch) -> None:
    """A full disk cuts no file short and leaves nothing beside it."""
    state.save()
    before = state.file.read_bytes()
    state.rotate(QUICK)
    monkeypatch.setattr("os.fsync", lambda handle: (_ for _ in ()).throw(OSError(28, "No space left on device")))

    with pytest.raises(Trouble, match=r"disk of .*willowmere\.keys is full") as told:
        state.save()
    assert "words shown just now open nothing" in told.value.way_out
    assert state.file.read_bytes() == before
    assert len(list(state.file.parent.iterdir())) == 1


@pytest.mark.parametrize("text", [b"", b"{}", b'{"v": 1}\n', b"sha256 0\n{}"])
def test_a_damaged_state_is_told(state: SiteKeys, text: bytes) -> None:
    """It names the file, the way to restore it, and what is left without a copy."""
    state.file.write_bytes(text)

    with pytest.raises(KeysDamaged, match=r"the keys in .*willowmere\.keys are damaged") as told:
        SiteKeys.read(state.file)
    assert "recordgen readers --restore FILE" in told.value.way_out
    assert "Without a copy, move that file away" in told.value.way_out


def test_a_state_of_another_version_is_not_called_damaged(state: SiteKeys) -> None:
    """It is whole, so it must not be thrown away."""
    state.file.write_bytes(with_checksum(b'{"v": 2}\n'))

    with pytest.raises(Trouble, match="of another version of recordgen") as told:
        SiteKeys.read(state.file)
    assert not isinstance(told.value, KeysDamaged)


def test_a_stable_without_keys_is_told_what_to_do(records: Path) -> None:
    """Nothing is lost yet; and if it was published elsewhere, its keys are to be brought."""
    with pytest.raises(KeysMissing) as told:
        SiteKeys.load(records, "willowmere")

    assert "Publish it: recordgen publish willowmere" in told.value.way_out


def test_keys_begun_are_found_again_and_not_begun_twice(records: Path) -> None:
    """One stable has one set of keys."""
    SiteKeys.begin(records, "willowmere").save()

    assert SiteKeys.load(records, "willowmere").serial == 0
    with pytest.raises(Trouble, match="has keys already"):
        SiteKeys.begin(records, "willowmere")


def test_two_stables_share_nothing(records: Path) -> None:
    """Site numbers and keys differ."""
    one, other = SiteKeys.begin(records, "willowmere"), SiteKeys.begin(records, "tithe-barn")

    assert one.file != other.file
    assert not {one.site_id, one.master, one.keys.kid} & {other.site_id, other.master, other.keys.kid}


def test_a_state_is_not_printed_with_its_key(state: SiteKeys) -> None:
    """The text printed of it by mistake opens nothing."""
    shown = repr(state) + str(state) + repr(state.reader_key)

    assert repr(state.master) not in shown
    assert repr(state.keys.enc) not in shown


def test_the_ring_is_the_same_until_a_slot_changes(state: SiteKeys) -> None:
    """Publishing again changes nothing in keys.json."""
    before = state.ring

    assert state.ring == before
    state.add_link("the yard's tablet")
    assert state.ring != before


def test_whom_a_slot_was_made_for_is_not_published(state: SiteKeys) -> None:
    """Names stay with the publisher."""
    reader, _ = state.add_link("the yard's tablet")

    assert reader.name == state.readers[-1].name == "the yard's tablet"
    assert b"tablet" not in state.ring


def test_a_dropped_slot_opens_no_more(state: SiteKeys) -> None:
    """Words and links of the others still do."""
    reader, words = state.add_words("a rider", iterations=QUICK)
    assert opens(state, words)
    state.drop(reader.slot.id)

    assert not opens(state, words)
    assert opens(state, WORDS)


def test_an_unknown_slot_and_the_last_one_are_not_dropped(state: SiteKeys) -> None:
    """A site that nobody can open is no use, and a wrong id is told with the right ones."""
    only = state.readers[0].slot.id

    with pytest.raises(Trouble, match="last way in"):
        state.drop(only)
    with pytest.raises(Trouble) as told:
        state.drop("none")
    assert only in told.value.way_out


def test_a_rotation_gives_every_reader_a_new_way_in(state: SiteKeys) -> None:
    """Names and kinds stay, old words and links are dead, the site keeps its number, and the master is new."""
    secret = state.add_link("the yard's tablet")[1]
    site_id, master, kid = state.site_id, state.master, state.keys.kid
    (first, words), (second, link) = state.rotate(QUICK)

    assert [(reader.name, reader.by) for reader in (first, second)] == [
        ("all readers", "words"),
        ("the yard's tablet", "link"),
    ]
    assert (state.readers, state.site_id) == ([first, second], site_id)
    assert (opens(state, words), opens(state, WORDS)) == (True, False)
    assert open_by_link(parse_ring(state.ring), link) == state.reader_key
    assert (state.master == master, state.keys.kid == kid) == (False, False)
    with pytest.raises(NotOpened):
        open_by_link(parse_ring(state.ring), secret)
