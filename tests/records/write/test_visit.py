"""A new visit's file: pleasant to fill in, with what was last found beside each line."""

import datetime as dt
import os
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest
import yaml

from recordgen.problems import Trouble
from recordgen.records.load.tables import read_reference
from recordgen.records.models.visit import Visit
from recordgen.records.write.visit import skeleton, start_visits
from recordgen.records.yaml.read import read_record
from tests.support.practice_folders import VISIT, build, practice

DAY = dt.date(2026, 11, 25)
EARLIER = VISIT.replace("2026-10-14", "2026-09-01").replace("toe_length: 86", "toe_length: 90")
HORSE = "willowmere/bramble/horse.yaml"


def text_for(folder: Path, files: Mapping[str, str | None] | None = None, **options: Any) -> str:
    """The new visit's file of the one horse of a practice."""
    return skeleton(practice(folder, files).horses[0], DAY, **options)


def line_with(text: str, key: str) -> str:
    """The first line that holds a key."""
    return next(line.strip() for line in text.splitlines() if key in line)


def test_last_values_stand_beside_their_lines(tmp_path: Path) -> None:
    """Before and after on one day; what was looked at once; both sides."""
    text = text_for(tmp_path, {"willowmere/bramble/2026-09-01.yaml": EARLIER})

    assert line_with(text, "toe_length:").split("#")[1].strip() == "86 before, 75 after on 14 October 2026"
    assert line_with(text, "infection:").split("#")[1].strip() == "surface on 14 October 2026"
    assert line_with(text, "heel_height").split("#")[1].strip() == (
        "inner 33 before, 29 after; outer 32 before, 30 after on 14 October 2026"
    )
    assert line_with(text, "medial toe quarter").split("#")[1].strip() == "flare 6, separation 18 on 14 October 2026"
    assert line_with(text, "medial toe quarter").startswith(
        "medial toe quarter: {flare: , separation: {length: , depth: }}"
    )
    assert line_with(text, "shedding:").split("#")[1].strip() == "yes on 14 October 2026"


def test_a_value_that_was_left_out_last_time_comes_from_before(tmp_path: Path) -> None:
    """Each line looks back on its own."""
    files = {
        "willowmere/bramble/2026-09-01.yaml": EARLIER,
        "willowmere/bramble/2026-10-14.yaml": "date: 2026-10-14\nfeet: {left_fore: {landing: flat}}\n",
    }
    text = text_for(tmp_path, files)

    assert line_with(text, "landing:").split("#")[1].strip() == "flat on 14 October 2026"
    assert line_with(text, "toe_length:").split("#")[1].strip() == "90 before, 75 after on 1 September 2026"


def test_a_wall_seen_long_ago_adds_no_line(tmp_path: Path) -> None:
    """After half a year its zones are looked at anew."""
    text = skeleton(practice(tmp_path).horses[0], dt.date(2027, 6, 1))

    assert "medial toe quarter: {flare: , sep" not in text
    assert "landing:                              # medial first on 14 October 2026" in text


def test_a_new_file_reads_without_a_word_about_its_empty_lines(tmp_path: Path) -> None:
    """Empty parts are left out: no foot counts as looked at."""
    file = tmp_path / "2026-11-25.yaml"
    file.write_text(text_for(tmp_path / "records"), "utf-8")
    written, problems = read_record(file, file.name, Visit)

    assert problems == []
    assert written.record.model_fields_set == {"date"}


@pytest.mark.parametrize(
    "zone",
    ["{chip: 14}", "{flare: 4, bruise: yes}", "{crack: {depth: full}}", "{separation: {depth: 3}, thickness: 8}"],
)
def test_whatever_was_found_on_the_wall_a_new_file_reads(tmp_path: Path, zone: str) -> None:
    """The zone's lines are empty again, and right."""
    visit = f"date: 2026-10-14\nfeet: {{left_fore: {{wall: {{medial heel: {zone}}}}}}}\n"
    file = tmp_path / "2026-11-25.yaml"
    file.write_text(text_for(tmp_path / "records", {"willowmere/bramble/2026-10-14.yaml": visit}), "utf-8")
    written, problems = read_record(file, file.name, Visit)

    assert (problems, written.record.feet) == ([], {})


def test_the_usual_keys_are_there_for_each_foot(tmp_path: Path) -> None:
    """One fills in values, not keys."""
    found = yaml.safe_load(text_for(tmp_path))

    assert list(found["feet"]) == ["left_fore", "right_fore", "left_hind", "right_hind"]
    assert found["date"] == DAY
    assert set(found["feet"]["right_hind"]["before"]) == {"toe_length", "heel_height", "toe_angle"}


def test_feet_are_named_as_the_practice_names_them(tmp_path: Path) -> None:
    """Near and off."""
    assert list(yaml.safe_load(text_for(tmp_path, near_and_off=True))["feet"]) == [
        "near_fore",
        "off_fore",
        "near_hind",
        "off_hind",
    ]


def test_care_in_force_and_the_last_next_stand_as_comments(tmp_path: Path) -> None:
    """So that one sees what was said."""
    text = text_for(tmp_path)

    assert "#   daily-grooves\n#   dry-bed\n" in text
    assert line_with(text, "next:").endswith("# 5 weeks last time")


def test_care_that_was_ended_is_not_in_force(tmp_path: Path) -> None:
    """The last word holds."""
    files = {"willowmere/bramble/2026-11-01.yaml": "date: 2026-11-01\ncare_ends: yes\nfeet: {LF: {note: x}}\n"}

    assert "daily-grooves" not in text_for(tmp_path, files)


def test_care_that_ran_out_is_not_in_force(tmp_path: Path) -> None:
    """A note until the next visit ended with a visit that gave none; before that it stands, to be named again."""
    files = {"willowmere/bramble/2026-11-01.yaml": "date: 2026-11-01\nfeet: {LF: {note: x}}\n"}
    notes = read_reference(None)[0].care

    assert "daily-grooves" not in text_for(tmp_path, files, library=notes)
    assert "#   dry-bed\n" in text_for(tmp_path, files, library=notes)
    assert "#   daily-grooves\n" in text_for(tmp_path / "one", library=notes)


def test_a_planned_day_and_its_reason_are_told(tmp_path: Path) -> None:
    """A day in place of weeks."""
    next_time = VISIT.replace("{weeks: 5}", "{date: 2026-11-30, reason: 'after\n  the show'}")

    assert line_with(text_for(tmp_path, {"willowmere/bramble/2026-10-14.yaml": next_time}), "next:").endswith(
        "# 30 November 2026 was planned last time, after the show"
    )


def test_a_vets_plan_stands_on_top(tmp_path: Path) -> None:
    """It comes before the usual ways; lines in it stay one comment."""
    plan = 'vet_plan: {by: A vet, date: 2026-10-01, words: "Heels first.\\ndate: x"}\n'
    text = text_for(tmp_path, {HORSE: f"name: Bramble\n{plan}"})

    assert "# The vet's plan (A vet, 1 October 2026): Heels first. date: x\n" in text


def test_the_first_visit_says_so(tmp_path: Path) -> None:
    """There is nothing to look back on."""
    text = text_for(tmp_path, {"willowmere/bramble/2026-10-14.yaml": None})

    assert "# This is the first visit.\n" in text
    assert "before on" not in text


def test_visits_are_started_for_each_horse_that_is_there(tmp_path: Path) -> None:
    """A horse that left gets none."""
    files = {
        "willowmere/otter/horse.yaml": "name: Otter\n",
        "willowmere/sable/horse.yaml": "name: Sable\nleft: {date: 2026-01-01}\n",
    }
    stable = practice(tmp_path, files).stables[0]
    started = start_visits(stable, tmp_path / "willowmere", DAY)

    assert started == [
        (tmp_path / "willowmere/bramble/2026-11-25.yaml", True),
        (tmp_path / "willowmere/otter/2026-11-25.yaml", True),
    ]
    assert started[1][0].read_text("utf-8") == skeleton(stable.horses[1], DAY)


def test_a_file_that_is_there_is_never_written_over(tmp_path: Path) -> None:
    """Typed text stays."""
    stable = practice(tmp_path).stables[0]
    day = dt.date(2026, 10, 14)

    assert start_visits(stable, tmp_path / "willowmere", day, "bramble") == [
        (tmp_path / "willowmere/bramble/2026-10-14.yaml", False)
    ]
    assert (tmp_path / "willowmere/bramble/2026-10-14.yaml").read_text("utf-8") == VISIT


def test_the_editors_schema_is_named_where_it_lies_in_the_records(tmp_path: Path) -> None:
    """The file tells the editor where to look."""
    stable = practice(tmp_path, {".schemas/visit.json": "{}"}).stables[0]
    ((path, _),) = start_visits(stable, tmp_path / "willowmere", DAY)

    assert path.read_text("utf-8").startswith("# yaml-language-server: $schema=../../.schemas/visit.json\n")


@pytest.mark.parametrize(
    ("horse", "message", "way_out"),
    [
        ("otter", "there is no horse 'otter' at Willowmere", "The horses there are: bramble"),
        ("sable", "Sable left on 1 January 2026", "Take left out of its horse.yaml first"),
    ],
)
def test_a_horse_that_is_not_there_is_told(tmp_path: Path, horse: str, message: str, way_out: str) -> None:
    """With the way out."""
    files = {"willowmere/sable/horse.yaml": "name: Sable\nleft: {date: 2026-01-01}\n"}
    stable = practice(tmp_path, files).stables[0]
    with pytest.raises(Trouble) as trouble:
        start_visits(stable, tmp_path / "willowmere", DAY, horse)

    assert (trouble.value.message, trouble.value.way_out) == (message, way_out)


def test_a_place_that_cannot_be_written_is_told(tmp_path: Path) -> None:
    """The horse's folder went away meanwhile."""
    stable = practice(tmp_path).stables[0]
    with pytest.raises(Trouble, match=r"bramble/.*\.yaml cannot be written"):
        start_visits(stable, tmp_path / "elsewhere", DAY)


def test_a_practice_may_have_a_form_of_its_own(tmp_path: Path) -> None:
    """A template of the same name in its own folder comes first."""
    form = "date: {{ day.isoformat() }}\nnote: {{ horse.name | yaml }}\n"
    folder = build(tmp_path, {"site_templates/records/visit.yaml.jinja": form})

    assert text_for(folder, own=folder) == "date: 2026-11-25\nnote: Bramble\n"
    assert os.listdir(folder / "willowmere" / "bramble")
