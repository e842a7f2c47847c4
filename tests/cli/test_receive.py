"""recordgen receive: what a phone handed over comes into the records."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from recordgen.cli import main, receive
from recordgen.private.keystore.field_key import field_key
from recordgen.records.change.outlines import keep_outlines
from recordgen.records.load.folders import RECEIVED
from recordgen.records.models.lines.shape_table import SHIPPED, own_table, text_of
from recordgen.records.receive import take_in
from tests.support.commands import run
from tests.support.phone_notes import DAY, FOOT, parts, photo, visit
from tests.support.photographs import opened, with_place
from tests.support.practice_folders import TODAY, build
from tests.support.publishing import git
from tests.support.sealed_notes import Part, plain_notes, sealed_notes
from tests.support.typed_tracings import tapped

BRAMBLE = "willowmere/bramble"
FILE = f"{BRAMBLE}/{DAY}.yaml"
TYPED = """\
# Bramble, 20 November 2026. Written down at the horse.
date: 2026-11-20
feet:
  left_fore:
    before: {toe_length: 88}
    after:  {toe_length: 80, heel_height: {medial: 36, lateral: 36.5}}
next: {weeks: 6}
"""


class Desk:
    """A practice, and notes that come to it."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.records = build(folder / "records", {"willowmere/fennel/horse.yaml": "name: Fennel\n"})

    def handed(self, *inside: Part, name: str = "k7q2", sealed: bool = True, **how: str) -> Path:
        """A file that the phone handed over."""
        file = self.folder / f"field-notes-{name}.txt"
        whole = parts(*inside, **how)
        file.write_bytes(
            sealed_notes(name, whole, field_key(self.records).public) if sealed else plain_notes(name, whole)
        )
        return file

    def receive(self, *words: str | Path) -> Result:
        """Give what taking in told."""
        return run("receive", *words, "--records", self.records, "--today", TODAY.isoformat())

    def text(self, file: str = FILE) -> str:
        """A file of the records."""
        return (self.records / file).read_text()

    def files(self, whole: bool = False) -> dict[str, bytes]:
        """All files by their paths; without what was received unless `whole`."""
        found = {path.relative_to(self.records).as_posix(): path for path in self.records.rglob("*") if path.is_file()}
        return {name: path.read_bytes() for name, path in found.items() if whole or not name.startswith(RECEIVED)}

    def answer(self, given: dict[str, str]) -> None:
        """Write answers behind open questions. given: by a part of the question's id."""
        file = self.records / RECEIVED / "answers.yaml"
        text = file.read_text()
        for part, answer in given.items():
            asked = re.search(rf'- id: .*{re.escape(part)}"?\n', text)
            assert asked, (part, text)
            at = text.index("    answer:\n", asked.start())
            text = text[:at] + f"    answer: {answer}\n" + text[at + len("    answer:\n") :]
        file.write_text(text)


@pytest.fixture
def desk(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Desk:
    """A practice of one visit, and a folder of keys for this test alone."""
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(tmp_path / "keys"))
    return Desk(tmp_path)


def test_a_visit_comes_in_as_a_person_would_have_typed_it(desk: Desk) -> None:
    """With its photograph, plain as any; the check passes, and the receipt ends it."""
    told = desk.receive(desk.handed(visit(), photo(jpeg=with_place())))

    assert (told.exit_code, desk.text()) == (0, TYPED)
    (name,) = [name for name in desk.files() if "photos" in name]
    assert name == f"{BRAMBLE}/photos/{DAY}-left-fore-sole-after.jpg"
    assert not opened(desk.files()[name]).getexif()
    assert "taken in as willowmere/bramble/2026-11-20.yaml; photographs: 1" in told.output
    assert "Next: recordgen check, then recordgen commit." in told.output
    assert run("check", "--records", desk.records, "--today", TODAY.isoformat()).exit_code == 0


def test_a_sole_traced_by_the_practices_own_table_comes_in_whole(desk: Desk) -> None:
    """The table lies in its records, though nothing else was read of them before; nothing is asked."""
    table = own_table(text_of(1.01 * SHIPPED.wall), text_of(SHIPPED.ring))
    for file, content in keep_outlines(desk.records, table, 50, TODAY).files.items():
        file.parent.mkdir()
        file.write_bytes(content)
    traced = {"feet": {"left_fore": {"tracings": [tapped(model=table.version)]}}}
    told = desk.receive(desk.handed(visit(record=traced)))

    assert told.exit_code == 0, told.output
    assert f"model: {table.version}" in desk.text()
    assert "private_note" not in desk.text()


def test_the_receipt_is_the_one_that_the_phone_waits_for(desk: Desk) -> None:
    """Four signs of the SHA-256 of the file's id and its visits in order, as the page reckons them."""
    told = desk.receive(desk.handed(visit("bbb", day="2026-11-21"), visit("aaa", rev=2)))

    # printf 'receipt k7q2 aaa.2 bbb.1' | sha256sum: 45 f9 cd ae, modulo 32 the signs 5, 25, 13, 14 counted from 0.
    assert "Receipt for field-notes-k7q2.txt: f3pq." in told.output


def test_the_raw_file_is_kept_first_and_out_of_git(desk: Desk) -> None:
    """Bit for bit; the folder tells git to leave it alone."""
    file = desk.handed(visit())
    desk.receive(file)

    assert (desk.records / RECEIVED / "notes-k7q2.txt").read_bytes() == file.read_bytes()
    assert (desk.records / RECEIVED / ".gitignore").read_text().endswith("\n*\n")


def test_the_same_file_twice_changes_nothing(desk: Desk) -> None:
    """Not a byte; nor after the record was edited or a photograph was taken out at the computer."""
    file = desk.handed(visit(), photo())
    desk.receive(file)
    before = desk.files(whole=True)
    told = desk.receive(file)

    assert (told.exit_code, desk.files(whole=True)) == (0, before)
    assert "is here already" in told.output
    (desk.records / FILE).write_text(TYPED + "note: Seen again.\n")
    (desk.records / BRAMBLE / "photos" / f"{DAY}-left-fore-sole-after.jpg").unlink()
    desk.receive(file)
    assert (desk.text(), [name for name in desk.files() if "photos" in name]) == (TYPED + "note: Seen again.\n", [])


@pytest.mark.parametrize("form", [[], ["--short"]])
def test_a_file_only_begun_is_filled_and_keeps_what_was_typed_into_it(desk: Desk, form: list[str]) -> None:
    """The skeleton's own comments go, in the long form and the short; a comment by hand stays."""
    run("visit", "willowmere", "--horse", "bramble", "--date", DAY, "--records", desk.records, *form)
    begun = desk.text()
    (desk.records / FILE).write_text(begun.replace("since_last:\n", "since_last:  # ask Mara about the field\n"))
    told = desk.receive(desk.handed(visit()))

    assert "filled into willowmere/bramble/2026-11-20.yaml" in told.output
    head, _, rest = TYPED.partition("\n")
    assert desk.text() == f"{head}\n# ask Mara about the field\n{rest}"


def test_a_record_that_is_there_is_never_written_over(desk: Desk) -> None:
    """The other one is laid beside it, both are shown side by side, and check asks about them."""
    mine = TYPED.replace("toe_length: 80", "toe_length: 81")
    (desk.records / FILE).write_text(mine)
    told = desk.receive(desk.handed(visit()))

    assert (desk.text(), told.exit_code) == (mine, 1)
    assert "toe_length: 80" in desk.text(f"{BRAMBLE}/{DAY}.received.yaml")
    assert any(
        line.split() == ["left", "fore,", "after,", "toe", "length", "81", "80"] for line in told.output.splitlines()
    )
    checked = run("check", "--records", desk.records, "--today", TODAY.isoformat())
    assert (checked.exit_code, "was received beside another record of 2026-11-20" in checked.output) == (0, True)


@pytest.mark.parametrize(
    ("answer", "files"),
    [
        ("second", {f"{DAY}.yaml", f"{DAY}-b.yaml"}),
        ("here", {f"{DAY}.yaml"}),
        ("both", {f"{DAY}.yaml", f"{DAY}.received.yaml"}),
    ],
)
def test_the_answer_about_a_record_beside_is_done(desk: Desk, answer: str, files: set[str]) -> None:
    """A second visit, none at all, or both for the hand to merge."""
    (desk.records / FILE).write_text(TYPED.replace("toe_length: 80", "toe_length: 81"))
    file = desk.handed(visit())
    desk.receive(file)
    desk.answer({"beside": answer})
    told = desk.receive(file)

    assert (told.exit_code, told.exception) == (0, None) or told.output
    assert {path.name for path in (desk.records / BRAMBLE).glob(f"{DAY}*")} == files
    assert "81" in desk.text()


def test_the_same_record_typed_at_the_computer_is_known(desk: Desk) -> None:
    """However it is written, what it says is compared."""
    (desk.records / FILE).write_text(
        "date: 2026-11-20\nnext: {weeks: 6}\nfeet: {LF: {before: 88, after: 80 h36/36.5}}\ntrimmed: yes\n"
    )
    before = desk.files()
    told = desk.receive(desk.handed(visit()))

    assert (told.exit_code, desk.files()) == (0, before)


@pytest.mark.parametrize(("answer", "length", "code"), [("came", "79", 0), ("here", "80", 0), ("both", "80", 0)])
def test_a_corrected_visit_shows_what_differs_and_is_asked_about(
    desk: Desk, answer: str, length: str, code: int
) -> None:
    """Nothing changes before the answer."""
    desk.receive(desk.handed(visit()))
    changed = visit(rev=2, record={"feet": {"left_fore": {**FOOT, "after": {"toe_length": 79}}}, "next": {"weeks": 6}})
    file = desk.handed(changed, name="m3xz")
    told = desk.receive(file)

    assert (desk.text(), told.exit_code, "No receipt" in told.output) == (TYPED, 1, True)
    assert any(line.split()[-2:] == ["80", "79"] for line in told.output.splitlines())
    desk.answer({"corrected": answer})
    assert desk.receive(file).exit_code == code
    assert f"after:  {{toe_length: {length}" in desk.text()
    assert (desk.records / f"{BRAMBLE}/{DAY}.received.yaml").exists() == (answer == "both")


def test_a_correction_takes_no_place_of_what_was_changed_here(desk: Desk) -> None:
    """The answer that would write over it is not even offered."""
    desk.receive(desk.handed(visit()))
    (desk.records / FILE).write_text(TYPED + "note: By hand.\n")
    file = desk.handed(visit(rev=2, record={"note": "On the phone."}), name="m3xz")
    desk.receive(file)
    desk.answer({"corrected": "came"})
    told = desk.receive(file)

    assert (told.exit_code, desk.text()) == (1, TYPED + "note: By hand.\n")
    assert "'came' is none of the answers: here, both" in told.output


def test_an_older_state_of_a_visit_is_left(desk: Desk) -> None:
    """Files may be taken in in any order."""
    old = desk.handed(visit(), name="first")
    desk.receive(desk.handed(visit(rev=2, record={"note": "New."}), name="second"))
    before = desk.files()

    assert (desk.receive(old).exit_code, desk.files()) == (0, before)


def test_an_unknown_horse_is_asked_about_and_waits(desk: Desk) -> None:
    """Horses of that name or folder come first; nothing is written and no receipt given."""
    before = desk.files()
    told = desk.receive(desk.handed(visit(horse="willowmere/?", name="Clover"), visit("bbb")))

    assert (told.exit_code, desk.files().keys() - before.keys()) == (1, {FILE})
    assert "Which horse is Clover ('willowmere/?')?" in told.output
    assert "No receipt" in told.output


def test_a_new_horse_is_made_once(desk: Desk) -> None:
    """Two visits of it in one file are of one horse, also where one of them had to wait."""
    later = visit("bbb", horse="willowmere/?", name="Clover", day="2026-12-02")
    file = desk.handed(visit(horse="willowmere/?", name="Clover"), later)
    desk.receive(file)
    desk.answer({"horse willowmere/? Clover": "new"})
    desk.receive(file)

    assert desk.text("willowmere/clover/horse.yaml") == "name: Clover\n"
    assert "toe_length: 88" in desk.text(f"willowmere/clover/{DAY}.yaml")
    desk.answer({"bbb day": "2026-12-01"})
    assert desk.receive(file).exit_code == 0
    assert {path.name for path in (desk.records / "willowmere/clover").iterdir()} == {
        "horse.yaml",
        f"{DAY}.yaml",
        "2026-12-01.yaml",
    }
    assert not (desk.records / "willowmere/clover-2").exists()


@pytest.mark.parametrize("horse", ["old-mill/bramble", "willowmere/brambles"])
def test_a_renamed_stable_or_horse_is_asked_about(desk: Desk, horse: str) -> None:
    """The horse it most likely is stands first; the answer names it."""
    file = desk.handed(visit(horse=horse))
    desk.receive(file)
    text = (desk.records / RECEIVED / "answers.yaml").read_text()
    assert text.partition("choices:\n")[2].strip().startswith('"willowmere/bramble": "Bramble at Willowmere')
    desk.answer({"Bramble": BRAMBLE})

    assert (desk.receive(file).exit_code, desk.text()) == (0, TYPED)


@pytest.mark.parametrize(("answer", "there"), [("take it in", True), ("leave out", False)])
def test_a_horse_that_has_left_is_asked_about(desk: Desk, answer: str, there: bool) -> None:
    """Only for a visit after it left."""
    (desk.records / BRAMBLE / "horse.yaml").write_text("name: Bramble\nleft: {date: 2026-11-01}\n")
    file = desk.handed(visit())
    told = desk.receive(file)
    assert "Bramble left on 1 November 2026" in told.output
    desk.answer({"left": answer})

    assert (desk.receive(file).exit_code, (desk.records / FILE).exists()) == (0, there)


@pytest.mark.parametrize(("day", "page"), [("2026-12-02", "2026-11-01"), ("2025-11-20", "2026-11-01")])
def test_a_day_that_cannot_be_is_asked_about(desk: Desk, day: str, page: str) -> None:
    """Tomorrow, or before the page was made, as by a clock that is a year wrong; the day is asked, never shifted."""
    file = desk.handed(visit(day=day), page=page)
    told = desk.receive(file)
    assert (told.exit_code, "On which day was it?" in told.output) == (1, True)
    desk.answer({"day": "2026-12-05"})
    assert "2026-12-05 is in the future" in desk.receive(file).output
    (desk.records / RECEIVED / "answers.yaml").write_text(
        (desk.records / RECEIVED / "answers.yaml").read_text().replace("2026-12-05", DAY)
    )

    assert (desk.receive(file).exit_code, desk.text()) == (0, TYPED)


SEEN = {"feet": {"left_fore": {"wall": {"toe": {"flare": "?"}, "lateral heel": {"crack": {"length": "?"}}}}}}


def test_what_was_seen_and_not_measured_stands_in_the_private_note(desk: Desk) -> None:
    """Until it is told how much it was; a crack is told as one without a size."""
    file = desk.handed(visit(record=SEEN))
    told = desk.receive(file)

    assert "Seen and not measured: left fore, toe, flare. How much was it?" in told.output
    assert desk.text().partition("\n")[2] == (
        "date: 2026-11-20\nfeet:\n  left_fore:\n    wall:\n      lateral heel: {crack: {}}\nprivate_note: |-\n"
        "  Seen and not measured: left fore, toe, flare.\n"
        "  Seen and not measured: left fore, lateral heel, crack, length.\n"
    )
    desk.answer({"toe.flare": "private note", "crack.length": "private note"})
    before = desk.text()
    assert (desk.receive(file).exit_code, desk.text()) == (0, before)


def test_answers_come_into_a_file_that_nobody_changed(desk: Desk) -> None:
    """Also one by one; what was changed by hand stays, and it is said so."""
    file = desk.handed(visit(record=SEEN))
    desk.receive(file)
    desk.answer({"toe.flare": "4"})
    desk.receive(file)
    assert "toe: {flare: 4}" in desk.text()
    assert "toe, flare" not in desk.text()
    by_hand = desk.text() + "note: By hand.\n"
    (desk.records / FILE).write_text(by_hand)
    desk.answer({"crack.length": "12"})
    told = desk.receive(file)

    assert (desk.text(), "was changed here since it was taken in" in told.output) == (by_hand, True)


ODD = {
    "feet": {
        "left_fore": {
            "after": {"toe_length": 9000, "toe_lenght": 80, "wing_span": 4},
            "marks": [{"zone": "toe"}, {"kind": "event ring", "below_hairline": 20}, {"kind": "song"}],
            "landing": "sideways",
        },
        "fifth_foot": {"heat": True},
    },
    "lameness": {"grade": 2},
}


def test_what_no_record_can_hold_is_asked_about_and_lost_in_no_case(desk: Desk) -> None:
    """Impossible values, unknown keys and words, parts that are missing: each a question, each in the private note."""
    told = desk.receive(desk.handed(visit(record=ODD)))
    text = desk.text()

    assert told.exit_code == 1
    assert "marks: [{" in text.replace("marks:\n      - {", "marks: [{")
    for word in (
        "9000",
        "toe lenght: 80",
        "wing span: 4",
        "{zone: toe}",
        "song",
        "sideways",
        "heat: yes",
        "{grade: 2}",
    ):
        assert word in text.partition("private_note:")[2], word
    assert run("check", "--records", desk.records, "--today", TODAY.isoformat()).exit_code == 0


def test_answers_make_a_record_of_what_was_none(desk: Desk) -> None:
    """A value typed anew, another key, another word, a group written out, and what is not wanted dropped."""
    file = desk.handed(visit(record=ODD))
    desk.receive(file)
    desk.answer(
        {
            "after.toe_length": "80",
            "after.wing_span": "drop it",
            "left_fore.landing": "flat",
            "1 lameness": "{scale: AAEP, grade: 2}",
            "marks.0.kind": "crack end",
        }
    )
    desk.receive(file)

    assert "landing: flat\n    after:  {toe_length: 80}" in desk.text()
    assert "lameness: {scale: AAEP, grade: 2}" in desk.text()
    assert "wing" not in desk.text()


def test_notes_for_another_practice_are_told(desk: Desk, tmp_path: Path) -> None:
    """Nothing comes in, and the file is kept as it came."""
    other = tmp_path / "other"
    other.mkdir()
    file = desk.folder / "field-notes-k7q2.txt"
    file.write_bytes(sealed_notes("k7q2", parts(visit()), field_key(other).public))
    before = desk.files()
    told = desk.receive(file)

    assert (told.exit_code, desk.files()) == (1, before)
    assert "sealed for another practice, or for a key that is not on this computer" in told.output
    assert (desk.records / RECEIVED / "notes-k7q2.txt").exists()


def test_open_notes_of_another_practice_are_asked_about(desk: Desk) -> None:
    """By its name, as nothing else tells it."""
    file = desk.handed(visit(), sealed=False, practice="Other Hoof Care")
    told = desk.receive(file)
    assert "These notes were made for Other Hoof Care, and this is Hazel Hoof Care." in told.output
    desk.answer({"practice": "yes"})

    assert (desk.receive(file).exit_code, desk.text()) == (0, TYPED)


def test_a_photograph_that_is_none_is_told_and_the_visit_comes_in(desk: Desk) -> None:
    """With its line; the other photographs come in."""
    told = desk.receive(desk.handed(visit(), photo(id_="p1", jpeg=b"no picture"), photo(id_="p2")))

    assert "field-notes-k7q2.txt:4:1: error: the photograph is no picture that can be read" in told.output
    assert (desk.text(), len([name for name in desk.files() if "photos" in name])) == (TYPED, 1)


def test_a_cut_file_gives_what_is_whole_and_the_whole_one_gives_the_rest(desk: Desk) -> None:
    """Without a receipt for the first."""
    file = desk.handed(visit(), visit("bbb", "willowmere/fennel"), photo(), photo("bbb", "p2"))
    whole = file.read_bytes()
    file.write_bytes(whole[: whole.rindex(b"\n4 ") + 60])
    told = desk.receive(file)
    assert (told.exit_code, "No receipt" in told.output) == (1, True)
    assert {name for name in desk.files() if DAY in name} == {FILE, f"willowmere/fennel/{DAY}.yaml"}
    file.write_bytes(whole)
    told = desk.receive(file)

    assert (told.exit_code, "Receipt for" in told.output) == (0, True)
    assert len([name for name in desk.files() if "photos" in name]) == 2


def test_a_dry_run_writes_nothing(desk: Desk) -> None:
    """It tells the same."""
    before = desk.files(whole=True)
    told = desk.receive(desk.handed(visit(), photo()), "--dry-run")

    assert (told.exit_code, desk.files(whole=True)) == (0, before)
    assert "taken in as willowmere/bramble/2026-11-20.yaml" in told.output
    assert "Nothing was written." in told.output
    assert "Receipt" not in told.output


def test_somebody_at_a_terminal_is_asked(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    """Each question until its answer fits; Enter leaves one open, and an answer is not asked for again."""
    monkeypatch.setattr(receive, "_somebody_is_there", lambda: True)
    file = desk.handed(visit(horse="willowmere/?", name="Clover", record=SEEN))
    words = ["receive", file, "--records", desk.records, "--today", TODAY.isoformat()]
    told = CliRunner().invoke(main, list(map(str, words)), input="willowmere/clover\nc\n4\n\n")

    assert "There is no horse 'willowmere/clover'." in told.output
    assert "toe: {flare: 4}" in desk.text(f"willowmere/clover/{DAY}.yaml")
    again = CliRunner().invoke(main, list(map(str, words)), input="12.5\n")
    assert (again.exit_code, again.output.count("How much was it?")) == (0, 1)
    assert "      toe: {flare: 4}\n" in desk.text(f"willowmere/clover/{DAY}.yaml")
    assert "lateral heel: {crack: {length: 12.5}}" in desk.text(f"willowmere/clover/{DAY}.yaml")


def test_programs_get_json(desk: Desk) -> None:
    """With every question and its answers to choose."""
    told = json.loads(desk.receive(desk.handed(visit("aaa"), visit("bbb", horse="willowmere/?")), "--json").output)

    assert [one["did"] for one in told["files"][0]["visits"]] == ["new", "waiting"]
    assert told["files"][0]["receipt"] is None
    assert list(told["questions"][0]["choices"])[-2:] == ["new", "leave out"]


def test_answers_may_lie_elsewhere(desk: Desk) -> None:
    """And a file of them that cannot be read stops all, with the line."""
    file, answers = desk.handed(visit(horse="willowmere/?")), desk.folder / "answers.yaml"
    desk.receive(file, "--answers", answers)
    answers.write_text(answers.read_text().replace("    answer:\n", f"    answer: {BRAMBLE}\n"))
    assert (desk.receive(file, "--answers", answers).exit_code, desk.text()) == (0, TYPED)
    answers.write_text("answers: [\n")
    told = desk.receive(file, "--answers", answers)

    assert told.exit_code == 1
    assert "answers.yaml:1:11: error" in told.output


@pytest.mark.parametrize(
    ("raw", "message"),
    [(b"\x89PNG", "these are no notes"), (b"", "these are no notes"), (b'{"field_notes":2}\n', "version 2")],
)
def test_another_file_is_refused_and_the_others_go_on(desk: Desk, raw: bytes, message: str) -> None:
    """By its name."""
    other = desk.folder / "other.txt"
    other.write_bytes(raw)
    told = desk.receive(other, desk.folder / "missing.txt", desk.handed(visit()))

    assert (told.exit_code, desk.text()) == (1, TYPED)
    assert message in told.output
    assert "missing.txt:1:1: error: there is no such file" in told.output


def test_no_folder_of_records_is_told(tmp_path: Path) -> None:
    """Nothing is made there."""
    told = run("receive", tmp_path / "x.txt", "--records", tmp_path)

    assert (told.exit_code, list(tmp_path.iterdir())) == (1, [])


class Killed(BaseException):
    """Stands for the end of the process at some step."""


def dying(work: Callable[..., object], after: int) -> Callable[..., object]:
    """The same work, which ends the process instead of doing it for the nth time."""
    left = [after]

    def done(*words: object, **named: object) -> object:
        left[0] -= 1
        if left[0] < 0:
            raise Killed
        return work(*words, **named)

    return done


STEPS = [("recordgen.records.receive.seen.write_whole", n) for n in range(6)]
STEPS += [("recordgen.records.receive.take_in.write_new", n) for n in range(3)]
STEPS += [("recordgen.records.receive.take_in.keep_photo", n) for n in range(2)]


@pytest.mark.parametrize(("step", "after"), STEPS)
def test_a_run_killed_at_any_step_is_ended_by_the_next(
    desk: Desk, step: str, after: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    """No visit stands there in part, no horse twice, and the end is the same as without."""
    file = desk.handed(visit(), visit("bbb", horse="willowmere/?", name="Clover"), photo(), photo("bbb", "p2"))
    desk.receive(file)
    desk.answer({"horse willowmere/? Clover": "new"})
    with monkeypatch.context() as patch:
        patch.setattr(
            step, dying(__import__(step.rpartition(".")[0], fromlist=["x"]).__dict__[step.rpartition(".")[2]], after)
        )
        with suppress(Killed):
            desk.receive(file)
    for name, content in desk.files().items():
        assert DAY not in name or name.endswith(".jpg") or content.endswith(b"next: {weeks: 6}\n")
    assert desk.receive(file).exit_code == 0

    assert {name for name in desk.files() if DAY in name or "clover" in name} == {
        FILE,
        f"{BRAMBLE}/photos/{DAY}-left-fore-sole-after.jpg",
        "willowmere/clover/horse.yaml",
        f"willowmere/clover/{DAY}.yaml",
        f"willowmere/clover/photos/{DAY}-left-fore-sole-after.jpg",
    }


def refused(path: Path) -> None:
    """The disk, when it gives nothing out of a folder."""
    raise PermissionError(13, "Permission denied", str(path))


def test_the_part_that_a_kill_left_beside_a_whole_visit_goes(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    """Killed between the file's name and the end of its part, a run left both; the next has nothing to write.

    Where the disk refuses to clear it, that is told in words.
    """
    file = desk.handed(visit())
    part = (desk.records / FILE).with_name(f".{DAY}.yaml.0a1b2c3d.part")
    keep = take_in.Intake._keep

    def killed_at_the_end(self: take_in.Intake, *told: Any) -> None:
        if told[1] and not told[1].begun:
            part.touch()
            raise Killed
        keep(self, *told)

    with monkeypatch.context() as patch, suppress(Killed):
        patch.setattr(take_in.Intake, "_keep", killed_at_the_end)
        desk.receive(file)
    assert part.exists()
    with monkeypatch.context() as patch:
        patch.setattr(take_in, "clear_parts", refused)
        told = desk.receive(file)
    assert (told.exit_code, "Bramble at Willowmere, 20 November 2026: " in told.output) == (1, True)
    assert desk.receive(file).exit_code == 0

    assert not part.exists()
    assert (desk.records / FILE).is_file()


def test_where_the_disk_refuses_a_visit_nothing_of_it_stays(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    """It is told with its line, and the next visit comes in."""

    def full(path: Path, *words: object, **named: object) -> bool:
        raise OSError(28, "No space left on device", str(path))

    file = desk.handed(visit(), photo())
    before = desk.files()
    with monkeypatch.context() as patch:
        patch.setattr(take_in, "write_new", full)
        told = desk.receive(file)

    assert (told.exit_code, desk.files()) == (1, before)
    assert "field-notes-k7q2.txt:3:1: error: Bramble at Willowmere, 20 November 2026: the disk of" in told.output
    assert desk.receive(file).exit_code == 0
    assert desk.text() == TYPED


def test_what_was_taken_in_goes_into_git_and_what_was_received_does_not(desk: Desk) -> None:
    """In a real repository whose own .gitignore knows nothing of it."""
    for words in (["init", "--quiet"], ["add", "."], ["commit", "--quiet", "--message", "begun"]):
        git(desk.records, *words)
    desk.receive(desk.handed(visit(), photo()))
    told = run("commit", "--records", desk.records, "--today", TODAY.isoformat())

    assert (told.exit_code, "Willowmere, 20 November 2026: Bramble seen" in told.output) == (0, True)
    assert git(desk.records, "status", "--porcelain") == ""
    assert RECEIVED not in git(desk.records, "ls-files")


def test_a_tracing_finds_its_photograph_that_came_later(desk: Desk) -> None:
    """The visit came with its picture cut off; the next file brings it, and nothing is asked or told as changed."""
    picture = photo()
    traced = {"view": "sole", "moment": "after", "file": "p1", "image": [320, 240], "sha256": picture["sha256"]}
    record = {"feet": {"left_fore": {"tracings": [traced]}}, "next": {"weeks": 6}}
    seen = visit(record=record)
    desk.receive(desk.handed(seen, name="a"))
    alone = desk.text()
    told = desk.receive(desk.handed(seen, picture, name="b"))
    checked = run("check", desk.records, "--today", TODAY.isoformat())

    assert "file:" not in alone
    assert picture["sha256"] in alone
    assert f"file: {DAY}-left-fore-sole-after.jpg" in desk.text()
    assert "photograph" not in checked.output
    assert told.exit_code == 0
