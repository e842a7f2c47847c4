"""One horse's record for the vet: consent, what is inside, the files and the log."""

from __future__ import annotations

import calendar
import datetime as dt
import os
import re
import subprocess
from pathlib import Path
from types import SimpleNamespace

import pytest

from recordgen.hoof.context import Context
from recordgen.private.sharing import share as sharing
from recordgen.private.sharing.pdf import NoPdf
from recordgen.private.sharing.share import Handing, SealedFile, add_note, hand_over, require_consent, seal_sheet
from recordgen.private.sharing.sheet import HorseSheet, horse_sheet
from recordgen.problems import Trouble
from recordgen.records.load.everything import read_whole
from recordgen.records.load.practice import read_practice
from recordgen.records.models.horse import Shared
from recordgen.records.models.practice import Practice
from recordgen.sentences import worded
from recordgen.site.context import ways_of
from recordgen.site.templates import environment
from tests.conftest import RECORDS, ROOT, TODAY
from tests.support.commands import small_practice
from tests.support.practice_folders import build
from tests.support.single_file import DOCUMENT, WORDS, opened

VETS = "Three Larches Equine Vets"
HANDING = Handing(VETS, TODAY, dt.date(2027, 1, 31))
WORD = re.compile(r"[^\W_]{5,}")


def sheet_of(slug: str) -> HorseSheet:
    """The sheet of a horse at Willowmere out of the whole demo practice."""
    whole = read_whole(RECORDS, TODAY)
    ways = ways_of(whole)
    return horse_sheet(whole, whole.practice.horse("willowmere", slug), ways, TODAY)


@pytest.fixture(scope="module")
def sheet() -> HorseSheet:
    """The sheet of Bramble."""
    return sheet_of("bramble")


@pytest.fixture
def practice(tmp_path: Path) -> Practice:
    """A small practice whose one horse may be shared."""
    consent = "name: Bramble\nconsent: {vet: yes, by: Jonah Peake, date: 2026-03-05}\n"
    return practice_of(tmp_path, consent)


def practice_of(folder: Path, horse: str) -> Practice:
    """A small practice with this file for its one horse."""
    found, problems = read_practice(build(folder / "records", {"willowmere/bramble/horse.yaml": horse}), TODAY)
    assert found, list(problems)
    return found


def sealed() -> SealedFile:
    """A stand-in for a sealed record."""
    entry = Shared(date=TODAY, to=VETS, edition="1a2b3c4d", what=("html",))
    return SealedFile(entry, {"html": b"sealed", "pdf": b"sealed too"}, WORDS)


def words_in(*paths: Path) -> set[str]:
    """All words of five letters or digits and more in files and folders."""
    files = [file for path in paths for file in ([path] if path.is_file() else path.rglob("*")) if file.is_file()]
    return {word for file in files for word in WORD.findall(file.read_text("utf-8", "ignore").lower())}


def test_no_word_of_another_horse_is_in_the_sheet(sheet: HorseSheet) -> None:
    """Of the words that only other horses' files hold none is there; in another horse's sheet they are."""
    own = RECORDS / "willowmere" / "bramble"
    others = [folder for folder in RECORDS.glob("*/*") if folder.is_dir() and folder not in (own, RECORDS / "care")]
    months = {month.lower() for month in calendar.month_name}
    templates = [file for file in (ROOT / "site_templates").rglob("*") if file.is_file() and "guide" not in file.parts]
    common = words_in(*templates, RECORDS / "practice.yaml") | months
    theirs = words_in(*others) - words_in(own) - common
    found, found_in_pippins = (set(WORD.findall(one.html.lower())) for one in (sheet, sheet_of("pippin")))

    assert found & theirs == set()
    assert {"bramble", "999000000104217"} <= found
    assert {"pippin", "corrie", "sayle"} <= found_in_pippins & theirs


def test_nothing_for_the_trimmer_alone_is_in_the_sheet(sheet: HorseSheet) -> None:
    """The stable's gate code stays at home."""
    assert "Gate code" in (RECORDS / "willowmere" / "stable.yaml").read_text()
    assert "Gate code" not in sheet.html


def test_what_was_amended_later_is_told_without_its_reason(tmp_path: Path) -> None:
    """The change stands in the sheet; the entry's message, which may name another horse, does not."""
    records = small_practice(tmp_path)
    visit = records / "willowmere" / "bramble" / "2026-10-21.yaml"
    git(records, "init", "--quiet")
    git(records, "add", ".")
    git(records, "commit", "--quiet", "--message", "begun")
    visit.write_text(re.sub(r"toe_length: 86\b", "toe_length: 87", visit.read_text(), count=1))
    git(records, "commit", "--quiet", "--all", "--message", "mixed up with Fennel")
    whole = read_whole(records, TODAY)
    ways = ways_of(whole)
    told = horse_sheet(whole, whole.practice.horse("willowmere", "bramble"), ways, TODAY).html

    assert "86 mm → 87 mm" in told
    assert "Fennel" not in told


def git(folder: Path, *words: str) -> None:
    """Git, as somebody invented."""
    somebody = ("-c", "user.name=Wren Ashdown", "-c", "user.email=wren@hazel.example.org")
    subprocess.run(["git", "-C", folder, *somebody, *words], check=True, capture_output=True)


def test_the_sheet_needs_no_other_file(sheet: HorseSheet) -> None:
    """Pictures and styles are inside; nothing is loaded and no script runs."""
    loaded = re.findall(r"<(?:script|link|iframe)\b|\bsrc=(?![\"']data:)|url\((?![\"']?(?:#|data:))", sheet.html)

    assert loaded == []
    assert sheet.html.count("<svg") > 4


def test_the_sealed_file_holds_the_sheet_and_who_got_it(sheet: HorseSheet, practice: Practice) -> None:
    """Opened with the words it tells to whom, by whom, when and until when, and then the sheet; closed, nothing."""
    naming = Context.of(practice.file, read_whole(RECORDS, TODAY).reference).naming
    made = seal_sheet(sheet, Handing(VETS, TODAY, dt.date(2027, 1, 31), with_pdf=False), naming, practice)
    page = made.files["html"].decode()
    inside = opened(page, made.words)

    assert f"Handed to {VETS} by Hazel Hoof Care on 25 November 2026." in inside
    assert "Please delete it after 31 January 2027. This is a request; nothing in the file enforces it." in inside
    assert inside == add_note(sheet.html, HANDING, naming, practice)
    assert [word for word in ("Bramble", VETS, "Willowmere", sheet.edition) if word in page] == []


def test_each_time_has_its_own_words(sheet: HorseSheet, practice: Practice) -> None:
    """Six, drawn anew, and in no text that Python shows of it."""
    naming = Context.of(practice.file, read_whole(RECORDS, TODAY).reference).naming
    one, other = (seal_sheet(sheet, Handing(VETS, TODAY, with_pdf=False), naming, practice) for _ in range(2))

    assert len(one.words.split()) == 6
    assert one.words != other.words
    assert one.words not in repr(one)


def test_without_a_pdf_the_html_file_is_still_made(
    sheet: HorseSheet, practice: Practice, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Missing formats are handed on, and the log tells of the HTML file alone."""

    def missing(*_: str) -> bytes:
        raise NoPdf(worded("no PDF: pypdf is not installed"))

    monkeypatch.setattr(sharing, "make_sealed_pdf", missing)
    naming = Context.of(practice.file, read_whole(RECORDS, TODAY).reference).naming
    made = seal_sheet(sheet, HANDING, naming, practice)

    assert (list(made.files), made.entry.what) == (["html"], ("html",))
    assert "pypdf" in str(made.no_pdf)


def test_names_with_signs_of_html_stay_text(practice: Practice) -> None:
    """Whoever gets it may be called as they like."""
    naming = Context.of(practice.file, read_whole(RECORDS, TODAY).reference).naming

    assert "Hoof &amp; &lt;Horn&gt;" in add_note(DOCUMENT, Handing("Hoof & <Horn>", TODAY), naming, practice)


def test_the_owner_reads_who_was_given_a_copy() -> None:
    """Latest first, with the day until which they were asked to keep it; no section where nobody was."""
    whole = read_whole(RECORDS, TODAY, "willowmere")
    naming = Context.of(whole.practice.file, whole.reference).naming
    section = environment(RECORDS, naming).get_template("horse/shared.html")
    later = sealed().entry.model_copy(update={"to": "A & B", "until": dt.date(2027, 1, 31)})
    told = section.render(summary=SimpleNamespace(shared=(sealed().entry, later)))

    assert re.findall("<li>(.*)</li>", told) == [
        "Shared with A &amp; B on 25 November 2026; they were asked to delete it after 31 January 2027",
        "Shared with Three Larches Equine Vets on 25 November 2026",
    ]
    assert section.render(summary=SimpleNamespace(shared=())).strip() == ""


@pytest.mark.parametrize(
    ("consent", "told"),
    [
        ("", "records/willowmere/bramble/horse.yaml:1:1: Bramble's record may not be shared with a vet: nobody has"),
        (
            "consent: {vet: no, by: Ada Corrie, date: 2026-03-05}\n",
            "horse.yaml:2:11: .*Ada Corrie said no on 2026-03-05",
        ),
    ],
)
def test_without_consent_nothing_is_shared(tmp_path: Path, consent: str, told: str) -> None:
    """The file, its line, who said what, and the line to write."""
    practice = practice_of(tmp_path, f"name: Bramble\n{consent}")
    with pytest.raises(Trouble, match=told) as refused:
        require_consent(practice, practice.horses[0], TODAY)

    assert "consent: {vet: yes, by: their name, date: 2026-11-25}" in refused.value.way_out


def test_with_consent_it_may_be_shared(practice: Practice) -> None:
    """Yes is enough."""
    require_consent(practice, practice.horses[0], TODAY)


def test_file_names_tell_nothing(practice: Practice, tmp_path: Path) -> None:
    """Eight letters drawn each time, the same for both files, which this user alone may read."""
    written = [hand_over(sealed(), practice, practice.horses[0], tmp_path / "out") for _ in range(2)]

    assert all(re.fullmatch(r"record-[a-z]{8}\.(html|pdf)", path.name) for files in written for path in files)
    assert len({path.stem for files in written for path in files}) == 2
    assert {path.stat().st_mode & 0o777 for files in written for path in files} == {0o600}


def test_each_time_is_kept_in_the_log(practice: Practice, tmp_path: Path) -> None:
    """Two lines after two times, read back with the practice, and no word of the words."""
    for _ in range(2):
        hand_over(sealed(), practice, practice.horses[0], tmp_path / "out")
    found, _ = read_practice(practice.folder, TODAY)
    log = (practice.folder / "willowmere/bramble/shared.yaml").read_text()

    assert found
    assert found.horses[0].shared == (sealed().entry, sealed().entry)
    assert [word for word in WORDS.split() if word in log] == []


def test_a_log_that_cannot_be_written_leaves_no_file(
    practice: Practice, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The files are taken away again, and it is told."""

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(sharing, "write_whole", full)
    with pytest.raises(Trouble, match=r"the disk of .*shared\.yaml is full") as told:
        hand_over(sealed(), practice, practice.horses[0], tmp_path / "out")

    assert list((tmp_path / "out").iterdir()) == []
    assert told.value.way_out == "Nothing was shared; make room, then try again"


def test_a_file_that_stays_though_the_log_failed_is_named(
    practice: Practice, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Files that could not be taken away again are told."""
    monkeypatch.setattr(os, "replace", _refuse)
    monkeypatch.setattr(Path, "unlink", _refuse)
    with pytest.raises(Trouble) as told:
        hand_over(sealed(), practice, practice.horses[0], tmp_path / "out")

    assert all(str(path) in told.value.way_out for path in (tmp_path / "out").glob("record-*"))
    assert "not in the log" in told.value.way_out


def _refuse(*_: object, **__: object) -> None:
    raise PermissionError(13, "Permission denied")


def test_a_log_that_takes_no_entry_is_told_before_a_file_is_written(practice: Practice, tmp_path: Path) -> None:
    """Nothing lies in the folder then."""
    (practice.folder / "willowmere/bramble/shared.yaml").write_text("shared: []\n")
    with pytest.raises(Trouble, match=r"bramble/shared\.yaml: nothing can be added at its end"):
        hand_over(sealed(), practice, practice.horses[0], tmp_path / "out")

    assert not (tmp_path / "out").exists()


def test_a_folder_that_takes_no_file_is_told(
    practice: Practice, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Neither file nor entry is left."""
    given = os.open

    def only_html(path: str, *rest: int) -> int:
        return _refuse() if ".pdf" in str(path) else given(path, *rest)  # type: ignore[return-value]

    monkeypatch.setattr(os, "open", only_html)
    with pytest.raises(Trouble, match="out cannot be written: Permission denied"):
        hand_over(sealed(), practice, practice.horses[0], tmp_path / "out")

    assert list((tmp_path / "out").iterdir()) == []
    assert not (practice.folder / "willowmere/bramble/shared.yaml").exists()
