"""Whom a caution asks to ring, with the number as recorded, and what the trimmer is told where one is missing."""

from __future__ import annotations

from typing import Any

import pytest

from recordgen.hoof.summary import StableSummary
from recordgen.hoof.whom_to_ring import Ring, numbers_missing, whom_to_ring
from recordgen.records.models.stable import Stable
from tests.support.horse_records import NAMING, horse, practice, summary

OF_STABLE = {"name": "Fold Gate Vets", "phone": "01632 960856"}
OWN = {"name": "Dr Sage", "phone": "01632 960111"}


def stable(**values: Any) -> Stable:
    """A stable."""
    return Stable.model_validate({"name": "Willowmere", **values})


@pytest.mark.parametrize(
    ("of_horse", "of_stable", "expected"),
    [
        ({"vet": OWN}, {"vet": OF_STABLE}, Ring("Dr Sage", "01632 960111")),
        ({}, {"vet": OF_STABLE}, Ring("Fold Gate Vets", "01632 960856")),
        ({}, {"vet": {"name": "Fold Gate Vets"}}, Ring("Fold Gate Vets", None)),
        ({}, {}, Ring("your vet", None)),
    ],
)
def test_the_vet_is_the_horses_own_or_the_stables(
    of_horse: dict[str, Any], of_stable: dict[str, Any], expected: Ring
) -> None:
    """And plainly your vet where none is recorded."""
    found = whom_to_ring(("vet",), horse(**of_horse), stable(**of_stable), practice(), NAMING)

    assert found == (expected,)


def test_for_a_trim_the_trimmer_is_rung() -> None:
    """Both stand in the order of the caution."""
    found = whom_to_ring(("trimmer", "vet"), horse(), stable(vet=OF_STABLE), practice(phone="07700 900142"), NAMING)

    assert found == (Ring("Wren Ashdown", "07700 900142"), Ring("Fold Gate Vets", "01632 960856"))


@pytest.mark.parametrize(
    ("of_stable", "of_horse", "missing"),
    [
        ({}, {}, 1),
        ({"vet": {"name": "Fold Gate Vets"}}, {}, 1),
        ({"vet": OF_STABLE}, {}, 0),
        ({}, {"vet": OWN}, 0),
        ({}, {"left": {"date": "2026-11-01"}}, 0),
    ],
)
def test_a_missing_number_is_told(of_stable: dict[str, Any], of_horse: dict[str, Any], missing: int) -> None:
    """Of each horse that is there and has none."""
    found = numbers_missing([StableSummary("willowmere", stable(**of_stable), (summary(**of_horse),))])

    assert sum(len(one.horses) for one in found) == missing
