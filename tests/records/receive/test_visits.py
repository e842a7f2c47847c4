"""A visit written as text is the visit that is read back."""

from __future__ import annotations

from hypothesis import HealthCheck, given, settings

from recordgen.records.models.visit import Visit
from recordgen.records.receive.visits import as_texts, visit_text
from recordgen.records.yaml.tree import document
from tests.support.any_visit import Values, visits

RECORD: Values = {
    "next": {"weeks": 6},
    "note": "Stiff at first.\nBetter later.",
    "feet": {
        "right_hind": {"done": ["frog opened"]},
        "left_fore": {
            "wall": {"toe": {"flare": 2}, "medial heel": {"separation": {"depth": 3, "length": 12.5}}},
            "after": {"toe_angle": 50, "heel_height": {"lateral": 36.5, "medial": 36}, "toe_length": 80},
            "before": {"toe_length": 88},
            "heat": False,
        },
    },
    "date": "2026-11-27",
}
TYPED = """\
# Bramble, 27 November 2026.
date: 2026-11-27
feet:
  near_fore:
    before: {toe_length: 88}
    after:  {toe_length: 80, heel_height: {medial: 36, lateral: 36.5}, toe_angle: 50}
    wall:
      medial heel: {separation: {length: 12.5, depth: 3}}
      toe: {flare: 2}
    heat: no
  off_hind:
    done: [frog opened]
next: {weeks: 6}
note: |-
  Stiff at first.
  Better later.
"""


def test_a_visit_is_typed_as_a_person_would() -> None:
    """In the order of the models, short groups in braces, feet by the practice's own names."""
    assert visit_text(RECORD, ["Bramble, 27 November 2026."], near_and_off=True) == TYPED


@settings(max_examples=30, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(record=visits())
def test_any_visit_reads_back_as_it_was(record: Values) -> None:
    """Whatever the models allow goes into a file and comes out of it unchanged."""
    meant = Visit.model_validate(document("typed", visit_text(as_texts(record)).encode()).values)
    found = document("2026-11-27.yaml", visit_text(record).encode())

    assert found.problems == []
    assert Visit.model_validate(found.values) == meant == Visit.model_validate(record)
