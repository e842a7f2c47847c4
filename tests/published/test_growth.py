"""Growth and wear against what is published about them."""

import pytest

from recordgen.hoof.growth import DIFFERENCE_SD_MM, cycles, growth, growth_readings, rate_mm_per_day, wear_mm
from recordgen.records.quantity import MILLIMETRES, quantity
from tests.hoof.building import toes

MONTH = 365.25 / 12  # 30.4375 days


def a_month(inches: str) -> float:
    """So many inches a month, as mm a day."""
    return quantity(f"{inches} in", MILLIMETRES) / MONTH


@pytest.mark.parametrize(
    ("grown", "days", "a_day", "in_a_month"),
    [(7, 28, 0.250, 7.61), (13, 42, 0.3095, 9.42)],
)
def test_growth_of_grown_horses(grown: float, days: int, a_day: float, in_a_month: float) -> None:
    """7 mm in 28 days of stallions, and 13 mm in six weeks of barefoot mares.

    Source: Josseck et al. 1995, Equine Vet J 27(3):175-182; Kolstrung, Ciesielczuk & Silmanowicz 2012, Med. Weter.
    68(7):426-429. Derived from: a month of 30.4375 days.
    """
    rate = rate_mm_per_day(20, 20 + grown, days)

    assert rate == pytest.approx(a_day, abs=5e-5)
    assert rate * MONTH == pytest.approx(in_a_month, abs=0.005)


def test_growth_of_mares_by_the_week() -> None:
    """13 mm in six weeks is 2.17 mm a week; the 2.1 that is printed is 9.13 in a month of 30.44 days.

    Source: Kolstrung, Ciesielczuk & Silmanowicz 2012, Med. Weter. 68(7):426-429. Derived from: both printed figures.
    """
    assert 7 * rate_mm_per_day(0, 13, 42) == pytest.approx(2.17, abs=0.005)
    assert rate_mm_per_day(0, 2.1, 7) * 30.44 == pytest.approx(9.13, abs=0.005)


def test_growth_of_ponies_by_feed() -> None:
    """0.384 mm a day fed freely and 0.254 on limited feed, over 117 days.

    Source: Butler & Hintz 1977 (abstract). Derived from: a month of 30.4375 days.
    """
    freely, limited = rate_mm_per_day(0, 0.384 * 117, 117), rate_mm_per_day(0, 0.254 * 117, 117)

    assert [round(rate * MONTH, 2) for rate in (freely, limited)] == [11.69, 7.73]
    assert freely / limited == pytest.approx(1.512, abs=0.0005)


def test_growth_of_two_groups_of_ponies() -> None:
    """35.34 mm against 30.69 mm in five months: 15.15 % more, 7.07 and 6.14 mm a month.

    Source: Reilly et al. 1998, Equine Vet J Suppl 26:51-57. Derived from: the two printed means.
    """
    days = round(5 * MONTH)
    with_biotin, without = rate_mm_per_day(0, 35.34, days), rate_mm_per_day(0, 30.69, days)

    assert 100 * (with_biotin / without - 1) == pytest.approx(15.15, abs=0.005)
    assert with_biotin * MONTH == pytest.approx(7.07, abs=0.01)
    assert without * MONTH == pytest.approx(6.14, abs=0.01)


def test_renewal_of_the_toe_at_the_rate_of_stallions() -> None:
    """7 mm in 28 days for 11 months is a toe wall of 83.7 mm.

    Source: Josseck et al. 1995, Equine Vet J 27(3):175-182. Derived from: its rate and its time of renewal.
    """
    assert rate_mm_per_day(0, 7, 28) * 11 * MONTH == pytest.approx(83.7, abs=0.05)


@pytest.mark.parametrize(
    ("months", "wall"),
    [((11, 13), (93, 110)), ((6, 8), (51, 68)), ((3, 5), (25, 42))],
    ids=["toe", "side", "quarter"],
)
def test_renewal_by_place_at_one_rate(months: tuple[int, int], wall: tuple[int, int]) -> None:
    """A third of an inch a month all round: toe in 11 to 13 months, sides in 6 to 8, quarters in 3 to 5.

    Source: Lungwitz & Adams, A Text-Book of Horseshoeing, section F. Derived from: rate times months.
    """
    rate = a_month("1/3")

    assert tuple(round(rate * count * MONTH) for count in months) == wall


@pytest.mark.parametrize(
    ("inches", "expected"), [("1/6", 4.23), ("1/4", 6.35), ("1/3", 8.47), ("3/8", 9.53), ("1/2", 12.70)]
)
def test_inches_a_month(inches: str, expected: float) -> None:
    """The rules of thumb of the trade in millimetres.

    Derived from: an inch of 25.4 mm.
    """
    assert quantity(f"{inches} in", MILLIMETRES) == pytest.approx(expected, abs=0.0051)


def test_limits_of_what_is_likely() -> None:
    """1/6 to 1/2 inch a month is 0.14 to 0.42 mm a day; the measured rates of grown horses lie between.

    Source: Lungwitz & Adams, A Text-Book of Horseshoeing, section F. Derived from: a month of 30.4375 days.
    """
    low, high = a_month("1/6"), a_month("1/2")

    assert (round(low, 2), round(high, 2)) == (0.14, 0.42)
    measured = [rate_mm_per_day(0, 7, 28), rate_mm_per_day(0, 13, 42), 30.69 / 5 / MONTH, 35.34 / 5 / MONTH]
    assert all(low < rate < high for rate in measured)


def test_wear_of_a_toe_that_was_not_trimmed() -> None:
    """A mark moved 13 mm down while the toe went from 80 to 76 mm: 17 mm wore off.

    Derived from: growth is the mark's way; wear is growth less the change in length.
    """
    assert wear_mm(13, 80, 76) == 17


@pytest.mark.parametrize(("grown", "days", "percent"), [(13, 42, 11), (7, 28, 20), (3.5, 14, 40)])
def test_share_of_reading_error(grown: float, days: int, percent: int) -> None:
    """A millimetre on each reading is 1.4 mm on the growth: the shorter the time, the larger its share.

    Derived from: errors of two readings, on the rates of Kolstrung et al. 2012 and Josseck et al. 1995.
    """
    assert round(100 * DIFFERENCE_SD_MM / grown) == percent
    assert grown / days == pytest.approx(0.25, abs=0.06)


def test_records_of_six_weeks_give_the_published_rate() -> None:
    """Visits six weeks apart, 13 mm between trim and visit, as a record tells them.

    Source: Kolstrung, Ciesielczuk & Silmanowicz 2012, Med. Weter. 68(7):426-429.
    """
    visits = toes(("2026-04-01", 88, 78), ("2026-05-13", 91, 79), ("2026-06-24", 92, 80))
    readings = growth_readings("left_fore", visits)
    found = growth(readings)

    assert found is not None
    assert found.mm_per_day == pytest.approx(0.3095, abs=5e-5)
    assert [cycle.days for cycle in cycles(readings)] == [42, 42]
