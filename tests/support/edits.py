"""Edits of a practice as a trimmer makes them, drawn at random, and builds that follow them, each beside a cold one."""

from __future__ import annotations

import datetime as dt
import re
import shutil
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from random import Random
from unittest import mock

from PIL import Image

from recordgen.cache.entries import Cache
from recordgen.language.catalogs import languages
from recordgen.packaged import packaged
from recordgen.records.load.everything import read_whole
from recordgen.site.build import build_sites
from recordgen.site.build_context import BuildContext
from recordgen.site.kept.digest import RecordsDigest
from recordgen.site.kept.standing import Standing
from recordgen.site.pages.sites import PRACTICE
from tests.conftest import TODAY
from tests.demo.generated import generated_practice


@dataclass
class Edited:
    """A practice that is edited and built again and again. done: the edits so far."""

    folder: Path
    rng: Random
    cache: Cache
    today: dt.date = TODAY
    version: str = "one"
    done: list[str] = field(default_factory=list)

    @classmethod
    def of(cls, folder: Path, seed: int, stables: int = 2, horses: int = 2) -> Edited:
        """A practice made up from a seed, not built yet."""
        generated_practice(folder / "records", stables, horses, years=1, seed=seed)
        return cls(folder, Random(seed), Cache(folder / "cache"))

    @property
    def records(self) -> Path:
        """The folder of the records."""
        return self.folder / "records"

    def some(self, pattern: str) -> Path:
        """One of the files or folders of the records that fit."""
        return self.rng.choice(sorted(self.records.glob(pattern)))

    def edit(self, kind: str) -> None:
        """One edit, told in `done`."""
        EDITS[kind](self)
        self.done.append(kind)

    def build(self, out: str, with_cache: bool = True) -> dict[str, bool]:
        """The sites built into a folder: by slug, whether each stood already."""
        before = RecordsDigest.of(self.records)
        whole = read_whole(self.records, self.today)
        with mock.patch("recordgen.site.kept.digest.program_version", return_value=self.version):
            context = BuildContext.of(whole, self.today, self.cache, before if with_cache else None)
            known = Standing(self.cache, before, whole, context) if with_cache else None
        slugs = [*(stable.slug for stable in context.stables), PRACTICE]
        built = build_sites(context, slugs, self.folder / out, 1, known)
        return {site.slug: site.stood for site in built}

    def differing(self) -> list[str]:
        """The files of today's sites in which building on what stands differs from building all anew."""
        self.build("sites")
        shutil.rmtree(self.folder / "cold", ignore_errors=True)
        slugs = self.build("cold", with_cache=False)
        followed, cold = (_files(self.folder / out, slugs) for out in ("sites", "cold"))
        return sorted(name for name in followed.keys() | cold.keys() if followed.get(name) != cold.get(name))


def _files(out: Path, slugs: dict[str, bool]) -> dict[str, bytes]:
    files = [path for slug in slugs for path in (out / slug).rglob("*") if path.is_file()]
    return {path.relative_to(out).as_posix(): path.read_bytes() for path in files}


def _value(practice: Edited) -> None:
    """The first length of a visit, that before the trim: longer than it was, since no trim can add to a toe."""
    file, more = practice.some("stable-*/*/2*.yaml"), practice.rng.randrange(1, 20) / 10
    text = file.read_text("utf-8")
    longer = re.sub(r"(toe_length: )([0-9.]+)", lambda found: f"{found[1]}{float(found[2]) + more:.1f}", text, count=1)
    file.write_text(longer, "utf-8")


def _new_visit(practice: Edited) -> None:
    visit = practice.some("stable-*/*/2*.yaml")
    day = TODAY - dt.timedelta(days=practice.rng.randrange(1, 7))
    text = visit.read_text("utf-8")
    (visit.parent / f"{day}.yaml").write_text(re.sub(r"(?m)^date: .*$", f"date: {day}", text), "utf-8")


def _visit_gone(practice: Edited) -> None:
    practice.some("stable-*/*/2*.yaml").unlink()


def _renamed_horse(practice: Edited) -> None:
    file = practice.some("stable-*/*/horse.yaml")
    name = f"name: Briar {practice.rng.randrange(1000)}"
    file.write_text(re.sub(r"(?m)^name: .*$", name, file.read_text("utf-8")), "utf-8")


def _renamed_stable(practice: Edited) -> None:
    practice.some("stable-*/stable.yaml").write_text(f"name: Yard {practice.rng.randrange(1000)}\n")


def _horse_in_another_folder(practice: Edited) -> None:
    horse = practice.some("stable-*/*/horse.yaml").parent
    horse.rename(horse.with_name(f"briar-{practice.rng.randrange(1000)}"))


def _horse_moved(practice: Edited) -> None:
    """To another stable, whose record goes on from the one that ended."""
    horse = practice.some("stable-*/*/horse.yaml").parent
    others = sorted(path.parent for path in practice.records.glob("*/stable.yaml") if path.parent != horse.parent)
    there = practice.rng.choice(others) / f"moved-{practice.rng.randrange(1000)}"
    chip = f"microchip: '{practice.rng.randrange(100, 900)}{practice.rng.randrange(2 * 10**11):012}'\n"
    text = re.sub(r"(?ms)^(microchip|left):.*?(?=^\w|\Z)", "", (horse / "horse.yaml").read_text("utf-8")) + chip
    there.mkdir()
    (there / "horse.yaml").write_text(text)
    (horse / "horse.yaml").write_text(f"{text}left: {{date: {TODAY}}}\n")


def _new_stable(practice: Edited) -> None:
    name = f"stable-{practice.rng.randrange(100, 1000)}"
    (practice.records / name / "fern").mkdir(parents=True, exist_ok=True)
    (practice.records / name / "stable.yaml").write_text(f"name: New {name}\n")
    (practice.records / name / "fern" / "horse.yaml").write_text("name: Fern\n")


def _horse_gone(practice: Edited) -> None:
    horses = sorted(practice.records.glob("stable-*/*/horse.yaml"))
    if len(horses) > 1:
        shutil.rmtree(practice.rng.choice(horses).parent)


def _readings_repeated(practice: Edited) -> None:
    """The practice's own error of reading, which every page goes by."""
    horse = practice.some("stable-*/*/horse.yaml").parent
    (horse / f"{TODAY - dt.timedelta(days=8)}-b.yaml").write_text(
        f"date: {TODAY - dt.timedelta(days=8)}\nfeet:\n"
        f"  LF: {{after: {{toe_length: 80}}, repeat: {{after: [{{toe_length: 8{practice.rng.randrange(1, 3)}}}]}}}}\n"
    )


def _template(practice: Edited) -> None:
    own = practice.records / "site_templates" / "pages" / "jobs.html"
    own.parent.mkdir(parents=True, exist_ok=True)
    text = (packaged() / "site_templates" / "pages" / "jobs.html").read_text("utf-8")
    own.write_text(text.replace("{% block", f"{{# {practice.rng.random()} #}}{{% block", 1), "utf-8")


def _style(practice: Edited) -> None:
    own = practice.records / "site_templates" / "theme" / "main.html"
    own.parent.mkdir(parents=True, exist_ok=True)
    text = (packaged() / "site_templates" / "theme" / "main.html").read_text("utf-8")
    own.write_text(f"{text}{{# {practice.rng.random()} #}}\n", "utf-8")


def _table(practice: Edited) -> None:
    own = practice.records / "site_templates" / "words" / "phrases.yaml"
    own.parent.mkdir(parents=True, exist_ok=True)
    own.write_text(f"phrases:\n  menu_jobs: Jobs {practice.rng.randrange(1000)}\n")


def _photograph(practice: Edited) -> None:
    _picture(practice, practice.some("stable-*/*/2*.yaml"), "left-fore-sole-before")


def _photographs_of_neighbours(practice: Edited) -> None:
    """Of two horses of one stable, whose pictures lie beside each other."""
    for horse in sorted(practice.some("stable-*/stable.yaml").parent.glob("*/horse.yaml"))[:2]:
        for visit in sorted(horse.parent.glob("2*.yaml"))[-1:]:
            _picture(practice, visit, "right-hind-sole-before")


def _picture(practice: Edited, visit: Path, what: str) -> None:
    """A photograph of a visit's day."""
    (visit.parent / "photos").mkdir(exist_ok=True)
    shade = practice.rng.randrange(256)
    Image.new("RGB", (800, 600), (shade, 90, 60)).save(visit.parent / "photos" / f"{visit.name[:10]}-{what}.jpg")


def _own_page(practice: Edited) -> None:
    folder, name = practice.rng.choice([(practice.records, "mud"), (practice.some("stable-*"), "lane")])
    (folder / "pages").mkdir(exist_ok=True)
    (folder / "pages" / f"{name}.md").write_text(f"# Mud {practice.rng.randrange(1000)}\n\nWhat to do.\n")


def _language(practice: Edited) -> None:
    _set(practice, "language", practice.rng.choice(languages()))


def _place(practice: Edited) -> None:
    """The country, and the part of it, whose public holidays are kept."""
    country, region = practice.rng.choice([("GB", "SCT"), ("GB", "ENG"), ("DE", "BY"), ("DE", "BE")])
    _set(practice, "country", country)
    _set(practice, "region", region)


def _set(practice: Edited, key: str, value: str) -> None:
    """Write a value into the practice's file in the place of the one before."""
    file = practice.records / "practice.yaml"
    lines = [line for line in file.read_text("utf-8").splitlines() if not line.startswith(f"{key}:")]
    file.write_text("\n".join([*lines, f"{key}: {value}", ""]), "utf-8")


def _day(practice: Edited) -> None:
    """Forward or back: mostly a few days, so that most pages stand, now and then a season."""
    practice.today = TODAY + dt.timedelta(days=practice.rng.randrange(practice.rng.choice((3, 9, 150))))


def _version(practice: Edited) -> None:
    practice.version = f"{practice.rng.random()}"


def _page_edited(practice: Edited) -> None:
    pages = sorted((practice.folder / "sites").rglob("*.html"))
    if pages:
        practice.rng.choice(pages).write_text("edited")


def _page_lost(practice: Edited) -> None:
    pages = sorted((practice.folder / "sites").rglob("*.html"))
    if pages:
        practice.rng.choice(pages).unlink()


def _cache_damaged(practice: Edited) -> None:
    for file in sorted(practice.folder.joinpath("cache").rglob("?" * 64)):
        if practice.rng.random() < 0.5:
            file.write_bytes(file.read_bytes()[:-1] + b"?")


def _cache_gone(practice: Edited) -> None:
    shutil.rmtree(practice.folder / "cache", ignore_errors=True)


# Edits that leave some stables as they were.
LOCAL: dict[str, Callable[[Edited], None]] = {
    "a value": _value,
    "a new visit": _new_visit,
    "a visit gone": _visit_gone,
    "a horse renamed": _renamed_horse,
    "a stable renamed": _renamed_stable,
    "a horse in another folder": _horse_in_another_folder,
    "a horse moved": _horse_moved,
    "a new stable": _new_stable,
    "a horse gone": _horse_gone,
    "a photograph": _photograph,
    "photographs of neighbours": _photographs_of_neighbours,
    "an own page": _own_page,
    "a page edited": _page_edited,
    "a page lost": _page_lost,
}
# Edits after which nothing stands.
EVERYWHERE: dict[str, Callable[[Edited], None]] = {
    "readings repeated": _readings_repeated,
    "a template": _template,
    "a style": _style,
    "a table": _table,
    "another language": _language,
    "another country": _place,
    "another day": _day,
    "another version": _version,
    "a damaged cache": _cache_damaged,
    "a cache gone": _cache_gone,
}
EDITS = LOCAL | EVERYWHERE
