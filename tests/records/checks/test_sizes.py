"""Sizes of a foot by class of animal: where a range ends, which range is whose, and what is said."""

from __future__ import annotations

from pathlib import Path
from typing import get_args

import pytest

from recordgen.problems import Problem
from recordgen.records.checks.sizes import Animal, size_problems
from recordgen.records.models import ranges
from recordgen.records.models.horse import Horse
from recordgen.records.models.names import SizeClass
from recordgen.records.models.visit import Visit
from recordgen.records.yaml.read import Written
from tests.support.practice_folders import VISIT_FILE, told

OF = {
    "toe_length": ranges.TOE_LENGTHS,
    "toe_angle": ranges.TOE_ANGLES,
    "sole_length": ranges.SOLE_LENGTHS,
    "sole_width": ranges.SOLE_WIDTHS,
    "circumference": ranges.CIRCUMFERENCES,
}
ANIMALS: dict[SizeClass, dict[str, str]] = {
    "foal": {"kind": "foal", "born": "2026-05-01"},
    "yearling": {"kind": "donkey", "born": "2025-04-01"},
    "donkey": {"kind": "donkey"},
    "pony": {"kind": "pony", "born": "2015"},
    "heavy": {"heavy": "yes"},
    "horse": {"kind": "horse"},
}


def asked(animal: dict[str, str], measure: str, value: float, day: str = "2026-10-14") -> list[Problem]:
    """Questions asked about one value of an animal on a day."""
    visit = Visit.model_validate({"date": day, "feet": {"LF": {"before": {measure: value}}}})
    horse = Horse.model_validate({"name": "Bramble", **animal})
    whose = Animal.of(horse, visit.date)
    return list(size_problems(Written(visit, Path("a.yaml"), "a.yaml", b"date: 2026-10-14\n"), whose))


@pytest.mark.parametrize("size", get_args(SizeClass))
def test_a_value_at_the_end_of_its_range_is_not_asked_about_and_one_beyond_is(size: SizeClass) -> None:
    """For each measure, of each class; a range that is judged says so, any other names what it is derived from."""
    for measure, classes in OF.items():
        low, high, basis = classes[size]
        beyond = (low - 0.5, high + 0.5)

        assert [asked(ANIMALS[size], measure, value) for value in (low, high)] == [[], []]
        assert [[one.code for one in asked(ANIMALS[size], measure, value)] for value in beyond] == [
            ["value-unlikely"]
        ] * 2
        assert basis == ranges.JUDGEMENT or basis.startswith("Derived from: ")


@pytest.mark.parametrize(
    ("animal", "day", "size"),
    [
        ({"kind": "pony", "born": "2025-10-15"}, "2026-10-14", "foal"),
        ({"kind": "pony", "born": "2025-10-14"}, "2026-10-14", "yearling"),
        ({"kind": "pony", "born": "2024-10-15"}, "2026-10-14", "yearling"),
        ({"kind": "pony", "born": "2024-10-14"}, "2026-10-14", "pony"),
        ({"born": "2015"}, "2026-10-14", None),
        ({"kind": "mule"}, "2026-10-14", None),
        ({"kind": "pony", "heavy": "yes"}, "2026-10-14", "heavy"),
    ],
)
def test_the_class_goes_by_age_then_build_then_kind(animal: dict[str, str], day: str, size: SizeClass | None) -> None:
    """On the day of the visit; where nothing is told, the wide range of all horses and ponies holds."""
    horse = Horse.model_validate({"name": "Bramble", **animal})
    least = ranges.TOE_LENGTHS[size].low if size else 45

    assert horse.size_class(Visit.model_validate({"date": day}).date) == size
    assert not asked(animal, "toe_length", least, day)
    assert asked(animal, "toe_length", least - 1, day)


def test_it_is_said_for_whom_a_value_is_unlikely_also_where_it_was_taken_again(tmp_path: Path) -> None:
    """With the line it stands in."""
    foot = "LF: {before: {toe_length: 40}, repeat: {before: [{toe_length: 41}]}}"
    files = {
        "willowmere/bramble/horse.yaml": "name: Bramble\nkind: pony\n",
        VISIT_FILE: f"date: 2026-10-14\nfeet:\n  {foot}\nnext: {{weeks: 6}}\n",
    }

    assert told(tmp_path, files) == [
        f"{VISIT_FILE}:3:17: warning: feet, LF, before, toe_length: 40 mm is outside 45 to 105 for ponies, so look "
        "again. It may stand if it is right.",
        f"{VISIT_FILE}:3:53: warning: feet, LF, repeat, before, number 1, toe_length: 41 mm is outside 45 to 105 for "
        "ponies, so look again. It may stand if it is right.",
    ]
