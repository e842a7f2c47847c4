"""Keys that both computers know: the side that changed is taken, and where both did, somebody says which."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from recordgen.private.backup.copied_keys import CopiedKeys
from recordgen.private.keystore.location import state_file
from recordgen.private.keystore.sealed_copy import SealingKey
from recordgen.private.keystore.site_keys import SiteKeys
from tests.support.sealed_site import QUICK, WORDS
from tests.support.two_computers import first_computer


@pytest.fixture
def records(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A practice with keys of Willowmere's site."""
    one = first_computer(tmp_path, monkeypatch)
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(one.keys))
    SiteKeys.begin(one.records, "willowmere").save()
    return one.records


def changed(records: Path, serial: int) -> str:
    """The text of the keys with another number of their last edition."""
    state = SiteKeys.load(records, "willowmere")
    state.serial = serial
    return state.file_bytes.decode()


def known(records: Path) -> CopiedKeys:
    """The keys as both computers knew them before anything changed."""
    keys = CopiedKeys.read(records)
    keys.keep_met(keys.here)
    return CopiedKeys(records, met={name: keys_sum(text) for name, text in keys.here.items()})


def keys_sum(text: str) -> str:
    """The sum by which a state is remembered."""
    import hashlib

    return hashlib.sha256(text.encode()).hexdigest()


def never(*_: str) -> bool:
    """Nobody is to be asked."""
    raise AssertionError


def test_words_are_asked_for_once_where_a_copy_is_sealed_with_their_key(records: Path) -> None:
    """And anew where it was sealed with others, or with the same words and another salt."""
    keys = CopiedKeys.read(records)
    keys.sealing = SealingKey.new(WORDS, QUICK)
    sealed, elsewhere = keys.seal(), SealingKey.new(WORDS, QUICK).seal(json.dumps(keys.here))
    asked: list[str] = []

    assert keys.open_keys(sealed, lambda: asked.append("too early") or WORDS) == keys.here
    assert keys.open_keys(elsewhere, lambda: asked.append("words") or "") is None
    assert asked == ["words"]


def test_keys_that_the_other_side_alone_changed_are_taken(records: Path) -> None:
    """Without a question."""
    keys, name = known(records), state_file(records, "willowmere").name

    assert keys.take_in({name: changed(records, 7)}, never) == (name,)
    assert SiteKeys.load(records, "willowmere").serial == 7


def test_keys_that_this_side_alone_changed_stay(records: Path) -> None:
    """Without a question too."""
    keys, name = known(records), state_file(records, "willowmere").name
    before = keys.here[name]
    mine = SiteKeys.load(records, "willowmere")
    mine.serial = 3
    mine.save()

    assert keys.take_in({name: before}, never) == ()
    assert SiteKeys.load(records, "willowmere").serial == 3


@pytest.mark.parametrize(("keeps_ours", "serial"), [(True, 3), (None, 3), (False, 7)])
def test_keys_that_both_changed_are_asked_about(records: Path, keeps_ours: bool | None, serial: int) -> None:
    """Ours stay until somebody says that theirs are right."""
    keys, name = known(records), state_file(records, "willowmere").name
    theirs = changed(records, 7)
    mine = SiteKeys.load(records, "willowmere")
    mine.serial = 3
    mine.save()
    keys.take_in({name: theirs}, lambda *_: keeps_ours)

    assert SiteKeys.load(records, "willowmere").serial == serial


def test_an_edition_never_goes_back(records: Path) -> None:
    """Their keys count on from ours, so that readers, who refuse an older edition, are not locked out."""
    keys, name = known(records), state_file(records, "willowmere").name
    theirs = changed(records, 2)
    mine = SiteKeys.load(records, "willowmere")
    mine.serial = 9
    mine.save()
    keys.take_in({name: theirs}, lambda *_: False)

    assert SiteKeys.load(records, "willowmere").serial == 9
