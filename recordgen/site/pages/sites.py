"""Tell which pages and files make up a site: a stable's own, and the trimmer's over all stables."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from recordgen.cache.watched_day import plain_day
from recordgen.hoof.rounds.rounds import Calendar, Plan, plan_of
from recordgen.hoof.summary import HorseSummary, StableSummary, last_visits
from recordgen.progress import steps
from recordgen.records.pages.model import OwnPage
from recordgen.sentences import say
from recordgen.site.build_context import BuildContext
from recordgen.site.calendar import PlannedDays, due_calendar, horse_calendar, rounds_calendar
from recordgen.site.frame.search_index import with_search_entry
from recordgen.site.model import Finished, Page, Site
from recordgen.site.pages.explanations import PROBLEMS, render_explanations, render_problems
from recordgen.site.pages.guide import render_guide
from recordgen.site.pages.horse import calendar_name, has_calendar, render_horse_and_sheet, sheet_uri
from recordgen.site.pages.own import render_own_pages
from recordgen.site.pages.practice import ROUNDS, render_practice
from recordgen.site.pages.renderer import PageRenderer
from recordgen.site.pages.stable import DATES, StablePlaces, render_jobs, render_stable
from recordgen.site.photographs import Album, PhotoFiles
from recordgen.site.prose.guide import guide_pictures
from recordgen.site.prose.own_pages import own_pictures, pages_by_place

# The slug of the trimmer's own site.
PRACTICE = "practice"
FRONT, JOBS = "index.md", "jobs.md"


def render_site(context: BuildContext, slug: str, finished: Finished | None = None) -> Site:
    """One site, ready for the engine. slug: a stable's folder, or PRACTICE.

    finished: what stands of it from an earlier build, and is not rendered again.
    """
    finished = finished or Finished()
    if slug == PRACTICE:
        site = _practice_site(context, finished)
    else:
        site = _stable_site(context.alone(slug), context.stable(slug), finished)
    return replace(site, pages=tuple(with_search_entry(page) for page in site.pages))


def _stable_site(context: BuildContext, stable: StableSummary, finished: Finished) -> Site:
    """The site of one stable: front page, jobs, a page per horse, and what explains them. No word of another stable."""
    horses = {horse.slug: f"horses/{context.page_name(horse.slug)}.md" for horse in stable.horses}
    places = StablePlaces(FRONT, JOBS, horses)
    menu = [[(FRONT, stable.stable.name), *_menu_of_horses(stable, places)]]
    own = pages_by_place(context.own_pages_of()) | pages_by_place(context.own_pages_of(stable.slug))
    renderer = PageRenderer(context, private=False, menu=menu, own=own)
    pages = _pages_of_stable(renderer, stable, places, own, finished)
    pages += render_explanations(renderer, finished.pages)
    pictures = own_pictures(context.own_pages_of()) | own_pictures(context.own_pages_of(stable.slug))
    dates = _dates(renderer, stable, places, finished)
    files = PhotoFiles(_albums(renderer, stable, places, finished), context.cache, dates | pictures)
    language = context.ways.practice.language
    return Site(stable.slug, stable.stable.name, tuple(pages), files, finished.files, language=language)


def _practice_site(context: BuildContext, finished: Finished) -> Site:
    """The trimmer's own site: rounds, due list, watch list, and the pages of every stable, private notes included."""
    plan = plan_of(context.stables, Calendar.of(context.ways, context.today))
    fronts = [(f"{stable.slug}/{FRONT}", stable.stable.name) for stable in context.stables]
    menu = [[(FRONT, context.ways.naming.phrase("menu_due")), *fronts]]
    shared = pages_by_place(context.own_pages_of())
    overall = PageRenderer(context, private=True, menu=menu, own=shared)
    pictures = own_pictures(context.own_pages_of()) | _pictures_of_guide(finished)
    pages, albums = [render_practice(overall, context.stables, plan)], []
    for stable in context.stables:
        places = _places_below_practice(stable)
        own = pages_by_place(context.own_pages_of(stable.slug), f"{stable.slug}/")
        menu_here = [*menu, _menu_of_horses(stable, places)]
        renderer = PageRenderer(context.alone(stable.slug), private=True, menu=menu_here, own=shared | own)
        pages += _pages_of_stable(renderer, stable, places, own, finished)
        if places.front not in finished.pages:
            pictures |= own_pictures(context.own_pages_of(stable.slug), f"{stable.slug}/")
        albums += _albums(renderer, stable, places, finished)
    pages += [*render_own_pages(overall, shared), *render_explanations(overall, finished.pages)]
    pages += [finished.pages.get(PROBLEMS) or overall.explain(render_problems)]
    pages += render_guide(overall, finished.pages)
    files = PhotoFiles(albums, context.cache, _rounds(context, plan) | pictures)
    practice = context.ways.practice
    return Site(PRACTICE, practice.name, tuple(pages), files, finished.files, language=practice.language)


def _pictures_of_guide(finished: Finished) -> dict[str, bytes]:
    """The guide's pictures that do not stand from an earlier build, by their places in the site."""
    return {uri: file.read_bytes() for uri, file in guide_pictures().items() if uri not in finished.files}


def _pages_of_stable(
    renderer: PageRenderer,
    stable: StableSummary,
    places: StablePlaces,
    own: Mapping[str, OwnPage],
    finished: Finished,
) -> list[Page]:
    """The front page, the jobs, the pages of the horses, and the own pages. renderer: for this stable alone."""
    if places.front in finished.pages:
        front, jobs, *others = (finished.pages[uri] for uri in (places.front, places.jobs, *own))
    else:
        front, jobs, *others = renderer.standing(
            render_stable(renderer, renderer.context.stable(stable.slug), places),
            render_jobs(renderer, renderer.context.stable(stable.slug), places),
            *render_own_pages(renderer, own),
        )
    pages = [front, jobs]
    for horse in steps(say("Pages of {stable}", stable=stable.stable.name), stable.horses):
        uri = places.horses[horse.slug]
        if uri in finished.pages:
            pages += [finished.pages[uri], finished.pages[sheet_uri(uri)]]
        else:
            pages += _pages_of_horse(renderer, uri, horse)
    return [*pages, *others]


def _pages_of_horse(renderer: PageRenderer, uri: str, horse: HorseSummary) -> list[Page]:
    """The pages of a horse, made with nothing of any other one but the menu."""
    alone = renderer.alone(horse)
    stable = alone.context.stable(horse.stable)
    return alone.standing(*render_horse_and_sheet(alone, uri, stable.horses[0], stable))


def _albums(renderer: PageRenderer, stable: StableSummary, places: StablePlaces, finished: Finished) -> list[Album]:
    """The photographs of the horses whose pages are made."""
    uris = {horse.slug: places.horses[horse.slug] for horse in stable.horses}
    return [
        renderer.find_album(uris[horse.slug], horse)
        for horse in stable.horses
        if uris[horse.slug] not in finished.pages
    ]


def _places_below_practice(stable: StableSummary) -> StablePlaces:
    """The place where a stable's pages lie in the trimmer's site: in a folder of their own."""
    horses = {horse.slug: f"{stable.slug}/{horse.slug}.md" for horse in stable.horses}
    return StablePlaces(f"{stable.slug}/{FRONT}", f"{stable.slug}/{JOBS}", horses)


def _menu_of_horses(stable: StableSummary, places: StablePlaces) -> Sequence[tuple[str, str]]:
    return [(places.horses[horse.slug], horse.horse.name) for horse in stable.present]


def _dates(renderer: PageRenderer, stable: StableSummary, places: StablePlaces, finished: Finished) -> dict[str, bytes]:
    """The dates for a calendar program, of the stable and of each horse that is made; no file where nothing is due."""
    ways, today, first = renderer.context.ways, plain_day(renderer.context.today), renderer.context.first_places
    dates = due_calendar(stable, ways, today, first)
    found = {DATES: dates} if dates else {}
    for horse in stable.present:
        uri = places.horses[horse.slug]
        if not (finished.same_day and uri in finished.pages) and has_calendar(renderer, horse):
            found[f"{uri.rpartition('/')[0]}/{calendar_name(uri)}"] = horse_calendar(horse, ways, today, first)
    return found


def _rounds(context: BuildContext, plan: Plan) -> dict[str, bytes]:
    """The rounds for a calendar program; no file where there is none."""
    names = {stable.slug: stable.stable.name for stable in context.stables}
    horses = [horse for stable in context.stables for horse in stable.present]
    days = PlannedDays(plan, names, context.ways, context.today, last_visits(horses), context.first_places)
    rounds = rounds_calendar(days)
    return {ROUNDS: rounds} if rounds else {}
