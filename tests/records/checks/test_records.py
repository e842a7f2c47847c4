"""Checks beyond a file's form: days against each other, after against before."""

from pathlib import Path

import numpy as np
import pytest

from recordgen.records.checks.trims import could_differ_mm
from recordgen.records.load.tables import read_reference
from tests.support.practice_folders import VISIT, VISIT_FILE, told

HORSE = "willowmere/bramble/horse.yaml"


def one(tmp_path: Path, files: dict[str, str | None]) -> str:
    """The one problem of a practice."""
    lines = told(tmp_path, files)
    assert len(lines) == 1, lines
    return lines[0]


def test_a_good_practice_has_no_problems(tmp_path: Path) -> None:
    """Nothing is told where nothing is wrong."""
    assert told(tmp_path) == []


def test_a_date_that_differs_from_the_files_name_is_told(tmp_path: Path) -> None:
    """At the line of the date."""
    text = VISIT.replace("date: 2026-10-14", "date: 2026-10-15")

    assert one(tmp_path, {VISIT_FILE: text}) == (
        f"{VISIT_FILE}:1:1: error: the date is 2026-10-15, but the file is named 2026-10-14. Correct one of the two."
    )


def test_a_visit_in_the_future_is_told(tmp_path: Path) -> None:
    """The day of the run is the last one a visit can have."""
    files = {VISIT_FILE: None, "willowmere/bramble/2026-12-02.yaml": VISIT.replace("2026-10-14", "2026-12-02")}

    assert "the date 2026-12-02 is in the future" in one(tmp_path, files)


@pytest.mark.parametrize(
    ("before", "after", "said"),
    [
        ("heel_height: {medial: 33", "heel_height: {medial: 40", "left_fore, heel_height, medial: 40 mm after, 33 mm"),
        ("toe_length: 75", "toe_length: 92", "left_fore, toe_length: 92 mm after, 86 mm before; a trim cannot add"),
    ],
)
def test_more_after_a_trim_than_before_is_told(tmp_path: Path, before: str, after: str, said: str) -> None:
    """A trim takes and cannot add."""
    head, tail = VISIT.split("    after:")
    text = f"{head}    after:{tail.replace('medial: 29', 'medial: 33', 1).replace(before, after, 1)}"
    line = one(tmp_path, {VISIT_FILE: text})

    assert line.startswith(f"{VISIT_FILE}:8:")
    assert "error: " in line
    assert said in line


@pytest.mark.parametrize(("mm", "said"), [(87, "warning: "), (89, "warning: "), (90, "error: ")])
def test_a_little_more_after_a_trim_may_be_the_reading(tmp_path: Path, mm: int, said: str) -> None:
    """As far as two readings can differ it is asked and not refused: 3.8 mm by rule."""
    text = VISIT.replace("toe_length: 75", f"toe_length: {mm}")

    assert f"{said}left_fore, toe_length: {mm} mm after" in one(tmp_path, {VISIT_FILE: text})


@pytest.mark.parametrize(
    ("key", "methods", "mm"),
    [
        ("toe_length", {}, 3.8),
        ("toe_length", {"toe_length": "photograph"}, 7.4),
        ("heel_height_medial", {"heel_height": "photograph"}, 7.4),
        ("heel_height_medial", {"heel_height_medial": "rule", "heel_height": "photograph"}, 3.8),
    ],
)
def test_how_far_readings_can_differ_follows_their_way(key: str, methods: dict[str, str], mm: float) -> None:
    """A length from a photograph is out by twice as much as one by rule, as the table of measures tells."""
    assert could_differ_mm(key, methods, read_reference(None)[0]) == pytest.approx(mm, abs=0.05)


def test_honest_readings_of_an_untouched_heel_are_not_refused() -> None:
    """Of two readings to the millimetre of one height, few are so far apart; by simulation."""
    rng = np.random.default_rng(1)
    before, after = (np.round(35.4 + rng.normal(0, 1, 100_000)) for _ in range(2))

    assert np.mean(after - before > could_differ_mm("heel_height_medial", {}, None)) < 0.012


def test_an_angle_may_grow_by_a_trim(tmp_path: Path) -> None:
    """Taking the toe back makes it steeper."""
    assert told(tmp_path, {VISIT_FILE: VISIT.replace("toe_angle: 53", "toe_angle: 62")}) == []


def test_measures_after_no_trim_are_told(tmp_path: Path) -> None:
    """Either it was trimmed or there is no after."""
    assert "the visit says trimmed: no" in one(tmp_path, {VISIT_FILE: VISIT + "trimmed: no\n"})


@pytest.mark.parametrize(
    ("more", "said"),
    [
        ("vet: [{date: 2027-01-01, by: A vet, kind: seen}]\n", "17:8: error: the date 2027-01-01 is in the future"),
        (
            "resolved: [{caution: x, date: 2027-01-01, by: A vet}]\n",
            "17:25: error: the date 2027-01-01 is in the future",
        ),
    ],
)
def test_days_inside_a_visit_are_not_in_the_future(tmp_path: Path, more: str, said: str) -> None:
    """Findings of a vet and ends of cautions have happened."""
    assert said in one(tmp_path, {VISIT_FILE: VISIT + more})


@pytest.mark.parametrize(
    ("day", "said"),
    [
        ("2026-10-14", "the next visit (2026-10-14) is not after this one"),
        ("2062-11-25", "the next visit (2062-11-25) is more than 52 weeks after this one"),
    ],
)
def test_the_next_visit_comes_within_a_year(tmp_path: Path, day: str, said: str) -> None:
    """A slip of a digit is found."""
    assert said in one(tmp_path, {VISIT_FILE: VISIT.replace("{weeks: 5}", f"{{date: {day}}}")})


def test_a_visit_without_a_foot_is_asked_about(tmp_path: Path) -> None:
    """It may be right, so it is a warning."""
    assert "warning: no foot is recorded" in one(tmp_path, {VISIT_FILE: "date: 2026-10-14\nnote: x\n"})


def test_wrong_feet_are_not_told_as_no_feet(tmp_path: Path) -> None:
    """One mistake makes one problem."""
    assert "should hold keys" in one(tmp_path, {VISIT_FILE: "date: 2026-10-14\nfeet: left_fore\n"})


def test_a_wrong_value_does_not_hide_a_wrong_day(tmp_path: Path) -> None:
    """Both come in one run."""
    text = VISIT.replace("date: 2026-10-14", "date: 2026-10-15").replace("landing: medial first", "landing: x")
    lines = told(tmp_path, {VISIT_FILE: text})

    assert [line.split(":")[1] for line in lines] == ["1", "6"]


@pytest.mark.parametrize(
    ("horse", "said"),
    [
        ("born: 2027\n", "born: 2027-01-01 is in the future"),
        ("left: {date: 2027-01-01}\n", "left, date: 2027-01-01 is in the future"),
        ("consent: {vet: yes, by: A, date: 2027-01-01}\n", "consent, date: 2027-01-01 is in the future"),
        ("born: 2020\nleft: {date: 2019-01-01}\n", "the horse left (2019-01-01) before it was born (2020)"),
        ("born: 2026-11-01\n", "the visit is before the horse was born (2026-11-01)"),
        ("left: {date: 2026-09-01}\n", "warning: the visit is after the horse left (2026-09-01)"),
        (
            "vet_plan: {by: A vet, date: 2026-10-01, words: Often, weeks: 4}\n",
            "16:8: warning: next visit in 5 weeks, but the vet's plan says 4 at the most",
        ),
    ],
)
def test_a_horses_days_fit_each_other_and_its_visits(tmp_path: Path, horse: str, said: str) -> None:
    """Birth, leaving, consent, the vet's plan and the visits."""
    lines = told(tmp_path, {HORSE: f"name: Bramble\n{horse}"})

    assert any(said in line for line in lines), lines


def test_a_vets_plan_that_ended_is_not_held_against_a_visit(tmp_path: Path) -> None:
    """The plan ran out in September."""
    plan = "vet_plan: {by: A vet, date: 2026-08-01, words: Often, weeks: 4, until: 2026-09-30}\n"

    assert told(tmp_path, {HORSE: f"name: Bramble\n{plan}"}) == []
