"""Which file lies where, and what has no place."""

from __future__ import annotations

import datetime as dt
from pathlib import Path, PurePosixPath

import pytest

from recordgen.packaged import packaged
from recordgen.records.layout import Home, Part, home_of
from tests.conftest import RECORDS

DAY = dt.date(2026, 10, 14)
# Of `site_templates`, what no practice replaces, and forms with names of their own.
OURS_ALONE = ("records", "pictures", "styles", "static", "languages")
GUIDE_PICTURES = Path("pages", "guide", "pictures")


@pytest.mark.parametrize(
    ("name", "home"),
    [
        ("practice.yaml", Home("practice")),
        ("willowmere/stable.yaml", Home("stable", "willowmere")),
        ("willowmere/bramble/horse.yaml", Home("horse", "willowmere", "bramble")),
        ("willowmere/bramble/shared.yaml", Home("sharing", "willowmere", "bramble")),
        ("willowmere/bramble/2026-10-14-b.yaml", Home("visit", "willowmere", "bramble", DAY)),
        (
            "willowmere/bramble/photos/2026-10-14-left-fore-sole-2.jpg",
            Home("photograph", "willowmere", "bramble", DAY),
        ),
        ("care/soft-ground.yaml", Home("care note")),
        ("pages/winter-mud.md", Home("page")),
        ("willowmere/pages/gate.jpg", Home("page", "willowmere")),
        ("site_templates/words/phrases.yaml", Home("template")),
        ("site_templates/theme/assets/logo.png", Home("template")),
    ],
)
def test_a_record_has_its_place(name: str, home: Home) -> None:
    """With its stable, horse and day."""
    assert home_of(PurePosixPath(name)) == home


@pytest.mark.parametrize(
    "name",
    [
        *("passwords.txt", "keys.json", "willowmere.ics", "bramble-2026-10-14.html", "IMG_0412.jpg", "horse.yaml"),
        *("willowmere/bramble/IMG_0412.jpg", "willowmere/bramble/photos/IMG_0412.jpg", "willowmere/keys.json"),
        *("willowmere/bramble/2026-02-30.yaml", "willowmere/bramble/2026-10-14.yaml~", "practice/bramble/horse.yaml"),
        *("willowmere/bramble/photos/2026-10-14-left-fore-sole.heic", "willowmere/bramble/photos/old/x.jpg"),
        *(
            "sites/willowmere/index.html",
            "site_templates/secret.txt",
            "site_templates/static/assets/recordgen.js",
            "site_templates/styles/recordgen.css",
            "care/note.txt",
            "pages/x.html",
            ".env",
            ".ssh/id_rsa",
        ),
        *("Willowmere/stable.yaml", "willowmere/bramble/photos/2026-10-14-left-fore-sole.jpg/x"),
    ],
)
def test_what_is_no_record_has_none(name: str) -> None:
    """Whatever it is named after."""
    assert home_of(PurePosixPath(name)) is None


def test_every_file_of_the_demo_has_its_place() -> None:
    """So has every template of ours that a practice may replace, under its own folder."""
    names = [file.relative_to(RECORDS) for file in RECORDS.rglob("*") if file.is_file()]
    templates = packaged() / "site_templates"
    ours = [file.relative_to(templates) for file in templates.rglob("*") if file.is_file()]
    replaced = [file for file in ours if file.parts[0] not in OURS_ALONE and file.parent != GUIDE_PICTURES]
    inside = [PurePosixPath("site_templates", *file.parts) for file in replaced]

    assert [name for name in (*names, *inside) if home_of(name) is None] == []
    assert len(names) > 200


@pytest.mark.parametrize(
    "name", ["README.md", ".gitignore", ".githooks/pre-commit", ".vscode/settings.json", ".schemas/visit.json"]
)
def test_what_init_lays_out_has_its_place(name: str) -> None:
    """Help for people, git and the editor."""
    part: Part = "help for programs"

    assert home_of(PurePosixPath(name)) == Home(part)
