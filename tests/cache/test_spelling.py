"""Names by content: equal values have one, others another."""

from __future__ import annotations

from datetime import date

import pytest

from recordgen.cache.spelling import canonical, key_of
from recordgen.hoof.measures.readings import Reading


def test_the_order_of_a_mapping_does_not_matter_and_kinds_of_value_do() -> None:
    """Equal content has one spelling; the number 1 and the word 1 have two."""
    assert canonical({"a": 1, "b": (2, 3)}) == canonical({"b": [2, 3], "a": 1})
    assert canonical(1) != canonical("1")
    assert canonical({"x", "y"}) == canonical({"y", "x"})


def test_values_that_run_together_have_two_names() -> None:
    """Where one value ends is part of the spelling."""
    assert len({key_of("ab", "c"), key_of("a", "bc"), key_of("abc"), key_of(["ab", "c"]), key_of(b"ab", "c")}) == 5


def test_a_part_of_a_record_changes_its_name() -> None:
    """One millimetre more is another value."""
    assert key_of(Reading(date(2026, 2, 1), 88, 80)) != key_of(Reading(date(2026, 2, 1), 89, 80))


def test_what_has_no_spelling_is_refused() -> None:
    """A value that could change unseen has no name."""
    with pytest.raises(TypeError, match="by a object"):
        key_of(object())
