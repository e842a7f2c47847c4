"""The part that a stable's own people may see of a trail."""

from pathlib import Path

import pytest

from tests.support.git_practice import LONGER, TOE, Kept, alone, begun
from tests.support.practice_folders import VISIT, VISIT_FILE


@pytest.fixture(autouse=True)
def _somebody(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """Git knows who we are."""
    alone(monkeypatch, tmp_path)


@pytest.fixture
def kept(tmp_path: Path) -> Kept:
    """A practice with one visit, kept on 14 October."""
    return begun(tmp_path)


@pytest.mark.parametrize(
    ("reason", "files", "shown"),
    [
        ("toe", {VISIT_FILE: LONGER}, "toe"),
        ("toe", {VISIT_FILE: LONGER, "willowmere/otter/horse.yaml": "name: Otter\n"}, "toe"),
        ("toe", {VISIT_FILE: LONGER, "heath/stable.yaml": "name: Heath\n"}, ""),
        ("toe", {VISIT_FILE: LONGER, "practice.yaml": "name: A\ntrimmer: B\n"}, ""),
        ("toe, asked ann@example.org", {VISIT_FILE: LONGER}, ""),
        ("toe", {VISIT_FILE: LONGER + "private_note: owes\n"}, ""),
    ],
)
def test_a_stable_reads_a_reason_only_where_it_is_about_this_stable_alone(
    kept: Kept, reason: str, files: dict[str, str], shown: str
) -> None:
    """The trimmer reads it always."""
    kept.entry("2026-10-20", reason, files)
    trail = kept.trail()

    assert [change.reason for change in trail.changes] == [reason]
    assert [change.reason for change in trail.for_stable().changes] == [shown]


def test_a_reason_from_another_stable_stays_there(kept: Kept) -> None:
    """The horse moved; what was written at its old stable is not for the new one."""
    kept.entry("2026-10-20", "Willowmere: Bramble and Otter amended", {VISIT_FILE: LONGER})
    kept.entry("2026-10-21", "x", {"heath/stable.yaml": "name: Heath\n"})
    kept.git("mv", "willowmere/bramble", "heath/bramble")
    kept.entry("2026-10-25", "moved")
    seen = kept.trail("heath/bramble/2026-10-14.yaml").for_stable()

    assert [(change.reason, len(change.parts)) for change in seen.changes] == [("", 1)]


def test_a_stable_never_sees_that_a_private_note_changed(kept: Kept) -> None:
    """The trimmer does; an entry of nothing else leaves no trace, and no other visit of it shows its reason."""
    named = "willowmere/bramble/2026-11-18.yaml"
    kept.entry("2026-11-18", "seen", {named: "date: 2026-11-18\nnote: x\n"})
    secret = {VISIT_FILE: VISIT + "private_note: Pays late\n", named: "date: 2026-11-18\ntrimmed: no\nnote: x\n"}
    kept.entry("2026-11-20", "Pays late", secret)
    mine, other = kept.trail(), kept.trail(named)

    assert [(part.what, part.after) for part in mine.changes[0].parts] == [("private note", "Pays late")]
    assert mine.for_stable().changes == ()
    assert [(change.reason, change.parts[0].after) for change in other.for_stable().changes] == [("", "no")]
    assert "Pays late" not in repr(mine.for_stable()) + repr(other.for_stable())


def test_a_stable_does_not_read_earlier_wording(kept: Kept) -> None:
    """Words taken out of a note may have been taken out for a reason; numbers and choices stay."""
    words = VISIT + "note: Ann owes us\n"
    kept.entry("2026-10-20", "x", {VISIT_FILE: words})
    kept.entry("2026-10-21", "y", {VISIT_FILE: LONGER.replace("medial first", "flat")})
    parts = kept.trail().for_stable().changes[1].parts

    assert [(part.what, part.before, part.after) for part in parts] == [
        ("left fore, landing", "medial first", "flat"),
        (TOE, "75 mm", "77 mm"),
        ("note", "", None),
    ]
    assert "Ann" in repr(kept.trail())
    assert "Ann" not in repr(kept.trail().for_stable())
