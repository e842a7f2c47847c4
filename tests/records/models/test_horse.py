"""The log of what was shared: read with its lines, and an entry more at its end."""

import datetime as dt
from pathlib import Path

import pytest

from recordgen.problems import Trouble
from recordgen.records.models.horse import Shared
from recordgen.records.write.sharing_log import append_entry
from tests.support.practice_folders import practice, told

LOG = "willowmere/bramble/shared.yaml"
LINE = "{date: 2026-11-25, to: Three Larches, edition: 1a2b3c4d, what: [html, pdf]}"
ENTRY = Shared(date=dt.date(2026, 11, 25), to="Three Larches", edition="1a2b3c4d", what=("html", "pdf"))


def test_the_log_stands_with_the_horse(tmp_path: Path) -> None:
    """Each entry in the order of the file; none without a file."""
    later = LINE.replace("what", "until: 2027-01-31, what")
    found = practice(tmp_path, {LOG: f"shared:\n  - {LINE}\n  - {later}\n"})

    assert found.horses[0].shared == (ENTRY, ENTRY.model_copy(update={"until": dt.date(2027, 1, 31)}))


def test_a_horse_that_was_never_shared_has_no_entry(tmp_path: Path) -> None:
    """Without a file there is nothing to tell."""
    assert practice(tmp_path).horses[0].shared == ()


@pytest.mark.parametrize(
    ("line", "says"),
    [
        (
            LINE.replace("edition: 1a2b3c4d", "edition: later"),
            "2:43: error: shared, number 1, edition: 'later' is not an edition",
        ),
        (LINE.replace("[html, pdf]", "[word]"), "'word' is not one of the words for it"),
        (LINE.replace("to:", "too:"), "2:24: error: 'too' is not a known key here. Did you mean to?"),
        (LINE.replace("2026-11-25", "2027-01-01"), "2:6: error: the date 2027-01-01 is in the future"),
        (LINE.replace("what", "until: 2026-01-31, what"), "until 2026-01-31 is before the day it was handed over"),
    ],
)
def test_what_is_wrong_in_it_is_told_with_its_line(tmp_path: Path, line: str, says: str) -> None:
    """As in every other file."""
    assert any(says in one for one in told(tmp_path, {LOG: f"shared:\n  - {line}\n"}))


def test_a_log_of_another_spelling_is_told(tmp_path: Path) -> None:
    """It is not left unread in silence."""
    (said,) = told(tmp_path, {"willowmere/bramble/Shared.yml": f"shared:\n  - {LINE}\n"})

    assert said.endswith("this file is not read. Name it shared.yaml.")


def test_a_new_log_begins_with_what_it_is() -> None:
    """A remark, the key, the entry."""
    assert append_entry("", ENTRY, LOG).splitlines() == [
        "# Whom this horse's record was shared with; `recordgen share` adds a line each time.",
        "shared:",
        '  - {date: 2026-11-25, to: Three Larches, edition: "1a2b3c4d", what: [html, pdf]}',
    ]


@pytest.mark.parametrize(
    "before",
    [
        f"# ours\nshared:\n  # the first\n  - {LINE}   # by hand\n\n# the last\n",
        f"shared:\n- {LINE}",
        f"shared:\r\n    - {LINE}\r\n",
        "shared:\n  - date: 2026-11-25\n    to: Three Larches\n    edition: 1a2b3c4d\n    what: [pdf]\n",
        "shared:\n",
    ],
)
def test_an_entry_is_added_and_nothing_else_changes(before: str) -> None:
    """Comments, order, indents and ends of lines stay as they are; one line more stands at the end."""
    after = append_entry(before, ENTRY, LOG)

    assert after.startswith(before)
    assert len(after.splitlines()) == len(before.splitlines()) + 1
    assert after.endswith("\r\n") == ("\r\n" in before)


@pytest.mark.parametrize("before", ["shared: []\n", f"shared: [{LINE}]\n", f"shared:\n  - {LINE}\nnote: x\n", "what\n"])
def test_a_log_with_something_behind_its_list_is_left_alone(before: str) -> None:
    """It is told, with the way out."""
    with pytest.raises(Trouble, match="nothing can be added at its end") as refused:
        append_entry(before, ENTRY, LOG)

    assert "the last thing in the file" in refused.value.way_out


@pytest.mark.parametrize("name", ["no", "A: b # c", 'He said "so"', "{x}, [y]", "Łąki, Hufklinik", "1e5", "'"])
def test_any_name_is_read_back_as_it_was(name: str) -> None:
    """Whatever YAML would make of it."""
    entry = ENTRY.model_copy(update={"to": name})

    assert append_entry("", entry, LOG).count("\n") == 3
