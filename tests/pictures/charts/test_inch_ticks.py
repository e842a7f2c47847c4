"""Ticks of axes that show inches."""

import re
from fractions import Fraction
from unicodedata import normalize

import pytest

from recordgen.pictures.charts.inch_ticks import decimal_ticks, inch_ticks


@pytest.mark.parametrize(("low", "high"), [(70, 90), (60, 130), (-4, 4), (0, 12), (79, 81), (-6, 6)])
def test_ticks_stand_at_the_lines_of_a_rule(low: float, high: float) -> None:
    """Each stands where its words say, which are sixteenths or simpler; there are two at the least and few enough."""
    ticks = inch_ticks(low, high, 3)
    plain = {mm: normalize("NFKD", re.sub("(?<=[0-9])(?=[¼-¾⅛-⅞])", " ", words)) for mm, words in ticks.items()}
    inches = {mm: sum(map(Fraction, words.replace("⁄", "/").removeprefix("-").split())) for mm, words in plain.items()}

    assert 2 <= len(ticks) <= 4
    assert all(abs(abs(mm) - float(told) * 25.4) < 0.001 and told.denominator <= 16 for mm, told in inches.items())
    assert all(low <= mm <= high for mm in ticks)


def test_rates_have_round_decimals_around_them() -> None:
    """Growth of 6 to 10 mm a month stands between round hundredths of an inch."""
    ticks = decimal_ticks(6, 10, 7)

    assert list(ticks.values()) == ["0.2", "0.25", "0.3", "0.35", "0.4"]
    assert min(ticks) <= 6
    assert max(ticks) >= 10
