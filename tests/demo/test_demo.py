"""The demo practice is written the same each time, reads without a problem, and its stories are possible."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from itertools import pairwise
from pathlib import Path

import pytest

from recordgen.records.load.practice import read_practice
from recordgen.records.models.foot import FootVisit, WallZone
from recordgen.records.models.names import FEET, Foot, Zone
from recordgen.records.models.practice import HorseRecord, Practice
from tests.demo.days import TODAY
from tests.demo.generated import generated_practice
from tests.demo.practice import write_demo

RECORDS = Path(__file__).parents[2] / "records"


def tree(folder: Path) -> dict[str, bytes]:
    """Every YAML file and own page below a folder: path to bytes."""
    files = [*folder.rglob("*.yaml"), *folder.rglob("pages/*.md")]
    return {file.relative_to(folder).as_posix(): file.read_bytes() for file in files}


@pytest.fixture(scope="module")
def practice() -> Practice:
    """The demo as it lies in `records/`."""
    found, problems = read_practice(RECORDS, TODAY)
    assert found, [problem.as_line() for problem in problems]
    return found


@pytest.fixture(scope="module")
def horses(practice: Practice) -> dict[str, HorseRecord]:
    """The horses of the demo by their folder's name."""
    return {horse.slug: horse for horse in practice.horses}


def seen(horse: HorseRecord, foot: Foot) -> list[tuple[date, FootVisit]]:
    """The visits at which a foot was looked at."""
    return [(visit.date, visit.feet[foot]) for visit in horse.visits if foot in visit.feet]


def zones(horse: HorseRecord, foot: Foot, zone: Zone) -> list[WallZone]:
    """Findings of one zone of a foot's wall, oldest first."""
    return [found.wall[zone] for _, found in seen(horse, foot) if found.wall and zone in found.wall]


def marks(horse: HorseRecord, foot: Foot, kind: str) -> list[tuple[date, float]]:
    """Day and place of the marks of one kind, oldest first."""
    return [(day, mark.below_hairline) for day, found in seen(horse, foot) for mark in found.marks if mark.kind == kind]


def cycles(horse: HorseRecord, foot: Foot) -> Iterator[tuple[date, int, float]]:
    """Day of the later visit, days and mm of growth, from each visit to the next where the toe was measured."""
    for then, now in pairwise(horse.visits):
        earlier, later = then.feet.get(foot), now.feet.get(foot)
        left = earlier and (earlier.after if then.trimmed else earlier.before)
        if left and left.toe_length and later and later.before and later.before.toe_length:
            yield now.date, (now.date - then.date).days, later.before.toe_length - left.toe_length


OLD, PHOTO = Path("willowmere/moss/2020-01-01.yaml"), Path("willowmere/moss/photos/left.jpg")


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo written over a visit that is no longer part of it, and beside a photograph."""
    folder = tmp_path_factory.mktemp("demo")
    (folder / PHOTO).parent.mkdir(parents=True)
    (folder / OLD).write_text("date: 2020-01-01\n")
    (folder / PHOTO).write_bytes(b"a picture")
    write_demo(folder)
    return folder


def test_the_script_writes_the_records_as_they_are(written: Path) -> None:
    """Writing the demo anew gives the files of `records/`, byte for byte."""
    assert tree(written) == tree(RECORDS)


def test_writing_takes_away_old_visits_and_leaves_photographs(written: Path) -> None:
    """A visit that is no longer part of the demo goes; a photograph stays."""
    assert ((written / OLD).exists(), (written / PHOTO).exists()) == (False, True)


def test_the_demo_reads_without_a_problem() -> None:
    """Not even a warning."""
    _, problems = read_practice(RECORDS, TODAY)

    assert [problem.as_line() for problem in problems] == []


def test_the_demo_has_three_stables_and_fifteen_horses(practice: Practice) -> None:
    """Counts that the manual may name."""
    sizes = {stable.slug: len(stable.horses) for stable in practice.stables}

    assert sizes == {"fallow-end": 5, "tithe-barn": 5, "willowmere": 5}
    assert practice.visit_count == 211


def test_growth_between_visits_is_possible(practice: Practice) -> None:
    """Every toe grows 0.14 to 0.42 mm a day between two visits, a foal's up to 0.6.

    Derived from: Lungwitz & Adams, A Text-Book of Horseshoeing, 1/6 to 1/2 inch a month; foals: no measured ceiling.
    """
    for horse in practice.horses:
        for foot in FEET:
            for day, days, grown in cycles(horse, foot):
                young = horse.horse.born and (day - horse.horse.born.first).days < 365
                assert 0.14 <= grown / days <= (0.6 if young else 0.42), (horse.slug, foot, day)


def test_visits_are_on_working_days(practice: Practice) -> None:
    """No visit falls on a Saturday or Sunday."""
    weekend = [
        (horse.slug, visit.date) for horse in practice.horses for visit in horse.visits if visit.date.weekday() > 4
    ]

    assert weekend == []


def test_brambles_flare_came_in_ten_weeks_and_grows_out_in_eight_visits(horses: dict[str, HorseRecord]) -> None:
    """After the one long interval it is widest; every five weeks from then on it is less, and so is the gap inside."""
    bramble = horses["bramble"]
    weeks = [(now.date - then.date).days // 7 for then, now in pairwise(bramble.visits)]
    found = [zone for zone in zones(bramble, "right_hind", "medial toe quarter") if zone.flare]
    gaps = [zone.separation.length for zone in found if zone.separation]

    assert weeks == [7] * 6 + [10] + [5] * 7
    assert [zone.flare for zone in found] == [8, 7, 6, 4.5, 3.5, 2.5, 2, 1]
    assert gaps == [34, 30, 24, 20, 15, 8]


def test_bramble_lands_heel_first_again_once_the_flare_is_small(horses: dict[str, HorseRecord]) -> None:
    """Flat at the five visits at which the wall was pushed out most."""
    told = [found.landing for day, found in seen(horses["bramble"], "right_hind") if day >= date(2026, 2, 18)]

    assert told == ["flat"] * 5 + ["heel first"] * 3


def test_fennels_frogs_are_infected_in_the_wet_months(horses: dict[str, HorseRecord]) -> None:
    """From November to February the left hind frog is infected, from April to September it is not."""
    infected = {
        day: found.frog.infection != "none"
        for day, found in seen(horses["fennel"], "left_hind")
        if found.frog and found.frog.infection
    }

    assert all(infected[day] for day in infected if day.month in (11, 12, 1, 2))
    assert not any(infected[day] for day in infected if 4 <= day.month <= 9)


def test_fennels_last_visit_raises_a_caution(horses: dict[str, HorseRecord]) -> None:
    """The groove is deep and painful at the most recent visit."""
    frog = horses["fennel"].visits[-1].feet["left_hind"].frog

    assert frog is not None
    assert (frog.infection, frog.painful) == ("deep groove", True)


def test_pippin_eases_under_the_vets_plan(horses: dict[str, HorseRecord]) -> None:
    """The grade falls, the toe angle comes back, the gap closes, the visits are four weeks apart at the most."""
    pippin = horses["pippin"]
    planned = [visit for visit in pippin.visits if visit.date >= date(2026, 6, 24)]
    angles = [
        found.after.toe_angle for day, found in seen(pippin, "left_fore") if day > date(2026, 7, 1) and found.after
    ]
    gaps = [zone.separation.depth for zone in zones(pippin, "left_fore", "toe") if zone.separation]

    assert [visit.lameness.grade for visit in planned if visit.lameness] == [2, 1, 1, 0, 0, 0]
    assert angles == sorted(a for a in angles if a)
    assert (angles[-1] or 0) - (angles[0] or 0) >= 2
    assert gaps == [9, 8, 6, 5, 4]
    assert max((now.date - then.date).days for then, now in pairwise(planned)) == 28


def test_a_diagnosis_stands_in_a_vets_words_alone() -> None:
    """The word for Pippin's illness occurs in no line but the vet's words."""
    told = [line for text in tree(RECORDS).values() for line in text.decode().splitlines() if "aminiti" in line]

    assert len(told) == 2
    assert all("Laminitis, both fores" in line for line in told)


def test_sorrels_abscess_line_reaches_the_ground(horses: dict[str, HorseRecord]) -> None:
    """The line grows down 8 to 9 mm a month until it is as low as the wall is high."""
    line = marks(horses["sorrel"], "right_fore", "abscess line")
    (first, top), (last, bottom) = line[0], line[-1]

    assert 8 <= (bottom - top) / (last - first).days * 30.4375 <= 9
    assert top < 5
    assert bottom > 60
    assert horses["sorrel"].visits[-1].date > last


def test_teasels_fores_differ(horses: dict[str, HorseRecord]) -> None:
    """The right fore is 4 to 5 degrees steeper than the left after every trim."""
    pairs = [(visit.feet["left_fore"].after, visit.feet["right_fore"].after) for visit in horses["teasel"].visits]
    apart = [
        right.toe_angle - left.toe_angle
        for left, right in pairs
        if left and right and left.toe_angle and right.toe_angle
    ]

    assert len(apart) > 12
    assert (min(apart) >= 3.5, max(apart) <= 5.5) == (True, True)


def test_rowan_is_overdue_and_nutmeg_is_new(horses: dict[str, HorseRecord]) -> None:
    """Rowan was last seen about eleven weeks ago, Nutmeg once."""
    assert (TODAY - horses["rowan"].visits[-1].date).days // 7 == 10
    assert len(horses["nutmeg"].visits) == 1


def test_hawthorns_record_has_gaps(horses: dict[str, HorseRecord]) -> None:
    """Five months missed, a visit without a trim, hinds not measured, and no measures after a trim."""
    visits = horses["hawthorn"].visits
    hinds = [visit.date for visit in visits if "left_hind" in visit.feet and not visit.feet["left_hind"].before]
    open_ends = [visit.date for visit in visits if visit.trimmed and not visit.feet["left_fore"].after]

    assert max((now.date - then.date).days for then, now in pairwise(visits)) > 150
    assert [visit.date for visit in visits if not visit.trimmed] == [date(2026, 1, 2)]
    assert hinds == [date(2026, 2, 20), date(2026, 4, 10)]
    assert open_ends == [date(2026, 4, 10)]


def test_tansy_has_boots_and_a_change_of_feed(horses: dict[str, HorseRecord]) -> None:
    """Both are told in `keeping`, so that the charts can mark them."""
    keeping = [visit.keeping for visit in horses["tansy"].visits if visit.keeping]

    assert sum(kept.boots is not None for kept in keeping) == 3
    assert sum(kept.feed_change is not None for kept in keeping) == 1


def test_dunlins_crack_grows_out(horses: dict[str, HorseRecord]) -> None:
    """The crack is on the surface, shortens from visit to visit, and its end moves down."""
    cracks = [zone.crack for zone in zones(horses["dunlin"], "right_fore", "medial quarter") if zone.crack]
    lengths = [crack.length or 0 for crack in cracks][1:]
    ends = [place for _, place in marks(horses["dunlin"], "right_fore", "crack end")]

    assert {crack.depth for crack in cracks} == {"surface"}
    assert (lengths == sorted(lengths, reverse=True), ends == sorted(ends)) == (True, True)
    assert (lengths[0] > 40, lengths[-1] < 10) == (True, True)


def test_bracken_left_after_the_last_visit(horses: dict[str, HorseRecord]) -> None:
    """The horse was sold a week after its last trim."""
    left = horses["bracken"].horse.left

    assert left is not None
    assert (left.date - horses["bracken"].visits[-1].date).days == 8


def test_the_foal_grows_fast_and_the_donkey_slowly(horses: dict[str, HorseRecord]) -> None:
    """Otter 0.35 to 0.5 mm a day, Clover 0.15 to 0.25; the donkey stands at 60 to 65 degrees."""
    foal = [grown / days for _, days, grown in cycles(horses["otter"], "left_fore")]
    donkey = [grown / days for _, days, grown in cycles(horses["clover"], "left_fore")]
    angles = [f.after.toe_angle for _, f in seen(horses["clover"], "left_fore") if f.after and f.after.toe_angle]

    assert (min(foal) >= 0.35, max(foal) <= 0.5) == (True, True)
    assert (min(donkey) >= 0.15, max(donkey) <= 0.25) == (True, True)
    assert (min(angles) >= 60, max(angles) <= 65) == (True, True)


def test_the_foals_limb_is_told_in_words(horses: dict[str, HorseRecord]) -> None:
    """The bend of the right fore is described at each of its visits."""
    assert all(found.deviation for _, found in seen(horses["otter"], "right_fore"))


def test_a_generated_practice_reads_and_repeats(tmp_path: Path) -> None:
    """The same arguments write the same files, which read without a problem."""
    first = generated_practice(tmp_path / "first", stables=2, horses=2, years=1, seed=7)
    generated_practice(tmp_path / "second", stables=2, horses=2, years=1, seed=7)
    practice, problems = read_practice(tmp_path / "first", TODAY)

    assert tree(tmp_path / "first") == tree(tmp_path / "second")
    assert list(problems) == []
    assert practice is not None
    assert (len(practice.horses), practice.visit_count) == (4, first)
    assert 28 <= first <= 44


def test_another_seed_generates_another_practice(tmp_path: Path) -> None:
    """The seed decides what is written."""
    generated_practice(tmp_path / "one", stables=1, horses=1, years=1, seed=1)
    generated_practice(tmp_path / "two", stables=1, horses=1, years=1, seed=2)

    assert tree(tmp_path / "one") != tree(tmp_path / "two")
