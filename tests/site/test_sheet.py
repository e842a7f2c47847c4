"""The vet's sheet as a document: every figure is the summary's, and it needs nothing else."""

from __future__ import annotations

import re
from datetime import date
from typing import Any

import html5lib
import pytest
from bs4 import BeautifulSoup, Tag

from recordgen.hoof.export.sheet import SheetPicture, SheetRow
from recordgen.hoof.export.sheet_json import edition_of
from recordgen.hoof.growth.rate import Rate
from recordgen.hoof.measures.change import MeasureSummary, Step
from recordgen.hoof.naming import MONTH_DAYS
from recordgen.language.spoken import ENGLISH
from recordgen.records.models.names import FEET, Foot
from recordgen.site.sheet import MOST
from recordgen.site.templates import css_text
from tests.conftest import RECORDS
from tests.support.full_visits import heavy, sheet
from tests.support.horse_records import WAYS, visit
from tests.support.pages import text_of
from tests.support.sheets import alone, demo_alone, demo_horses, demo_sheet, demo_summary, demo_ways, soup_of

BOTH = ["bramble", "pippin"]
NEVER_SAID = re.compile(r"\b(diagnos\w*|healthy|normal|poor|good|bad|severe|mild|excellent|worrying)\b", re.IGNORECASE)


def figure(text: str) -> float:
    """A figure as the sheet writes it, with its true minus sign."""
    return float(text.replace("−", "-").replace("+", ""))


def figures_in(text: str) -> list[float]:
    """All figures in a text."""
    return [figure(found) for found in re.findall(r"[−+]?\d+(?:\.\d+)?", text)]


def on_paper(slug: str) -> list[SheetRow]:
    """The rows that have a line of the sheet's tables, those with the tracings last."""
    rows = demo_sheet(slug).rows
    of_visits = [row for row in rows if not row.with_tracings and row.in_table]
    return [*of_visits[: MOST["rows"]], *[row for row in rows if row.with_tracings and row.on_paper][: MOST["rows"]]]


def month(day: date) -> str:
    """A month where there is hardly any room: Oct 26."""
    return f"{ENGLISH.short_month(day)} {day:%y}"


def measure_cells(slug: str) -> list[tuple[SheetRow, dict[Foot, Tag]]]:
    """Each row of the summary with the cells of its feet: all four, or with the tracings those that were traced."""
    lines = soup_of(demo_alone(slug)).select(".rg-sheet-measures tbody tr")
    feet: dict[str, Foot] = {demo_ways().naming.foot(foot): foot for foot in FEET}
    rows = on_paper(slug)
    return [
        (row, {feet[str(cell["data-label"])]: cell for cell in line.select("td")})
        for row, line in zip(rows, lines, strict=True)
    ]


def told(cell: Tag, part: str) -> list[str]:
    """The texts of parts of a cell."""
    return [" ".join(found.get_text(" ").split()) for found in cell.select(part)]


def near(value: float, digits: int) -> object:
    """A value as it reads with so many digits."""
    return pytest.approx(value, abs=0.5 * 10**-digits + 1e-9)


@pytest.mark.parametrize("slug", BOTH)
def test_latest_readings_are_those_of_the_summary(slug: str) -> None:
    """Before and after, with the day where that was not the last visit; a dash where never measured."""
    for row, cells in measure_cells(slug):
        for foot, cell in cells.items():
            one = row.by_foot.get(foot)
            if one is None:
                assert cell.get_text(strip=True) == "–"
                continue
            _reads_as(one, cell, demo_summary(slug).last_visit)


def _reads_as(one: MeasureSummary, cell: Tag, last: date | None) -> None:
    (now,) = cell.select(".rg-sheet-now")
    (days,) = [told(now, "small")]
    wanted = [value for value in (one.before, one.after) if value is not None]
    digits = max(one.measure.words.decimals, 1)
    shown = "".join(part.get_text(" ") for part in now.contents if getattr(part, "name", None) not in ("b", "small"))

    assert figures_in(shown) == [near(value, digits) for value in wanted]
    assert days == ([] if one.day == last else [ENGLISH.tiny_day(one.day)])


@pytest.mark.parametrize("slug", BOTH)
def test_changes_are_those_of_the_summary(slug: str) -> None:
    """Against the last visit and the first: how much, and the day."""
    seen = 0
    for row, cells in measure_cells(slug):
        for foot, cell in cells.items():
            one = row.by_foot.get(foot)
            if one is None:
                continue
            for step, shown in zip((one.last, one.first), cell.select(".rg-sheet-step"), strict=True):
                seen += step is not None
                _tells(step, shown, max(row.measure.words.decimals, 1))

    assert seen > 40


def _tells(step: Step | None, shown: Tag, digits: int) -> None:
    text = shown.get_text(" ", strip=True).replace(" ‡", "")
    if step is None:
        assert text == "–"
        return
    change, day = text.split(" ", 1)

    assert figure(change) == near(step.change, digits)
    assert day == month(step.since)


@pytest.mark.parametrize("slug", BOTH)
def test_what_changed_is_marked(slug: str) -> None:
    """An arrow, about how much and since when stand at each figure that is told to have changed, and at no other."""
    changed = {(one.of.foot, one.of.measure.key): one for one in demo_summary(slug).changes.real}
    marks = {
        (foot, row.measure.key): mark.get_text()
        for row, cells in measure_cells(slug)
        for foot, cell in cells.items()
        for mark in cell.select(".rg-sheet-now > b")
    }

    assert marks
    assert marks.keys() == changed.keys()
    for key, mark in marks.items():
        assert mark[0] == ("↓" if changed[key].change < 0 else "↑")
        assert mark.endswith(f", {month(changed[key].since)}")


@pytest.mark.parametrize("slug", BOTH)
def test_way_and_error_stand_beside_each_measure(slug: str) -> None:
    """The way, the sd, whether it is published or of own readings, and the smallest real change."""
    lines = soup_of(demo_alone(slug)).select(".rg-sheet-measures tbody th small")
    rows = on_paper(slug)
    for row, line in zip(rows, lines, strict=True):
        way, sd, real = " ".join(line.get_text().split()).removeprefix("from: ").split("; ")

        assert way == ", ".join(row.ways)
        assert figures_in(sd.replace("–", " "))[0] == near(row.sd[0], 1)
        known = row.errors if len(row.errors) > 1 else [one for one in row.errors if one != "assumed"]
        assert re.sub(r"^sd [\d.–]+ ?", "", sd) == ", ".join({"own": "own readings"}.get(one, one) for one in known)
        assert figures_in(real.replace("–", " "))[0] == near(row.real_from[0], 1)


def test_an_assumed_error_beside_a_published_one_is_told() -> None:
    """Of two feet, one of which was taken in a way whose error nobody published."""
    angle: dict[str, Any] = {"before": {"toe_angle": 49}}
    gauge = visit("2026-09-14", left_fore=angle, methods={"toe_angle": "gauge"})
    one = sheet(gauge, visit("2026-10-14", right_fore=angle, methods={"toe_angle": "photo"}))
    line = soup_of(alone(one, WAYS)).select(".rg-sheet-measures tbody th small")[0].get_text(" ")

    assert set(one.rows[0].errors) == {"assumed", "published"}
    assert re.search(r"assumed, published|published, assumed", " ".join(line.split()))


@pytest.mark.parametrize("slug", [*BOTH, "moss"])
def test_growth_is_that_of_the_summary(slug: str) -> None:
    """Net growth with its interval and cycles, growth by a mark and wear; mm a month."""
    growth = demo_summary(slug).growth
    lines = soup_of(demo_alone(slug)).select(".rg-sheet-growth tbody tr")

    for foot, line in zip(growth.feet.values(), lines, strict=False):
        cells = [cell.get_text(strip=True) for cell in line.select("td")]
        assert figures_in(cells[0].replace("–", " ")) == _month(foot.net)
        assert cells[1] == str(foot.net.cycles)
        if foot.true and foot.wear:
            assert figures_in(cells[2].replace("–", " ")) == _month(foot.true)
            assert figures_in(cells[3].replace("–", " ")) == _month(foot.wear)
    assert figures_in(lines[-1].select("td")[0].get_text().replace("–", " ")) == _month(growth.together)


def _month(rate: Rate) -> list[object]:
    return [near(MONTH_DAYS * value, 1) for value in (rate.mean, rate.low, rate.high)]


@pytest.mark.parametrize("slug", BOTH)
def test_visits_stand_with_their_days(slug: str) -> None:
    """Day, days since the one before, whether it was not trimmed; the median of all."""
    found, values = soup_of(demo_alone(slug)), demo_sheet(slug)
    lines = [" ".join(line.get_text().split()) for line in found.select(".rg-sheet-visits li")]

    assert len(lines) == len(values.visits)
    for line, one in zip(lines, values.visits, strict=True):
        assert line.endswith("not trimmed") is not one.trimmed
        assert one.days is None or f", {one.days} d" in line
    assert values.intervals
    assert f"median {values.intervals.middle:g}, " in text_of(found, "#visits")


def test_grades_stand_under_the_name_of_their_scale() -> None:
    """Grades of Pippin, lameness first and in words, the newest first; how many earlier ones there are."""
    found, grades = soup_of(demo_alone("pippin")), demo_summary("pippin").grades
    lines = dict(zip(("Obel", "body condition", "crest"), found.select("#scales li"), strict=True))

    assert "Last: grade 0 of 4 (Obel): sound." in lines["Obel"].get_text()
    assert "and 2 earlier" in lines["body condition"].get_text()
    for scale, line in lines.items():
        shown = [float(one.get_text()) for one in line.select(".rg-sheet-grade b")]
        assert shown == [one.grade for one in reversed(grades[scale])][:5]


def test_cautions_closed_tell_how_and_by_whom() -> None:
    """With the first and the last day, the latest first, by the vet where one ended it; the others are counted."""
    found, closed = soup_of(demo_alone("pippin")), demo_summary("pippin").closed_cautions
    text = text_of(found, "#closed")

    assert "None is open" in text_of(found, "#cautions")
    for one in closed[: MOST["closed"]]:
        assert f"{ENGLISH.tiny_day(one.since)} to {ENGLISH.tiny_day(one.ended)} : {one.seen}" in text
    assert f"And {len(closed) - MOST['closed']} that ended earlier." in text
    assert "Ended by the vet, Imogen Sayle" in text


def test_open_cautions_tell_since_when_and_how_often() -> None:
    """The record, its age, and what the owner reads."""
    (one,) = demo_summary("fennel").cautions
    text = text_of(soup_of(demo_alone("fennel")), "#cautions")

    assert f"{one.seen} {one.age}." in text
    assert "The owner reads: arrange soon." in text


def test_the_vet_stands_in_the_vet_s_words() -> None:
    """Plan and entries, letter for letter; the earlier ones on the second page."""
    found, horse = soup_of(demo_alone("pippin")), demo_summary("pippin").horse
    text = f"{text_of(found, '#vet')} {text_of(found, '#earlier')}"

    assert horse.vet_plan
    assert " ".join(horse.vet_plan.words.split()) in text
    assert all(entry.words and entry.words in text for entry in demo_sheet("pippin").vet)


def test_who_it_is_and_who_says_so() -> None:
    """Numbers of the horse, consent, practice with its telephone, the day and the edition."""
    found = soup_of(demo_alone("bramble"))
    text = f"{text_of(found, 'header')} {text_of(found, '#about')}"
    wanted = ["999000000104217", "826ZZZ000104217", "pony, gelding, born 2011, 139.7 cm", "Willowmere"]
    wanted += ["agreed by Jonah Peake, 5 Mar 2025", "Wren Ashdown, Hazel Hoof Care, 07700 900142"]
    wanted += ["as of 25 November 2026", f"Edition {edition_of(demo_sheet('bramble'))}", "both hinds turn out a little"]

    assert [one for one in wanted if one not in text] == []


def test_a_plan_that_ended_is_not_told_as_running() -> None:
    """The first lines say when it ended, and the plan's own words stay."""
    plan: Any = {"by": "A. Vet", "date": "2026-01-05", "words": "Trim little.", "until": "2026-06-30"}
    found = soup_of(alone(sheet(visit("2026-10-14", left_fore={"before": {"toe_length": 86}}), vet_plan=plan), WAYS))

    assert "The vet's plan of 5 January 2026 ended on 30 June 2026." in text_of(found, "#why")
    assert "Trim little." in text_of(found, "#vet")


def test_no_open_caution_is_left_out() -> None:
    """Of very many the most urgent stand on the first page, the next on the second, and all others by their names."""
    foot = {"pulse": "strong", "heat": True, "sole": {"sensitive": True}}
    one = sheet(visit("2026-10-14", left_fore=foot, right_fore=foot, left_hind=foot))
    found = soup_of(alone(one, WAYS))
    shown, rest = text_of(found, "#cautions"), text_of(found, "#also-open")

    first, named = MOST["cautions"], MOST["cautions"] + MOST["also_open"]
    cautions = one.summary.cautions
    assert len(cautions) > named
    assert all(caution.seen in shown for caution in cautions[:first])
    assert all(caution.seen in rest for caution in cautions[first:named])
    assert all(WAYS.naming.caution(caution.rule) in rest for caution in cautions[named:])


def test_no_finding_is_left_out() -> None:
    """Of very many at a foot the first stand under its picture, all others on the second page."""
    one = heavy()
    found = soup_of(alone(one, WAYS))
    shown, rest = text_of(found, "#seen"), text_of(found, "#also-seen")
    left_fore = one.summary.feet["left_fore"].findings

    assert "And 4 more, on the second page." in shown
    assert all(finding.text in shown for finding in left_fore[: MOST["findings"]])
    assert all(finding.text in rest for finding in left_fore[MOST["findings"] :])


def test_no_measure_is_left_out() -> None:
    """A measure without a row of the table is listed under it with its last values."""
    found, one = soup_of(alone(heavy(), WAYS)), heavy()
    listed = text_of(found, "#measures > p")

    assert "crack at the toe, mm: left fore 20, right fore 20, left hind 20, right hind 20" in listed
    assert [row.measure.zone for row in one.rows if not row.with_tracings and not row.in_table].count(None) == 0


def test_few_visits_have_no_charts() -> None:
    """One visit has its feet, and the words that no change can be told."""
    found = soup_of(demo_alone("nutmeg"))

    assert found.select(".rg-sheet-pictures") == []
    assert len(found.select("#seen svg.picture")) == 4
    assert "no change can be told" in text_of(found, "#changed")


def test_consent_that_is_missing_or_refused_is_told() -> None:
    """The sheet never reads as if somebody had agreed."""
    no: Any = {"vet": "no", "by": "Jonah Peake", "date": "2026-03-05"}
    refused, missing = (soup_of(alone(sheet(**values), WAYS)) for values in ({"consent": no}, {}))

    assert "not agreed: Jonah Peake, 5 Mar 2026" in text_of(refused, "#about")
    assert "nobody's agreement is recorded" in text_of(missing, "#about")


def test_what_was_not_measured_is_told() -> None:
    """Measures of the last visit that are missing, with their feet, and those never taken."""
    text = text_of(soup_of(demo_alone("bramble")), "#not-measured")

    assert (
        "Not on 21 Oct 2026 , but before: inner heel (left hind); outer heel (left hind); toe angle (left hind);"
        in text
    )
    assert "Never, on any foot : heel angle; inner heel angle; outer heel angle; pastern angle;" in text


def test_feet_not_looked_at_are_told() -> None:
    """Those of the last visit."""
    one = sheet(visit("2026-10-14", left_fore={"before": {"toe_length": 86}}))
    text = text_of(soup_of(alone(one, WAYS)), "#not-measured")

    assert "Feet not looked at on 14 Oct 2026: right fore, left hind, right hind." in text
    assert "after the trim of 14 Oct 2026: left fore." in text


@pytest.mark.parametrize(
    ("amendments", "words"),
    [
        (None, "Not looked up for this sheet."),
        ([], "No visit was amended later"),
        ([(date(2026, 10, 14), "toe length 81, before 80")], "Visit of 14 Oct 2026 : toe length 81, before 80"),
    ],
)
def test_amendments(amendments: list[tuple[date, str]] | None, words: str) -> None:
    """Not looked up, none, or each with the day of its visit."""
    found = alone(demo_sheet("bramble", amendments=amendments), demo_ways())

    assert words in text_of(soup_of(found), "#amendments")


def test_photographs_stand_where_there_are_any() -> None:
    """With their day and words; no empty place where there are none."""
    picture = SheetPicture(date(2026, 10, 14), "left fore from below", "data:image/png;base64,AAAA")
    found = soup_of(alone(demo_sheet("bramble", pictures=[picture]), demo_ways()))
    image = found.select_one("#photographs img")

    assert image is not None
    assert (image["src"], image["alt"]) == (picture.address, picture.words)
    assert soup_of(demo_alone("bramble")).select_one("#photographs") is None


@pytest.mark.parametrize("slug", BOTH)
def test_small_multiples_of_length_and_angle(slug: str) -> None:
    """Four feet each, drawn inside the document."""
    found = soup_of(demo_alone(slug))

    assert [len(found.select(f"{part} svg.picture")) for part in ("#toe-length", "#toe-angle")] == [4, 4]
    assert "<!--late" not in demo_alone(slug)


@pytest.mark.parametrize("slug", demo_horses())
def test_it_needs_no_other_file(slug: str) -> None:
    """No script, no link but to ring or write to the trimmer, nothing loaded."""
    found = soup_of(demo_alone(slug))
    links = [str(link["href"]) for link in found.find_all("a")]

    assert [tag.name for tag in found.find_all(["script", "link", "iframe", "object"])] == []
    assert all(link.startswith(("tel:", "mailto:")) for link in links)
    assert re.findall(r"url\(|@import|https?://(?!www\.w3\.org/2000/svg)", demo_alone(slug)) == []


@pytest.mark.parametrize("slug", demo_horses())
def test_it_is_well_formed(slug: str) -> None:
    """The parser of the HTML standard finds nothing to mend; one first heading, no id twice."""
    found = soup_of(demo_alone(slug))
    ids = [tag["id"] for tag in found.select("[id]")]

    assert html5lib.HTMLParser(strict=True).parse(demo_alone(slug)) is not None
    assert len(found.find_all("h1")) == 1
    assert sorted(ids) == sorted(set(ids))


@pytest.mark.parametrize("slug", demo_horses())
def test_nothing_private_stands_on_it(slug: str) -> None:
    """No private note, and no telephone number of an owner."""
    folder = next(RECORDS.glob(f"*/{slug}"))
    files = [*folder.glob("*.yaml"), folder.parent / "stable.yaml"]
    text = "\n".join(file.read_text("utf-8") for file in files)
    notes = [found.strip("'\"")[:30] for found in re.findall(r"private_note: (.+)", text)]
    phones = re.findall(r"role: (?:owner|manager)[^,]*, phone: ([\d ]+)", text)

    assert [one for one in [*notes, *phones] if one in demo_alone(slug)] == []


@pytest.mark.parametrize("slug", demo_horses())
def test_no_word_of_another_horse_stands_on_it(slug: str) -> None:
    """Neither name nor number of any other."""
    found = soup_of(demo_alone(slug))
    for part in found.select("style"):
        part.decompose()
    words = set(re.findall(r"\w+", found.get_text(" ")))
    others = [demo_summary(other).horse for other in demo_horses() if other != slug]

    assert demo_summary(slug).horse.name in words
    assert words.isdisjoint({known for one in others for known in (one.name, one.microchip, one.ueln)})


@pytest.mark.parametrize("slug", demo_horses())
def test_our_own_words_judge_nothing(slug: str) -> None:
    """No diagnosis of ours and no adjective; vets' and trimmers' words, scales and names are theirs."""
    found = soup_of(demo_alone(slug))
    for part in found.select("#vet, #earlier, #scales, #keeping, .rg-sheet-said, style, svg"):
        part.decompose()

    assert NEVER_SAID.findall(found.get_text(" ")) == []


NASTY = "</style><script>alert(1)</script> {{ 7 * 7 }} \"q\" 'p' \\ } é"


def test_whatever_is_typed_stands_as_typed() -> None:
    """In names, words of vets and notes; and it ends no style."""
    values: dict[str, Any] = {
        "name": NASTY,
        "conformation": [NASTY],
        "consent": {"vet": "yes", "by": NASTY, "date": "2026-03-05"},
    }
    entry = {"date": "2026-10-14", "by": NASTY, "kind": "seen", "words": NASTY}
    feet: Any = {"left_fore": {"before": {"toe_length": 86}}}
    one = sheet(visit("2026-10-14", vet=[entry], keeping={"ground": NASTY}, by=NASTY, **feet), **values)
    found = BeautifulSoup(alone(one, WAYS), "html5lib")

    assert found.get_text().count(NASTY) >= 8
    assert found.find_all("script") == []
    assert len(found.find_all("style")) == 2


def test_text_in_a_style_sheet_is_numbered() -> None:
    """Each sign that could end the text or the style. Source: CSS Syntax Module Level 3, section 4.3.7."""
    assert css_text('a"\\</é') == "a\\22 \\5c \\3c \\2f \\e9 "


def test_a_horse_without_a_visit_has_its_sheet() -> None:
    """It says so, and shows no empty table."""
    found = soup_of(alone(sheet(), WAYS))

    assert "no visit yet" in text_of(found, "header")
    assert found.find("table") is None
