"""Patterns of a stable: several of its horses with the same finding say something about the place."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from recordgen.hoof.naming import Naming
from recordgen.hoof.stable.prevalence import WINDOW, Share, Shares, Signs, pool_shares, shares, shares_of, signs_of
from recordgen.hoof.stable.proportions import Stand, stand, wilson
from recordgen.hoof.summary import HorseSummary, StableSummary
from recordgen.records.models.reference import PatternWords

YEAR = timedelta(days=365)
# The shares of one stable today, and those of a year ago.
SharesInTime = tuple[Shares, Shares]
# The same of one horse.
SignsInTime = tuple[Signs, Signs]


@dataclass(frozen=True)
class Pattern:
    """The share of a stable's horses with a finding, how sure it is, and how it stands against two other shares.

    low, high: the interval of 95 % of the share here, from 0 to 1. year_ago: the same stable's share; None where nobody
    was looked at then. others: the practice's other stables together; None where one could tell them apart. text: for
    the stable, at most two sentences; the plain share where nothing is said. context: the nearest published figure.
    """

    finding: str
    name: str
    here: Share
    low: float
    high: float
    year_ago: Share | None
    others: Share | None
    than_year_ago: Stand | None
    than_others: Stand | None
    text: str
    context: str | None
    source: str

    @property
    def count(self) -> int:
        """Tell how many horses here had the finding."""
        return self.here.count

    @property
    def looked(self) -> int:
        """Tell how many horses here were looked at for it."""
        return self.here.looked

    @property
    def is_told(self) -> bool:
        """Tell whether a comparison stands, so that the stable is told."""
        return bool(self.than_year_ago or self.than_others)


def patterns(
    stable: StableSummary,
    others: Sequence[StableSummary],
    words: Mapping[str, PatternWords],
    naming: Naming,
    today: date,
) -> tuple[Pattern, ...]:
    """The findings that say something about a place, each with its shares, in the order of `SIGNS`; said or not.

    others: the practice's other stables. A finding for which no horse here was looked at is left out.
    """
    here, year_ago = shares_in_time(stable, today)
    return _patterns(here, year_ago, [shares(other, today) for other in others], words, naming, today)


def shares_in_time(stable: StableSummary, today: date) -> SharesInTime:
    """The shares of a stable today, and a year ago."""
    return shares_together([signs_in_time(horse, today) for horse in stable.horses])


def signs_in_time(horse: HorseSummary, today: date) -> SignsInTime:
    """The findings of a horse today, and a year ago."""
    return signs_of(horse, today), signs_of(horse, today, YEAR)


def shares_together(found: Sequence[SignsInTime]) -> SharesInTime:
    """The shares of a stable today, and a year ago. found: of each horse."""
    return shares_of([now for now, _ in found]), shares_of([then for _, then in found])


def patterns_by_stable(
    found: Mapping[str, SharesInTime],
    words: Mapping[str, PatternWords],
    naming: Naming,
    today: date,
    counted: Mapping[str, Shares] | None = None,
) -> dict[str, tuple[Pattern, ...]]:
    """The patterns of each stable among all of a practice, by its slug.

    found: the shares of each. counted: the shares today of stables that were not read, too.
    """
    now = {**(counted or {}), **{slug: shares for slug, (shares, _) in found.items()}}
    elsewhere = {slug: [shares for other, shares in now.items() if other != slug] for slug in found}
    return {slug: _patterns(*found[slug], elsewhere[slug], words, naming, today) for slug in found}


def _patterns(
    here: Shares,
    year_ago: Shares,
    elsewhere: Sequence[Shares],
    words: Mapping[str, PatternWords],
    naming: Naming,
    today: date,
) -> tuple[Pattern, ...]:
    found = []
    for key, share in here.items():
        if share.looked:
            then = year_ago[key] if year_ago[key].looked else None
            others = pool_shares([one[key] for one in elsewhere])
            found.append(_pattern(key, share, then, others, _Wording(words[key], naming, today - WINDOW)))
    return tuple(found)


@dataclass(frozen=True)
class _Wording:
    """The words of one finding, told in a practice's naming; since: the first day of the time that is told of."""

    words: PatternWords
    naming: Naming
    since: date

    def text(self, here: Share, compared: Sequence[str], worse: bool) -> str:
        count = str(here.count) if here.count else self.naming.phrase("pattern_none")
        facts = {"count": count, "looked": str(here.looked), "since": self.naming.day(self.since)}
        told = self.words.seen.format(name=self.words.name, **facts)
        told = told[:1].upper() + told[1:]
        if not compared:
            return self.naming.phrase("pattern_plain", told=told)
        ending = self.words.maybe if worse else self.naming.phrase("pattern_good")
        return self.naming.phrase("pattern_said", told=told, compared=self.naming.listed(compared), ending=ending)

    def comparisons(self, stand: Stand | None, than: str, share: Share | None) -> Iterator[str]:
        if stand and share:
            facts = {"count": f"{share.count}", "looked": f"{share.looked}"}
            percent = f"{100 * share.count / share.looked:.0f}"
            yield self.naming.phrase(f"pattern_{stand}_than_{than}", percent=percent, **facts)

    def context(self) -> str | None:
        figure = self.words.published
        if figure is None:
            return None
        facts = {"percent": f"{figure.percent:g}", "of": str(figure.of)}
        return self.naming.phrase("pattern_published", name=figure.name, **facts)


def _pattern(key: str, here: Share, year_ago: Share | None, others: Share | None, wording: _Wording) -> Pattern:
    low, high = wilson(here.count, here.looked)
    than_year_ago, than_others = stand(here, year_ago), stand(here, others)
    compared = [
        *wording.comparisons(than_year_ago, "year_ago", year_ago),
        *wording.comparisons(than_others, "others", others),
    ]
    return Pattern(
        finding=key,
        name=wording.words.name,
        here=here,
        low=low,
        high=high,
        year_ago=year_ago,
        others=others,
        than_year_ago=than_year_ago,
        than_others=than_others,
        text=wording.text(here, compared, "more" in (than_year_ago, than_others)),
        context=wording.context(),
        source=wording.words.source,
    )
