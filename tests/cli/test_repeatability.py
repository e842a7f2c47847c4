"""recordgen repeatability."""

from __future__ import annotations

import json
import re

from tests.support.commands import run_today


def test_each_measure_is_told_with_its_error_and_source() -> None:
    """The usual way is marked; an assumed figure says so in its source."""
    lines = run_today("repeatability").output.splitlines()

    assert any(line.startswith("* toe length") and "Assumed" in line for line in lines)
    assert any("circumference" in line and "tape" in line and "1.80 mm" in line for line in lines)


def test_the_hand_that_traces_is_told_last() -> None:
    """Assumed while few pictures were traced twice."""
    line = run_today("repeatability").output.splitlines()[-1]

    told = r"one tap on a picture +tracing +1\.50 +4\.16 px +Assumed, .*; 1 of 5 pictures were traced twice"
    assert re.search(told, line)


def test_other_programs_read_the_same() -> None:
    """One mapping a way."""
    told = json.loads(run_today("repeatability", "--json").output)
    tape = next(one for one in told if (one["measure"], one["way"]) == ("circumference", "tape"))

    assert (tape["assumed"], tape["own_readings"], tape["own_counts"]) == (False, 0, False)
    assert round(tape["smallest_real_change"], 2) == 1.8
