"""Summaries to pages: a stable's own site, and the trimmer's site over all stables. Nothing is computed here."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from jinja2 import Environment

from recordgen.hoof.care import Job
from recordgen.hoof.cautions import LEVELS, Caution
from recordgen.hoof.summary import Change, HorseSummary, StableSummary, Ways
from recordgen.pictures.kept import Kept
from recordgen.site.model import Page, Site, link
from recordgen.site.pictured import Pictures
from recordgen.site.strip import strip
from recordgen.site.tables import figures, side_by_side
from recordgen.site.templates import rendered

PRACTICE = "practice"
# An owner reads a few lines; every figure stands in the table below them.
MOST_LONG_TERM = 5


@dataclass(frozen=True)
class Desk:
    """What pages are made with: ways, templates, kept pictures, and the day."""

    ways: Ways
    templates: Environment
    kept: Kept
    today: date


@dataclass(frozen=True)
class JobOfHorses:
    """One job and the horses it is for."""

    job: Job
    horses: tuple[HorseSummary, ...]


def stable_site(stable: StableSummary, desk: Desk) -> Site:
    """The site of one stable: its front page, a page per horse, the words, and the method. No word of another."""
    places = {horse.slug: f"horses/{horse.slug}.md" for horse in stable.horses}
    make = _Maker(desk, private=False, menu=[[("index.md", stable.stable.name), *_horses(stable, places)]])
    pages = [make.stable("index.md", stable, places)]
    pages += [make.horse(places[horse.slug], horse, stable) for horse in stable.horses]
    return Site(stable.slug, stable.stable.name, (*pages, *make.explanations()))


def practice_site(stables: Sequence[StableSummary], desk: Desk) -> Site:
    """The trimmer's own site: due list, watch list, gaps, and the pages of every stable, private notes included."""
    fronts = [(f"{stable.slug}/index.md", stable.stable.name) for stable in stables]
    menu = [[("index.md", desk.ways.naming.phrase("menu_due")), *fronts]]
    pages = [_Maker(desk, private=True, menu=menu).overview(stables)]
    for stable in stables:
        places = {horse.slug: f"{stable.slug}/{horse.slug}.md" for horse in stable.horses}
        make = _Maker(desk, private=True, menu=[*menu, _horses(stable, places)])
        pages.append(make.stable(f"{stable.slug}/index.md", stable, places))
        pages += [make.horse(places[horse.slug], horse, stable) for horse in stable.horses]
    return Site(PRACTICE, desk.ways.practice.name, (*pages, *_Maker(desk, private=True, menu=menu).explanations()))


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
        html = rendered(self.desk.templates, template, **shared, **values)
        return Page(uri, title, html, tuple(pictures.late), any(uri == place for place, _ in self.menu[0]))

    def stable(self, uri: str, stable: StableSummary, places: dict[str, str]) -> Page:
        return self.page(
            uri,
            stable.stable.name,
            "stable.html",
            stable=stable.stable,
            horses=sorted(stable.present, key=_by_due),
            left=[horse for horse in stable.horses if horse.horse.left],
            places=places,
            cautions=worst_first(stable.present),
            jobs=jobs_of(stable.present),
        )

    def horse(self, uri: str, horse: HorseSummary, stable: StableSummary) -> Page:
        return self.page(
            uri,
            horse.horse.name,
            "horse.html",
            summary=horse,
            horse=horse.horse,
            stable=stable.stable,
            days=strip(horse.due) if horse.due else (),
            rows=side_by_side(horse, self.desk.ways.measures),
            figures=lambda measure: figures(horse, measure),
            measures={measure.key: measure for measure in self.desk.ways.measures},
            measure_words=self.desk.ways.reference.measures,
            real=[change for change in horse.changes if change.step.real],
            within=[change for change in horse.changes if not change.step.real],
            long_term=_untold(horse)[:MOST_LONG_TERM],
        )

    def overview(self, stables: Sequence[StableSummary]) -> Page:
        places = {
            (horse.stable, horse.slug): f"{horse.stable}/{horse.slug}.md" for one in stables for horse in one.horses
        }
        present = [(stable, horse) for stable in stables for horse in stable.present]
        return self.page(
            "index.md",
            self.desk.ways.practice.name,
            "practice.html",
            stables=stables,
            due=sorted(present, key=lambda pair: _by_due(pair[1])),
            watch=worst_first(horse for _, horse in present),
            names={stable.slug: stable.stable.name for stable in stables},
            levels=LEVELS,
            gaps=[(stable, horse) for stable, horse in present if horse.gaps],
            places=places,
        )

    def explanations(self) -> list[Page]:
        reference = self.desk.ways.reference
        measures = reference.measures
        phrase = self.desk.ways.naming.phrase
        return [
            self.page("words.md", phrase("menu_words"), "words.html", measures=measures, glossary=reference.glossary),
            self.page(
                "method.md",
                phrase("menu_method"),
                "method.html",
                measures=measures,
                cautions=reference.cautions,
                levels=LEVELS,
            ),
        ]


def worst_first(horses: Iterable[HorseSummary]) -> list[tuple[HorseSummary, Caution]]:
    """The cautions of several horses, most urgent first, then by name."""
    found = [(horse, caution) for horse in horses for caution in horse.cautions]
    return sorted(found, key=lambda pair: (LEVELS.index(pair[1].level), pair[0].horse.name))


def jobs_of(horses: Iterable[HorseSummary]) -> list[JobOfHorses]:
    """Each job once, with the horses it is for; those for most horses first."""
    grouped: dict[tuple[str, str, str | None], list[tuple[Job, HorseSummary]]] = {}
    for horse in horses:
        for job in horse.jobs:
            grouped.setdefault((job.key, job.what, job.how_often), []).append((job, horse))
    made = [JobOfHorses(pairs[0][0], tuple(horse for _, horse in pairs)) for pairs in grouped.values()]
    return sorted(made, key=lambda one: (-len(one.horses), one.job.what))


def _untold(horse: HorseSummary) -> list[Change]:
    """Changes since the first visit, but those that began at the visit before and are told already."""
    return [change for change in horse.long_changes if change.step != change.summary.last]


def _by_due(horse: HorseSummary) -> tuple[date, str]:
    return (horse.due.best if horse.due else date.max, horse.horse.name)
