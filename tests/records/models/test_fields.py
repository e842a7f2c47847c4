"""The kinds of value a record holds, and how its words are found from its models."""

import datetime as dt

import pytest
from pydantic import ValidationError

from recordgen.days import listed, spoken_day
from recordgen.hoof.naming import Naming
from recordgen.records.load.folders import SLUG, slug_of
from recordgen.records.models.annotations import annotation_at, choices, field_at
from recordgen.records.models.foot import Crack, FootVisit, Measures, WallZone
from recordgen.records.models.horse import Horse
from recordgen.records.models.names import FEET, FOOT_SPELLINGS, ZONES, foot_named, zone_named
from recordgen.records.models.settings import PracticeFile
from recordgen.records.models.visit import LAMENESS_SCALES, Lameness, Next, Visit
from recordgen.records.write.templates import one_line, yaml_text
from recordgen.records.yaml.read import values
from recordgen.records.yaml.values import without_empty


@pytest.mark.parametrize(("typed", "expected"), [("yes", True), ("True", True), ("NO", False), (" false ", False)])
def test_yes_and_no_are_read_in_every_case(typed: str, expected: bool) -> None:
    """In words or as YAML's own."""
    assert Visit.model_validate({"date": "2026-10-14", "trimmed": typed}).trimmed is expected


@pytest.mark.parametrize(
    ("typed", "expected", "words"),
    [
        ("2015", ("2015-01-01", "2015-12-31"), "2015"),
        ("2016-02", ("2016-02-01", "2016-02-29"), "February 2016"),
        ("may 2015", ("2015-05-01", "2015-05-31"), "May 2015"),
        ("Sep 2015", ("2015-09-01", "2015-09-30"), "September 2015"),
        ("2015-05-06", ("2015-05-06",) * 2, "6 May 2015"),
    ],
)
def test_a_birth_may_be_a_month_or_a_year(typed: str, expected: tuple[str, str], words: str) -> None:
    """A month or a year alone may be any day of it, and is told as no more than that."""
    born = Horse.model_validate({"name": "Bramble", "born": typed}).born

    assert [day.isoformat() for day in born] == list(expected)
    assert born is not None
    assert Naming({}).born(born) == words
    assert Horse.model_validate({"name": "Bramble", "born": str(born)}).born == born


@pytest.mark.parametrize("typed", ["Mai 2015", "May", "May 15", "2015-13", "2015-5", "May 6 2015"])
def test_what_is_no_month_is_no_birth(typed: str) -> None:
    """It is refused, with the form to write it in."""
    with pytest.raises(ValidationError, match="is not a date"):
        Horse.model_validate({"name": "Bramble", "born": typed})


def test_a_height_in_hands_is_kept_in_centimetres() -> None:
    """14.2 hh is 58 inches."""
    assert Horse.model_validate({"name": "Bramble", "height": "14.2 hh"}).height == pytest.approx(147.3)


def test_text_is_kept_without_the_space_around_it() -> None:
    """A block of text ends with a line end that nobody means."""
    assert Visit.model_validate({"date": "2026-10-14", "note": "one\ntwo\n"}).note == "one\ntwo"


def test_a_practice_has_its_ways_from_the_start() -> None:
    """Weeks by class, leeway, days of work, names of feet."""
    practice = PracticeFile.model_validate({"name": "x", "trimmer": "y"})
    weeks = practice.usual_weeks

    assert (weeks.adult, weeks.donkey, weeks.foal, practice.leeway_days) == (6, 8, 4, 7)
    assert (practice.feet, len(practice.working_days)) == ("left and right", 5)


@pytest.mark.parametrize("country", ["gb", "GBR", "", "G1"])
def test_a_country_is_two_capital_letters(country: str) -> None:
    """The law that is quoted hangs on it."""
    with pytest.raises(ValidationError):
        PracticeFile.model_validate({"name": "x", "trimmer": "y", "country": country})


@pytest.mark.parametrize(("scale", "most"), [(scale, high) for scale, (_, high) in LAMENESS_SCALES.items()])
def test_a_grade_lies_on_its_scale(scale: str, most: int) -> None:
    """The highest grade is read, one more is not.

    Sources: see LAMENESS_SCALES.
    """
    assert Lameness.model_validate({"scale": scale, "grade": str(most)}).grade == most
    with pytest.raises(ValidationError):
        Lameness.model_validate({"scale": scale, "grade": str(most + 1)})


@pytest.mark.parametrize("typed", [{}, {"weeks": "6", "date": "2026-11-25"}])
def test_next_is_weeks_or_a_day(typed: dict[str, str]) -> None:
    """Neither and both are refused."""
    with pytest.raises(ValidationError):
        Next.model_validate(typed)


def test_a_care_note_may_be_a_name_or_written_out() -> None:
    """Both become one shape."""
    visit = Visit.model_validate({"date": "2026-10-14", "care": ["dry-bed", {"what": "Walk", "until": "June"}]})

    assert [(note.what, note.until) for note in visit.care] == [("dry-bed", None), ("Walk", "June")]


def test_a_record_that_was_read_does_not_change() -> None:
    """Everything written down stays."""
    with pytest.raises(ValidationError):
        Crack(length=20).length = 30


def test_every_spelling_of_a_foot_leads_to_one_of_four() -> None:
    """Also with spaces, hyphens and capital letters; what is none stays none."""
    assert {foot_named(spelling.upper().replace("_", " ")) for spelling in FOOT_SPELLINGS} == set(FEET)
    assert foot_named("middle_fore") is None


def test_every_zone_is_found_under_other_spellings() -> None:
    """With underscores and capital letters."""
    assert [zone_named(zone.title().replace(" ", "_")) for zone in ZONES] == list(ZONES)
    assert zone_named("quarter") is None


def test_empty_keys_go_and_unknown_ones_stay() -> None:
    """So that a slip in an empty line is told."""
    typed = {
        "date": "x",
        "note": None,
        "nte": None,
        "feet": {"LF": {"note": None}, "XF": None},
        "next": {"weeks": None},
    }

    assert without_empty(typed, Visit) == {"date": "x", "nte": {}, "feet": {"XF": {}}}


def test_what_was_written_as_empty_on_purpose_stays() -> None:
    """Empty brackets say that it was looked at."""
    assert without_empty({"feet": {"LF": {}}, "signs": []}, Visit) == {"feet": {"LF": {}}, "signs": []}


def test_the_type_and_field_at_a_place_are_found() -> None:
    """Through mappings and lists."""
    assert annotation_at(Visit, ["feet", "left_fore", "before"]) is Measures
    assert annotation_at(Visit, ["nothing", "here"]) is object
    extra = field_at(FootVisit, ["before", "toe_length"]).json_schema_extra
    assert isinstance(extra, dict)
    assert extra["unit"] == "mm"
    assert list(choices(annotation_at(FootVisit, ["marks", 0, "zone"]))) == list(ZONES)


def test_values_come_in_the_order_of_the_models() -> None:
    """Whatever the order in the file."""
    zone = WallZone.model_validate({"chip": "5", "crack": {"depth": "full", "length": "20"}, "flare": "4"})

    assert [steps for steps, _, _ in values(zone)] == [
        ("flare",),
        ("crack",),
        ("crack", "length"),
        ("crack", "depth"),
        ("chip",),
    ]


def test_days_and_lists_are_spoken() -> None:
    """As in a sentence."""
    assert spoken_day(dt.date(2026, 3, 1)) == "1 March 2026"
    assert [listed(list(words)) for words in ("", "a", "ab", "abc")] == ["", "a", "a and b", "a, b and c"]


def test_values_in_a_comment_are_short() -> None:
    """On one line, numbers without needless digits, yes and no."""
    assert [one_line(value) for value in (88.0, 2.54, True, "a\n b")] == ["88", "2.54", "yes", "a b"]
    assert yaml_text("Old Mill") == "Old Mill"


@pytest.mark.parametrize(
    ("name", "expected"),
    [("Old Mill", "old-mill"), ("Élan's Yard", "elans-yard"), ("  7 Oaks! ", "7-oaks"), ("馬", "")],
)
def test_a_name_becomes_a_folders_name(name: str, expected: str) -> None:
    """Small letters, digits and hyphens."""
    assert slug_of(name) == expected
    assert not expected or SLUG.fullmatch(expected)


def test_one_thing_done_may_stand_without_brackets() -> None:
    """It is a list of one; what a comma parts is left as it is, since a comma may stand in one thing."""
    typed = {"date": "2026-10-14", "feet": {"left_fore": {"done": "walls rolled, toe taken back"}}}

    assert Visit.model_validate(typed).feet["left_fore"].done == ("walls rolled, toe taken back",)


@pytest.mark.parametrize(
    ("typed", "ends"),
    [
        ("a stone", ""),
        ("a \u202enail", "\u202c"),
        ("a \u202enail\u202c out", ""),
        ("\u2067one \u202atwo", "\u202c\u2069"),
        ("\u2067one \u202atwo\u2069 three", ""),
        ("\u202aone \u2066two\u202c", "\u2069\u202c"),
        ("one\u202c two\u2069\u200f", ""),
        ("שלום, עולם", ""),
    ],
)
def test_a_turn_of_direction_ends_with_the_text(typed: str, ends: str) -> None:
    """It turns none of our words behind it. Source: UAX 9, rules X1 to X8. From memory, not read."""
    note = Visit.model_validate({"date": "2026-10-14", "note": typed}).note

    assert note == typed + ends
    assert Visit.model_validate({"date": "2026-10-14", "note": note}).note == note
