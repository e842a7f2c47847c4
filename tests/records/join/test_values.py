"""Three states of a record joined value by value."""

from __future__ import annotations

from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from recordgen.records.join.values import Clash, merge

Values = dict[str, Any]

BEFORE = {"feet": {"left_fore": {"after": {"toe_length": "80", "toe_angle": "50"}, "done": ["toe taken back"]}}}

# Few keys and few values, so that sides often change the same ones.
_WORDS = st.sampled_from(["80", "81", "flat"])
_VALUES = st.recursive(
    st.one_of(_WORDS, st.lists(_WORDS, min_size=1, max_size=3)),
    lambda inner: st.dictionaries(st.sampled_from("abc"), inner, min_size=1, max_size=3),
    max_leaves=6,
)
RECORDS: st.SearchStrategy[dict[str, Any]] = st.dictionaries(st.sampled_from("abc"), _VALUES, max_size=3)


def foot(**values: Any) -> Values:
    """A visit of one foot."""
    return {"feet": {"left_fore": values}}


def test_what_one_side_changed_is_taken_from_it() -> None:
    """Two values of one measure's line, one from each side."""
    here = foot(after={"toe_length": "81", "toe_angle": "50"}, done=["toe taken back"])
    there = foot(after={"toe_length": "80", "toe_angle": "52"}, done=["toe taken back"])
    found = merge(BEFORE, here, there)

    assert (found.values, found.clashes) == (
        foot(after={"toe_length": "81", "toe_angle": "52"}, done=["toe taken back"]),
        [],
    )


def test_what_both_changed_otherwise_is_a_clash_at_that_value_alone() -> None:
    """With both values; until somebody decides, the one here stands."""
    found = merge(BEFORE, foot(after={"toe_length": "81"}), foot(after={"toe_length": "79"}))

    assert found.clashes == [Clash(("feet", "left_fore", "after", "toe_length"), "81", "79")]
    found.settle(found.clashes[0], "79")
    assert found.values == foot(after={"toe_length": "79"})


def test_lists_that_grew_hold_what_came_on_either_side() -> None:
    """Each new item once; a list that was changed within is a clash."""
    here, there = foot(done=["toe taken back", "edge rounded"]), foot(done=["toe taken back", "edge rounded", "flare"])
    changed = foot(done=["nothing"])

    assert merge(BEFORE, here, there).values == foot(done=["toe taken back", "edge rounded", "flare"])
    assert [one.steps[-1] for one in merge(BEFORE, here, changed).clashes] == ["done"]


def test_a_foot_is_the_same_under_all_its_names() -> None:
    """near_fore on one computer, LF on the other."""
    found = merge({}, {"feet": {"near_fore": {"landing": "flat"}}}, {"feet": {"LF": {"heat": "no"}}})

    assert found.values == {"feet": {"left_fore": {"landing": "flat", "heat": "no"}}}


def test_what_one_side_took_out_is_gone_unless_the_other_changed_it() -> None:
    """Empty counts as taken out."""
    before = {"note": "Seen.", "by": "Wren"}

    assert merge(before, {"note": None, "by": "Wren"}, before).values == {"by": "Wren"}
    assert merge(before, {"by": "Wren"}, {"note": "Seen twice.", "by": "Wren"}).clashes == [
        Clash(("note",), None, "Seen twice.")
    ]


@settings(max_examples=200, deadline=None)
@given(RECORDS, RECORDS)
def test_a_side_that_changed_nothing_changes_nothing(before: Values, after: Values) -> None:
    """Whichever side it is; and two sides that changed the same are one."""
    whole = merge(after, after, after).values

    assert merge(before, after, before).values == whole
    assert merge(before, before, after).values == merge(before, after, after).values == whole
    assert merge(before, after, before).clashes == merge(before, before, after).clashes == []


@settings(max_examples=200, deadline=None)
@given(RECORDS, RECORDS, RECORDS)
def test_nothing_that_a_side_wrote_is_lost_unasked(before: Values, here: Values, there: Values) -> None:
    """Every value that is new on a side stands in the outcome, or in a clash."""
    found = merge(before, here, there)
    clashes = {one.steps for one in found.clashes}
    old, kept = dict(_leaves(merge(before, before, before).values)), dict(_leaves(found.values))

    for side in (here, there):
        for steps, value in _leaves(merge(side, side, side).values):
            is_asked = any(steps[: len(one)] == one for one in clashes)
            is_in = kept.get(steps) == value or (isinstance(value, list) and set(value) <= set(kept.get(steps) or []))
            assert old.get(steps) == value or is_asked or is_in


def _leaves(value: Any, steps: tuple[str, ...] = ()) -> Any:
    if isinstance(value, dict):
        for key, inner in value.items():
            yield from _leaves(inner, (*steps, key))
    else:
        yield steps, value
