"""YAML as it was typed: values, their places, and what is refused before a record is looked at."""

from typing import Any

import pytest
import yaml

from recordgen.problems import Place
from recordgen.records.yaml import tree as yaml_tree
from recordgen.records.yaml.tree import document

MERGE = "a merge of two versions was not finished: git left its mark"


def values(text: str) -> Any:
    """The values of a file that nothing is wrong with."""
    found = document("a.yaml", text.encode())
    assert found.problems == []
    return found.values


def told(raw: bytes | str) -> list[tuple[int, int, str]]:
    """Place and message of each problem of a file."""
    found = document("a.yaml", raw if isinstance(raw, bytes) else raw.encode())
    return [(max(1, problem.place.line), max(1, problem.place.column), problem.message) for problem in found.problems]


@pytest.mark.parametrize(
    "typed", ["no", "off", "Yes", "1:30", "0012", "0x1f", "1e3", ".nan", ".inf", "1_000", "2026-10-14", "<<", "="]
)
def test_a_value_stays_what_was_typed(typed: str) -> None:
    """Nothing is guessed into numbers, dates or truth."""
    assert values(f"a: {typed}\n") == {"a": typed}


@pytest.mark.parametrize("typed", ["", "~", "null", "Null", "NULL"])
def test_nothing_is_none(typed: str) -> None:
    """An empty value and YAML's words for it are None; in quotes they are text."""
    assert values(f"a: {typed}\nb: '{typed}'\n") == {"a": None, "b": typed}


def test_text_over_several_lines_is_kept() -> None:
    """A block keeps its lines."""
    assert values("note: |\n  one\n  two\n") == {"note": "one\ntwo\n"}


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_ends_of_line_of_all_systems_are_read(end: str) -> None:
    """Lines are counted alike whatever ends them."""
    found = document("a.yaml", f"a: 1{end}b:{end}  c: 2{end}".encode())

    assert found.values == {"a": "1", "b": {"c": "2"}}
    assert found.place(["b", "c"]) == Place("a.yaml", 3, 3)


def test_a_mark_at_the_start_of_the_file_does_not_matter() -> None:
    """Some editors put U+FEFF first."""
    assert values("\ufeffa: 1\n") == {"a": "1"}


def test_each_value_has_its_place() -> None:
    """Keys by name, items by number, and other spellings of a foot."""
    found = document("a.yaml", b"vet:\n  - date: 1\nfeet: {LF: {note: x}}\n")

    assert found.place(["vet", 0, "date"]) == Place("a.yaml", 2, 5)
    assert found.place(["feet", "left_fore", "note"]) == Place("a.yaml", 3, 13)
    assert found.typed_steps(["feet", "left_fore", "note"]) == ("feet", "LF", "note")


def test_what_is_missing_has_the_place_of_what_is_around_it() -> None:
    """A missing key is told at the mapping that lacks it, and at the top at the first line."""
    found = document("a.yaml", b"date: 1\nfeet:\n  left_fore:\n    note: x\n")

    assert found.place(["feet", "left_fore", "object", "what"]) == Place("a.yaml", 3, 3)
    assert found.place(["name"]) == Place("a.yaml", 1, 1)


def test_a_key_twice_is_told_with_the_line_of_the_first() -> None:
    """The second is where one looks."""
    assert told("a: 1\nb: 2\na: 3\n") == [(3, 1, "'a' stands here for the second time; the first is on line 1")]


def test_all_double_keys_of_a_file_are_told() -> None:
    """One does not hide another."""
    assert [line for line, _, _ in told("a: 1\na: 2\nb:\n  c: 1\n  c: 2\n")] == [2, 5]


@pytest.mark.parametrize(
    ("raw", "place", "message"),
    [
        (b"", (1, 1), "the file is empty"),
        (b" \n\n", (1, 1), "the file is empty"),
        (b"# nothing yet\n", (1, 1), "the file holds comments alone"),
        (b"a: 1\nb: caf\xe9\n", (2, 7), "this is not UTF-8 text"),
        ("a: é\n".encode("utf-16"), (1, 1), "this was saved as UTF-16, which some programs call Unicode"),
        (b"a: 1\nb: \x00\n", (2, 4), "an invisible sign stands here that a record cannot hold (U+0000)"),
        ("a: x\u2028y\n".encode(), (1, 5), "an invisible sign stands here that a record cannot hold (U+2028)"),
        (b"a:\n\tb: 1\n", (2, 1), "a tab stands here"),
        (b'a: "\\0"\n', (1, 4), "a sign that cannot be shown stands in this text"),
        (b"<<<<<<< HEAD\na: 1\n=======\na: 2\n>>>>>>> hers\n", (1, 1), f"{MERGE} <<<<<<< here"),
        (b"a: 1\r\n=======\r\n", (2, 1), f"{MERGE} ======= here"),
        (b"x" * 1_000_001, (1, 1), "the file is larger than 1 MB, which no record is"),
        (b"a: 1\n---\nb: 2\n", (2, 1), "a second document begins here"),
        (b"a: {b: 1\n", (1, 9), "a bracket or a comma is missing"),
        (b"a: {b: 1", (1, 9), "a bracket or a comma is missing"),
        (b"a: 'b\n", (1, 4), "a quote or bracket is opened here and never closed"),
        (b"a: b: c\n", (1, 2), "a second colon stands in this line"),
        (b"a: 1\n b: 2\n", (2, 3), "a colon stands here where none can"),
        (b"a: @home\n", (1, 4), "this sign cannot begin a value"),
        (b"a: *b\n", (1, 4), "a star begins a reference to nothing"),
        (b"a: !!python/object:os.system x\n", (1, 4), "the tag '!!python/object:os.system' is not used here"),
        (b"a: !!python/object {b: 1}\n", (1, 4), "the tag '!!python/object' is not used here"),
        (b"<<: {a: 1}\n", (1, 1), "keys are not merged here by <<"),
        (b"? [a, b]\n: c\n", (1, 3), "a key must be a word"),
        (b"'': 5\n", (1, 1), "a key is missing before this colon"),
        ("toe\u00a0length: 5\n".encode(), (1, 1), "an unusual or invisible space stands in the key 'toe length'"),
        (b"a: &x [*x]\n", (1, 4), "this part holds itself by a star"),
        (b"[" * 50 + b"]" * 50, (1, 42), "brackets or dashes are nested too deep"),
    ],
)
def test_what_cannot_be_read_is_told_at_its_place(raw: bytes, place: tuple[int, int], message: str) -> None:
    """Line and column, and words instead of the reader's own."""
    assert told(raw) == [(*place, message)]


def test_signs_like_those_of_a_merge_are_text_within_text() -> None:
    """A line under a heading of a note, or six signs, are no mark of git."""
    assert values("note: |\n  Left fore\n  =======\n") == {"note": "Left fore\n=======\n"}


def test_a_million_tabs_are_told_once_a_line_and_not_without_end() -> None:
    """The lines are counted on from the last one; a count from the top for each would take a minute."""
    lines = [line for line, _, _ in told(b"\tx\n" * 333_000)]

    assert lines == list(range(1, 102))
    assert told(b"\t" * 999_999 + b"x") == [(1, 1, "a tab stands here")]


@pytest.mark.parametrize(
    ("text", "line", "column"),
    [
        ("a: 1\ntoe_length:88\nb: 2\n", 2, 11),
        ("a:\n  toe_length:88\n  b: 2\n", 2, 13),
        ("a:\n  b: 2\n  toe_length:88\nc: 1\n", 3, 13),
        ("a:\n  b: 2\n\n  toe_length:88\n", 4, 13),
        ("a:\n  - toe_length:88\n    b: 2\n", 2, 15),
    ],
)
def test_a_colon_without_its_space_is_told_on_its_own_line(text: str, line: int, column: int) -> None:
    """The reader of YAML stumbles a line later, over what is right."""
    (problem,) = document("a.yaml", text.encode()).problems

    assert (problem.place.line, problem.place.column) == (line, column)
    assert problem.message == "a space is missing after the colon of toe_length"
    assert problem.way_out == "Write toe_length: 88"


@pytest.mark.parametrize("text", ["a: [frog opened #2, bars]\nb: 1\n", "b: {a: Stall #4 is wet}\nc: 1\n"])
def test_a_comment_that_swallows_a_bracket_is_named_instead_of_the_bracket(text: str) -> None:
    """The bracket is there for whoever looks; the # is what is wrong."""
    assert told(text) == [(1, text.index("#") + 1, "# begins a comment here, and what follows is not read")]


@pytest.mark.parametrize("raw", [b"[" * 200_000, b"{a: " * 100_000, b"- " * 400_000, b"? " * 400_000])
def test_nesting_without_end_is_a_problem(raw: bytes) -> None:
    """Nothing overflows."""
    assert "nested too deep" in told(raw)[0][2]


def test_a_part_may_be_used_again_by_a_star() -> None:
    """A table may say the same in two places."""
    assert values("a: &x {b: 1}\nc: *x\n") == {"a": {"b": "1"}, "c": {"b": "1"}}


def test_parts_that_multiply_are_refused() -> None:
    """A small file cannot grow into a large record."""
    lines = ["a0: &a0 [x, x]"] + [f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]" for n in range(1, 10)]

    assert [message for _, _, message in told("\n".join(lines))] == ["parts are used again by stars too often"]


def test_the_slow_reader_says_the_same_as_the_fast_one(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where PyYAML comes without its C part, values and places stay the same."""
    good, wrong = b"a: {b: [1, 'x', ]}\nc:\n", b"a: 1\nb: *c\n"
    fast = [(found.values, found.problems) for found in (document("a", good), document("a", wrong))]
    monkeypatch.setattr(yaml_tree, "COMPOSER", yaml_tree.PlainComposer)
    slow = [(found.values, found.problems) for found in (document("a", good), document("a", wrong))]

    assert slow == fast
    assert "nested too deep" in told(b"[" * 2_000)[0][2]


@pytest.mark.skipif(not yaml.__with_libyaml__, reason="PyYAML was built without its C part")
def test_the_fast_reader_is_used_where_it_is_there() -> None:
    """A practice of years is read in seconds."""
    assert yaml_tree.COMPOSER is yaml_tree.FastComposer
