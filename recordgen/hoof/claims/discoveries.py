"""Tell how many of a page's claims may be false: the rule that holds their share down."""

from __future__ import annotations

from collections.abc import Sequence

# The share of false claims among those told, on average. Judgement: of 100 pages of a horse that never changes 7 then
# tell a change, and a flare of 3 mm is told by the third visit in three of four horses (python -m tests.benchmarks).
FALSE_SHARE = 0.07


def discoveries(chances: Sequence[float], share: float = FALSE_SHARE) -> list[bool]:
    """Tell which of a page's claims may be told so that on average no more than a share of those told is false.

    chances: of each claim, the probability that chance alone speaks as loudly.
    Source: Benjamini & Hochberg 1995, Journal of the Royal Statistical Society B 57:289-300. It holds for independent
    claims and for those that rise together.
    """
    ranked = sorted(chances)
    allowed = [chance for rank, chance in enumerate(ranked, 1) if chance <= share * rank / len(ranked)]
    bar = allowed[-1] if allowed else -1.0
    return [chance <= bar for chance in chances]
