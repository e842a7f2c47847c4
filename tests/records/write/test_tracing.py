"""A tracing written into a visit: where it belongs, in the form of the file, and nothing else touched."""

from __future__ import annotations

import difflib

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as some

from recordgen.problems import Trouble
from recordgen.records.models.names import FEET, Foot
from recordgen.records.models.tracing import Tracing
from recordgen.records.models.visit import Visit
from recordgen.records.write.tracing import with_tracing
from recordgen.records.yaml.tree import document
from recordgen.records.yaml.write import as_yaml
from tests.support.any_visit import Values, visits
from tests.support.practice_folders import VISIT
from tests.support.typed_tracings import tapped

TRACING = Tracing.model_validate(tapped(hand_px=1.0))
OTHER = Tracing.model_validate(tapped(moment="before"))
DAY = "date: 2026-10-14\n"
HAND_WRITTEN = f"""\
# Rain all morning
{DAY}feet:
  left_fore:
    landing: flat  # on the lane
    tracings:
      - view: side
        moment: after
        image: [1600, 1200]
        scale: {{from: [100, 1100], to: [500, 1100], length: 100}}
        ground: [[1, 1000], [900, 1000]]
      # The next one on the bad lens

  right_fore: {{landing: flat}}
note: |
  Two lines,
  # and none a comment.
"""


def tracings(text: str, foot: Foot = "left_fore") -> tuple[Tracing, ...]:
    """The tracings of a foot in the text of a visit."""
    return Visit.model_validate(document("visit", text.encode()).values).feet[foot].tracings


def lost(before: str, after: str) -> list[str]:
    """The lines of a text that are gone."""
    return [line for line in difflib.ndiff(before.splitlines(), after.splitlines()) if line.startswith("- ")]


def rounded(tracing: Tracing) -> Tracing:
    """A tracing with its points to a tenth of a px."""
    return tracings(with_tracing(DAY, "left_fore", tracing, "visit"))[0]


@pytest.mark.parametrize("foot", FEET)
def test_lines_are_added_and_none_is_lost(foot: Foot) -> None:
    """Below what stands there of the foot; comments stay where they were."""
    after = with_tracing(HAND_WRITTEN, foot, TRACING, "visit")

    touched = ["-   right_fore: {landing: flat}"] if foot == "right_fore" else []
    assert lost(HAND_WRITTEN, after) == touched
    assert np.array(tracings(after, foot)[-1].wall) == pytest.approx(np.array(TRACING.wall), abs=0.051)


@pytest.mark.parametrize(
    "before",
    [
        DAY,
        f"{DAY}feet:\n",
        f"{DAY}feet:\n  left_fore:\n",
        f"{DAY}feet:\n  LF:   # near\n    landing: flat\n",
        f"{DAY}feet:\n  near_fore:\n    tracings:\nnote: Later.\n",
        f"{DAY}feet: {{}}\n",
        f"{DAY}feet: {{left_fore: {{}}}}\n",
        f"{DAY}feet: {{left_fore: {{landing: flat,}}, }}  # in brackets\n",
        f"{DAY}feet:\n  left_fore: {{tracings: []}}\n",
        "{date: 2026-10-14}\n",
        f"{DAY}feet:\n  left_fore:\n    note: >-\n      Long words\n      go on\n\n    # what follows\n",
        f"{DAY}feet:\n    left_fore:\n        landing: flat",
        f"{DAY}feet:\r\n  left_fore:\r\n    landing: flat\r\n",
    ],
)
def test_every_form_of_a_file_takes_it(before: str) -> None:
    """Empty keys, brackets, other names of the foot, no line's end, the line ends of another system."""
    after = with_tracing(before, "left_fore", TRACING, "visit")

    assert tracings(after) == (rounded(TRACING),)
    assert ("\r\n" in after) == ("\r\n" in before)


def test_a_second_one_is_written_behind_the_first() -> None:
    """In block and in brackets."""
    once = with_tracing(VISIT, "left_fore", TRACING, "visit")
    twice = with_tracing(once, "left_fore", OTHER, "visit")

    assert tracings(twice) == (rounded(TRACING), rounded(OTHER))
    assert lost(once, twice) == []


@pytest.mark.parametrize("before", ["", "{}"])
def test_one_is_put_in_the_place_of_another(before: str) -> None:
    """Of three the second; the others stay."""
    text = f"{DAY}feet:\n  left_fore: {{tracings: []}}\n" if before else DAY
    for one in (TRACING, OTHER, TRACING):
        text = with_tracing(text, "left_fore", one, "visit")
    after = with_tracing(text + "note: Later.\n", "left_fore", TRACING, "visit", instead_of=1)

    assert tracings(after) == (rounded(TRACING),) * 3
    assert after.endswith("note: Later.\n")


def test_one_that_holds_a_comment_is_not_replaced() -> None:
    """The comment would be lost."""
    once = with_tracing(DAY, "left_fore", TRACING, "visit").replace("moment: after", "moment: after  # by lamp light")

    with pytest.raises(Trouble, match="finds no place"):
        with_tracing(once, "left_fore", OTHER, "visit", instead_of=0)


def test_a_foot_is_named_as_the_practice_names_feet() -> None:
    """Near and off, where it is new."""
    assert "  off_hind:\n" in with_tracing(DAY, "right_hind", TRACING, "visit", near_and_off=True)


@pytest.mark.parametrize("before", ["date: [", "", "- a list\n", "# a comment alone\n"])
def test_a_file_that_cannot_be_read_is_left(before: str) -> None:
    """With the way out."""
    with pytest.raises(Trouble, match="visit cannot be read"):
        with_tracing(before, "left_fore", TRACING, "visit")


@pytest.mark.parametrize(
    "feet",
    [
        "feet: all well\n",
        "feet: [left_fore]\n",
        "feet:\n  left_fore: flat\n",
        "feet:\n  left_fore: [flat]\n",
        "feet:\n  left_fore: {tracings: none}\n",
        "feet:\n  left_fore:\n    tracings: {view: sole}\n",
        "feet: {left_fore: }\n",
    ],
)
def test_a_foot_that_is_no_group_is_left(feet: str) -> None:
    """Nothing is written over, whatever stands there."""
    with pytest.raises(Trouble, match="finds no place"):
        with_tracing(DAY + feet, "left_fore", TRACING, "visit")


def test_a_foot_that_stands_for_two_is_left() -> None:
    """A part that is used again would take the tracing twice."""
    before = f"{DAY}feet:\n  left_fore: &same {{landing: flat}}\n  right_fore: *same\n"

    with pytest.raises(Trouble, match="finds no place") as found:
        with_tracing(before, "right_fore", TRACING, "visit")
    assert found.value.way_out.startswith("Write right_fore: below feet: on a line of its own")


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(values=visits(), foot=some.sampled_from(FEET))
def test_any_visit_takes_it_and_keeps_all_else(values: Values, foot: Foot) -> None:
    """Whatever was recorded reads as before, and the foot has one tracing more."""
    text = as_yaml(values)
    before = Visit.model_validate(document("visit", text.encode()).values)
    after = Visit.model_validate(document("visit", with_tracing(text, foot, TRACING, "v").encode()).values)

    held = before.feet[foot].tracings if foot in before.feet else ()
    assert after.feet[foot].tracings[:-1] == held
    assert after.model_copy(update={"feet": {}}) == before.model_copy(update={"feet": {}})
