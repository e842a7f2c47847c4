"""The reference tables, and a practice's own entries over them."""

from __future__ import annotations

from pathlib import Path

import pytest

from recordgen.records.load.tables import read_reference
from tests.support.practice_folders import line_of


def told(folder: Path, text: str) -> list[str]:
    """The problems of a practice's own table."""
    file = folder / "site_templates" / "words" / "own.yaml"
    file.parent.mkdir(parents=True)
    file.write_text(text, "utf-8")
    return [line_of(problem) for problem in read_reference(folder)[1]]


def with_notes(folder: Path, notes: dict[str, str]) -> list[str]:
    """The problems of a practice's own care notes, each in a file of `care`, less the folder's name."""
    for name, text in notes.items():
        file = folder / "care" / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, "utf-8")
    return [line_of(problem).removeprefix(f"{folder.name}/") for problem in read_reference(folder)[1]]


def test_our_own_tables_are_right() -> None:
    """Every entry of ours reads without a problem."""
    assert read_reference(None)[1] == []


def test_a_practice_adds_and_replaces_entries_by_key(tmp_path: Path) -> None:
    """An own care note stands beside ours; an own phrase takes the place of ours."""
    own = "care:\n  own-note: {what: W, why: Y, how_often: daily, source: own}\nphrases: {place_toe: front}\n"
    assert told(tmp_path, own) == []

    reference, _ = read_reference(tmp_path)
    assert reference.care["own-note"].what == "W"
    assert "daily-grooves" in reference.care
    assert reference.phrases["place_toe"] == "front"


@pytest.mark.parametrize(
    ("text", "line", "words"),
    [
        ("phrases: {plaice_toe: x}", 1, "Did you mean place_toe?"),
        ("phrases:\n  due_vet: '{weeks} for {nobody}'", 2, "nobody fills in {nobody}"),
        ("phrases: {due_vet: 'open {'}", 1, "a fact in braces is no plain name"),
        ("cautions:\n  wounds: {level: call now, seen: s, meanwhile: m, source: s}", 2, "Did you mean wound?"),
        ("cautions:\n  wound: {level: call now, seen: s, meanwhile: m}", 2, "source is missing"),
        ("cautions:\n  wound: {level: call now, seen: '{size}', meanwhile: m, source: s}", 2, "nobody fills in {size}"),
        ("care:\n  Dry Bed: {what: W, why: Y, how_often: O, source: s}", 2, "such as dry-bed"),
        ("care:\n  dry-bed: {what: W, why: Y, how_often: O}", 2, "Add source: with a name and a year, or"),
        ("care:\n  dry-bed: {what: W, why: Y, how_often: O, source: s, suits: [grook]}", 2, "not one of the words"),
        ("care:\n  dry-bed: {what: W, why: Y, how_often: O, source: s, times_a_week: 8}", 2, "1 to 7 days is"),
        ("care:\n  dry-bed: {what: W, why: Y, how_often: O, source: s, not_while: [pulses]}", 2, "Did you mean pulse?"),
        ("patterns:\n  cracks: {name: n, seen: s, maybe: m, source: s}", 2, "Did you mean crack?"),
        ("patterns:\n  crack: {name: n, seen: '{day}', maybe: m, source: s}", 2, "nobody fills in {day}"),
        ("measures:\n  own: {name: n, plain: p, landmarks: l, view: side, path: '@.nose'}", 2, "stands nowhere"),
        ("measures:\n  own: {name: n, plain: p, landmarks: l, view: side, minus: [toe_length]}", 2, "from nothing"),
        ("measures:\n  own: {name: n, plain: p, landmarks: l, view: side, path: '@.toe_length'}", 2, "has no way"),
    ],
)
def test_a_wrong_entry_is_told_with_its_line(tmp_path: Path, text: str, line: int, words: str) -> None:
    """The file, the line and the way out are named."""
    problems = told(tmp_path, text)

    assert any(words in problem and f"words/own.yaml:{line}:" in problem for problem in problems), problems


NOTE = "what: Walk it over the bridge\nwhy: It is dry there\nhow_often: daily\nsource: own\n"


def test_a_care_note_of_its_own_file_is_named_by_the_file(tmp_path: Path) -> None:
    """It stands beside ours, and takes the place of one of the same name; own notes come first."""
    assert with_notes(tmp_path, {"over-the-bridge.yaml": NOTE, "dry-bed.yaml": NOTE}) == []

    care = read_reference(tmp_path)[0].care
    assert list(care)[:2] == ["dry-bed", "over-the-bridge"]
    assert care["dry-bed"].what == care["over-the-bridge"].what
    assert "daily-grooves" in care


@pytest.mark.parametrize(
    ("name", "text", "expected"),
    [
        (
            "bridge.yaml",
            NOTE.replace("source: own\n", ""),
            "care/bridge.yaml:1:1: error: source: nothing says where this advice comes from. "
            'Add source: with a name and a year, or "Common practice, no source".',
        ),
        (
            "bridge.yaml",
            NOTE + "stop: it hurts\n",
            "care/bridge.yaml:5:1: error: 'stop' is not a known key here. Did you mean stop_if?",
        ),
        (
            "Over the bridge.yaml",
            NOTE,
            "care/Over the bridge.yaml:1:1: error: 'Over the bridge' cannot name a care note. "
            "Use small letters, digits and hyphens, such as over-the-bridge.yaml.",
        ),
        (
            "all.yaml",
            NOTE,
            "care/all.yaml:1:1: error: 'all' cannot name a care note. "
            "Use small letters, digits and hyphens, such as dry-bed.yaml.",
        ),
        ("bridge.yml", NOTE, "care/bridge.yml:1:1: error: this file is not read. Name it bridge.yaml."),
        (
            "bridge.yaml",
            NOTE + "season: wett\n",
            "care/bridge.yaml:5:1: error: season: 'wett' is not one of the words for it. "
            "Did you mean wet? Choose from wet, dry, warm, cold.",
        ),
    ],
)
def test_a_wrong_care_note_is_told_with_its_line(tmp_path: Path, name: str, text: str, expected: str) -> None:
    """The file, the line and the way out; ours stay as they are."""
    assert with_notes(tmp_path, {name: text}) == [expected]
    assert read_reference(tmp_path)[0].care == read_reference(None)[0].care


def test_a_name_beside_which_a_note_may_not_stand_is_looked_up(tmp_path: Path) -> None:
    """A slip of the pen would withhold nothing, so it is an error; a level is a name too."""
    assert with_notes(tmp_path, {"bridge.yaml": NOTE + "not_while: [lame, pulses, call now]\n"}) == [
        "care/bridge.yaml:5:19: error: no caution and no level is named 'pulses'. Did you mean pulse?"
    ]


def test_words_of_a_practice_do_not_undo_what_withholds_a_note(tmp_path: Path) -> None:
    """An own wording of our note waits with ours, unless it says otherwise."""
    ours = read_reference(None)[0].care
    with_notes(tmp_path, {"dry-bed.yaml": NOTE, "boots-fit.yaml": NOTE + "not_while: [lame]\n"})
    care = read_reference(tmp_path)[0].care

    assert care["dry-bed"].what != ours["dry-bed"].what
    assert care["dry-bed"].not_while == ours["dry-bed"].not_while
    assert care["boots-fit"].not_while == ("lame",)


def test_a_care_note_that_is_written_twice_is_told(tmp_path: Path) -> None:
    """Its own file counts; what the practice did not write is no second one."""
    table = "care:\n  dry-bed: {what: W, why: Y, how_often: O, source: s}\n"
    assert told(tmp_path, table) == []

    (line,) = with_notes(tmp_path, {"dry-bed.yaml": NOTE, "boots-fit.yaml": NOTE})
    assert line.startswith("care/dry-bed.yaml:1:1: warning: the care note dry-bed is written twice")
    assert read_reference(tmp_path)[0].care["dry-bed"].what == "Walk it over the bridge"


def test_other_files_among_the_care_notes_are_left_alone(tmp_path: Path) -> None:
    """Leftovers of editors, and a word to oneself."""
    assert with_notes(tmp_path, {".dry-bed.yaml.swp": "x", "dry-bed.yaml~": "x", "README.md": "x"}) == []


def test_a_link_among_the_care_notes_that_leads_out_is_told(tmp_path: Path) -> None:
    """Nothing from elsewhere comes onto the pages."""
    outside, inside = tmp_path / "outside", tmp_path / "records"
    with_notes(outside, {"bridge.yaml": NOTE})
    inside.mkdir()
    (inside / "care").symlink_to(outside / "care")

    assert [problem.message for problem in read_reference(inside)[1]] == ["this link leads out of the records"]


def test_links_of_own_templates_stay_within_their_folder(tmp_path: Path) -> None:
    """One to a horse is refused, too, since what lies there is published; one to a neighbour is not. All are told."""
    own = tmp_path / "site_templates"
    for folder in ("words", "theme"):
        (own / folder).mkdir(parents=True)
    (tmp_path / "bramble").mkdir()
    (own / "words" / "own.yaml").write_text("phrases: {no_such: x}\n")
    (own / "theme" / "near").symlink_to(own / "words")
    (own / "theme" / "horse").symlink_to(tmp_path / "bramble")
    (own / "theme" / "nowhere").symlink_to(tmp_path / "gone")
    _, problems = read_reference(tmp_path)

    assert [(problem.place.path.split("/", 1)[1], problem.message) for problem in problems] == [
        ("site_templates/theme/horse", "this link leads out of site_templates"),
        ("site_templates/theme/nowhere", "this link leads nowhere"),
    ]


@pytest.mark.parametrize("text", ["{count.__class__}", "{count[0]}", "{count:{count}}", "{count:>999999999}"])
def test_a_fact_in_own_words_is_a_plain_name(tmp_path: Path, text: str) -> None:
    """Words cannot reach into a fact, nor form it."""
    (line,) = told(tmp_path, f'phrases: {{week_several: "{text}"}}\n')

    assert "a fact in braces is no plain name" in line


def test_a_grade_that_is_no_number_is_told(tmp_path: Path) -> None:
    """Its key is none of a few names, so none is offered."""
    told_of = "name: n, called: grade, meaning: m, low: 0, high: 3, step: 1, source: s"
    (line,) = told(tmp_path, f"scales:\n  own: {{{told_of}, grades: {{foot: sore}}}}\n")

    assert "'foot' does not read as a number: it is not a number. Write it like 5 or 5.5" in line
