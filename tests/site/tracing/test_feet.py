"""The words of a horse's page of small records with tracings, case by case."""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from bs4.element import Tag

from recordgen.hoof.tracing.errors.spread import Figure
from recordgen.records.load.folders import Walk
from recordgen.records.models.names import Foot
from recordgen.records.photos.files import read_photos
from recordgen.site.photographs import Album, album
from recordgen.site.sheet import MOST
from recordgen.site.tracing.page import tracings_of
from tests.support.full_visits import sheet
from tests.support.horse_records import TODAY, WAYS, visit
from tests.support.horse_records import summary as summary_of
from tests.support.photographs import drawn, file_of
from tests.support.sheets import alone
from tests.support.sole_shapes import FORE
from tests.support.tracing_pages import BOTH_SIDES, FLARED, HALF_FLARED, section, side, text, usual, with_tracings
from tests.support.typed_tracings import typed

NEVER_SAID = re.compile(
    r"\b(diagnos\w*|healthy|normal|abnormal|poor|good|bad|severe|mild|excellent|wrong|faulty|better|worse)\b", re.I
)
PHOTO = "2026-10-14-left-fore-side-after.jpg"


def feet(found: BeautifulSoup) -> dict[str, Tag]:
    """The parts of the section by the foot they tell of."""
    return {part.h3.get_text(): part for part in found.select("section:has(.rg-traced-foot)") if part.h3}


def cells(part: Tag) -> dict[str, list[str]]:
    """Every figure of a part: its cells by its name."""
    rows = [(row.select_one("th"), row.select("td")) for row in part.select("tbody tr")]
    return {name.get_text(): [cell.get_text() for cell in held] for name, held in rows if name}


def figure(foot: Foot, name: str) -> Figure:
    """A figure of the last sole of a foot, traced after the trim."""
    (found,) = [
        one.figures[name]
        for one in usual().history[0].feet[foot].traced
        if (one.tracing.view, one.tracing.moment) == ("sole", "after")
    ]
    return found


def pair(found: BeautifulSoup) -> Tag:
    """The one comparison of two feet."""
    (part,) = found.select(".rg-traced-pair")
    return part


def photographed(folder: Path, size: tuple[int, int] = (1200, 1000)) -> Album:
    """An album of one photograph."""
    (folder / "photos").mkdir()
    (folder / "photos" / PHOTO).write_bytes(file_of(drawn(*size)))
    return album(read_photos(Walk(folder), folder, TODAY), "horses/bramble.md")


def test_each_foot_shows_the_latest_of_each_view_in_the_order_told() -> None:
    """From below with its ring, from the side and from the front; a foot that was not traced is not named."""
    found = feet(section(usual()))
    captions = [text(one) for one in found["Left fore"].select(".rg-traced-view > div > .rg-traced figcaption")]

    assert list(found) == ["Left fore", "Right fore", "Left hind"]
    assert captions == [
        "From below, after the trim, 14 October 2026; traced on a drawing",
        "How thick the wall is, from heel to heel",
        "From the side, after the trim, 14 October 2026; traced on a drawing",
        "From the front, after the trim, 14 October 2026; traced on a drawing",
    ]
    assert "traced on a photograph" in text(found["Right fore"])


def test_figures_are_told_with_the_error_of_the_hand() -> None:
    """Value and 1.96 standard deviations, before and after the trim where both were traced."""
    held = usual().history[0].feet["left_fore"].traced
    figures = [one.figures["sole_width_mm"] for one in held if one.tracing.view == "sole"]

    assert cells(feet(section(usual()))["Left fore"])["sole width, mm"] == [
        f"{one.value:.1f} ± {1.96 * one.sd:.1f}" for one in figures
    ]


def test_each_zone_is_told_with_what_stands_above_the_curve_and_off_concentric() -> None:
    """Of the tracing that is drawn."""
    shown = cells(feet(section(usual()))["Left fore"])["outer quarter"]

    assert [cell.split(" ")[0] for cell in shown] == [
        f"{figure('left_fore', f'{name}_lateral_quarter_mm').value:.1f}".replace("-", "−")
        for name in ("ring", "flare", "concentric")
    ]


def test_what_is_missing_is_told_with_what_hangs_on_it() -> None:
    """Without the frog's apex there is no mirror match."""
    (told,) = [text(one) for one in feet(section(usual()))["Left hind"].select(".rg-traced-view p.rg-quiet")]

    assert told.startswith("Not traced: the point of the frog. So not known: ")
    assert "mirror match" in told


def test_what_changed_is_told_in_the_one_list_of_the_page() -> None:
    """The flare that went down stands among the changes of the horse, and in no list of the tracings."""
    told = {(one.of.foot, one.of.measure.key): one.change for one in usual().changes.real}

    assert told["left_fore", "ring_flare_lateral_quarter"] < -1
    assert section(usual()).select("ul.rg-changes") == []


def test_what_changed_since_the_first_day_alone_is_told_since_then() -> None:
    """Nothing since the visit before, but since the first."""
    days = (("2026-02-10", FLARED), ("2026-06-10", HALF_FLARED), ("2026-10-14", HALF_FLARED))
    found = with_tracings(*((day, {"left_fore": [typed(sole)]}) for day, sole in days)).changes.real
    flare = next(one for one in found if one.of.measure.key == "ring_flare_lateral_quarter")

    assert (flare.kind, flare.before, flare.since) == ("step", date(2026, 2, 10), date(2026, 6, 10))


def test_a_change_within_the_error_is_not_told() -> None:
    """The same sole twice."""
    same = with_tracings(*((day, {"left_fore": [typed(FORE)]}) for day in ("2026-06-10", "2026-10-14")))

    assert (same.changes.real, same.changes.maybe) == ((), ())


def test_both_sides_standing_out_leave_it_to_an_earlier_visit() -> None:
    """The note stands where both quarters stand out, and not where one does."""
    note = "only an earlier visit can tell"

    assert note in text(section(with_tracings(("2026-10-14", {"left_fore": [typed(BOTH_SIDES)]}))))
    assert note not in text(section(with_tracings(("2026-10-14", {"left_fore": [typed(FLARED)]}))))


def test_a_crooked_leg_is_compared_with_itself_only() -> None:
    """Said where the horse's record tells of its leg shape, and nowhere else."""
    day = ("2026-10-14", {"left_fore": [typed(FORE)]})

    assert "compared with itself only" in text(section(with_tracings(day, conformation=["left fore turns out"])))
    assert "compared with itself only" not in text(section(with_tracings(day)))


def test_before_after_and_earlier_lie_over_each_other_in_the_ring() -> None:
    """Each with its day or moment in the key of the strip."""
    keys = feet(section(usual()))["Left fore"].select(".rg-traced-view > div > .rg-key")
    (key,) = [one for one in keys if "trim" in one.get_text()]
    told = [text(one) for one in key.select(":scope > span")]
    words = ("after the trim", "± 95 % of the error", "before the trim", "after the trim, 10 Jun 2026", "smooth curve")

    assert all(word in one for word, one in zip(words, told, strict=False))


def test_left_and_right_stand_on_one_scale() -> None:
    """In one figure, each under its name; how far the flare differs stands among the differences of the pair."""
    part = pair(section(usual()))
    apart = {one.measure: one for one in usual().pairs}["ring_flare_lateral_quarter"]

    assert part.h4 is not None
    assert part.h4.get_text() == "Fore feet, from below"
    assert {"left fore", "right fore", "20 mm"} <= {one.get_text() for one in part.select("svg text")}
    assert apart.low > 0
    assert apart.left == figure("left_fore", "flare_lateral_quarter_mm").value


def test_feet_that_are_alike_are_not_told_apart() -> None:
    """The same sole on both sides; and nothing is compared where nothing was traced on both."""
    alike = with_tracings(("2026-10-14", {"left_fore": [typed(FORE)], "right_fore": [typed(FORE)]}))
    apart = {"left_fore": [typed(FORE, without="wall")], "right_fore": [typed(FORE, without="frog_apex")]}

    assert alike.pairs
    assert not any(one.real for one in alike.pairs)
    assert with_tracings(("2026-10-14", apart)).pairs == ()


def test_feet_traced_at_different_moments_are_not_compared() -> None:
    """Before the trim against after it tells nothing."""
    held = {"left_fore": [typed(FORE, moment="before")], "right_fore": [typed(FLARED)]}

    assert section(with_tracings(("2026-10-14", held))).select(".rg-traced-pair") == []


def test_earlier_tracings_are_folded_the_newest_first() -> None:
    """Three days of them, and how many more there are."""
    days = [f"2026-{month:02}-01" for month in range(1, 8)]
    found = section(with_tracings(*((day, {"left_fore": [typed(FORE)]}) for day in days)))
    (fold,) = found.select(".rg-traced-foot > details")

    assert [text(one).split(", ")[2].split(";")[0] for one in fold.select("figcaption")] == [
        "1 June 2026",
        "1 May 2026",
        "1 April 2026",
    ]
    assert "There are tracings of 3 days before." in text(fold)


def test_a_tracing_lies_over_its_photograph_where_the_page_has_it(tmp_path: Path) -> None:
    """Lazy, with its size, the lines over it in a frame of the same form; else it is drawn on blank."""
    found = with_tracings(("2026-10-14", {"left_fore": [side(file=PHOTO, of="photograph")]}))
    (over,) = section(found, photographed(tmp_path)).select(".rg-over")
    (image,), (svg,) = over.select("img"), over.select("svg")
    width, height = map(float, str(svg["viewbox"]).split()[2:])

    assert (image["loading"], str(image["src"]).startswith("bramble/2026-10-14-left-fore-side-after")) == ("lazy", True)
    assert int(str(image["width"])) / int(str(image["height"])) == pytest.approx(width / height, abs=0.01)
    assert section(found).select(".rg-over") == []


def test_a_photograph_of_another_form_is_not_drawn_over(tmp_path: Path) -> None:
    """Lines would not lie where they were traced."""
    found = with_tracings(("2026-10-14", {"left_fore": [side(file=PHOTO, of="photograph")]}))

    assert section(found, photographed(tmp_path, (1600, 800))).select(".rg-over") == []


def test_every_picture_is_named_and_no_id_stands_twice() -> None:
    """Each svg tells its title, and each id is its own."""
    found = section(usual())
    ids = [str(one["id"]) for one in found.select("[id]")]

    assert all(text(one.select("title")[0]) for one in found.select("svg"))
    assert len(ids) == len(set(ids))


def test_nobody_is_praised_or_blamed() -> None:
    """No word of a verdict, and nothing that names a disease."""
    assert NEVER_SAID.findall(text(section(usual()))) == []


def test_the_sheet_shows_the_latest_of_each_foot() -> None:
    """Soles first; of each its picture, its ring, how concentric it is, and what it was traced on."""
    visits = [one.visit for one in reversed(usual().history)]
    told = BeautifulSoup(alone(sheet(*visits), WAYS), "lxml").select("#tracings .rg-sheet-tracing")

    assert [("Left fore" in text(one), "traced on a photograph" in text(one)) for one in told[:2]] == [
        (True, False),
        (False, True),
    ]
    assert [len(one.select("figure svg.picture")) for one in told[:2]] == [3, 3]
    assert len(told) == MOST["tracings"]


def test_the_same_records_tell_the_same() -> None:
    """Byte for byte."""
    assert str(section(usual())) == str(section(usual()))


def test_without_tracings_nothing_is_told() -> None:
    """Neither of a horse without a visit nor of one whose feet were measured alone; no empty frame."""
    bare = summary_of(visit("2026-10-14", left_fore={"before": {"toe_length": 84}}))

    assert tracings_of(summary_of(), WAYS).feet == ()
    assert section(bare).select(".rg-traced-foot, #tracings") == []
