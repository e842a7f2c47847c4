"""Summaries to pages: a stable's own site, and the trimmer's site over all stables. Nothing is computed here."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from pathlib import Path

from jinja2 import Environment

from recordgen.git.troubles import GitTrouble
from recordgen.hoof.care.jobs import jobs_of_horses, week_of_jobs
from recordgen.hoof.care.withheld import Withheld
from recordgen.hoof.cautions.cautions import LEVELS, Caution, ClosedCaution
from recordgen.hoof.context import Context
from recordgen.hoof.export.sheet import sheet_of
from recordgen.hoof.growth.forecasts import together
from recordgen.hoof.law_notes import scope_notes
from recordgen.hoof.rounds.rounds import Plan, fewest_told, unmet_told
from recordgen.hoof.scales import grade_words
from recordgen.hoof.stable.patterns import Pattern
from recordgen.hoof.summary import HorseSummary, StableSummary, last_visits
from recordgen.hoof.tracing.camera import TRUE_ANGLES, camera_table
from recordgen.hoof.tracing.draws import DRAWS
from recordgen.hoof.whom_to_ring import Ring, numbers_missing, whom_to_ring
from recordgen.pictures.cache import PictureCache
from recordgen.records.models.annotations import range_at
from recordgen.records.models.horse import Horse
from recordgen.records.photos.files import Photo
from recordgen.site.amendments import HorseTrails, amendments, trail_finder
from recordgen.site.calendar import due_calendar, rounds_calendar
from recordgen.site.drawings.due_strip import strip
from recordgen.site.drawings.pictures import Pictures
from recordgen.site.model import Page, Site, link
from recordgen.site.photographs import MOST_DAYS, Album, PhotoFiles, album
from recordgen.site.prose.render import rendered_prose
from recordgen.site.sheet import sheet_values
from recordgen.site.tables import figures, side_by_side
from recordgen.site.templates import rendered
from recordgen.site.tracing.page import tracings_of

PRACTICE = "practice"
JOBS, SAFETY = "jobs.md", "safety.md"
# Files for a calendar program: when a stable's visits are due, and the rounds that would do.
DATES, ROUNDS = "dates.ics", "rounds.ics"
# The trimmer has all photographs in the records; on the own site stand those of the last day and of the first.
MOST_DAYS_PRIVATE = 1
# Of several findings compared twice each, one is told by chance now and then; so few are told.
MOST_PATTERNS = 2
# The trimmer sees so long who ended what.
ENDED_LATELY = timedelta(weeks=12)


@dataclass(frozen=True)
class Desk:
    """What pages are made with: ways, templates, kept pictures, the day, and how a horse's page is named by its slug.

    On a stable's own site that page is horses/<name>.md; a published site takes names that tell a host nothing.
    no_trails: why git tells no trail of any visit, where it tells none.
    """

    ways: Context
    templates: Environment
    kept: PictureCache
    today: date
    named: Callable[[str], str] = str
    photos: Mapping[tuple[str, str], tuple[Photo, ...]] = field(default_factory=dict)
    kept_photos: Path | None = None
    trails: Mapping[tuple[str, str], HorseTrails] = field(default_factory=dict)
    no_trails: GitTrouble | None = None


def stable_site(stable: StableSummary, patterns: Sequence[Pattern], desk: Desk) -> Site:
    """The site of one stable: front page, jobs, a page per horse, and what explains them. No word of another stable."""
    places = {horse.slug: f"horses/{desk.named(horse.slug)}.md" for horse in stable.horses}
    make = _Maker(desk, private=False, menu=[[("index.md", stable.stable.name), *_horses(stable, places)]])
    pages = [make.stable("index.md", JOBS, stable, places, patterns), make.jobs(JOBS, stable)]
    pages += [page for horse in stable.horses for page in make.horse(places[horse.slug], horse, stable)]
    albums = [make.album(places[horse.slug], horse) for horse in stable.horses]
    files = PhotoFiles(albums, desk.kept_photos, _dates(stable, desk))
    return Site(stable.slug, stable.stable.name, (*pages, *make.explanations()), files)


def _dates(stable: StableSummary, desk: Desk) -> dict[str, bytes]:
    """The stable's dates for a calendar program; no file where nothing is due."""
    dates = due_calendar(stable, desk.ways, desk.today)
    return {DATES: dates} if dates else {}


def practice_site(
    stables: Sequence[StableSummary], patterns: Mapping[str, Sequence[Pattern]], plan: Plan, desk: Desk
) -> Site:
    """The trimmer's own site: rounds, due list, watch list, and the pages of every stable, private notes included."""
    fronts = [(f"{stable.slug}/index.md", stable.stable.name) for stable in stables]
    menu = [[("index.md", desk.ways.naming.phrase("menu_due")), *fronts]]
    pages, albums = [_Maker(desk, private=True, menu=menu).overview(stables, plan)], []
    for stable in stables:
        places = {horse.slug: f"{stable.slug}/{horse.slug}.md" for horse in stable.horses}
        make = _Maker(desk, private=True, menu=[*menu, _horses(stable, places)])
        front, jobs = f"{stable.slug}/index.md", f"{stable.slug}/{JOBS}"
        pages += [make.stable(front, jobs, stable, places, patterns[stable.slug]), make.jobs(jobs, stable)]
        pages += [page for horse in stable.horses for page in make.horse(places[horse.slug], horse, stable)]
        albums += [make.album(places[horse.slug], horse) for horse in stable.horses]
    pages += _Maker(desk, private=True, menu=menu).explanations()
    names = {stable.slug: stable.stable.name for stable in stables}
    horses = [horse for stable in stables for horse in stable.present]
    rounds = rounds_calendar(plan, names, desk.ways, desk.today, last_visits(horses))
    files = PhotoFiles(albums, desk.kept_photos, {ROUNDS: rounds} if rounds else {})
    return Site(PRACTICE, desk.ways.practice.name, tuple(pages), files)


def _horses(stable: StableSummary, places: dict[str, str]) -> list[tuple[str, str]]:
    return [(places[horse.slug], horse.horse.name) for horse in stable.present]


class _Maker:
    """Renders the pages of one site."""

    def __init__(self, desk: Desk, private: bool, menu: Sequence[Sequence[tuple[str, str]]]) -> None:
        self.desk = desk
        self.private = private
        self.menu = menu

    def page(self, uri: str, title: str, template: str, **values: object) -> Page:
        pictures = Pictures(self.desk.kept, self.desk.ways.naming)
        shared = {
            "here": uri,
            "title": title,
            "menu": self.menu,
            "private": self.private,
            "practice": self.desk.ways.practice,
            "today": self.desk.today,
            "pictures": pictures,
            "link": lambda there: link(uri, there),
        }
        render = rendered_prose if template.endswith(".md") else rendered
        html = render(self.desk.templates, template, **shared, **values)
        return Page(uri, title, html, tuple(pictures.late), any(uri == place for place, _ in self.menu[0]))

    def stable(
        self, uri: str, jobs: str, stable: StableSummary, places: dict[str, str], patterns: Sequence[Pattern]
    ) -> Page:
        return self.page(
            uri,
            stable.stable.name,
            "stable.html",
            stable=stable.stable,
            horses=sorted(stable.present, key=_by_due),
            left=[horse for horse in stable.horses if horse.horse.left],
            places=places,
            dates=DATES if not self.private and any(horse.due for horse in stable.present) else None,
            cautions=worst_first(stable.present),
            jobs=jobs_of_horses((horse, horse.jobs) for horse in stable.present),
            withheld=_withheld(stable),
            ring_of=self._ring(stable),
            jobs_page=jobs,
            patterns=patterns if self.private else [pattern for pattern in patterns if pattern.said][:MOST_PATTERNS],
        )

    def jobs(self, uri: str, stable: StableSummary) -> Page:
        return self.page(
            uri,
            self.desk.ways.naming.phrase("menu_jobs"),
            "jobs.html",
            stable=stable.stable,
            horses=stable.present,
            week=week_of_jobs((horse, horse.jobs) for horse in stable.present),
            withheld=_withheld(stable),
        )

    def album(self, uri: str, horse: HorseSummary) -> Album:
        photos = self.desk.photos.get((horse.stable, horse.slug), ())
        return album(photos, uri, MOST_DAYS_PRIVATE if self.private else MOST_DAYS)

    def horse(self, uri: str, horse: HorseSummary, stable: StableSummary) -> tuple[Page, Page]:
        """A horse's page, and its sheet for the vet."""
        sheet = f"{uri.removesuffix('.md')}-sheet.md"
        return self._history(uri, sheet, horse, stable), self._sheet(sheet, horse, stable)

    def _sheet(self, uri: str, horse: HorseSummary, stable: StableSummary) -> Page:
        ways, trails = self.desk.ways, self._trails(horse)
        changed = amendments(horse, trails, ways.naming) if any(trails) else None
        title = ways.naming.phrase("sheet_title", horse=horse.horse.name)
        sheet = sheet_of(horse, stable.stable, ways, amendments=changed)
        return replace(self.page(uri, title, "sheet.html", **sheet_values(sheet, ways)), searched=False)

    def _trails(self, horse: HorseSummary) -> HorseTrails:
        return self.desk.trails.get((horse.stable, horse.slug), ())

    def _history(self, uri: str, sheet: str, horse: HorseSummary, stable: StableSummary) -> Page:
        photographs = self.album(uri, horse)
        return self.page(
            uri,
            horse.horse.name,
            "horse.html",
            summary=horse,
            horse=horse.horse,
            stable=stable.stable,
            ring_of=self._ring(stable),
            photographs=photographs,
            tracings=tracings_of(horse, self.desk.ways, photographs),
            sheet=sheet,
            trail_of=trail_finder(horse, self._trails(horse)),
            days=strip(horse.due) if horse.due else (),
            rows=side_by_side(horse, self.desk.ways.measures),
            figures=lambda measure: figures(horse, measure),
            measures={measure.key: measure for measure in self.desk.ways.measures},
            measure_words=self.desk.ways.reference.measures,
            scale_words=self.desk.ways.reference.scales,
            grade_words=lambda scale, grade: grade_words(
                scale, grade, self.desk.ways.reference.scales, self.desk.ways.naming
            ),
            class_words=self.desk.ways.group(horse.care_class),
        )

    def _ring(self, stable: StableSummary) -> Callable[[Caution, Horse], tuple[Ring, ...]]:
        """Tells whom a caution of a horse of this stable asks to ring."""
        ways = self.desk.ways
        return lambda caution, horse: whom_to_ring(caution.ring, horse, stable.stable, ways.practice, ways.naming)

    def overview(self, stables: Sequence[StableSummary], plan: Plan) -> Page:
        places = {
            (horse.stable, horse.slug): f"{horse.stable}/{horse.slug}.md" for one in stables for horse in one.horses
        }
        present = [(stable, horse) for stable in stables for horse in stable.present]
        by_slug = {stable.slug: stable for stable in stables}
        return self.page(
            "index.md",
            self.desk.ways.practice.name,
            "practice.html",
            plan=plan,
            rounds=ROUNDS if plan.rounds else None,
            fewest_told=fewest_told(plan, self.desk.ways.naming),
            unmet=[(one, unmet_told(one, self.desk.ways.naming)) for one in plan.unmet],
            horse_count=len(present),
            due=[(stable, sorted(stable.present, key=_overdue_first)) for stable in stables],
            fared=together(horse.fared for _, horse in present),
            ring_of=lambda caution, horse: self._ring(by_slug[horse.stable])(caution, horse.horse),
            numbers=numbers_missing(stables),
            watch=worst_first(horse for _, horse in present),
            ended=ended_lately((horse for _, horse in present), self.desk.today),
            held=[horse for _, horse in present if horse.held and horse.due],
            names={stable.slug: stable.stable.name for stable in stables},
            levels=LEVELS,
            gaps=[(stable, horse) for stable, horse in present if horse.gaps or horse.remarks],
            no_trails=self.desk.no_trails,
            places=places,
        )

    def explanations(self) -> list[Page]:
        reference = self.desk.ways.reference
        measures = reference.measures
        phrase = self.desk.ways.naming.phrase
        return [
            self.page("words.md", phrase("menu_words"), "words.md", measures=measures, glossary=reference.glossary),
            self.page(
                "method.md",
                phrase("menu_method"),
                "method.md",
                measures=measures,
                ranges={key: range_at(words.path) for key, words in measures.items() if words.path},
                cautions=reference.cautions,
                classes=reference.classes,
                levels=LEVELS,
                safety=SAFETY,
                hand_error=self.desk.ways.hand_error,
                draws=DRAWS,
                camera=camera_table(),
                camera_angles=TRUE_ANGLES,
            ),
            self.page(
                SAFETY,
                phrase("menu_safety"),
                "safety.md",
                notes=tuple(reference.safety.values()),
                scope=scope_notes(self.desk.ways.practice.country, reference.scope),
            ),
        ]


def _withheld(stable: StableSummary) -> list[tuple[HorseSummary, Withheld]]:
    """The jobs that wait, with their horses."""
    return [(horse, one) for horse in stable.present for one in horse.withheld]


def worst_first(horses: Iterable[HorseSummary]) -> list[tuple[HorseSummary, Caution]]:
    """The cautions of several horses, most urgent first, then by name."""
    found = [(horse, caution) for horse in horses for caution in horse.cautions]
    return sorted(found, key=lambda pair: (LEVELS.index(pair[1].level), pair[0].horse.name))


def ended_lately(horses: Iterable[HorseSummary], today: date) -> list[tuple[HorseSummary, ClosedCaution]]:
    """The cautions of several horses that ended in the last twelve weeks, the latest first, then by name."""
    found = [(horse, one) for horse in horses for one in horse.closed_cautions if today - one.ended <= ENDED_LATELY]
    return sorted(found, key=lambda pair: (-pair[1].ended.toordinal(), pair[0].horse.name))


def _overdue_first(horse: HorseSummary) -> tuple[int, date, str]:
    return (-horse.due.overdue_days if horse.due else 0, *_by_due(horse))


def _by_due(horse: HorseSummary) -> tuple[date, str]:
    return (horse.due.best if horse.due else date.max, horse.horse.name)
