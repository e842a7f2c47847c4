"""The pages of one stable: its front page, and its jobs."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from recordgen.hoof.care.jobs import Job, JobOfHorses, jobs_of_horses, week_of_jobs
from recordgen.hoof.care.withheld import Withheld
from recordgen.hoof.stable.patterns import Pattern
from recordgen.hoof.summary import HorseSummary, StableSummary
from recordgen.site.drawings.due_picture import DayLine, due_rows
from recordgen.site.model import Page
from recordgen.site.pages.order import overdue_first, worst_first
from recordgen.site.pages.renderer import PageRenderer

# The file for a calendar program: when a stable's visits are due.
DATES = "dates.ics"
# Of several findings compared twice each, one is told by chance now and then; so few are told.
MOST_PATTERNS = 2


@dataclass(frozen=True)
class StablePlaces:
    """The places of the pages of a stable in a site; those of its horses by the horse's folder."""

    front: str
    jobs: str
    horses: Mapping[str, str]


def render_stable(renderer: PageRenderer, stable: StableSummary, places: StablePlaces) -> Page:
    """The front page of a stable."""
    today, horses = renderer.context.today, sorted(stable.present, key=overdue_first)
    line = DayLine.of((horse.due for horse in horses if horse.due), today)
    return renderer.render(
        places.front,
        stable.stable.name,
        "stable.html",
        stable=stable.stable,
        horses=horses,
        line=line,
        rows=due_rows(horses, line, today),
        left=[horse for horse in stable.horses if horse.horse.left],
        places=places.horses,
        dates=DATES if not renderer.private and any(horse.due for horse in stable.present) else None,
        cautions=worst_first(stable.present),
        jobs=_daily_first((horse, horse.jobs) for horse in stable.present),
        withheld=_withheld(stable),
        ring_of=renderer.ring_finder(stable),
        jobs_page=places.jobs,
        patterns=_patterns(renderer, stable),
    )


def render_jobs(renderer: PageRenderer, stable: StableSummary, places: StablePlaces) -> Page:
    """The jobs of a week, to hang up."""
    return renderer.render(
        places.jobs,
        renderer.phrase("menu_jobs"),
        "jobs.html",
        stable=stable.stable,
        horses=stable.present,
        week=week_of_jobs((horse, horse.jobs) for horse in stable.present),
        withheld=_withheld(stable),
    )


def _daily_first(by_horse: Iterable[tuple[HorseSummary, Sequence[Job]]]) -> list[JobOfHorses[HorseSummary]]:
    """The jobs of horses, those done most often first."""
    return sorted(jobs_of_horses(by_horse), key=lambda one: -(one.job.times_a_week or 0))


def _patterns(renderer: PageRenderer, stable: StableSummary) -> list[Pattern]:
    """Findings of the stable's horses: all for the trimmer, the first of what is sure for its readers."""
    found = renderer.context.patterns[stable.slug]
    return list(found) if renderer.private else [pattern for pattern in found if pattern.is_told][:MOST_PATTERNS]


def _withheld(stable: StableSummary) -> list[tuple[HorseSummary, Withheld]]:
    """The jobs that wait, with their horses."""
    return [(horse, one) for horse in stable.present for one in horse.withheld]
