"""recordgen readers: words and links for people, new keys, and a copy of the keys."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from recordgen.cli import main
from recordgen.private.keys import NotOpened
from recordgen.private.ring import opened_by_link, read_ring
from recordgen.private.unsealing import unseal
from tests.cli.publishing import ADDRESS, WORDS, Desk
from tests.cli.running import run

pytestmark = pytest.mark.usefixtures("quick_build")
LINK = re.compile(rf"^    {re.escape(ADDRESS)}#k=([\w-]{{43}})$", re.MULTILINE)


def opens(desk: Desk, words: str) -> bool:
    """Whether words open what is served now."""
    try:
        return b"Bramble" in unseal(desk.public, words)["index.html"]
    except NotOpened:
        return False


def test_words_for_somebody_open_the_site_once_it_is_published(published: Desk) -> None:
    """Not before; the first words open it as well; the name stays on this computer."""
    result = published.readers("--add", "Mara Tilling")
    words = WORDS.findall(result.output)[0]

    assert "once the site is published again: recordgen publish willowmere" in result.output
    assert not opens(published, words)
    assert published.publish("--yes").exit_code == 0
    assert (opens(published, words), opens(published, published.words)) == (True, True)
    assert all(b"Tilling" not in path.read_bytes() for path in published.public.rglob("*") if path.is_file())


def test_readers_are_listed_by_name(published: Desk) -> None:
    """The first words carry the stable's name; no word is shown."""
    words = WORDS.findall(published.readers("--add", "Mara Tilling").output)[0]
    told = published.readers().output

    assert re.fullmatch(r"[0-9a-f]{8}  words  Willowmere\n[0-9a-f]{8}  words  Mara Tilling\n", told)
    assert words.split()[0] not in told


def test_a_link_opens_the_site_by_itself(published: Desk) -> None:
    """Its secret stands after the hash, which browsers keep to themselves."""
    result = published.readers("--link", "tack room")
    published.publish("--yes")
    secret = LINK.findall(result.output)[0]

    assert opened_by_link(read_ring((published.public / "keys.json").read_bytes()), secret) == published.state.reader
    assert "messengers, mail and browsers keep links" in result.output


def test_who_is_dropped_opens_nothing_new(published: Desk) -> None:
    """By name, or by id; what it does not reach is told."""
    words = WORDS.findall(published.readers("--add", "Mara Tilling").output)[0]
    published.publish("--yes")
    result = published.readers("--drop", "Mara Tilling")
    published.publish("--yes")

    assert not opens(published, words)
    assert opens(published, published.words)
    assert "What they copied stays readable to them." in result.output
    assert "recordgen readers willowmere --rotate" in result.output


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("Nobody", "there is no way in for 'Nobody'. recordgen readers lists them; their ids are: "),
        ("Twice", "there are 2 ways in for 'Twice'. Name one by its id: "),
        ("Willowmere", "this is the last way in; without it nobody could read the site"),
    ],
)
def test_a_drop_that_cannot_be_is_told(published: Desk, name: str, told: str) -> None:
    """Nobody of that name, two of them, the last one; nothing changes."""
    for reader in ["Twice", "Twice"] if name == "Twice" else []:
        published.readers("--add", reader)
    before = published.state.slots
    result = published.readers("--drop", name)

    assert result.exit_code == 1
    assert told in result.output
    assert published.state.slots == before


def test_new_keys_end_all_words_and_links(published: Desk) -> None:
    """Every blob is new, pages have new names, and the old words open nothing; a kept copy they still open."""
    shutil.copytree(published.public, published.folder / "kept")
    result = published.readers("--rotate", "--yes")
    words = WORDS.findall(result.output)[0]
    before = {path.name for path in (published.public / "d").iterdir()}
    assert published.publish("--yes").exit_code == 0

    assert (opens(published, published.words), opens(published, words)) == (False, True)
    assert before & {path.name for path in (published.public / "d").iterdir()} == set()
    assert b"Bramble" in unseal(published.folder / "kept", published.words)["index.html"]
    assert "Copies of earlier editions that somebody kept stay readable with the old words" in result.output


def test_new_keys_are_asked_for(published: Desk) -> None:
    """Nobody can be asked here, so nothing happens without --yes."""
    before = published.state.master
    result = published.readers("--rotate")

    assert result.exit_code == 2
    assert published.state.master == before


def restored(desk: Desk, copy: Path, words: str) -> Result:
    """What bringing the keys back printed."""
    words_in = ["readers", "--restore", str(copy), "--records", str(desk.records)]
    return CliRunner().invoke(main, words_in, input=f"{words}\n", catch_exceptions=False)


def test_a_copy_of_the_keys_brings_them_back_on_another_computer(
    published: Desk, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Under words of its own; readers keep theirs, and the next edition's number is higher than any before."""
    told = run("readers", "--export", tmp_path / "copy", "--records", published.records)
    words, serial = WORDS.findall(told.output)[0], published.state.serial
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(tmp_path / "elsewhere"))
    wrong, right = (
        restored(published, tmp_path / "copy", "six other words"),
        restored(published, tmp_path / "copy", words),
    )

    assert (wrong.exit_code, right.exit_code) == (1, 0)
    assert "these words do not open" in wrong.output
    assert "Put back: willowmere-" in right.output
    assert published.publish("--yes").exit_code == 0
    assert opens(published, published.words)
    assert published.state.serial > serial


def test_keys_that_are_here_are_not_written_over(published: Desk, tmp_path: Path) -> None:
    """A copy is for keys that are gone."""
    words = WORDS.findall(run("readers", "--export", tmp_path / "copy", "--records", published.records).output)[0]
    published.readers("--add", "Mara Tilling")
    before = published.state
    result = restored(published, tmp_path / "copy", words)

    assert "Here already, and left as they are: willowmere-" in result.output
    assert published.state == before


@pytest.mark.parametrize(
    "words",
    [("--add", "x"), (), ("willowmere", "--export", "x"), ("willowmere", "--add", "x", "--drop", "y")],
)
def test_one_thing_of_one_stable_at_a_time(words: tuple[str, ...]) -> None:
    """A stable for its readers, none for a copy of all keys."""
    assert run("readers", *words).exit_code == 2


@pytest.mark.parametrize("stable", ["nowhere", "../records", "Willow Mere"])
def test_a_stable_that_is_not_there_is_told(new: Desk, stable: str) -> None:
    """In a sentence."""
    result = run("readers", stable, "--add", "x", "--records", new.records)

    assert result.exit_code == 1
    assert "there is no stable" in result.output


def test_a_stable_without_keys_is_told(new: Desk) -> None:
    """Readers come after the first publishing."""
    result = new.readers("--add", "x")

    assert result.exit_code == 1
    assert "willowmere was not published from this computer yet" in result.output
