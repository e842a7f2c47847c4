"""The error of the hand that traces, told beside the errors of the measures."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from recordgen.hoof.measures.measures import smallest_real_change
from recordgen.hoof.measures.repeatability import ToldError
from recordgen.hoof.tracing.errors.twice import FEWEST_PICTURES, hand_again, pooled
from recordgen.records.models.visit import Visit


def told_hand(visits: Sequence[Visit], usual_error: float, phrases: Mapping[str, str]) -> ToldError:
    """The error of one point tapped on a picture, px at an image 1000 px wide.

    usual_error: what is taken where a tracing tells none. Pictures traced again take its place once there are enough.
    """
    again = hand_again(visits, usual_error)
    pictures, sd = len(again), usual_error * pooled(again)
    counts = pictures >= FEWEST_PICTURES
    source = phrases["hand_twice" if counts else "hand_assumed"].format(pictures=pictures, needed=FEWEST_PICTURES)
    real = smallest_real_change(sd, sd)
    return ToldError("traced_point", phrases["hand_name"], "tracing", True, "px", sd, real, not counts, source, None)
