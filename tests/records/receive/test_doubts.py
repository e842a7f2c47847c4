"""Whatever a record cannot hold becomes a question, whatever came."""

from __future__ import annotations

import datetime as dt
import json
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from recordgen.problems import Place, Trouble
from recordgen.records.load.tables import read_reference
from recordgen.records.models.fields import LONGEST_TEXT
from recordgen.records.models.visit import Visit
from recordgen.records.receive.doubts import DROP, NOTE, SettledVisit, settle
from recordgen.records.receive.incoming import IncomingVisit
from recordgen.records.receive.questions import Answers, phrases_of
from recordgen.records.receive.visits import visit_text
from recordgen.records.yaml.tree import document
from tests.support.any_visit import Values, visits

DAY = "2026-11-20"
SAY = phrases_of(read_reference(None)[0].phrases)


def settled(record: Values, **answers: str) -> SettledVisit:
    """A record that came, with answers by the ends of their questions' ids."""
    brought = IncomingVisit("aaa", 1, "willowmere/bramble", "Bramble", dt.date(2026, 11, 20), record, Place("notes"))
    given = {f"aaa.1 {key.replace('__', '.')}": answer for key, answer in answers.items()}
    return settle(brought, DAY, "Bramble", Answers(given), SAY)


def read_back(found: SettledVisit) -> Visit:
    """The visit that its file tells."""
    return Visit.model_validate(document("visit", visit_text(found.record).encode()).values)


@settings(max_examples=20, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(record=visits())
def test_any_visit_that_the_models_allow_raises_no_question(record: Values) -> None:
    """It goes through the lines of a file as JSON and reads back equal."""
    found = settled(json.loads(json.dumps(record)))

    assert found.questions == ()
    assert read_back(found) == Visit.model_validate({**record, "date": DAY})


_WORDS = """feet left_fore near_fore LF after toe_length heel_height medial marks wall toe flare care lameness scale
grade next weeks note private_note vet signs date <<"""
_KEYS = st.sampled_from(_WORDS.split()) | st.text(max_size=4)
_LEAVES = st.none() | st.booleans() | st.integers(-9, 10**6) | st.floats(allow_nan=False) | st.text(max_size=9)
_ANY = st.recursive(
    _LEAVES | st.sampled_from(["?", "AAEP", "80", "event ring", "yes"]),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(_KEYS, inner, max_size=4),
    max_leaves=12,
)


@settings(max_examples=100, suppress_health_check=[HealthCheck.too_slow])
@given(record=st.dictionaries(_KEYS, _ANY, max_size=5))
def test_anything_at_all_becomes_a_visit_and_questions(record: Values) -> None:
    """Nothing breaks, and what is left of it reads back."""
    found = settled(record)

    assert read_back(found) == found.visit
    assert str(found.visit.date) == DAY
    assert len({question.id for question in found.questions}) == len(found.questions)


@pytest.mark.parametrize(
    ("answer", "length", "note"),
    [
        ("80", 80, None),
        ("8 cm", 80, None),
        (NOTE, None, "Came as left fore, after, toe length: 9000"),
        (DROP, None, None),
    ],
)
def test_a_value_that_cannot_be_is_told_anew(answer: str, length: float | None, note: str | None) -> None:
    """Or it stays in words, or goes."""
    found = settled({"feet": {"left_fore": {"after": {"toe_length": 9000}}}}, feet__left_fore__after__toe_length=answer)
    after = found.visit.feet["left_fore"].after if found.visit.feet else None

    assert (after.toe_length if after else None, found.visit.private_note) == (length, note)
    assert found.questions == ()


@pytest.mark.parametrize("answer", ["9000", "?", "wide", "{medial: 3}"])
def test_an_answer_that_does_not_fit_leaves_the_question_open(answer: str) -> None:
    """With what is wrong about it."""
    answers = Answers({"aaa.1 feet.left_fore.after.toe_length": answer})
    record = {"feet": {"left_fore": {"after": {"toe_length": "?"}}}}
    brought = IncomingVisit("aaa", 1, "a/b", "", dt.date(2026, 11, 20), record, Place("notes"))
    found = settle(brought, DAY, "Bramble", answers, SAY)

    assert (len(found.questions), len(list(answers.problems))) == (1, 1)
    assert found.visit.private_note == "Seen and not measured: left fore, after, toe length."


def test_a_key_like_a_known_one_is_offered() -> None:
    """Where that is free and the value fits there."""
    record = {"feet": {"left_fore": {"after": {"toe_lenght": 80}}}}
    (question,) = settled(record).questions
    found = settled(record, feet__left_fore__after__toe_lenght="toe_length")

    assert list(question.choices) == ["toe_length", NOTE, DROP]
    assert found.visit.feet["left_fore"].after is not None
    assert found.visit.feet["left_fore"].after.toe_length == 80


def test_items_of_a_list_keep_their_numbers() -> None:
    """However many before them were taken out."""
    marks: list[Any] = [{"zone": "toe"}, {"kind": "event ring", "below_hairline": 20}, {"kind": "crack end"}]
    found = settled({"feet": {"left_fore": {"marks": marks}}}, feet__left_fore__marks__2__below_hairline="31")

    assert [mark.below_hairline for mark in found.visit.feet["left_fore"].marks] == [20, 31]
    assert [question.id.partition("marks.")[2] for question in found.questions] == ["0.kind"]


@pytest.mark.parametrize("scale", [{"to": [9, 9], "length": 5}, {"from": "?", "to": [9, 9], "length": 5}, "?", {}])
def test_a_tracing_without_a_scale_is_asked_about_once(scale: Any) -> None:
    """And comes in once its scale is told."""
    marks = {"ground": [[10, 900], [900, 900]], "coronet_toe": [400, 300]}
    tracing = {"view": "side", "moment": "after", "image": [1600, 1200], "scale": scale, **marks}
    found = settled({"feet": {"left_fore": {"tracings": [tracing]}}})

    assert len({question.id for question in found.questions}) == len(found.questions) > 0
    assert "scale" in (found.visit.private_note or "")


def test_a_note_longer_than_a_record_holds_is_cut() -> None:
    """It is asked about; all of it stays in the file that was received."""
    found = settled({"note": "word " * LONGEST_TEXT})

    assert len(found.visit.private_note or "") <= LONGEST_TEXT
    assert "longer than 40000" in found.questions[0].asks


def test_signs_that_nobody_sees_are_left_out() -> None:
    """No file can hold them."""
    assert settled({"note": "a\x00b\u2028c\ufeff"}).visit.note == "ab\nc"


def test_a_record_of_nothing_but_doubts_is_told() -> None:
    """Instead of hundreds of questions."""
    with pytest.raises(Trouble, match="too much of it"):
        settled({f"key {number}": 1 for number in range(300)})


def test_a_group_that_cannot_be_without_a_value_is_asked_about_once() -> None:
    """All of it stands in words until there is an answer, and comes back whole with one."""
    record = {"feet": {"left_fore": {"marks": [{"kind": "event ring", "below_hairline": "?"}]}}}
    found, told = settled(record), settled(record, feet__left_fore__marks__0__below_hairline="12")

    assert len(found.questions) == 1
    assert found.visit.private_note == "Came as left fore, marks, number 1: {kind: event ring, below_hairline: '?'}"
    assert told.visit.feet["left_fore"].marks[0].below_hairline == 12
