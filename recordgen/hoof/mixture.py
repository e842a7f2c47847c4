"""Knowledge of a figure as a mixture of normal distributions: its mean, its spread, its quantiles."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property
from statistics import NormalDist

_FAR = 40.0
_ROOT_TWO, _ROOT_TWO_PI = math.sqrt(2), math.sqrt(2 * math.pi)


@dataclass(frozen=True)
class Mixture:
    """A mixture of normal distributions. parts: weight, mean and SD of each; the weights add up to 1."""

    parts: tuple[tuple[float, float, float], ...]

    @cached_property
    def mean(self) -> float:
        """The mean, in the unit of the parts."""
        return math.fsum(weight * mean for weight, mean, _ in self.parts)

    @cached_property
    def sd(self) -> float:
        """The standard deviation."""
        square = math.fsum(weight * (sd**2 + mean**2) for weight, mean, sd in self.parts)
        return math.sqrt(max(square - self.mean**2, 0))

    def below(self, value: float) -> float:
        """The probability that the figure is below a value."""
        return sum(weight * 0.5 * math.erfc((mean - value) / (sd * _ROOT_TWO)) for weight, mean, sd in self.parts)

    def quantile(self, probability: float) -> float:
        """The value below which the figure lies with a probability. Raises ValueError unless between 0 and 1.

        By Newton's steps, held between bounds that close in.
        """
        if not 0 < probability < 1:
            raise ValueError("a probability lies between 0 and 1")
        low, high = self.mean - _FAR * self.sd, self.mean + _FAR * self.sd
        found = self.mean + self.sd * NormalDist().inv_cdf(probability)
        for _ in range(60):
            over = self.below(found) - probability
            low, high = (low, found) if over > 0 else (found, high)
            step = over / max(self._density(found), 1e-300)
            if abs(step) < 1e-4 * self.sd:
                break
            found = found - step if low < found - step < high else (low + high) / 2
        return found

    def _density(self, value: float) -> float:
        return sum(
            weight * math.exp(-(((value - mean) / sd) ** 2) / 2) / (sd * _ROOT_TWO_PI)
            for weight, mean, sd in self.parts
        )
