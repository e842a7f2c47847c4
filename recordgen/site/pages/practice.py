"""The trimmer's front page, the desk: next round, open cautions, all windows, aims, gaps, forecasts and the work."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from recordgen.hoof.cautions.cautions import LEVELS
from recordgen.hoof.growth.forecasts import together
from recordgen.hoof.practice.gaps import gaps_together
from recordgen.hoof.practice.next_round import contact_for, next_round
from recordgen.hoof.practice.off_aim import off_aim
from recordgen.hoof.practice.watch import WatchEntry, watch_list
from recordgen.hoof.practice.work import months_of_work
from recordgen.hoof.rounds.rounds import Plan, describe_plan, explain_unmet
from recordgen.hoof.summary import HorseSummary, StableSummary
from recordgen.hoof.whom_to_ring import Ring, numbers_missing
from recordgen.records.models.fields import DaySpan
from recordgen.site.drawings.due_picture import DayLine, Stretch, due_rows
from recordgen.site.drawings.scales import aim_scale, forecast_rows, month_bars
from recordgen.site.model import Page
from recordgen.site.pages.order import overdue_first, recently_ended
from recordgen.site.pages.renderer import PageRenderer

# The file for a calendar program: the rounds that would do.
ROUNDS = "rounds.ics"


@dataclass(frozen=True)
class WatchRow:
    """An open caution on the page: whom to ring, its age as a share of the longest, and the day that is planned."""

    one: WatchEntry
    ring: Ring
    is_vet: bool
    share: float
    planned: date | None


def render_practice(renderer: PageRenderer, stables: Sequence[StableSummary], plan: Plan) -> Page:
    """The front page over all stables. plan: the fewest days out."""
    context = renderer.context
    horses = [horse for stable in stables for horse in stable.present]
    return renderer.render(
        "index.md",
        context.ways.practice.name,
        "practice.html",
        horses=horses,
        names={stable.slug: stable.stable.name for stable in stables},
        places=_places(stables),
        **_rounds(renderer, stables, plan),
        **_windows(renderer, stables, plan),
        levels=LEVELS,
        watch=_watch(renderer, horses, plan),
        ended=recently_ended(horses, context.today),
        off_aims=[(one, aim_scale(one.aimed)) for one in off_aim(horses)],
        numbers=numbers_missing(stables),
        gaps=gaps_together(horses),
        remarks=[horse for horse in horses if horse.remarks],
        no_trails=context.no_trails,
        past_forecasts=together(horse.past_forecasts for horse in horses),
        forecast_rows=forecast_rows(horses),
        months=month_bars(months_of_work((one for stable in stables for one in stable.horses), context.today)),
    )


def _rounds(renderer: PageRenderer, stables: Sequence[StableSummary], plan: Plan) -> dict[str, Any]:
    """The rounds that would do, and who is on none or not in time."""
    naming, today = renderer.context.ways.naming, renderer.context.today
    return {
        "plan": plan,
        "round": next_round(plan, stables),
        "holiday": renderer.context.ways.public.name,
        "rounds": ROUNDS if plan.rounds else None,
        "fewest_told": describe_plan(plan, naming),
        "unmet": [(one, explain_unmet(one, naming)) for one in plan.unmet],
        "held": [horse for stable in stables for horse in stable.present if horse.held and horse.due],
        "still": [one for one in plan.rounds if (one.day.year, one.day.month) == (today.year, today.month)],
    }


def _windows(renderer: PageRenderer, stables: Sequence[StableSummary], plan: Plan) -> dict[str, Any]:
    """The windows of all stables on one line of days."""
    today = renderer.context.today
    line = DayLine.of((horse.due for stable in stables for horse in stable.present if horse.due), today)
    rows = {stable.slug: due_rows(sorted(stable.present, key=overdue_first), line, today, plan) for stable in stables}
    return {"line": line, "due": [(stable, rows[stable.slug]) for stable in stables], "off": _off(renderer, line)}


def _off(renderer: PageRenderer, line: DayLine) -> list[Stretch]:
    """The holidays of the practice and, unless it works on them, the public ones on the line of days."""
    ways = renderer.context.ways
    public = () if ways.practice.work_on_public_holidays else ways.public.between(line.first, line.last)
    spans = [*ways.practice.holidays, *(DaySpan(day, day) for day in public)]
    return [line.stretch(one.first, one.last) for one in spans if one.last >= line.first and one.first <= line.last]


def _watch(renderer: PageRenderer, horses: Sequence[HorseSummary], plan: Plan) -> list[WatchRow]:
    planned = {(wish.stable, wish.horse): one.day for one in plan.rounds for wish in one.wishes}
    found = watch_list(horses)
    longest = max((one.days for one in found), default=0) or 1
    return [_watch_row(renderer, one, longest, planned) for one in found]


def _watch_row(
    renderer: PageRenderer, one: WatchEntry, longest: int, planned: Mapping[tuple[str, str], date]
) -> WatchRow:
    stable, horse = renderer.context.stable(one.horse.stable), one.horse
    is_vet = "vet" in one.caution.ring
    contact = None if is_vet else contact_for(horse.horse, stable.stable)
    ring = Ring(contact.name, contact.phone) if contact else renderer.ring_finder(stable)(one.caution, horse.horse)[0]
    share = round(100 * one.days / longest, 2)
    return WatchRow(one, ring, is_vet, share, planned.get((horse.stable, horse.slug)))


def _places(stables: Sequence[StableSummary]) -> dict[tuple[str, str], str]:
    """The place where the pages of all horses lie."""
    horses = [horse for stable in stables for horse in stable.horses]
    return {(horse.stable, horse.slug): f"{horse.stable}/{horse.slug}.md" for horse in horses}
