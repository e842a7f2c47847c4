"""The whole demo practice as files: path to text, and onto the disk."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from recordgen.records.photos.files import PHOTOS
from recordgen.records.yaml.write import as_yaml
from tests.demo.drawings import drawing
from tests.demo.horses import PLANS
from tests.demo.pages import PAGES
from tests.demo.plans import HorsePlan
from tests.demo.stables import PRACTICE, STABLES
from tests.demo.tracings import Drawn
from tests.demo.visits import drawn_feet, visits

SEED = "hazel"


def demo_files() -> dict[str, str]:
    """Every file of the demo practice: its path below the folder of records, and its text."""
    files = {"practice.yaml": as_yaml(PRACTICE), **PAGES}
    for slug, stable in STABLES.items():
        files[f"{slug}/stable.yaml"] = as_yaml(stable)
    for plan in PLANS:
        files |= horse_files(plan, SEED)
    return files


def horse_files(plan: HorsePlan, seed: str) -> dict[str, str]:
    """The files of one horse: path to text."""
    folder = f"{plan.stable}/{plan.slug}"
    named: Iterator[tuple[str, Mapping[str, Any]]] = ((str(visit["date"]), visit) for visit in visits(plan, seed))
    return {
        f"{folder}/horse.yaml": as_yaml(plan.file),
        **{f"{folder}/{day}.yaml": as_yaml(visit) for day, visit in named},
    }


def demo_drawings() -> dict[str, Drawn]:
    """The drawings among the photographs of the demo: the path of each below the folder of records, and its foot."""
    return {
        f"{plan.stable}/{plan.slug}/{PHOTOS}/{one.file}": one
        for plan in PLANS
        for one in drawn_feet(plan, SEED)
        if one.kept
    }


def write_demo(folder: Path) -> None:
    """Write the demo practice into `folder`; records and own pages that are no part of it go, photographs stay."""
    files: dict[str, str | bytes] = {**demo_files()}
    files |= {path: drawing(one) for path, one in demo_drawings().items()}
    for old in [*folder.rglob("*.yaml"), *folder.rglob("pages/*.md")]:
        if old.relative_to(folder).as_posix() not in files:
            old.unlink()
    write(folder, files)


def write(folder: Path, files: Mapping[str, str | bytes]) -> None:
    """Write files below `folder` by their paths; texts as UTF-8 with plain line ends."""
    for path, content in files.items():
        file = folder / path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(content.encode() if isinstance(content, str) else content)
