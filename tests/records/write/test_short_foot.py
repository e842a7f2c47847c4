"""A new visit's file with one line a foot: what this horse had before, and nothing else."""

from __future__ import annotations

import datetime as dt
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import given, settings

from recordgen.records.load.practice import read_practice
from recordgen.records.models.foot import Measures
from recordgen.records.models.foot_line import foot_line, line_of
from recordgen.records.models.horse import Horse
from recordgen.records.models.practice import HorseRecord
from recordgen.records.models.visit import Visit
from recordgen.records.write.visit import skeleton
from recordgen.records.yaml.read import read_record
from recordgen.records.yaml.tree import document
from recordgen.records.yaml.values import without_empty
from recordgen.units import UNITS
from tests.conftest import RECORDS, TODAY
from tests.support.any_visit import visits
from tests.support.practice_folders import build, practice
from tests.support.schema import complaints

DAY = dt.date(2026, 11, 25)
NEXT = "willowmere/bramble/2026-11-01.yaml"


def short(folder: Path, later: str = "", **options: Any) -> str:
    """The short file of the one horse, after one visit more where `later` holds its feet."""
    files = {NEXT: f"date: 2026-11-01\nfeet: {{{later}}}\n"} if later else {}
    return skeleton(practice(folder, files).horses[0], DAY, short=True, **options)


def about(text: str, foot: str) -> list[str]:
    """The line of a foot, and the comments above it."""
    lines = [line.strip() for line in text.splitlines()]
    at = next(number for number, line in enumerate(lines) if line.startswith(f"{foot}:"))
    above = at
    while lines[above - 1].startswith("# "):
        above -= 1
    return [lines[at], *lines[above:at]]


def test_a_foot_is_one_line_with_what_it_had_before(tmp_path: Path) -> None:
    """Measures as one would type them, findings in words, and the same keys empty; another foot has none of them."""
    text = short(tmp_path)

    assert about(text, "left_fore") == [
        "left_fore: {before: , after: , landing: , frog: {infection: , central_groove_depth: }, wall: "
        "{medial toe quarter: {flare: , separation: {length: , depth: }}}, bars: {medial: , lateral: }, "
        "sole: {shedding: , toe_callus: }, done: }",
        "# 86 h33/32 a50 before, 75 h29/30 a53 after on 14 October 2026",
        "# landing medial first; frog infection surface, central groove depth 7; wall medial toe quarter flare 6, "
        "separation length 18, depth 3; bars medial 55, lateral 54; sole shedding yes, toe callus thinned on 14 "
        "October 2026",
    ]
    assert about(text, "right_hind") == ["right_hind: {before: , after: , done: }"]


def test_each_measure_is_told_with_the_day_it_was_last_taken(tmp_path: Path) -> None:
    """A visit that took the toe alone leaves heels and angle to the one before."""
    text = short(tmp_path, "left_fore: {before: 88, after: 77 h-/28, frog: {infection: none}}")

    assert about(text, "left_fore")[1:4] == [
        "# 88 before, 77 h-/28 after on 1 November 2026",
        "# h33/- a50 before, h29/- a53 after on 14 October 2026",
        "# frog infection none on 1 November 2026",
    ]


def test_what_was_found_long_ago_is_not_offered(tmp_path: Path) -> None:
    """After half a year a foot is looked at anew; lengths are told however old."""
    text = skeleton(practice(tmp_path).horses[0], dt.date(2027, 6, 1), short=True)

    assert about(text, "left_fore")[0] == "left_fore: {before: , after: , done: }"
    assert len(about(text, "left_fore")) == 2


def taken(measures: Measures) -> dict[str, Any]:
    """The measures that were taken, without what is empty."""
    return {name: value for name, value in measures.model_dump(exclude_none=True).items() if value != {}}


@settings(max_examples=15, deadline=None)
@given(visits())
def test_after_any_visit_the_file_is_read_as_one_only_begun(record: dict[str, Any]) -> None:
    """Whatever was found, its empty lines are right, and an editor underlines none."""
    visit = Visit.model_validate({**record, "date": "2026-10-14"})
    horse = HorseRecord("bramble", "willowmere", Horse(name="Bramble"), (visit,))
    text = skeleton(horse, DAY, short=True)
    found = document("begun.yaml", text.encode())

    assert Visit.model_validate(without_empty(found.values, Visit)).is_blank, text
    assert complaints(text) == []


@settings(max_examples=15, deadline=None)
@given(visits())
def test_the_line_of_measures_says_all_of_them(record: dict[str, Any]) -> None:
    """A line tells of a foot what was typed, to the last decimal."""
    for foot in Visit.model_validate({**record, "date": "2026-10-14"}).feet.values():
        for measures in filter(None, (foot.before, foot.after)):
            read_back = Measures.model_validate(foot_line(line_of(measures.model_dump())))

            assert taken(read_back) == taken(measures)


def test_a_line_typed_into_the_short_file_is_read(tmp_path: Path) -> None:
    """As its measures, one by one, in the file that `--short` begins."""
    text = short(tmp_path).replace("right_hind: {before: ,", "right_hind: {before: 96 h42/43.5 a48,")
    file = tmp_path / "2026-11-25.yaml"
    file.write_text(text, "utf-8")
    written, problems = read_record(file, file.name, Visit)
    before = written.record.feet["right_hind"].before

    assert problems == []
    assert before is not None
    assert before.model_dump(exclude_none=True) == {
        "toe_length": 96,
        "heel_height": {"medial": 42, "lateral": 43.5},
        "toe_angle": 48,
    }


@pytest.mark.parametrize("near_and_off", [False, True])
def test_the_short_file_of_every_horse_of_the_demo_is_read_without_a_word(tmp_path: Path, near_and_off: bool) -> None:
    """Blank, and shorter than the long one by far."""
    found, _ = read_practice(RECORDS, TODAY)
    assert found is not None
    for horse in found.horses:
        text = skeleton(horse, TODAY, near_and_off, short=True)
        file = tmp_path / "2026-11-25.yaml"
        file.write_text(text, "utf-8")
        written, problems = read_record(file, file.name, Visit)

        assert (problems, written.record.is_blank) == ([], True)
        assert len(text.splitlines()) < len(skeleton(horse, TODAY).splitlines()) / 2
        assert next(iter(yaml.safe_load(text)["feet"])) == ("near_fore" if near_and_off else "left_fore")


def test_a_practice_may_have_a_short_form_of_its_own(tmp_path: Path) -> None:
    """A template of the same name in its own folder comes first, in the sandbox, with the same lines to ask for."""
    form = "{{ short_foot(past, 'left_fore').told[0] }}\n"
    folder = build(tmp_path, {"site_templates/records/visit_short.yaml.jinja": form})

    assert short(folder, own=folder) == "86 h33/32 a50 before, 75 h29/30 a53 after on 14 October 2026\n"


@pytest.mark.parametrize("short", [False, True])
def test_a_rule_in_inches_reads_the_last_values(tmp_path: Path, short: bool) -> None:
    """A reading stands in sixteenths with its unit, as it may be typed again; angles stay."""
    text = skeleton(practice(tmp_path).horses[0], DAY, short=short, units=UNITS["inches"])
    toe = "3-3/8in h1-5/16in/1-1/4in a50 before" if short else "3 3/8 in before, 2 15/16 in after"

    assert toe in text
    assert "11/16 in" in text
    assert "86" not in text
