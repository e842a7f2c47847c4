"""One file joined out of three texts: as somebody typed it where that can be, with every comment."""

from __future__ import annotations

import pytest

from recordgen.git.join import join_texts
from recordgen.problems import Trouble
from recordgen.records.join.files import FileStates, JoinedFile, describe_file, join_file
from recordgen.records.load.tables import read_reference
from recordgen.records.receive.questions import Question, phrases_of
from recordgen.records.receive.whose import Horses

PATH = "willowmere/bramble/2026-10-14.yaml"
SAY = phrases_of(read_reference(None)[0].phrases, "join")
BEFORE = "date: 2026-10-14\nnote: Seen.\n\nnext: {weeks: 6}\n"


def joined(
    before: str | None, here: str | None, there: str | None, answer: str | None = None, path: str = PATH
) -> JoinedFile:
    """The outcome, with one answer to all questions."""
    raw = (None if one is None else one.encode() for one in (before, here, there))

    def answered(_: Question) -> str | None:
        return answer

    return join_file(FileStates(path, *raw), "Bramble", SAY, answered, join_texts)


def text(found: JoinedFile) -> str:
    """The joined text."""
    assert found.content is not None
    return found.content.decode()


def test_lines_that_go_together_stay_as_they_were_typed() -> None:
    """With their comments and blank lines."""
    here = BEFORE.replace("Seen.", "Seen in the rain.  # by lamp")
    found = joined(BEFORE, here, BEFORE.replace("weeks: 6", "weeks: 5"))

    assert text(found) == here.replace("weeks: 6", "weeks: 5")


def test_a_comment_is_kept_where_the_text_is_written_anew() -> None:
    """From both sides, above the record."""
    before = "date: 2026-10-14\nfeet: {left_fore: {landing: flat}}\n"
    here = "date: 2026-10-14\nfeet: {left_fore: {landing: flat, heat: no}}  # ours\n"
    there = "date: 2026-10-14\nfeet: {left_fore: {landing: heel first}}  # theirs\n"

    assert text(joined(before, here, there)) == (
        "# ours\n# theirs\ndate: 2026-10-14\nfeet:\n  left_fore:\n    landing: heel first\n    heat: no\n"
    )


def test_feet_keep_the_names_that_were_typed() -> None:
    """Near and off stay near and off."""
    before = "date: 2026-10-14\nfeet: {near_fore: {landing: flat}}\n"
    here = "date: 2026-10-14\nfeet: {near_fore: {landing: flat, heat: no}}\n"
    there = "date: 2026-10-14\nfeet: {near_fore: {landing: heel first}}\n"

    assert "  near_fore:\n" in text(joined(before, here, there))


@pytest.mark.parametrize("feet_here", [True, False])
def test_feet_keep_the_names_of_the_side_that_has_them(feet_here: bool) -> None:
    """Where the other tells none."""
    feet = f"{BEFORE}feet: {{near_fore: {{landing: flat}}}}  # near\n"
    plain = BEFORE.replace("weeks: 6", "weeks: 5") + "# plain\n"

    assert "near_fore" in text(joined(None, *((feet, plain) if feet_here else (plain, feet)), answer="here"))


@pytest.mark.parametrize(("answer", "note"), [("here", "Ours."), ("there", "Theirs.")])
def test_an_answer_settles_a_clash(answer: str, note: str) -> None:
    """Until it is there, the file stays and the question is told with both values."""
    sides = (BEFORE, BEFORE.replace("Seen.", "Ours."), BEFORE.replace("Seen.", "Theirs."))
    (question,) = joined(*sides).questions

    assert dict(question.choices) == {"here": "Ours. (this computer)", "there": "Theirs. (the other computer)"}
    assert f"note: {note}\n" in text(joined(*sides, answer=answer))


def test_a_visit_that_both_wrote_is_joined_reading_by_reading() -> None:
    """Though neither had it before: what one side alone tells is taken, and only what differs is asked about."""
    here = "date: 2026-10-14\nnote: Ours.\nnext: {weeks: 6}\n"
    there = "date: 2026-10-14\nnote: Theirs.\nfeet: {left_fore: {landing: flat}}\n"
    (question,) = joined(None, here, there).questions
    told = text(joined(None, here, there, answer="here"))

    assert dict(question.choices) == {"here": "Ours. (this computer)", "there": "Theirs. (the other computer)"}
    assert all(part in told for part in ("note: Ours.\n", "weeks: 6", "landing: flat\n"))


@pytest.mark.parametrize("there", ["- a list\n", "note: once\nnote: twice\n", "note: [\n"])
def test_a_record_that_cannot_be_read_on_a_side_is_asked_about_as_a_whole(there: str) -> None:
    """Nothing is taken out of it, and either side is kept to the byte."""
    (question,) = joined(BEFORE, BEFORE.replace("Seen.", "Ours."), there).questions
    kept = joined(BEFORE, BEFORE.replace("Seen.", "Ours."), there, answer="there")

    assert question.choices.keys() == {"here", "there"}
    assert text(kept) == there


def test_a_page_that_both_changed_is_asked_about_as_a_whole() -> None:
    """It is no record."""
    found = joined("# A\n", "# B\n", "# C\n", path="pages/lane.md")

    assert [question.asks for question in found.questions] == [
        "pages/lane.md was changed on both computers. Which one stays?"
    ]
    assert text(joined("# A\n", "# B\n", "# C\n", "there", "pages/lane.md")) == "# C\n"


def test_two_halves_that_make_no_record_are_told() -> None:
    """Weeks from one side and a day from the other cannot both stand."""
    with pytest.raises(Trouble, match="cannot be joined"):
        joined(
            "date: 2026-10-14\n",
            "date: 2026-10-14\nnext: {weeks: 6}\n",
            "date: 2026-10-14\nnext: {date: 2026-11-25}\n",
        )


def test_a_file_is_told_in_words() -> None:
    """By horse, stable and day; others by their path."""
    horses = Horses({}, {"willowmere": "Willowmere"})

    assert describe_file(PATH, horses) == "bramble at Willowmere, 14 October 2026"
    assert describe_file("willowmere/stable.yaml", horses) == "Willowmere"
    assert describe_file("practice.yaml", horses) == "practice.yaml"
