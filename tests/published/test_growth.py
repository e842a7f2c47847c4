"""Growth and wear against what is published about them."""

from datetime import date, timedelta

import pytest

from recordgen.hoof.growth.cycles import SHORT_DAYS, net_cycles, rate_mm_per_day, wear_mm
from recordgen.hoof.growth.growing_out import OF_THE_TOE
from recordgen.hoof.measures.measures import smallest_real_change
from recordgen.records.models.names import Zone
from recordgen.records.models.quantity import MILLIMETRES, quantity
from tests.support.horse_records import MEASURES, REFERENCE, summary, toes, visit

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
    end = date(2026, 4, 1) + timedelta(days=days)
    (cycle,) = net_cycles("left_fore", toes(("2026-04-01", 90, 80), (end.isoformat(), 80 + grown, 80)))
    sd = MEASURES["toe_length"].words.methods["rule"].sd
    error = smallest_real_change(sd, sd) / 1.96

    assert round(100 * error / cycle.growth_mm) == percent
    assert cycle.mm_per_day == pytest.approx(0.25, abs=0.06)
    assert cycle.short is (percent > 20)


def test_records_of_six_weeks_give_the_published_rate() -> None:
    """Visits six weeks apart, 13 mm between trim and visit, as a record tells them.

    Source: Kolstrung, Ciesielczuk & Silmanowicz 2012, Med. Weter. 68(7):426-429.
    """
    visits = toes(("2026-04-01", 88, 78), ("2026-05-13", 91, 79), ("2026-06-24", 92, 80))
    cycles = net_cycles("left_fore", visits)

    assert [(cycle.days, cycle.growth_mm) for cycle in cycles] == [(42, 13), (42, 13)]
    assert cycles[0].mm_per_day == pytest.approx(0.3095, abs=5e-5)
    found = summary(*visits).feet["left_fore"].growth.net
    assert found.low < 0.3095 < found.high
    assert REFERENCE.classes["adult"].growth.mm_per_day < found.mean < 0.3095


@pytest.mark.parametrize(("mm", "days"), [(7, 28), (13, 42), (30.69, 152), (35.34, 152), (25.4 / 3, 30.4375)])
def test_published_rates_lie_in_what_is_expected_of_grown_horses(mm: float, days: float) -> None:
    """Every measured mean lies within one standard deviation of what is expected before there are cycles.

    Source: Josseck et al. 1995; Kolstrung et al. 2012; Reilly et al. 1998 (two groups); Lungwitz & Adams, A Text-Book
    of Horseshoeing (a third of an inch a month).
    """
    usual = REFERENCE.classes["adult"].growth

    assert abs(mm / days - usual.mm_per_day) < usual.sd


def test_the_range_of_rates_is_what_is_expected_of_nearly_all() -> None:
    """1/6 to 1/2 inch a month lies within two standard deviations and covers nearly all of them.

    Source: Lungwitz & Adams, A Text-Book of Horseshoeing, section F.
    """
    usual = REFERENCE.classes["adult"].growth
    low, high = a_month("1/6"), a_month("1/2")

    assert usual.mm_per_day - 2 * usual.sd == pytest.approx(low, abs=0.025)
    assert usual.mm_per_day + 2 * usual.sd == pytest.approx(high, abs=0.025)


def test_young_ponies_lie_between_foal_and_grown_horse() -> None:
    """0.384 and 0.254 mm a day at eight months: within two standard deviations of foals and of yearlings.

    Source: Butler & Hintz 1977 (abstract).
    """
    for group in ("foal", "yearling"):
        usual = REFERENCE.classes[group].growth
        assert all(abs(rate - usual.mm_per_day) < 2 * usual.sd for rate in (0.384, 0.254))


def test_foals_grow_about_twice_as_fast() -> None:
    """A birth hoof is replaced in 145 days against about 330 of a grown toe.

    Source: Curtis, Martin & Hobbs 2014, Vet J 201(1):116-117; Curtis, Thoroughbred Owner & Breeder, May 2017.
    """
    foal, adult = (REFERENCE.classes[group].growth.mm_per_day for group in ("foal", "adult"))

    assert 1.5 < foal / adult < 330 / 145


@pytest.mark.parametrize(
    ("zone", "months"),
    [("toe", (11, 13)), ("medial quarter", (6, 8)), ("lateral quarter", (6, 8)), ("lateral heel", (3, 5))],
)
def test_a_mark_at_the_hairline_grows_out_in_the_published_months(zone: Zone, months: tuple[int, int]) -> None:
    """A ring at the hairline, a toe of 100 mm, a third of an inch a month: the middle of each zone's renewal.

    Source: Lungwitz & Adams, A Text-Book of Horseshoeing, section F. His quarters are our heels, his sides ours.
    """
    rate = a_month("1/3")
    toe = rate * 12 * MONTH
    visits = [
        visit(
            (date(2024, 1, 1) + timedelta(days=42 * count)).isoformat(),
            left_fore={"before": {"toe_length": round(toe + 42 * rate, 2)}, "after": {"toe_length": round(toe, 2)}},
        )
        for count in range(16)
    ]
    day = date(2025, 11, 1)
    seen = visit(
        day.isoformat(), trimmed=False, left_fore={"marks": [{"kind": "event ring", "zone": zone, "below_hairline": 0}]}
    )
    (found,) = summary(*visits, seen, today=day).feet["left_fore"].growing_out

    assert months[0] <= (found.about - day).days / MONTH <= months[1]
    assert found.latest is not None
    assert found.earliest < found.about < found.latest
    assert OF_THE_TOE[zone] <= 1


def test_a_reading_of_less_than_four_weeks_is_a_fifth_error() -> None:
    """So a shorter cycle is told with a note.

    Derived from: 1.4 mm on 7 mm in 28 days, Josseck et al. 1995.
    """
    error = 2**0.5 / (0.25 * SHORT_DAYS)

    assert error == pytest.approx(0.2, abs=0.005)


def test_wear_of_free_ponies() -> None:
    """38 % of a 70 mm toe in front and 32 % behind wore off from June to September: 26.6 and 22.4 mm.

    Source: Florence & McDonnell 2006, Equine Vet J 38(7):642-645. Derived from: a toe of 70 mm, and growth of 0.25 mm a
    day over 92 days, after which the toe is shorter than before.
    """
    grown = 0.25 * 92
    for share, wore in ((0.38, 26.6), (0.32, 22.4)):
        now = 70 + grown - share * 70
        assert wear_mm(grown, 70, now) == pytest.approx(wore)
