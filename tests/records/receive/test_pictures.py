"""Tracings that come with their photographs: the file's name and checksum in the place of the phone's id."""

from __future__ import annotations

import datetime as dt
import hashlib
from pathlib import Path
from typing import Any

import pytest

from recordgen.problems import Place, Problems
from recordgen.records.photos.convert import plain_photo
from recordgen.records.receive.incoming import IncomingPhoto, IncomingVisit
from recordgen.records.receive.pictures import Picture, pictures_of, with_late_pictures, with_pictures
from tests.support.photographs import drawn, file_of

DAY = dt.date(2026, 11, 20)
SENT = file_of(drawn())
SENT_SUM, PLAIN_SUM = (hashlib.sha256(one).hexdigest() for one in (SENT, plain_photo(SENT, "a picture")))
NAME = "2026-11-20-left-fore-sole-after.jpg"
TRACED: dict[str, Any] = {"view": "sole", "moment": "after", "file": "p1", "image": [320, 240], "sha256": SENT_SUM}


def visit(*photos: IncomingPhoto, **changed: Any) -> IncomingVisit:
    """A visit with one tracing. changed: over its keys."""
    record = {"feet": {"left_fore": {"tracings": [TRACED | changed]}}, "next": {"weeks": 6}}
    return IncomingVisit("k7q2", 1, "willowmere/bramble", "Bramble", DAY, record, Place("notes", 2), photos)


def photo(content: bytes = SENT, id_: str = "p1") -> IncomingPhoto:
    """The photograph of a left fore's sole."""
    return IncomingPhoto(id_, "left_fore", "sole", "after", content, Place("notes", 3))


def named(brought: IncomingVisit, horse: Path, problems: Problems) -> dict[str, Any]:
    """The tracing as it will stand in the records."""
    pictures = pictures_of(brought, horse, DAY, {}, problems)
    return with_pictures(brought, pictures, problems)["feet"]["left_fore"]["tracings"][0]  # type: ignore[no-any-return]


def test_a_tracing_names_the_file_and_its_checksum(tmp_path: Path) -> None:
    """Of the photograph as it will lie in the records, without a colour profile."""
    problems = Problems()

    assert named(visit(photo()), tmp_path, problems) == TRACED | {"file": NAME, "sha256": PLAIN_SUM}
    assert list(problems) == []


def test_the_next_free_name_is_known_before(tmp_path: Path) -> None:
    """Beside a photograph that is there, and beside another of the same visit."""
    (tmp_path / "photos").mkdir()
    (tmp_path / "photos" / NAME).write_bytes(b"another")
    second = photo(file_of(drawn(200, 200)), "p2")
    found = pictures_of(visit(photo(), second), tmp_path, DAY, {}, Problems())

    assert [found[id_].name for id_ in ("p1", "p2")] == [NAME.replace(".jpg", f"-{number}.jpg") for number in (2, 3)]


def test_a_picture_changed_since_it_was_traced_is_told(tmp_path: Path) -> None:
    """The tracing keeps the checksum of what was traced, so that `check` tells it too."""
    problems = Problems()
    found = named(visit(photo(), sha256="0" * 64), tmp_path, problems)

    assert found == TRACED | {"file": NAME, "sha256": "0" * 64}
    assert [problem.code for problem in problems] == ["tracing-photo-changed"]


def test_a_tracing_without_its_picture_is_kept(tmp_path: Path) -> None:
    """By its checksum, until the picture comes."""
    found = named(visit(), tmp_path, Problems())

    assert found == {key: value for key, value in TRACED.items() if key != "file"}


@pytest.mark.parametrize(
    "record", [{"feet": 3}, {"feet": {"left_fore": "?"}}, {"feet": {"left_fore": {"tracings": 1}}}]
)
def test_what_is_in_no_form_stays_for_the_models_to_refuse(record: dict[str, Any]) -> None:
    """Nothing of it is touched."""
    brought = IncomingVisit("k7q2", 1, "willowmere/bramble", "Bramble", DAY, record, Place("notes", 2))

    assert with_pictures(brought, {}, Problems()) == record


LATE = Picture("p1", NAME, PLAIN_SUM, SENT_SUM)


def typed(note: str, more: str = "") -> str:
    """A visit's file with one tracing that waits for its picture."""
    return (
        f"date: 2026-11-20\nnote: '{note}'{more}\nfeet:\n  left_fore:\n    tracings:\n"
        f"      - {{view: sole, moment: after, image: [320, 240], sha256: {SENT_SUM}}}{more}\n"
    )


@pytest.mark.parametrize("more", ["", "  # mine"])
def test_a_picture_that_comes_later_is_named_by_its_tracing(more: str) -> None:
    """All else stays; a tracing with somebody's comment in it is left alone."""
    text = typed("By hand", more)
    after = with_late_pictures(text.encode(), "visit", [LATE]).decode()

    if more:
        assert after == text
    else:
        assert f"file: {NAME}" in after
        assert PLAIN_SUM in after
        assert SENT_SUM not in after
        assert after.startswith("date: 2026-11-20\nnote: 'By hand'\n")


def test_a_file_in_other_letters_is_left_alone() -> None:
    """An editor that saves no UTF-8 loses nothing: what cannot be read is not written anew."""
    raw = typed("Müde").encode("latin-1")

    assert with_late_pictures(raw, "visit", [LATE]) == raw
