"""The cautions against what is published about the signs behind them: levels, advice and edges."""

from __future__ import annotations

import pytest

from recordgen.hoof.cautions.rules.history import SAME_WALL, SUDDEN_DEGREES
from recordgen.hoof.measures.measures import smallest_real_change
from tests.support.horse_records import MEASURES, REFERENCE

WORDS = REFERENCE.cautions


def advice(rule: str) -> str:
    """Safe steps meanwhile, and what not to do."""
    return f"{WORDS[rule].meanwhile} {WORDS[rule].do_not or ''}"


@pytest.mark.parametrize(
    ("rule", "level"),
    [
        ("object-in-foot", "call now"),
        ("bears-no-weight", "call now"),
        ("signs-together", "call now"),
        ("stance", "call today"),
        ("pulse", "call today"),
        ("heat", "call today"),
        ("wound", "call now"),
        ("crack-open", "call today"),
        ("crack-and-lame", "call today"),
        ("frog-tissue", "call today"),
        ("painful-groove", "arrange soon"),
        ("groove-and-lame", "call today"),
        ("sore-and-lame", "call today"),
    ],
)
def test_the_levels_of_the_signs(rule: str, level: str) -> None:
    """At once: an object in the foot, no weight, several signs, a wound; the same day what can wait some hours.

    That is one sign, an open crack or one of a lame horse, proud or creamy tissue, and a sore groove or soreness after
    a trim where the horse is lame.

    Derived from: Morton, University of Florida, 12 December 2012; Merck Veterinary Manual; EQUUS, April 2017; Horse &
    Rider; Burns, American Farriers Journal; Equine Clinical Medicine, Surgery and Reproduction, 2nd ed., p. 67.
    """
    assert WORDS[rule].level == level


@pytest.mark.parametrize(
    ("rule", "said"),
    [
        ("object-in-foot", "Do not pull it out before the vet has said so by phone"),
        ("object-in-foot", "from being driven deeper"),
        ("object-taken-out", "tetanus"),
        ("object-taken-out", "Keep the object"),
        ("wound", "Rinse it with clean water or saline and cover it"),
        ("wound", "no powder, cream or strong antiseptic"),
    ],
)
def test_an_object_and_a_wound(rule: str, said: str) -> None:
    """Left where it is until the vet has spoken, kept if it is out; water or saline, and nothing else, on a wound.

    Source: Morton, University of Florida, 12 December 2012; Merck Veterinary Manual; health4horses.com.au.
    """
    assert said in advice(rule)


@pytest.mark.parametrize("rule", ["signs-together", "stance", "pulse", "heat"])
def test_signs_that_ask_for_rest_and_a_deep_bed(rule: str) -> None:
    """Off the grass with least walking, a deep bed, no trim without the vet, no walking it off.

    Source: EQUUS, April 2017; laminitis.org (deep bed); Redwings, as reported in Horse & Hound.
    """
    for said in ("Off the grass with as few steps as can be", "deep soft bed", "No trimming until the vet agrees"):
        assert said in advice(rule)
    assert "Do not walk the horse to see whether it wears off" in advice(rule)


def test_no_weight_is_not_taken_for_an_abscess() -> None:
    """It can have several causes.

    Source: Penno, AAEP 2012.
    """
    assert "Do not take it for an abscess" in advice("bears-no-weight")


@pytest.mark.parametrize("rule", ["crack-open", "crack-and-lame"])
def test_an_open_crack_is_not_patched(rule: str) -> None:
    """Not then.

    Source: Burns, American Farriers Journal.
    """
    assert "Do not fill or patch it" in advice(rule)


@pytest.mark.parametrize("rule", ["painful-infection", "painful-groove", "groove-and-lame"])
def test_nothing_caustic_on_live_tissue(rule: str) -> None:
    """It burns; on horn it is another matter.

    Source: Adams and Stashak, Lameness in Horses, 7th ed., p. 1126.
    """
    assert "Put nothing sharp or burning" in advice(rule)
    assert "vet" in advice(rule)


def test_proud_tissue_is_not_scraped_or_burned() -> None:
    """The vet is asked the same day.

    Source: Equine Clinical Medicine, Surgery and Reproduction, 2nd ed., p. 67.
    """
    assert "Do not scrape or burn it" in advice("frog-tissue")


@pytest.mark.parametrize("rule", ["heavy", "crest"])
def test_nobody_is_told_to_starve_a_horse(rule: str) -> None:
    """Feed is the vet's to change.

    From memory, not read: starving risks hyperlipaemia, worst in ponies and donkeys.
    """
    assert "Do not starve a horse, pony or donkey" in advice(rule)
    assert "before changing them" in advice(rule)


def test_soreness_after_a_trim_is_told_with_its_study() -> None:
    """It went with a higher rate of laminitis.

    Source: Pollard et al. 2019, BMC Vet Res, doi 10.1186/s12917-019-1798-8.
    """
    assert "10.1186/s12917-019-1798-8" in WORDS["sore-after-trim"].source


@pytest.mark.parametrize(
    ("what", "degrees"),
    [
        pytest.param("one trim, toe angle", 51.40 - 50.05, id="Iran. J. Vet. Surg., article 79374: 10 horses"),
        pytest.param("between horses, front", 3.9, id="n = 225"),
        pytest.param("between horses, hind", 3.7, id="n = 225"),
    ],
)
def test_a_sudden_change_of_angle_is_more_than_any_of_these(what: str, degrees: float) -> None:
    """A trim changes the toe angle by 1.35 degrees, and horses differ by an SD of 3.7 to 3.9.

    Source: Iran. J. Vet. Surg., article 79374; An investigation of the shape of the lateral aspect of the hoof capsule,
    n = 225 (abstract).
    """
    assert degrees < SUDDEN_DEGREES, what


@pytest.mark.parametrize("method", ["protractor", "gauge", "photograph"])
def test_a_sudden_change_is_more_than_the_error_of_each_way(method: str) -> None:
    """Two readings of the same toe differ by less than 5 degrees, whichever way they are taken.

    Derived from: Peel, Peel & Davies 2006, Equine Vet J Suppl 36:431-434 (gauge); the others are assumed.
    """
    sd = MEASURES["toe_angle"].words.methods[method].sd

    assert smallest_real_change(sd, sd) < SUDDEN_DEGREES


def test_two_abscesses_in_one_wall() -> None:
    """Thirteen months are 396 days, in which the toe wall renews itself.

    Derived from: Lungwitz & Adams, A Text-Book of Horseshoeing, section F (11 to 13 months), of 30.44 days.
    """
    assert SAME_WALL.days == round(13 * 30.44)
