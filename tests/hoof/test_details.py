"""Details of a foot and of a trim, in sentences."""

from __future__ import annotations

from typing import Any, get_args

import pytest

from recordgen.hoof.details import details_of, handling_of
from recordgen.records.models.foot import HeelForm, Landing
from tests.support.horse_records import NAMING, foot, visit


@pytest.mark.parametrize(
    ("values", "told"),
    [
        ({"landing": "flat"}, ["lands flat"]),
        ({"landing": "toe first", "landing_after": "heel first"},
         ["lands on the toe first", "after the trim it lands on the heel first"]),
        ({"heels": {"medial": "low", "lateral": "upright"}}, ["inner heel: low", "outer heel: upright"]),
        ({"heels": {"medial": "collapsed", "lateral": "collapsed"}},
         ["both heels: folded under, the horn lying along the ground"]),
        ({"white_line": {"joint": "stretched", "colour": "yellow"}},
         ["the white line is stretched", "the white line is yellow"]),
        ({"sole": {"against_wall": "proud"}}, ["the sole stands out beyond the edge of the wall"]),
        ({"wall": {"toe": {"taken": 3}, "medial heel": {"taken": 0}}},
         ["about this much of the height was taken: inner heel 0 mm and toe 3 mm"]),
        ({"wall": {"toe": {"taken_back": 6, "sound_connection": False}}},
         ["the wall was taken back by 6 mm at the toe", "no sound wall was reached yet: toe"]),
        ({"wall": {"toe": {"flare": 4}}, "before": {"toe_length": 88}}, []),
    ],
)  # fmt: skip
def test_a_foots_details_are_told_in_sentences(values: dict[str, Any], told: list[str]) -> None:
    """Measures and findings are told elsewhere."""
    assert list(details_of(foot(**values), NAMING)) == told


@pytest.mark.parametrize("form", get_args(HeelForm))
@pytest.mark.parametrize("landing", get_args(Landing))
def test_every_choice_has_its_words(form: str, landing: str) -> None:
    """No choice of the models is without a phrase."""
    found = foot(landing=landing, landing_after=landing, heels={"medial": form, "lateral": form})

    assert len(details_of(found, NAMING)) == 3


def test_how_the_horse_stood_is_told() -> None:
    """In one sentence, with what a vet gave and what helped."""
    stood = visit("2026-10-14", handling={"stood": ["leaned", "tired"], "sedated": True, "note": "Held by its owner"})

    assert handling_of(stood, NAMING) == ("It leaned and grew tired", "A vet had sedated it", "Held by its owner")
    assert handling_of(visit("2026-10-14"), NAMING) == ()
