"""The page of the tracing screen: whole in itself, its words and steps complete."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from recordgen.hoof.tracing.figures import COMPUTED
from recordgen.packaged import packaged
from recordgen.problems import Trouble
from recordgen.records.models.tracing import LANDMARKS, TracedView
from recordgen.site.single_page import read_part
from recordgen.site.trace.page import FOLDER, SCRIPTS, screen_data, trace_page
from recordgen.site.trace.steps import FILE, steps_of_screen
from tests.support.reading_age import grade, words
from tests.support.tracing_screen import traced_practice

DATA = screen_data()
HARDEST = 8


@pytest.mark.parametrize("view", LANDMARKS)
def test_every_landmark_is_a_step_with_words_and_a_place_in_the_drawing(view: TracedView) -> None:
    """Each once."""
    steps = [step["mark"] for part in ("steps", "later") for step in DATA["steps"][view][part]]

    assert sorted(steps) == sorted(LANDMARKS[view])
    assert set(DATA["steps"][view]["marks"]) == set(steps) <= set(DATA["words"]["marks"])


def test_every_figure_but_those_of_zones_has_a_name() -> None:
    """And no name is left over."""
    computed = {name for groups in COMPUTED.values() for group in groups for name in group.needs}
    named, of_zones = set(DATA["words"]["figures"]), re.compile("(flare|ring|concentric)_.*(heel|quarter|toe)_mm")

    assert named <= computed
    assert {name for name in computed - named if not of_zones.fullmatch(name)} == {
        "bar_difference_deg",
        "lateral_area_percent",
        "lateral_gap_mm",
        "medial_gap_mm",
    }
    assert all(name in named for names in DATA["words"]["headline"].values() for name in names)


def test_every_word_a_script_asks_for_is_there() -> None:
    """By its name in the table."""
    asked = {name for script in SCRIPTS for name in re.findall(r'words\("(\w+)"', read_part(FOLDER, script))}

    assert asked - set(DATA["words"]) == set()
    assert len(asked) > 20


def test_the_page_asks_no_other_host(tmp_path: Path) -> None:
    """No address stands in it, and its policy lets nothing in but its own picture."""
    page = trace_page(traced_practice(tmp_path), "left fore").decode()

    assert re.findall(r"https?://", page) == []
    assert "default-src 'none'" in page


def test_typed_text_cannot_end_the_script(tmp_path: Path) -> None:
    """Whatever a foot is called."""
    assert b"</script><b>" not in trace_page(traced_practice(tmp_path), "</script><b>")


def test_a_practice_may_have_words_of_its_own(tmp_path: Path) -> None:
    """Under site_templates/trace."""
    own = tmp_path / "site_templates" / "trace"
    own.mkdir(parents=True)
    (own / "words.yaml").write_text(
        read_part(FOLDER, "words.yaml").replace("Tap the point of the frog.", "Tap the tip.")
    )

    assert screen_data(tmp_path / "site_templates")["words"]["marks"]["frog_apex"] == "Tap the tip."


@pytest.mark.parametrize(
    ("text", "place"),
    [
        (b"a: [\n", ", line 2,"),
        (b"- Tap\n", ""),
        (b"a: \xff\n", ""),
        (b"marks: Tap\n", ", marks,"),
        (b"marks: {wall: 7}\n", ", marks.wall,"),
    ],
)
def test_words_that_cannot_be_read_are_told_by_their_file(tmp_path: Path, text: bytes, place: str) -> None:
    """With the line, where one is known; a file of remarks alone changes nothing."""
    own = tmp_path / FOLDER / "words.yaml"
    own.parent.mkdir()
    own.write_bytes(b"# nothing yet\n")
    remarks_alone = screen_data(tmp_path)["words"]
    own.write_bytes(text)

    assert remarks_alone == DATA["words"]
    with pytest.raises(Trouble, match=f"^site_templates/trace/words.yaml{place} is no table"):
        screen_data(tmp_path)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (b"sole: [\n", ", line 1: a value is missing, or a bracket"),
        (b"- Tap\n", ""),
        (b"sole: \xff\n", ""),
        (b"# nothing yet\n", ": the file holds comments alone"),
        (b"camera: {}\nsole: Tap\n", ", line 2: sole should hold keys"),
        (
            b"sole:\n  drawing: []\n  steps: [frog_apex]\n  marks: {}\n",
            ", line 3: sole, steps, number 1 should hold keys",
        ),
        (b"sole:\n  drawing: [[thin]]\n  steps: []\n  marks: {}\n", ", line 2: sole, drawing, number 1"),
        (b"sole:\n  drawing: []\n  steps: [{mark: toe}]\n  marks: {}\n", ", line 3: 'toe' is no landmark of the view"),
    ],
)
def test_steps_that_cannot_be_read_are_told_by_file_and_line(tmp_path: Path, text: bytes, said: str) -> None:
    """The screen is not shown without what it needs; our own table is as it should be."""
    own = tmp_path / FOLDER / "steps.yaml"
    own.parent.mkdir()
    own.write_bytes((packaged() / FILE).read_bytes())
    ours = steps_of_screen(tmp_path)
    own.write_bytes(text)

    assert ours == DATA["steps"]
    with pytest.raises(Trouble, match=f"^{FILE}{said}"):
        screen_data(tmp_path)


def test_its_words_are_plain() -> None:
    """No more than eight years of school."""
    texts = [*DATA["words"]["camera_how"].values(), *DATA["words"]["faults"].values(), *DATA["words"]["marks"].values()]
    texts += [text for text in DATA["words"].values() if isinstance(text, str)]
    hard = {text: round(grade(text), 1) for text in texts if len(words(text)) >= 10 and grade(text) > HARDEST}

    assert hard == {}
