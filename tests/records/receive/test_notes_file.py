"""The lines of a file that a phone handed over."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from recordgen.private.keystore.field_key import FieldKey
from recordgen.problems import Trouble
from recordgen.records.receive.incoming import Incoming
from recordgen.records.receive.notes_file import Head, OpenLine, file_id, is_notes, read_notes
from tests.support.phone_notes import parts, photo, visit
from tests.support.sealed_notes import Part, plain_notes, sealed_notes

KEY = FieldKey.new()
PARTS = parts(visit("aaa"), visit("bbb", horse="willowmere/fennel"), photo("aaa"), photo("bbb", "p2"))


def unseal(head: Head, first: bytes) -> OpenLine:
    """The way to open lines that are sealed for KEY."""
    return KEY.opener(first, head.key)


def made(inside: list[Part], sealed: bool = True) -> bytes:
    """A file of parts."""
    return sealed_notes("k7q2", inside, KEY.public) if sealed else plain_notes("k7q2", inside)


def read(raw: bytes) -> Incoming:
    """Give what a file holds."""
    return read_notes(raw, "notes.txt", unseal)


def told(raw: bytes) -> list[tuple[int, str]]:
    """The line and the message of each problem."""
    return [(problem.place.line, problem.message) for problem in read(raw).problems]


@pytest.mark.parametrize("sealed", [True, False])
def test_a_whole_file_gives_all_of_it(sealed: bool) -> None:
    """Each visit with its own photographs, and the day on which the page was made."""
    brought = read(made(PARTS, sealed))

    assert [(one.id, [photo.id for photo in one.photos]) for one in brought.visits] == [
        ("aaa", ["p1"]),
        ("bbb", ["p2"]),
    ]
    assert (list(brought.problems), brought.whole, str(brought.listed)) == ([], True, "2026-11-01")
    assert brought.practice == ("" if sealed else "Hazel Hoof Care")


@pytest.mark.parametrize(
    "change", [lambda raw: raw.replace(b"\n", b"\r\n"), lambda raw: b"\xef\xbb\xbf" + raw + b"\n\n"]
)
def test_what_mail_does_to_text_changes_nothing(change: Callable[[bytes], bytes]) -> None:
    """Other ends of lines, a mark at the start, empty lines at the end."""
    brought = read(change(made(PARTS)))

    assert (len(brought.visits), list(brought.problems)) == (2, [])


@pytest.mark.parametrize("sealed", [True, False])
def test_a_file_cut_anywhere_gives_every_whole_line_before_the_cut(sealed: bool) -> None:
    """And says what is missing; visits come before photographs, so that a cut seldom costs one."""
    raw = made(PARTS, sealed)
    ends = [at for at, byte in enumerate(raw) if byte == 10]

    for cut in (ends[1] + 1, ends[2] + 1, ends[2] + 40, ends[3] - 1, ends[4] + 7):
        brought = read(raw[:cut])
        whole = sum(end < cut for end in ends)
        assert len(brought.visits) == max(0, min(2, whole - 2))
        assert (brought.whole, any("cut short" in problem.message for problem in brought.problems)) == (False, True)


@pytest.mark.parametrize("sealed", [True, False])
def test_a_changed_letter_costs_one_line(sealed: bool) -> None:
    """The line is named, and the others go on."""
    lines = made(PARTS, sealed).split(b"\n")
    at = len(lines[2]) // 2
    lines[2] = lines[2][:at] + (b"x" if lines[2][at : at + 1] != b"x" else b"y") + lines[2][at + 1 :]
    brought = read(b"\n".join(lines))

    assert [one.id for one in brought.visits] == ["bbb"]
    assert [problem.place.line for problem in brought.problems] == [3, 5]
    assert "belongs to the visit 'aaa', which could not be read" in list(brought.problems)[1].message


def test_lines_in_another_order_are_told_and_read() -> None:
    """Each line tells its own number."""
    head, *lines = made(PARTS).splitlines()
    brought = read(b"\n".join([head, lines[2], *lines[:2], *lines[3:], b""]))

    assert ([one.id for one in brought.visits], brought.whole) == (["aaa", "bbb"], True)
    assert [problem.message for problem in brought.problems] == [
        "line 1 of the notes stands behind line 3",
        "line 2 of the notes stands behind line 3",
    ]


def test_a_line_that_was_taken_out_is_told() -> None:
    """Also from the middle."""
    head, *lines = made(PARTS).splitlines()

    assert told(b"\n".join([head, lines[0], *lines[2:], b""])) == [
        (4, "this photograph belongs to the visit 'aaa', which could not be read"),
        (6, "line 2 is missing, of 6"),
    ]


def test_a_line_twice_counts_once() -> None:
    """A second one that says something else is told."""
    head, *lines = made(PARTS, sealed=False).splitlines()
    other = made(parts(visit("aaa", rev=2), *PARTS[2:-1]), sealed=False).splitlines()[2]

    assert len(read(b"\n".join([head, *lines, lines[1], b""])).visits) == 2
    assert (8, "line 2 of the notes is there twice, and the two differ") in told(b"\n".join([head, *lines, other, b""]))


def test_another_version_is_refused() -> None:
    """It says what to do."""
    with pytest.raises(Trouble, match="version 2 of field notes") as trouble:
        read(b'{"field_notes":2,"file":"k7","parts":[]}\n1 x\n')

    assert "up to date" in trouble.value.way_out


@pytest.mark.parametrize("first", [b'{"field_notes":1,"file":', b'{"field_notes": 1, "lines": -4, "file": "a"}'])
def test_a_damaged_first_line_is_told(first: bytes) -> None:
    """Nothing of the file can be read without it."""
    assert is_notes(first)
    with pytest.raises(Trouble, match="first line of notes"):
        read(first + b"\n1 x\n")


@pytest.mark.parametrize(
    ("part", "message"),
    [
        ({"kind": "visit", "id": "aaa"}, "the visit does not tell its rev as it should"),
        (visit("aaa", horse="../../etc"), "the visit does not tell its horse as it should"),
        (visit("aaa", day="2026-02-30"), "the visit does not tell its date as it should"),
        (photo("aaa", jpeg=b"x") | {"jpeg": 7}, "the photograph does not tell its jpeg as it should"),
        ({"kind": "song"}, "it is of a kind that is not known here"),
        ({"no": "kind"}, "it is of a kind that is not known here"),
        (
            visit("aaa", record={"a": [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]}),
            "nested too deep",
        ),
    ],
)
def test_a_part_that_is_not_understood_is_told(part: Part, message: str) -> None:
    """By its line, and the other visits go on."""
    brought = read(made(parts(part, visit("bbb"))))

    assert [one.id for one in brought.visits] == ["bbb"]
    assert [(problem.place.line, message in problem.message) for problem in brought.problems] == [(3, True)]


@pytest.mark.parametrize(
    "line", [b"2 -", b"2 - [", b"2 - NaN", b"2 - " + b"[" * 100_000, b"x", b"2 zz {}", b"2 - 1" + b"0" * 9999]
)
def test_rubbish_in_a_line_is_told(line: bytes) -> None:
    """It stops nothing else."""
    head, first, _, *lines = made(PARTS, sealed=False).splitlines()
    brought = read(b"\n".join([head, first, line, *lines, b""]))

    assert [one.id for one in brought.visits] == ["bbb"]
    assert next(iter(brought.problems)).place.line == 3


def test_a_photograph_that_is_not_as_it_was_kept_is_told() -> None:
    """Its own sum tells, also where the line has none."""
    brought = read_notes(plain_notes("k7", parts(visit("aaa"), photo("aaa", sha256="0" * 64)), False), "n", unseal)

    assert brought.visits[0].photos == ()
    assert "not as the phone kept it" in next(iter(brought.problems)).message


def test_a_cut_file_names_the_photographs_that_did_not_arrive() -> None:
    """The visit's own line lists them, so those after the cut are known by foot and view."""
    named = [{"id": "p1", "foot": "left_fore", "view": "sole", "moment": "after"}, {"id": "p2"}]
    raw = plain_notes("k7", parts(visit("aaa", photos=named), photo("aaa", "p1"), photo("aaa", "p2")), False)
    whole = read_notes(raw, "n", unseal)
    cut = read_notes(b"".join(raw.splitlines(keepends=True)[:3]), "n", unseal)

    assert (list(whole.problems), whole.whole) == ([], True)
    assert not cut.whole
    assert [one.message for one in cut.problems if "photograph" in one.message] == [
        "2 photographs of Bramble, 20 November 2026 did not arrive: left fore sole after, p2"
    ]


@pytest.mark.parametrize("raw", [b'{"field_notes":1,"file":"../x"}\n', b'{"field_notes":1}\n', b"[]\n", b"\xff"])
def test_an_id_that_can_be_no_name_is_none(raw: bytes) -> None:
    """No file is written outside its folder."""
    assert file_id(raw) == ""
