"""Tell how sure a share of few horses is, and whether two shares differ by more than chance."""

from __future__ import annotations

from math import hypot, sqrt
from statistics import NormalDist
from typing import Literal

from recordgen.hoof.stable.prevalence import Share

CONFIDENCE = 0.95
# A share of fewer horses is not compared, nor is one told that fewer horses make up. Common practice, no source.
LEAST_LOOKED = 4
LEAST_COUNT = 3

Stand = Literal["more", "less"]


def wilson(count: int, of: int, confidence: float = CONFIDENCE) -> tuple[float, float]:
    """The Wilson score interval: the lowest and the highest share, from 0 to 1, that `count` of `of` fits.

    Raises ValueError unless 0 <= count <= of, of is above 0, and confidence lies between 0 and 1.
    Source: From memory, not read: Wilson 1927, J Am Stat Assoc 22:209-212; the formula is read in manuals of
    statistics packages.
    """
    if of <= 0 or not 0 <= count <= of:
        raise ValueError(f"{count} of {of} is no share")
    if not 0 < confidence < 1:
        raise ValueError("confidence lies between 0 and 1")
    z = NormalDist().inv_cdf((1 + confidence) / 2)
    share = count / of
    middle = share + z**2 / (2 * of)
    reach = z * sqrt(share * (1 - share) / of + (z / (2 * of)) ** 2)
    whole = 1 + z**2 / of
    # None and all reach the very end; rounding must not carry them past it or short of it.
    return (middle - reach) / whole if count else 0.0, (middle + reach) / whole if count < of else 1.0


def newcombe(
    count: int, of: int, other_count: int, other_of: int, confidence: float = CONFIDENCE
) -> tuple[float, float]:
    """Newcombe's hybrid score interval (method 10) of `count` of `of` less `other_count` of `other_of`, -1 to 1.

    The two shares count as independent of each other. Raises ValueError where `wilson` does.
    Source: From memory, not read: Newcombe 1998, Statistics in Medicine 17:873-890; the formula is read in manuals of
    statistics packages.
    """
    low, high = wilson(count, of, confidence)
    other_low, other_high = wilson(other_count, other_of, confidence)
    share, other = count / of, other_count / other_of
    difference = share - other
    return difference - hypot(share - low, other_high - other), difference + hypot(high - share, other - other_low)


def stand(here: Share, other: Share | None) -> Stand | None:
    """Tell whether the share here is more or less than another by more than chance; None where that cannot be said.

    Both need four horses looked at, and half of those seen, lest only finds were written down; the larger one needs
    three horses with the finding. Asked is the interval of the difference: that of the share here alone would take the
    other for exactly known, and speak without cause more than four times as often. About one comparison in twenty still
    speaks by chance, which is why the words ask. Both shares count as independent: the same horses on two days are
    alike, which makes it slower to speak; the horses of one stable are alike too, which makes it quicker where the
    other stables are few.
    """
    if other is None or not (_enough(here) and _enough(other)):
        return None
    low, high = newcombe(here.count, here.looked, other.count, other.looked)
    if low > 0 and here.count >= LEAST_COUNT:
        return "more"
    return "less" if high < 0 and other.count >= LEAST_COUNT else None


def _enough(share: Share) -> bool:
    return share.looked >= LEAST_LOOKED and 2 * share.looked >= share.seen
