"""The trimmer's front page: rounds, due list, watch list, and what is missing."""

from __future__ import annotations

from collections.abc import Sequence

from recordgen.hoof.cautions.cautions import LEVELS
from recordgen.hoof.growth.forecasts import together
from recordgen.hoof.rounds.rounds import Plan, fewest_told, unmet_told
from recordgen.hoof.summary import StableSummary
from recordgen.hoof.whom_to_ring import numbers_missing
from recordgen.site.model import Page
from recordgen.site.pages.order import ended_lately, overdue_first, worst_first
from recordgen.site.pages.renderer import PageRenderer

# The file for a calendar program: the rounds that would do.
ROUNDS = "rounds.ics"


def render_practice(renderer: PageRenderer, stables: Sequence[StableSummary], plan: Plan) -> Page:
    """The front page over all stables. plan: the fewest days out."""
    context = renderer.context
    present = [(stable, horse) for stable in stables for horse in stable.present]
    return renderer.render(
        "index.md",
        context.ways.practice.name,
        "practice.html",
        plan=plan,
        rounds=ROUNDS if plan.rounds else None,
        fewest_told=fewest_told(plan, context.ways.naming),
        unmet=[(one, unmet_told(one, context.ways.naming)) for one in plan.unmet],
        horse_count=len(present),
        due=[(stable, sorted(stable.present, key=overdue_first)) for stable in stables],
        fared=together(horse.fared for _, horse in present),
        ring_of=lambda caution, horse: renderer.ring_finder(context.stable(horse.stable))(caution, horse.horse),
        numbers=numbers_missing(stables),
        watch=worst_first(horse for _, horse in present),
        ended=ended_lately((horse for _, horse in present), context.today),
        held=[horse for _, horse in present if horse.held and horse.due],
        names={stable.slug: stable.stable.name for stable in stables},
        levels=LEVELS,
        gaps=[(stable, horse) for stable, horse in present if horse.gaps or horse.remarks],
        no_trails=context.no_trails,
        places=_places(stables),
    )


def _places(stables: Sequence[StableSummary]) -> dict[tuple[str, str], str]:
    """Where the pages of all horses lie."""
    horses = [horse for stable in stables for horse in stable.horses]
    return {(horse.stable, horse.slug): f"{horse.stable}/{horse.slug}.md" for horse in horses}
