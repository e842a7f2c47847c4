"""Any sheet of cells, however odd: it is proposed and read, or refused in words, and never stops with a traceback."""

from __future__ import annotations

import contextlib

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from recordgen.problems import Trouble
from recordgen.records.load.tables import read_reference
from recordgen.records.models.visit import Visit
from recordgen.records.receive.doubts import settle
from recordgen.records.receive.questions import Answers, phrases_of
from tests.support.own_sheets import csv_of, incoming

SAY = phrases_of(read_reference(None)[0].phrases)
HEADS = st.sampled_from(
    [
        *(
            "Horse",
            "Date",
            "Foot",
            "LF toe before (mm)",
            "Toe after in",
            "Heel inner before",
            "Flare toe",
            "Notes",
            "Weeks",
        ),
        *("Left fore", "before", "(mm)", "Total", "", "foot", "wall.toe.crack", "done", "Lameness AAEP", "?", "ÿ"),
    ]
)
CELLS = st.one_of(
    st.sampled_from(["Bramble", "Fennel", "Nettle", "LF", "off hind", "2024-03-14", "14.3.24", "88", "88,5", "3 5/16"]),
    st.sampled_from(
        ["", "-", "?", "x", "Total", "ca 88", "1/0", "31.2.2024", "willowmere/bramble", "seen", "none", "{a"]
    ),
    st.text(st.characters(blacklist_categories=["Cs"], blacklist_characters=',"\r\n\0'), max_size=12),
)
OWN = st.tuples(
    st.sampled_from(["Bramble", "Fennel", "Nettle", ""]),
    st.sampled_from(["2024-03-14", "14.3.2024", "15/3/24", "3 Apr 2025", "tomorrow"]),
    st.sampled_from(["LF", "near hind", "OF", "left front", "paw"]),
).map(list)


def _sheet(width: int) -> st.SearchStrategy[list[list[str]]]:
    heads = st.lists(HEADS, min_size=width, max_size=width).map(lambda more: ["Horse", "Date", "Foot", *more])
    row = st.tuples(OWN, st.lists(CELLS, min_size=width, max_size=width)).map(lambda parts: [*parts[0], *parts[1]])
    rows = st.lists(st.one_of(row, st.lists(CELLS, min_size=width + 3, max_size=width + 3)), max_size=6)
    return st.tuples(heads, rows).map(lambda parts: [parts[0], *parts[1]])


@settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
@given(st.integers(1, 5).flatmap(_sheet))
def test_any_sheet_is_read_or_refused_in_words(rows: list[list[str]]) -> None:
    """Each visit that comes of it is one that the models take, once what they refuse is put into words."""
    with contextlib.suppress(Trouble):
        found = incoming(csv_of(rows))
        assert all(problem.message for problem in found.problems)
        for one in found.visits:
            settled = settle(one, one.day.isoformat(), "Bramble", Answers(), SAY)
            assert isinstance(settled.visit, Visit)
