"""Tell which file of the records lies where. What has no place here is no record, and is never put into git.

practice.yaml
<stable>/stable.yaml
<stable>/<horse>/horse.yaml
<stable>/<horse>/2026-10-14.yaml
<stable>/<horse>/shared.yaml
<stable>/<horse>/photos/2026-10-14-left-fore-sole-before.jpg
care/<note>.yaml                 a practice's own care notes
pages/<page>.md                  its own pages for every site, with their pictures; <stable>/pages/ for one site
outlines/own-3f2a9c1b.yaml       tables of usual outlines of a sole, made of its own tracings
site_templates/…                 a practice's own words, pages, and frame of the pages
received/…                       what phones handed over, as it came; never in git
README.md, .gitignore, …         what `init` laid out for people, git and the editor
"""

from __future__ import annotations

import datetime as dt
import re
from dataclasses import dataclass
from pathlib import PurePath
from typing import Literal

from recordgen.records.load.folders import NOT_FREE, OUTLINES, SLUG, VISIT_FILE
from recordgen.records.models.horse import SHARED_FILE
from recordgen.records.models.lines.shape_table import DIGITS, OWN
from recordgen.records.pages.files import PAGES
from recordgen.records.photos.files import PHOTOS
from recordgen.records.photos.names import parse_photo_name

Part = Literal[
    "practice",
    "stable",
    "horse",
    "visit",
    "sharing",
    "photograph",
    "page",
    "care note",
    "outlines",
    "template",
    "help for programs",
]

_CARE_NOTE = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*\.yaml")
_OUTLINES = re.compile(rf"{OWN}[0-9a-f]{{{DIGITS}}}\.yaml")
_PAGE = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*\.(md|jpg|jpeg|png|webp)")
_HELP = re.compile(
    r"README\.md|\.gitignore|\.gitattributes|\.githooks/pre-commit|\.vscode/settings\.json|\.schemas/[a-z]+\.json"
)
# Below `site_templates/`; styles, pictures and fonts may stand beside a practice's own frame. Our styles and scripts of
# the pages are nobody else's to replace.
_TEMPLATES = re.compile(
    r"words/[^/]+\.yaml|pages/.+\.(html|md)|theme/.+\.(html|css|js|svg|png|jpg|jpeg|webp|ico|woff2?)"
    r"|(records|private)/[^/]+\.(jinja|css|js|svg)|(field|trace)/[^/]+\.(html|css|js|svg|yaml|webmanifest)"
)


@dataclass(frozen=True)
class Home:
    """The meaning of a file by where it lies: of which stable and which horse, and of which day."""

    part: Part
    stable: str = ""
    horse: str = ""
    day: dt.date | None = None


def home_of(name: PurePath) -> Home | None:
    """The meaning of a file by its path from the practice's folder; None for a file that is no record."""
    parts = name.parts
    if len(parts) > 1 and _may_be_stable(parts[0]):
        return _of_stable(*parts)
    text = name.as_posix()
    if text == "practice.yaml":
        return Home("practice")
    if _HELP.fullmatch(text):
        return Home("help for programs")
    if parts[0] == PAGES and len(parts) == 2 and _PAGE.fullmatch(parts[1]):
        return Home("page")
    if parts[0] == "care" and len(parts) == 2 and _CARE_NOTE.fullmatch(parts[1]):
        return Home("care note")
    if parts[0] == OUTLINES and len(parts) == 2 and _OUTLINES.fullmatch(parts[1]):
        return Home("outlines")
    if parts[0] == "site_templates" and _TEMPLATES.fullmatch(text.removeprefix("site_templates/")):
        return Home("template")
    return None


def _may_be_stable(name: str) -> bool:
    return bool(SLUG.fullmatch(name)) and name not in NOT_FREE


def _of_stable(stable: str, *inside: str) -> Home | None:
    if inside == ("stable.yaml",):
        return Home("stable", stable)
    if len(inside) == 2 and inside[0] == PAGES and _PAGE.fullmatch(inside[1]):
        return Home("page", stable)
    if len(inside) < 2 or not _may_be_stable(inside[0]):
        return None
    horse, *file = inside
    if len(file) == 1:
        return _of_horse(stable, horse, file[0])
    photo = parse_photo_name(file[1]) if len(file) == 2 and file[0] == PHOTOS else None
    return Home("photograph", stable, horse, photo[0].day) if photo else None


def _of_horse(stable: str, horse: str, file: str) -> Home | None:
    if file == "horse.yaml":
        return Home("horse", stable, horse)
    if file == SHARED_FILE:
        return Home("sharing", stable, horse)
    visit = VISIT_FILE.fullmatch(file)
    try:
        return Home("visit", stable, horse, dt.date.fromisoformat(visit[1])) if visit else None
    except ValueError:
        return None
