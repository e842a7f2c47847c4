"""A practice that measures in inches: a part of the demo as of the fixed day, its sites built once a run."""

from __future__ import annotations

import re
import shutil
from fractions import Fraction
from pathlib import Path

from recordgen.cache.entries import user_cache
from recordgen.records.load.everything import Whole, read_whole
from recordgen.site.build import build_sites
from recordgen.site.build_context import BuildContext
from tests.conftest import RECORDS, TODAY

HORSES = ("bramble", "pippin")
# Typed in millimetres, as all of the demo is.
BARE_AIM = re.compile(r"under: ([0-9.]+)(?=[,}])")


def inch_records(folder: Path, *more: str) -> Path:
    """The demo's practice with a pony and a horse, whose trimmer has a rule in inches. more: lines of practice.yaml."""
    records = folder / "records"
    for name in ("stable.yaml", *HORSES):
        source, target = RECORDS / "willowmere" / name, records / "willowmere" / name
        target.parent.mkdir(parents=True, exist_ok=True)
        shutil.copytree(source, target) if source.is_dir() else shutil.copyfile(source, target)
    for file in records.glob("willowmere/*/horse.yaml"):
        file.write_text(BARE_AIM.sub(r"under: \1 mm", file.read_text("utf-8")), "utf-8")
    told = [(RECORDS / "practice.yaml").read_text("utf-8"), "units: inches", f"inches_since: {TODAY}", *more]
    (records / "practice.yaml").write_text("\n".join(told) + "\n", "utf-8")
    return records


def read_inches(folder: Path, *more: str) -> Whole:
    """The same, read."""
    return read_whole(inch_records(folder, *more), TODAY)


def build_inches(folder: Path) -> Path:
    """The sites of the same."""
    context = BuildContext.of(read_inches(folder), TODAY, user_cache())
    build_sites(context, ["willowmere", "practice"], folder / "sites")
    return folder / "sites"


def on_a_rule(mm: float) -> str:
    """The nearest sixteenth of an inch, by Python's fractions alone; from the middle the larger one."""
    parts = int(Fraction(str(mm)) * 160 / 254 + Fraction(1, 2))
    whole, rest = divmod(parts, 16)
    return " ".join(filter(None, (str(whole) if whole or not rest else "", str(Fraction(rest, 16)) if rest else "")))
