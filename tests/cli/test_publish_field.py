"""recordgen publish field-notes: the page for the phone, sealed and looked after like the site of a stable."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import pytest
from click.testing import Result

from recordgen.private.crypto.key_ring import b64u
from recordgen.private.keystore.field_key import field_key
from recordgen.private.sealing.unseal import unseal
from tests.support.commands import run, run_today, small_practice
from tests.support.publishing import WORDS

TELLS = "field_page: {address: 'https://field.example.org/', to: ../public}\n"


@dataclass(frozen=True)
class Desk:
    """A trimmer's computer with records, a folder of keys and one that is served."""

    records: Path
    public: Path
    keys: Path

    def run(self, command: str, *words: str) -> Result:
        """The outcome of a command about the field page."""
        if command == "publish":
            return run_today("publish", "field-notes", *words, records=self.records)
        return run(command, "field-notes", *words, "--records", self.records)

    def say(self, told: str, file: str = "practice.yaml") -> None:
        """Write one more line into a file of the records."""
        with (self.records / file).open("a") as open_file:
            open_file.write(told)


@pytest.fixture
def desk(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Desk:
    """A small practice that tells where its field page is published."""
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(tmp_path / "keys"))
    found = Desk(small_practice(tmp_path), tmp_path / "public", tmp_path / "keys")
    found.say(TELLS)
    return found


def test_it_is_sealed_and_its_words_open_the_page(desk: Desk) -> None:
    """It holds the horses, and the public half of the key that this computer opens notes with."""
    told = desk.run("publish", "--yes")
    (words,) = WORDS.findall(told.output)
    page = unseal(desk.public, words)["index.html"].decode()

    assert told.output.startswith("the field page, for https://field.example.org/\n  new       Field notes\n")
    assert ("Bramble" in page, '"sealed":true' in page) == (True, True)
    assert f'"key":"{b64u(field_key(desk.records).public)}"' in page
    assert not any(b"Bramble" in path.read_bytes() for path in desk.public.rglob("*") if path.is_file())


def test_a_dry_run_keeps_nothing(desk: Desk) -> None:
    """No key that a later page would not have, no words, no folder."""
    told = desk.run("publish", "--dry-run")

    assert told.exit_code == 0
    assert [path.suffix for path in desk.keys.iterdir()] == [".lock"]
    assert not desk.public.exists()


def test_again_without_a_change_changes_no_byte_and_verifies(desk: Desk) -> None:
    """The same records, the same day, the same page; what is served is what was published, until it is changed."""
    desk.run("publish", "--yes")
    before = {path: path.read_bytes() for path in desk.public.rglob("*") if path.is_file()}
    desk.run("publish", "--yes")
    after = {path: path.read_bytes() for path in desk.public.rglob("*") if path.is_file()}
    right = desk.run("verify", "--folder", str(desk.public))
    (desk.public / "sw.js").write_text("listen();")
    wrong = desk.run("verify", "--folder", str(desk.public))

    assert after == before
    assert (right.exit_code, wrong.exit_code) == (0, 1)
    assert "sw.js runs in the browsers" in wrong.output


def test_a_lost_phone_is_shut_out_by_new_words(desk: Desk) -> None:
    """As for a stable: rotate, publish, and the words from before open nothing."""
    old = WORDS.findall(desk.run("publish", "--yes").output)[0]
    (new,) = WORDS.findall(desk.run("readers", "--rotate", "--yes").output)
    desk.run("publish", "--yes")

    assert b"Bramble" in unseal(desk.public, new)["index.html"]
    with pytest.raises(Exception, match="words"):
        unseal(desk.public, old)


def test_unsealed_it_brings_its_own_worker(desk: Desk) -> None:
    """Asked for with a warning, it works offline by itself."""
    told = desk.run("publish", "--plain", "--yes")

    assert "This is not sealed" in told.output
    assert {path.name for path in desk.public.iterdir()} == {"index.html", "sw.js", "app.webmanifest", "icon.svg"}


@pytest.mark.parametrize(
    ("file", "told", "expected"),
    [
        ("practice.yaml", "", "practice.yaml does not say where the page for the phone is published"),
        (
            "willowmere/stable.yaml",
            "publish: {address: 'https://a.example/', to: ../public}\n",
            "willowmere is published",
        ),
    ],
)
def test_a_place_that_cannot_be_is_told(desk: Desk, file: str, told: str, expected: str) -> None:
    """Nowhere, and where a stable is already."""
    practice = desk.records / "practice.yaml"
    if not told:
        practice.write_text(practice.read_text().replace(TELLS, ""))
    desk.say(told, file)
    result = desk.run("publish", "--yes")

    assert (result.exit_code, expected in result.output) == (1, True), result.output


def test_a_stable_may_not_have_its_name(desk: Desk) -> None:
    """A folder of that name is told by check."""
    (desk.records / "willowmere").rename(desk.records / "field-notes")
    told = run("check", "--records", desk.records)

    assert "the name field-notes is taken by the trimmer's page for the phone" in told.output
