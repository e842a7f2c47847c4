"""The part of a horse's page that tells what was changed in a visit later."""

from __future__ import annotations

import datetime as dt

import pytest
from bs4 import BeautifulSoup

from recordgen.hoof.naming import Naming
from recordgen.records.history.model import Amendment, Part, State, VisitTrail
from recordgen.records.load.tables import read_reference
from recordgen.site.templates import environment, render
from tests.conftest import RECORDS

DAY = dt.date(2026, 10, 14)
TOE = Part("left fore, toe length, after the trim", "80 mm", "82 mm")
SECRET = Part("private note", None, "Pays late", private=True)
NOTE = Part("note", "Ann owes", "x <b>", worded=True)


def shown(trail: VisitTrail, private: bool = False) -> BeautifulSoup:
    """The part as it stands on a page of a stable, or of the trimmer."""
    made = environment(RECORDS, Naming(read_reference(RECORDS)[0].phrases))
    return BeautifulSoup(render(made, "horse/trail.html", trail=trail, private=private), "html.parser")


def text(trail: VisitTrail, private: bool = False) -> str:
    """Its words, on one line."""
    return " ".join(shown(trail, private).get_text().split())


def trail(*parts: Part, state: State = "kept", for_all: bool = True, doubts: tuple[str, ...] = ()) -> VisitTrail:
    """A visit that was changed once."""
    change = Amendment("0", dt.date(2026, 10, 20), "changed", "Read again", parts, for_all)
    return VisitTrail(DAY, False, state, (change,), doubts)


def test_a_visit_kept_once_shows_nothing() -> None:
    """There is nothing to tell."""
    assert text(VisitTrail(DAY, False, "kept", doubts=("x",)), private=True) == ""


@pytest.mark.parametrize(
    ("state", "told"),
    [
        ("new", "Not yet kept; it may still change."),
        ("left out", "Not yet kept; it may still change."),
        ("amended", "Something in it is not yet kept; it may still change."),
    ],
)
def test_a_visit_that_is_not_kept_is_marked(state: State, told: str) -> None:
    """In a line of its own."""
    assert text(VisitTrail(None, False, state)) == told


def test_what_changed_is_folded_away() -> None:
    """One line to open; within, day, values and reason."""
    found = shown(trail(TOE)).details

    assert found is not None
    assert not found.has_attr("open")
    assert found.summary is not None
    assert found.summary.get_text() == "Changed since it was first kept on 14 October 2026"
    assert text(trail(TOE)).endswith(
        "On 20 October 2026: left fore, toe length, after the trim: 80 mm → 82 mm reason: Read again"
    )


def test_a_stable_sees_no_private_note_no_earlier_wording_and_no_reason_of_others() -> None:
    """The trimmer sees all three."""
    one = trail(TOE, SECRET, NOTE, for_all=False)
    mine, theirs = text(one, private=True), text(one)

    assert all(words in mine for words in ("Pays late", "Ann owes → x <b>", "Read again"))
    assert not any(words in theirs for words in ("Pays late", "private", "Ann owes", "Read again"))
    assert "80 mm → 82 mm; note: worded anew" in theirs


def test_a_private_change_alone_leaves_no_trace_at_a_stable() -> None:
    """Not even its day."""
    assert text(trail(SECRET)) == ""
    assert "Pays late" in text(trail(SECRET), private=True)


def test_values_added_and_taken_out_and_doubts_are_told() -> None:
    """Each in its words."""
    one = trail(Part("a", None, "1 mm"), Part("b", "2 mm", None), doubts=("Not sure",))

    assert "a: 1 mm, added; b: 2 mm, taken out" in text(one)
    assert text(one).endswith("Not sure.")


@pytest.mark.parametrize(
    ("kind", "told"),
    [("filled in", "filled in; it was only begun before"), ("taken out", "taken out"), ("put back", "put back")],
)
def test_what_is_no_change_of_a_value_is_told(kind: str, told: str) -> None:
    """The days may be unknown."""
    one = VisitTrail(None, True, "kept", (Amendment("0", None, kind, ""),))  # type: ignore[arg-type]

    assert text(one) == f"Changed since it was first kept On a day that is not known: {told}"
