"""recordgen readers: words and links for people, new keys, and a copy of the keys."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from recordgen.cli import main
from recordgen.files import fingerprints
from recordgen.private.crypto.key_ring import open_by_link, parse_ring
from recordgen.private.crypto.primitives import NotOpened
from recordgen.private.sealing.unseal import unseal
from tests.support.commands import run
from tests.support.publishing import ADDRESS, WORDS, Desk, amend

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
    ring = parse_ring((published.public / "keys.json").read_bytes())

    assert open_by_link(ring, secret) == published.state.reader_key
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
        ("Nobody", "There is no way in for 'Nobody'. There is one for: 'Willowmere'"),
        ("Twice", "There are 2 ways in for 'Twice'. Name one by its id: "),
        ("Willowmere", "This is the last way in; without it nobody could read the site"),
    ],
)
def test_a_drop_that_cannot_be_is_told(published: Desk, name: str, told: str) -> None:
    """Nobody of that name, two of them, the last one; nothing changes."""
    for reader in ["Twice", "Twice"] if name == "Twice" else []:
        published.readers("--add", reader, "--yes")
    before = published.state.readers
    result = published.readers("--drop", name)

    assert result.exit_code == 1
    assert told in result.output
    assert published.state.readers == before


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
    """The output of bringing the keys back."""
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
    assert "These words do not open" in wrong.output
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
    assert "There is no stable" in result.output


def test_a_stable_without_keys_is_told(new: Desk) -> None:
    """Readers come after the first publishing."""
    result = new.readers("--add", "x")

    assert result.exit_code == 1
    assert "willowmere was not published from this computer yet" in result.output


def test_damaged_keys_stop_everything_until_they_are_restored(published: Desk, tmp_path: Path) -> None:
    """Publishing, verifying and readers refuse them, the served site stays, and a copy brings its words back."""
    words = WORDS.findall(run("readers", "--export", tmp_path / "copy", "--records", published.records).output)[0]
    keys, before = published.state.file, fingerprints(published.public)
    content = keys.read_bytes()
    keys.write_bytes(content[:200] + bytes([content[200] ^ 4]) + content[201:])
    refused = [published.publish("--yes"), published.publish("--plain", "--yes"), published.readers("--add", "Mara")]
    refused += [published.readers(), published.verify("--folder", published.public)]

    assert {result.exit_code for result in refused} == {1}
    assert all("are damaged, so nothing is done with them. Bring them back" in result.output for result in refused)
    assert fingerprints(published.public) == before
    assert "Damaged, and put aside" in restored(published, tmp_path / "copy", words).output
    assert published.publish("--yes").exit_code == 0
    assert opens(published, published.words)


def test_nothing_is_sent_that_a_reader_cannot_open(published: Desk) -> None:
    """A slot of other keys is found before the served folder is swapped."""
    state, before = published.state, fingerprints(published.public)
    state.master = bytes(32)
    state.save()
    amend(published)
    result = published.publish("--yes")

    assert result.exit_code == 1
    assert "What was sealed does not open for 'Willowmere', so it is not sent" in result.output
    assert fingerprints(published.public) == before


def test_a_rotation_gives_every_reader_new_words_or_a_new_link_once(published: Desk) -> None:
    """Names stay, each with its own; all of them open what is published next."""
    published.readers("--add", "Mara Tilling")
    published.readers("--link", "tack room")
    told = published.readers("--rotate", "--yes").output
    published.publish("--yes")
    ring = parse_ring((published.public / "keys.json").read_bytes())
    (secret,) = LINK.findall(told)

    assert [reader.name for reader in published.state.readers] == ["Willowmere", "Mara Tilling", "tack room"]
    assert re.findall(r"These words are for ([^.]+)\.", told) == ["Willowmere", "Mara Tilling"]
    assert [opens(published, words) for words in WORDS.findall(told)] == [True, True]
    assert open_by_link(ring, secret) == published.state.reader_key


@pytest.mark.parametrize("typed", ["mara tilling", "MARA  TILLING", " Mara Tilling "])
def test_a_name_is_found_however_it_is_spelled(published: Desk, typed: str) -> None:
    """Capitals and the spaces between do not matter."""
    published.readers("--add", "Mara Tilling")
    result = published.readers("--drop", typed)

    assert "The way in for Mara Tilling is taken out." in result.output
    assert [reader.name for reader in published.state.readers] == ["Willowmere"]


@pytest.mark.parametrize("way", ["--add", "--link"])
def test_a_second_way_in_for_a_name_is_asked_about(published: Desk, way: str) -> None:
    """Nobody can be asked here, so it takes --yes; before that nothing is made."""
    asked = published.readers(way, "WILLOWMERE")
    before = len(published.state.readers)
    done = published.readers(way, "WILLOWMERE", "--yes")

    assert (asked.exit_code, before) == (2, 1)
    assert "Willowmere has a way in already: words." in asked.output
    assert (done.exit_code, len(published.state.readers)) == (0, 2)


@pytest.mark.parametrize("name", [" ", "Mara\nTilling", "Mara\u202e"])
def test_a_reader_needs_a_name_on_one_line(published: Desk, name: str) -> None:
    """No line breaks and no signs that cannot be seen."""
    result = published.readers("--add", name)

    assert result.exit_code == 2
    assert "A reader needs a name on one line." in result.output
