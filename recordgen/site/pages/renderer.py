"""The frame of every page: menu, practice and day, and a place for its pictures."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from recordgen.cache.watched_day import AlikeDays, WatchedDay
from recordgen.hoof.cautions.cautions import Caution
from recordgen.hoof.summary import HorseSummary, StableSummary
from recordgen.hoof.whom_to_ring import Ring, whom_to_ring
from recordgen.language.direction import with_isolated_facts
from recordgen.records.models.horse import Horse
from recordgen.records.pages.model import OwnPage
from recordgen.site.build_context import BuildContext
from recordgen.site.drawings.dated import DaySayer
from recordgen.site.drawings.pictures import Pictures
from recordgen.site.model import PackedTexts, Page, link
from recordgen.site.photographs import MOST_DAYS, Album, album
from recordgen.site.prose.guide import START, guide_text
from recordgen.site.prose.own_pages import own_menu
from recordgen.site.prose.render import render_prose
from recordgen.site.templates import render

# The trimmer has all photographs in the records; on the own site stand those of the last day and of the first.
MOST_DAYS_PRIVATE = 1

# Groups of pages, each by its place and its name.
Menu = Sequence[Sequence[tuple[str, str]]]


@dataclass(frozen=True)
class PageRenderer:
    """Renders the pages of one part of a site.

    private: whether the trimmer alone reads them. menu: the groups of pages that they link to; those of the first group
    stand in the engine's menu too. own: the practice's own pages among them, by place, in a group of their own.
    """

    context: BuildContext
    private: bool
    menu: Menu
    own: Mapping[str, OwnPage] = field(default_factory=dict)

    def render(self, uri: str, title: str, template: str, head: str = "", **values: Any) -> Page:
        """One page, from a template and what it is filled in with. Raises Trouble where that cannot be filled in.

        head: a template of more for the head of the document.
        """
        context = self.context
        pictures = Pictures(context.pictures, context.ways.naming, DaySayer(context.templates, context.today))
        shared = {
            "here": uri,
            "title": title,
            "menu": self.menu,
            "own_menu": self._further_menu(),
            "private": self.private,
            "practice": context.ways.practice,
            "today": context.today,
            "pictures": pictures,
            "link": lambda there: link(uri, there),
        }
        fill = render_prose if template.endswith(".md") else render
        html = fill(context.templates, template, **shared, **values)
        more = render(context.templates, head, **shared, **values) if head else ""
        in_menu = any(uri == place for place, _ in self.menu[0])
        return Page(uri, title, html, PackedTexts(pictures.late), pictures.dated_parts, in_menu, head=more)

    def alone(self, horse: HorseSummary) -> PageRenderer:
        """One for the pages of a horse alone."""
        return replace(self, context=self.context.alone(horse.stable, horse.slug))

    def explain(self, make: Callable[[PageRenderer], Page]) -> Page:
        """A page that goes by no record, with the days on which it stands."""
        alone = replace(self, context=self.context.without_records())
        return alone.standing(make(alone))[0]

    def standing(self, *pages: Page) -> list[Page]:
        """Pages that were made by this renderer, with the days on which each would be the same but for what is dated.

        To be asked once all of them are made: until then their day may be looked at again.
        """
        day = self.context.today
        stands = day.alike if isinstance(day, WatchedDay) else AlikeDays(day, day)
        return [replace(page, stands=stands) for page in pages]

    def _further_menu(self) -> list[tuple[str, str]]:
        """The practice's own pages, and the guide for the trimmer."""
        guide = [(START, guide_text(START, self.context.ways.naming.language.code).title)] if self.private else []
        return [*own_menu(self.own), *guide]

    def phrase(self, key: str, **facts: str) -> str:
        """A phrase of the tables, as the templates say it."""
        return with_isolated_facts(self.context.ways.naming.phrase)(key, **facts)

    def find_album(self, uri: str, horse: HorseSummary) -> Album:
        """The photographs that the page of a horse shows."""
        return album(self.context.photos_of(horse), uri, MOST_DAYS_PRIVATE if self.private else MOST_DAYS)

    def ring_finder(self, stable: StableSummary) -> Callable[[Caution, Horse], tuple[Ring, ...]]:
        """A finder of whom a caution of a horse of this stable asks to ring."""
        ways = self.context.ways
        return lambda caution, horse: whom_to_ring(caution.ring, horse, stable.stable, ways.practice, ways.naming)
