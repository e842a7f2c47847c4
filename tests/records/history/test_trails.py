"""The trail of each visit, with a real git."""

import datetime as dt
from pathlib import Path

import pytest

from recordgen.records.history.trails import trails
from recordgen.records.load.everything import read_whole
from recordgen.records.models.reference import Reference
from tests.support.git_practice import LONGER, OTHER, TOE, Kept, alone, begun
from tests.support.practice_folders import TODAY, VISIT, VISIT_FILE


@pytest.fixture(autouse=True)
def _somebody(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """Git knows who we are."""
    alone(monkeypatch, tmp_path)


@pytest.fixture
def kept(tmp_path: Path) -> Kept:
    """A practice with one visit, kept on 14 October."""
    return begun(tmp_path)


def test_a_visit_kept_once_has_a_first_day_and_no_change(kept: Kept) -> None:
    """Nothing else is told of it."""
    trail = kept.trail()

    assert (trail.first, trail.committed, trail.changes, trail.doubts) == (dt.date(2026, 10, 14), True, (), ())


def test_a_value_that_was_corrected_is_told_with_day_and_reason(kept: Kept) -> None:
    """Before and after, with the unit."""
    kept.entry("2026-10-20", "Read again on the photograph", {VISIT_FILE: LONGER})

    assert kept.told() == [("2026-10-20", "Read again on the photograph", [(TOE, "75 mm", "77 mm")])]
    assert kept.trail().first == dt.date(2026, 10, 14)


def test_values_added_and_taken_out_are_told_as_such(kept: Kept) -> None:
    """Also those of a whole foot, of the wall and of lists, in the order of the models."""
    text = VISIT.replace("since_last: Out on the hill with the herd, dry and windy.\n", "").replace(
        "toe_callus: thinned", ""
    )
    text = text.replace("flare: 6", "flare: 5").replace("edge rounded, ", "").replace("toe_angle: 50", "")
    text = text.replace("care:", "  RH: {heat: yes, marks: [{kind: crack end, below_hairline: 12}]}\ncare:")
    kept.entry("2026-10-20", "more", {VISIT_FILE: text})

    assert kept.told()[0][2] == [
        ("since last time", "Out on the hill with the herd, dry and windy.", None),
        ("left fore, toe angle, before the trim", "50°", None),
        ("left fore, flare at the inner toe quarter", "6 mm", "5 mm"),
        ("left fore, sole, toe callus", "thinned", None),
        ("left fore, done, number 2", "edge rounded", "medial flare dressed"),
        ("left fore, done, number 3", "medial flare dressed", None),
        ("right hind, marks, number 1, kind", None, "crack end"),
        ("right hind, marks, number 1, zone", None, "toe"),
        ("right hind, marks, number 1, below hairline", None, "12 mm"),
        ("right hind, heat", None, "yes"),
    ]


def test_the_points_of_a_tracing_are_one_value(kept: Kept) -> None:
    """A line that was traced anew is not told point by point."""
    kept.entry("2026-10-18", "traced", {VISIT_FILE: traced("[[1, 2], [3, 4]]", "[5, 6]")})
    kept.entry("2026-10-20", "anew", {VISIT_FILE: traced("[[1, 2], [3, 5]]", "[5, 7]")})

    assert kept.told()[-1] == (
        *("2026-10-20", "anew"),
        [
            ("left hind, tracing, number 1, frog apex", "one point", "one point"),
            ("left hind, tracing, number 1, bar medial", "2 points", "2 points"),
        ],
    )


def traced(bar: str, apex: str) -> str:
    """The visit with a tracing of one foot."""
    scale = "{from: [1, 1], to: [401, 1], length: 100}"
    landmarks = f"bar_medial: {bar}, frog_apex: {apex}"
    one = f"{{view: sole, moment: after, image: [1600, 1200], scale: {scale}, {landmarks}}}"
    return VISIT.replace("feet:\n", f"feet:\n  left_hind: {{tracings: [{one}]}}\n")


def test_only_values_count_and_not_how_they_are_written(kept: Kept) -> None:
    """Another unit, another name of the foot, comments, the order of the lines."""
    text = "# again\n" + VISIT.replace("toe_length: 75", "toe_length: 7.5 cm").replace("left_fore", "NF")
    kept.entry("2026-10-20", "tidied", {VISIT_FILE: text})

    assert kept.told() == []


def test_feet_are_named_as_the_practice_names_them(kept: Kept) -> None:
    """Near and off."""
    kept.write({"practice.yaml": "name: A\ntrimmer: B\nfeet: near and off\n"})
    kept.entry("2026-10-20", "x", {VISIT_FILE: LONGER})

    assert kept.told()[0][2][0][0] == "near fore, toe length, after the trim"


def test_what_was_changed_is_told_in_the_units_of_the_practice(kept: Kept) -> None:
    """A rule in inches reads the toe of 75 mm, and of what it was corrected to, in sixteenths."""
    kept.write({"practice.yaml": "name: A\ntrimmer: B\nunits: inches\ninches_since: 2026-11-01\n"})
    kept.entry("2026-10-20", "x", {VISIT_FILE: VISIT.replace("toe_length: 75", "toe_length: 3 1/16 in")})

    assert kept.told()[0][2][0][1:3] == ("2 15/16 in", "3 1/16 in")


@pytest.mark.parametrize(
    ("named", "text", "state"),
    [
        ("willowmere/bramble/2026-11-18.yaml", "date: 2026-11-18\nnote: x\n", "new"),
        (VISIT_FILE, LONGER, "amended"),
    ],
)
def test_a_file_that_is_not_kept_as_it_is_is_told(kept: Kept, named: str, text: str, state: str) -> None:
    """New, or changed since, be it staged or not."""
    kept.write({named: text})
    loose = kept.trail(named)
    kept.git("add", "--all")

    assert (loose.state, loose.committed, kept.trail(named).state) == (state, False, state)


def test_a_file_that_git_leaves_out_is_told(kept: Kept) -> None:
    """It will never be kept."""
    kept.write(
        {".gitignore": "**/bramble/2026-11*\n", "willowmere/bramble/2026-11-18.yaml": "date: 2026-11-18\nnote: x\n"}
    )

    assert kept.trail("willowmere/bramble/2026-11-18.yaml").state == "left out"
    assert kept.trail().state == "kept"


def test_a_whole_folder_that_git_leaves_out_is_told(kept: Kept) -> None:
    """A stable that is kept elsewhere."""
    kept.write({".gitignore": "/heath/\n", "heath/stable.yaml": "name: Heath\n", "heath/a/horse.yaml": "name: A\n"})
    kept.write({"heath/a/2026-11-18.yaml": "date: 2026-11-18\nnote: x\n"})

    assert kept.trail("heath/a/2026-11-18.yaml").state == "left out"


def test_a_visit_taken_out_and_put_back_is_told(kept: Kept) -> None:
    """With what differs from before."""
    kept.entry("2026-10-20", "by mistake", {VISIT_FILE: None})
    kept.entry("2026-10-22", "back", {VISIT_FILE: LONGER})

    assert kept.trail().first == dt.date(2026, 10, 14)
    assert kept.told() == [
        ("2026-10-20", "taken out", []),
        ("2026-10-22", "put back", [(TOE, "75 mm", "77 mm")]),
    ]


def test_a_visit_put_back_as_it_was_is_told(kept: Kept) -> None:
    """Nothing differs, and it was away."""
    kept.entry("2026-10-20", "by mistake", {VISIT_FILE: None})
    kept.entry("2026-10-22", "back", {VISIT_FILE: VISIT})

    assert [kind for _, kind, _ in kept.told()] == ["taken out", "put back"]


def test_a_file_that_was_begun_and_then_filled_in_is_told_as_that(tmp_path: Path) -> None:
    """Not as a long list of values."""
    kept = begun(tmp_path)
    named = "willowmere/bramble/2026-11-18.yaml"
    kept.entry("2026-11-18", "begun", {named: "date: 2026-11-18\nfeet:\n  LF:\n    before:\n"})
    kept.entry("2026-11-19", "done", {named: "date: 2026-11-18\nnote: x\n"})

    assert kept.told(named) == [("2026-11-19", "filled in", [])]


@pytest.mark.parametrize("broken", ["date: [\n", "date: 2026-10-14\nfet: {}\n", b"\xff\xfe", "", "x" * 1_000_001])
def test_a_version_that_cannot_be_read_is_told_and_the_next_is_compared_with_the_last_before(
    kept: Kept, broken: bytes | str
) -> None:
    """Broken YAML, an unknown key, other bytes, nothing, far too much."""
    kept.entry("2026-10-20", "oh", {VISIT_FILE: broken})
    kept.entry("2026-10-21", "mended", {VISIT_FILE: LONGER})

    assert kept.told() == [
        ("2026-10-20", "unreadable", []),
        ("2026-10-21", "readable again", [(TOE, "75 mm", "77 mm")]),
    ]


def test_a_first_version_that_cannot_be_read_is_told(kept: Kept) -> None:
    """Its contents are not known."""
    named = "willowmere/bramble/2026-11-18.yaml"
    kept.entry("2026-11-18", "oh", {named: "date: ["})
    kept.entry("2026-11-19", "mended", {named: "date: 2026-11-18\nnote: x\n"})

    assert kept.told(named) == [("2026-11-18", "unreadable", []), ("2026-11-19", "readable again", [])]


def test_trails_come_in_the_order_of_a_horses_visits(kept: Kept) -> None:
    """One for each visit of its record."""
    kept.entry("2026-11-18", "x", {"willowmere/bramble/2026-11-18.yaml": "date: 2026-11-18\nnote: x\n"})
    found = kept.trails().of_horse("willowmere", "bramble")

    assert [trail.first for trail in found] == [dt.date(2026, 10, 14), dt.date(2026, 11, 18)]
    assert kept.trails().of_horse("willowmere", "nobody") == ()


def test_a_visit_behind_a_link_is_what_it_leads_to(kept: Kept) -> None:
    """A folder within the records that is a link to another."""
    kept.entry("2026-10-20", "x", {VISIT_FILE: LONGER})
    (kept.records / "willowmere" / "daisy").symlink_to("bramble")
    found = kept.trails()

    assert found.of(kept.records / OTHER) == found.of(kept.records / VISIT_FILE)


def test_tables_without_words_are_no_trouble_where_nothing_changed(kept: Kept) -> None:
    """The words are asked for only where something is told."""
    assert trails(read_whole(kept.records, TODAY).practice, Reference()).trouble is None
