"""A folder of records as one practice, and what is told of what lies in it."""

import datetime as dt
import gc
import os
from collections.abc import Iterator
from pathlib import Path

import pytest

from recordgen.problems import Trouble
from recordgen.records.load.practice import read_practice
from tests.support.practice_folders import TODAY, VISIT, VISIT_FILE, build, line_of, practice, told

LATER = VISIT.replace("2026-10-14", "2026-11-25")


def test_a_practice_holds_its_stables_horses_and_visits(tmp_path: Path) -> None:
    """From the file of the practice down to the day."""
    found = practice(tmp_path)
    (horse,) = found.horses

    assert (found.file.name, found.stables[0].stable.name, horse.horse.name) == (
        "Hazel Hoof Care",
        "Willowmere",
        "Bramble",
    )
    assert (horse.slug, horse.stable, [visit.date for visit in horse.visits]) == (
        "bramble",
        "willowmere",
        [dt.date(2026, 10, 14)],
    )
    assert found.visit_count == 1


def test_visits_are_in_order_with_the_second_of_a_day_after_the_first(tmp_path: Path) -> None:
    """2026-10-14-b comes after 2026-10-14."""
    files = {
        "willowmere/bramble/2026-11-25.yaml": LATER,
        "willowmere/bramble/2026-10-14-b.yaml": VISIT + "note: second\n",
    }
    visits = practice(tmp_path, files).horses[0].visits

    assert [(visit.date.day, visit.note) for visit in visits] == [(14, None), (14, "second"), (25, None)]


def test_a_horse_is_found_by_its_folders(tmp_path: Path) -> None:
    """One that is not there is told with those that are."""
    found = practice(tmp_path)

    assert found.horse("willowmere", "bramble").horse.name == "Bramble"
    with pytest.raises(Trouble, match="there is no horse 'otter' at 'willowmere'") as trouble:
        found.horse("willowmere", "otter")
    assert trouble.value.way_out == "The horses there are: bramble"


def test_horses_are_sorted_by_name_and_need_no_visit(tmp_path: Path) -> None:
    """A horse that is new has a file and nothing else."""
    files = {"willowmere/zed/horse.yaml": "name: acorn\n"}

    assert [horse.horse.name for horse in practice(tmp_path, files).horses] == ["acorn", "Bramble"]


def test_one_stable_can_be_read_alone(tmp_path: Path) -> None:
    """A mistake elsewhere does not matter then."""
    folder = build(tmp_path, {"old-mill/stable.yaml": "nme: x\n", "Old Mill/stable.yaml": "name: x\n"})
    found, problems = read_practice(folder, TODAY, "willowmere")

    assert ([stable.slug for stable in found.stables], list(problems)) == (["willowmere"], [])


def test_a_stable_that_is_not_there_is_told(tmp_path: Path) -> None:
    """With the name that was asked for."""
    found, problems = read_practice(build(tmp_path), TODAY, "nowhere")

    assert (found, [problem.message for problem in problems]) == (None, ["there is no stable 'nowhere'"])


def test_a_folder_that_is_not_there_is_told(tmp_path: Path) -> None:
    """With the way to make one."""
    found, problems = read_practice(tmp_path / "none", TODAY)

    assert found is None
    assert [line_of(problem) for problem in problems] == [
        "none:1:1: error: there is no such folder. Name another with --records, or make one with: recordgen init."
    ]


def test_problems_of_all_files_come_in_one_run_sorted_by_place(tmp_path: Path) -> None:
    """Practice, stable, horse and visit."""
    wrong = dict.fromkeys(("practice.yaml", "willowmere/stable.yaml", VISIT_FILE), "wrong: 1\n")
    lines = told(tmp_path, wrong)

    assert {line.split(":")[0] for line in lines} == set(wrong)
    assert lines == sorted(lines)


def test_the_folder_may_be_the_one_we_stand_in(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Its own name is shown, not a dot."""
    folder = build(tmp_path / "records", {VISIT_FILE: "x: 1\n"})
    monkeypatch.chdir(folder)
    _, problems = read_practice(type(folder)("."), TODAY)

    assert {problem.place.path for problem in problems} == {f"records/{VISIT_FILE}"}


@pytest.mark.parametrize(
    ("folder", "whose"),
    [
        ("practice", "the trimmer's own site"),
        ("field-notes", "the trimmer's page for the phone"),
        ("rounds", "the calendar of the rounds"),
        ("willowmere/index", "the first page of a site"),
        ("willowmere/jobs", "the page of a stable's jobs"),
        ("aux", "a device of Windows"),
        ("willowmere/con", "a device of Windows"),
        ("willowmere/lpt1", "a device of Windows"),
    ],
)
def test_a_folder_whose_page_would_take_the_place_of_another_is_refused(
    tmp_path: Path, folder: str, whose: str
) -> None:
    """It was built, and one of the two pages was lost without a word, or no Windows could take in the records."""
    kind, name = ("horse", "Jobs") if "/" in folder else ("stable", "Rounds")
    message = f"the name {folder.rpartition('/')[2]} is taken by {whose}. Give the folder another name."

    assert told(tmp_path, {f"{folder}/{kind}.yaml": f"name: {name}\n"}) == [f"{folder}:1:1: error: {message}"]


@pytest.mark.parametrize(
    ("files", "expected"),
    [
        (
            {"practice.yaml": None},
            "practice.yaml:1:1: error: this file is missing. Make it; recordgen schema practice tells what goes in.",
        ),
        (
            {"willowmere/stable.yaml": None},
            "willowmere/stable.yaml:1:1: error: this file is missing. Make it, with a line such as name: Willowmere.",
        ),
        (
            {"practice.yaml": None, "practice.yml": "name: x\ntrimmer: y\n"},
            "practice.yml:1:1: error: this file is not read: it is not named practice.yaml. Name it practice.yaml.",
        ),
        (
            {"willowmere/bramble/horse.yaml": None, "willowmere/bramble/Horse.yaml": "name: Bramble\n"},
            "willowmere/bramble/Horse.yaml:1:1: error: this file is not read: it is not named horse.yaml. "
            "Name it horse.yaml.",
        ),
        (
            {"willowmere/bramble/2026-11-25.YML": LATER},
            "willowmere/bramble/2026-11-25.YML:1:1: error: this file is not read. Name it 2026-11-25.yaml.",
        ),
        (
            {"willowmere/bramble/october.yaml": VISIT},
            "willowmere/bramble/october.yaml:1:1: error: this file is not read. "
            "A visit's file is named by its day: 2026-10-14.yaml, a second one 2026-10-14-b.yaml.",
        ),
        (
            {"willowmere/2026-10-14.yaml": VISIT},
            "willowmere/2026-10-14.yaml:1:1: error: this file is not read. "
            "A stable holds stable.yaml and a folder for each horse; visits lie in the horse's folder.",
        ),
        (
            {"willowmere/bramble/2026-11-25.yaml/x.yaml": "x"},
            "willowmere/bramble/2026-11-25.yaml:1:1: error: this is no plain file. "
            "Give the folder another name, and write the record in a file.",
        ),
        (
            {"Old Mill/stable.yaml": "name: x\n"},
            "Old Mill:1:1: error: the folder's name cannot be part of an address. "
            "Use small letters, digits and hyphens, such as old-mill.",
        ),
        (
            {"willowmere/bramble/front.jpg": "x"},
            "willowmere/bramble/front.jpg:1:1: warning: this file is not read. Move it elsewhere.",
        ),
        (
            {"willowmere/bramble/2026/2026-10-14.yaml": VISIT},
            "willowmere/bramble/2026:1:1: warning: this folder is not read. "
            "Visits lie beside horse.yaml, pictures in photos.",
        ),
    ],
)
def test_what_is_missing_or_misplaced_is_told_once(tmp_path: Path, files: dict[str, str | None], expected: str) -> None:
    """With its path and a way out."""
    assert told(tmp_path, files) == [expected]


@pytest.mark.parametrize(
    "name",
    [
        "willowmere/bramble/2026-10-14.yaml~",
        "willowmere/bramble/.2026-10-14.yaml.swp",
        "willowmere/bramble/#2026-10-14.yaml#",
        "willowmere/bramble/2026-10-14.yaml.bak",
        "willowmere/bramble/.DS_Store",
        "willowmere/Thumbs.db",
        "willowmere/bramble/photos/.DS_Store",
        ".git/config",
        "site_templates/words/measures.yaml",
        "README.md",
        "Receipts/oats.txt",
        "willowmere/letters/2026/vet.txt",
    ],
)
def test_what_editors_and_systems_leave_behind_is_passed_over(tmp_path: Path, name: str) -> None:
    """Nobody meant it as a record; nor a folder in which none lies."""
    assert told(tmp_path, {name: "x"}) == []


def test_a_link_that_leads_out_of_the_records_is_refused(tmp_path: Path) -> None:
    """A visit, a horse's folder and a link to nowhere; nothing outside is opened."""
    folder = build(tmp_path / "records")
    outside = build(tmp_path / "outside")
    os.symlink(outside / VISIT_FILE, folder / "willowmere/bramble/2026-11-25.yaml")
    os.symlink(outside / "willowmere/bramble", folder / "willowmere/otter")
    os.symlink("nothing", folder / "willowmere/bramble/2026-11-26.yaml")
    _, problems = read_practice(folder, TODAY)

    assert [(problem.place.path, problem.message) for problem in problems] == [
        ("records/willowmere/bramble/2026-11-25.yaml", "this link leads out of the records"),
        ("records/willowmere/bramble/2026-11-26.yaml", "this link leads nowhere"),
        ("records/willowmere/otter", "this link leads out of the records"),
    ]


def test_a_link_inside_the_records_is_read(tmp_path: Path) -> None:
    """The folder itself may be reached by a link, too."""
    build(tmp_path / "records", {"willowmere/photos/shared.yaml": LATER.replace("86", "87")})
    os.symlink("../photos/shared.yaml", tmp_path / "records/willowmere/bramble/2026-11-25.yaml")
    os.symlink("records", tmp_path / "link")
    found, problems = read_practice(tmp_path / "link", TODAY)

    assert (found.visit_count, list(problems)) == (2, [])


def test_a_folder_that_cannot_be_opened_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Without a traceback, and once."""
    folder = build(tmp_path)
    whole = type(folder).iterdir

    def refusing(path: Path) -> Iterator[object]:
        if path.name == "bramble":
            raise PermissionError
        return whole(path)

    monkeypatch.setattr(type(folder), "iterdir", refusing)
    _, problems = read_practice(folder, TODAY)

    assert [problem.message for problem in problems] == ["the folder cannot be opened"]


def test_a_name_that_cannot_be_shown_is_shown_with_question_marks(tmp_path: Path) -> None:
    """Broken file names do not break the terminal."""
    folder = build(tmp_path)
    (folder / "willowmere" / "bramble" / os.fsdecode(b"\xff\n.jpg")).write_text("x")
    _, problems = read_practice(folder, TODAY)

    assert [problem.place.path for problem in problems] == [f"{tmp_path.name}/willowmere/bramble/??.jpg"]


def test_the_search_for_cycles_goes_on_after_reading(tmp_path: Path) -> None:
    """It is held back while reading alone."""
    read_practice(build(tmp_path), TODAY)

    assert gc.isenabled()


def test_sites_built_among_the_records_are_no_stable(tmp_path: Path) -> None:
    """A practice may build where its records are."""
    (tmp_path / "sites" / "willowmere").mkdir(parents=True)
    (tmp_path / "sites" / "willowmere" / "index.html").write_text("x")

    assert told(tmp_path) == []


def test_a_stable_cannot_be_named_practice(tmp_path: Path) -> None:
    """The trimmer's own site has that name."""
    files = {"practice/stable.yaml": "name: Practice\n"}

    assert ["the name practice is taken" in line for line in told(tmp_path, files)] == [True]
