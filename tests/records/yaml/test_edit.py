"""One value of a file changed, and every other sign of it as it was typed."""

from __future__ import annotations

import datetime as dt
from typing import Any

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from recordgen.problems import Trouble
from recordgen.records.yaml.edit import with_item, with_other, with_value, without_key
from recordgen.records.yaml.write import as_yaml

HORSE = """\
# yaml-language-server: $schema=../../.schemas/horse.json
name: Tansy   # the small one

kind:   pony
vet:
  name: Dr Sage   # rings back
  # on call at night:
  phone: "01632 960000"

# Since the spring.
note: >
  Boots on the fores
  for stony rides.
sex: mare
# microchip: to come
"""


@pytest.mark.parametrize(
    ("key", "value", "was", "becomes"),
    [
        ("name", "Old Tansy", "name: Tansy ", "name: Old Tansy "),
        ("kind", "donkey", "kind:   pony", "kind: donkey"),
        ("note", "None.", "note: >\n  Boots on the fores\n  for stony rides.\n", "note: None.\n"),
        (
            "vet",
            {"name": "Dr Rue"},
            'vet:\n  name: Dr Sage   # rings back\n  # on call at night:\n  phone: "01632 960000"\n',
            "vet: {name: Dr Rue}\n",
        ),
        (
            "left",
            {"date": dt.date(2026, 11, 28), "why": "sold"},
            "# microchip: to come\n",
            "# microchip: to come\nleft: {date: 2026-11-28, why: sold}\n",
        ),
    ],
)
def test_a_value_is_put_in_its_place(key: str, value: Any, was: str, becomes: str) -> None:
    """Or at the end; comments, order and blanks around it stay."""
    assert was in HORSE

    assert with_value(HORSE.encode(), key, value, "horse.yaml").decode() == HORSE.replace(was, becomes)


@pytest.mark.parametrize(
    ("key", "gone"),
    [
        ("sex", "sex: mare\n"),
        ("name", "name: Tansy   # the small one\n"),
        ("note", "note: >\n  Boots on the fores\n  for stony rides.\n"),
        ("ueln", ""),
    ],
)
def test_a_value_is_taken_out(key: str, gone: str) -> None:
    """With the remark on its line, and nothing else."""
    assert without_key(HORSE.encode(), key, "horse.yaml").decode() == HORSE.replace(gone, "")


VISIT = """\
date: 2026-06-03
feet:
  LF:
    before: {toe_length: 84, heel_height: {medial: 33, lateral: 33}}   # wet
    done: [toe taken back, edge rounded]
"""


@pytest.mark.parametrize(
    ("steps", "value", "was", "becomes"),
    [
        (("feet", "LF", "before", "toe_length"), "82.5", "toe_length: 84", "toe_length: 82.5"),
        (("feet", "left_fore", "before", "heel_height", "lateral"), "31", "lateral: 33", "lateral: 31"),
        (("feet", "LF", "done", "1"), "edge, rolled", "edge rounded", "'edge, rolled'"),
    ],
)
def test_a_value_within_gets_another(steps: tuple[str, ...], value: str, was: str, becomes: str) -> None:
    """Wherever it stands, by any name of a foot."""
    assert with_other(VISIT.encode(), steps, value, "a.yaml").decode() == VISIT.replace(was, becomes)


@pytest.mark.parametrize("steps", [("feet",), ("feet", "RF", "before"), ("feet", "LF", "done", "7"), ("nothing",)])
def test_what_is_no_single_value_is_told(steps: tuple[str, ...]) -> None:
    """And nothing is changed."""
    with pytest.raises(Trouble, match="no single value stands at"):
        with_other(VISIT.encode(), steps, "1", "a.yaml")


@pytest.mark.parametrize("raw", [b"{name: Tansy}\n", b"- a\n", b"", b"name: 'Tansy\n"])
def test_what_cannot_be_changed_in_lines_is_told(raw: bytes) -> None:
    """Such as a file that is one pair of braces, or no record at all."""
    with pytest.raises(Trouble, match="cannot be changed as it stands"):
        with_value(raw, "note", "x", "horse.yaml")


@pytest.mark.parametrize(
    "raw", [b"name: Tansy\r\nsex: mare\r\n", b"\xef\xbb\xbfname: Tansy\nsex: mare\n", b"name: Tansy"]
)
def test_ends_of_lines_stay_those_of_the_file(raw: bytes) -> None:
    """And the mark at the beginning that some editors write."""
    made = with_value(raw, "born", "2016", "horse.yaml")

    assert without_key(made, "born", "horse.yaml").rstrip() == raw.rstrip()
    assert (b"\r\n" in made) == (b"\r\n" in raw)
    assert made.count(b"\n") == made.count(b"\r\n") or b"\r" not in made


TEXTS = st.text(st.characters(codec="utf-8", exclude_categories=("Cc", "Cs", "Cn")), min_size=1, max_size=20)
RECORDS = st.dictionaries(st.sampled_from(["name", "note", "vet", "left", "aims"]), TEXTS, min_size=1)


@given(RECORDS, TEXTS)
def test_another_reader_reads_what_was_meant(record: dict[str, str], value: str) -> None:
    """PyYAML's own safe loader, to which all of this is text: one value is new, the others are as before."""
    plain = {name: f"a {text.strip()} z" for name, text in record.items()}
    made = with_value(as_yaml(plain).encode(), "note", f"b {value.strip()} z", "horse.yaml")

    assert yaml.safe_load(made) == plain | {"note": f"b {value.strip()} z"}


LISTS = [
    ("name: Tansy\n", None, "name: Tansy\nseen:\n  - on: 2026-11-28\n    why: a, b\n"),
    ("seen:   # none yet\nname: Tansy\n", None, None),
    (
        "seen:\n- why: old   # so\n\n# Next.\nname: Tansy\n",
        None,
        "seen:\n- why: old   # so\n- on: 2026-11-28\n  why: a, b\n\n# Next.\nname: Tansy\n",
    ),
    (
        "seen:\r\n    - why: old\r\n      on: 2026-01-01  # so\r\nname: Tansy",
        0,
        "seen:\r\n    - on: 2026-11-28\r\n      why: a, b  # so\r\nname: Tansy",
    ),
    ("seen: [{why: old}, {why: new}] # both\n", 1, "seen: [{why: old}, {on: 2026-11-28, why: 'a, b'}] # both\n"),
    ("seen: [{why: old}] # one\n", None, "seen: [{why: old}, {on: 2026-11-28, why: 'a, b'}] # one\n"),
]


@pytest.mark.parametrize(("text", "instead_of", "becomes"), LISTS)
def test_an_item_is_put_behind_the_others_or_in_the_place_of_one(
    text: str, instead_of: int | None, becomes: str | None
) -> None:
    """In brackets or below each other, as the list was typed; remarks stay where they stood."""
    item = {"on": dt.date(2026, 11, 28), "why": "a, b"}
    made = with_item(text.encode(), "seen", item, "horse.yaml", instead_of).decode()

    assert becomes is None or made == becomes
    assert yaml.safe_load(made)["seen"][-1]["why"] == "a, b"
