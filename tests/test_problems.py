"""Problems: one shape, sorted by place, counted."""

import json
import subprocess
import sys

import pytest

from recordgen.problems import Place, Problem, Problems, is_visible, quoted, visible, warning
from recordgen.sentences import sentences, worded

WRONG = Problem(Place("records/a.yaml", 3, 5), "key-missing", worded("toe_length is missing"), worded("Add toe_length"))
ODD = warning(Place("records/a.yaml", 2), "odd-value", worded("this is unusual"), worded("Did you look?"))


def test_a_problem_is_one_line_with_place_level_message_and_way_out() -> None:
    """A terminal can jump to the place, and both sentences end once."""
    assert WRONG.as_line() == "records/a.yaml:3:5: error: toe_length is missing. Add toe_length. [key-missing]"
    assert ODD.as_line() == "records/a.yaml:2:1: warning: this is unusual. Did you look? [odd-value]"


def test_a_problem_without_a_way_out_is_one_sentence() -> None:
    """Nothing is added where there is no way out."""
    assert (
        Problem(Place("a.yaml"), "file-missing", worded("gone")).as_line() == "a.yaml:1:1: error: gone. [file-missing]"
    )


def test_a_problem_as_json_holds_each_part() -> None:
    """A program gets the parts one by one."""
    assert WRONG.as_json() == {
        "path": "records/a.yaml",
        "line": 3,
        "column": 5,
        "level": "error",
        "code": "key-missing",
        "message": "toe_length is missing",
        "way_out": "Add toe_length",
    }


def test_problems_come_in_the_order_of_their_places() -> None:
    """Line 2 comes before line 10, whatever came in first."""
    tenth = Problem(Place("records/a.yaml", 10), "last-one", worded("last"))
    problems = Problems()
    problems.extend([tenth, WRONG, ODD])

    assert list(problems) == [ODD, WRONG, tenth]


def test_the_same_problem_is_told_once() -> None:
    """Two looks at one value make one problem."""
    problems = Problems([WRONG])
    problems.add(WRONG)

    assert list(problems) == [WRONG]
    assert problems.counted() == "1 error in 1 file"


def test_errors_and_warnings_are_told_apart() -> None:
    """Errors stop a build, warnings do not."""
    problems = Problems([ODD, WRONG])

    assert (problems.errors, problems.warnings) == ([WRONG], [ODD])


def test_problems_are_counted_in_words() -> None:
    """Errors, warnings and files are counted, each with its plural."""
    more = Problem(Place("records/b.yaml"), "file-missing", worded("another"))

    assert Problems([WRONG, more, ODD]).counted() == "2 errors and 1 warning in 2 files"
    assert Problems().counted() == "no problems"


def test_typed_text_is_quoted_short_and_on_one_line() -> None:
    """A page pasted into a field does not fill the terminal."""
    assert quoted("one\ntwo\x1b") == "'one two\\u001b'"
    assert quoted("x" * 41) == f"'{'x' * 40}…'"


def test_problems_and_git_load_neither_pydantic_nor_yaml() -> None:
    """Commands that only ask git start quickly."""
    code = "import sys, recordgen.problems, recordgen.git.keep; print({'yaml', 'pydantic', 'jinja2'} & {*sys.modules})"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)

    assert done.stdout.strip() == "set()"


def test_sentences_are_closed_once() -> None:
    """A question keeps its mark, an empty part leaves nothing."""
    assert sentences("no such foot", "Did you mean left_fore?", "") == "no such foot. Did you mean left_fore?"


# Signs that a terminal acts on, that turn the direction of writing, or that have no width.
# Source: ECMA-48 (C0 and C1 controls); Unicode Standard Annex 9 (explicit direction); UAX 44 (category Cf).
HIDDEN = "\x1b\x9b\x07\r\x7f\u200b\u200e\u202e\u2066\u2028\u00ad\ufeff\u3164\U000e0001\udc9b"


@pytest.mark.parametrize("sign", HIDDEN)
def test_a_sign_that_does_not_show_is_spelled_out(sign: str) -> None:
    """By its number, and a program that reads it as JSON gets the sign itself."""
    assert not is_visible(sign)
    assert visible(sign).isascii()
    assert json.loads(f'"{visible(sign)}"') == sign


def test_what_shows_is_left_as_it_is() -> None:
    """Letters of every script, accents that stand alone, wide blanks, signs, and the lines of a text."""
    text = "Brámble é श्री שלום مرحبا 小\u3000馬 – ½ ❤️\u00a0€\n\tnext"

    assert visible(text) == text


def test_a_problem_spells_out_what_was_typed() -> None:
    """Where it stands, and what is wrong."""
    line = Problem(Place("a\x1b[2J.yaml"), "odd-value", worded(quoted("x\u202ey") + " is odd")).as_line()

    assert line == "a\\u001b[2J.yaml:1:1: error: 'x\\u202ey' is odd. [odd-value]"


def test_a_problem_is_one_line() -> None:
    """Whatever stands in the name of its file."""
    line = Problem(Place("a\nb\t.yaml"), "odd-value", worded("odd")).as_line()

    assert line == "a\\nb\\t.yaml:1:1: error: odd. [odd-value]"
