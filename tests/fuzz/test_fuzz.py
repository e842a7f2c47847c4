"""Some changes at random, always the same ones; `python -m tests.fuzz` makes as many as it is asked for."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.fuzz.trials import Bench, Trial, originals, our_tables_read_once

COUNT = 100


def test_a_changed_file_is_read_or_told_at_its_place(tmp_path: Path) -> None:
    """No traceback, no reading without end, and no problem at a place that nobody can look up."""
    bench = Bench(tmp_path, seed=2)
    with our_tables_read_once():
        trials = [bench.trial(number) for number in range(COUNT)]
        faults = {f"{trial.number} {trial.name}": bench.fault(trial) for trial in trials}

    assert not {trial: fault for trial, fault in faults.items() if fault}
    assert bench.well > 0
    assert len({trial.content for trial in trials}) > COUNT * 0.9


@pytest.mark.parametrize("name", list(originals()))
def test_every_kind_of_file_is_well_before_it_is_changed(tmp_path: Path, name: str) -> None:
    """So that what is told comes of the change."""
    bench = Bench(tmp_path, seed=1)
    with our_tables_read_once():
        fault = bench.fault(Trial(0, name, bench.originals[name]))

    assert fault == ""
    assert bench.well == (0 if name in ("notes.txt", "visits.csv") else 1)


def test_the_judge_notices_a_fault(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A reader that raises anything but a problem fails its trial."""
    bench = Bench(tmp_path, seed=1)
    monkeypatch.setattr("tests.fuzz.trials.look_through", lambda *_, **__: 1 / 0)

    assert "ZeroDivisionError" in bench.fault(bench.trial(0))
