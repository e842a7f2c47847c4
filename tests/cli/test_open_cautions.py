"""Open cautions wherever the trimmer works: due, rounds, summary, and a new visit's file with lines that end them."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from tests.support.commands import run, run_today

SORE = """date: 2026-10-28
signs: [leans back]
feet:
  near_fore: {pulse: strong, drew_blood: yes, wound: {where: coronet}}
"""
FILES = {
    "practice.yaml": "name: Hazel Hoof Care\ntrimmer: Wren Ashdown\nfeet: near and off\n",
    "mill/stable.yaml": "name: Mill\n",
    "mill/ash/horse.yaml": "name: Ash\nborn: 2015\n",
    "mill/elm/horse.yaml": "name: Elm\nborn: 2015\n",
    "mill/ash/2026-10-28.yaml": SORE,
    "mill/elm/2026-10-28.yaml": "date: 2026-10-28\nnote: x\n",
}
NEW = "mill/ash/2026-11-25.yaml"


@pytest.fixture
def sore(tmp_path: Path) -> Path:
    """A practice of two horses; one stands sore, and nothing of it is trimmed until the vet agrees."""
    for name, text in FILES.items():
        file = tmp_path / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text)
    return tmp_path


def begun(records: Path) -> str:
    """The new visit's file of the sore horse."""
    assert run("visit", "mill", "--date", "2026-11-25", "--records", records).exit_code == 0
    return (records / NEW).read_text()


def open_of(records: Path) -> list[str]:
    """The open cautions of the sore horse."""
    told = json.loads(run_today("summary", "mill/ash", "--json", records=records).output)
    return [caution["rule"] for caution in told["cautions"]]


def test_due_tells_what_is_open_and_what_holds_a_trim_back(sore: Path) -> None:
    """Below the horse's own line, by the names that end them; nothing below a horse without one."""
    lines = run_today("due", records=sore).output.splitlines()
    told = json.loads(run_today("due", "--json", records=sore).output)

    assert lines[1].startswith("    No trim until the vet agrees: Several signs were recorded on 28 October 2026")
    assert lines[2:4] == [
        "    call now: signs-together; wound, near_fore",
        "    call today: stance; drew-blood, near_fore; pulse, near_fore",
    ]
    assert len(lines) == 5
    assert [horse["no_trim"] for horse in told] == [[{"rule": "signs-together", "foot": None}], []]
    assert [len(horse["cautions"]) for horse in told] == [5, 0]


def test_rounds_plans_no_trim_until_the_vet_agrees(sore: Path) -> None:
    """The horse is in no round, and stands below with why; the other one is planned."""
    text = run_today("rounds", records=sore).output
    told = json.loads(run_today("rounds", "--json", records=sore).output)

    assert [horse["horse"] for one in told["rounds"] for horse in one["horses"]] == ["elm"]
    assert [horse["name"] for horse in told["no_trim"]] == ["Ash"]
    assert "No trim is planned until the vet agrees:\n  Ash (Mill): Several signs were recorded" in text
    assert "Cautions that are open:\n  Ash (Mill): call now: signs-together; wound, near_fore; call today:" in text
    assert [one["rule"] for one in told["cautions"][0]["cautions"]][:2] == ["signs-together", "wound"]


def test_a_vet_who_agrees_brings_it_back_into_the_rounds(sore: Path) -> None:
    """The cautions stay open; the trim is planned."""
    agreed = "vet: [{date: 2026-11-02, by: Dr Sage, kind: advised, trim_agreed: yes}]\n"
    (sore / "mill/ash/2026-10-28.yaml").write_text(SORE + agreed)
    told = json.loads(run_today("rounds", "--json", records=sore).output)

    assert sorted(horse["horse"] for one in told["rounds"] for horse in one["horses"]) == ["ash", "elm"]
    assert (told["no_trim"], len(told["cautions"])) == ([], 1)


def test_summary_tells_the_name_to_type(sore: Path) -> None:
    """Behind each caution, with its foot as this practice types it; then what holds a trim back."""
    lines = run_today("summary", "mill/ash", records=sore).output.splitlines()
    names = [re.sub(r".*\((.*)\)$", r"\1", line) for line in lines if line.startswith("  call")]

    assert names == ["signs-together", "wound, near_fore", "stance", "drew-blood, near_fore", "pulse, near_fore"]
    assert any(line.startswith("  No trim until the vet agrees: Several signs") for line in lines)


def test_a_new_visit_holds_lines_that_end_what_is_open(sore: Path) -> None:
    """As comments above the rest, with what was seen beside them; the file reads as before."""
    text = begun(sore)

    assert "# resolved:\n#   - {caution: drew-blood, foot: near_fore, date: 2026-11-25, by: }  # The trim drew" in text
    assert "#       - {caution: wound, foot: near_fore}  # A wound of the coronet of the near fore" in text
    assert text.index("# resolved:") < text.index("\ndate: 2026-11-25")
    assert "resolved" not in (sore / "mill/elm/2026-11-25.yaml").read_text()
    assert run_today("check", records=sore).exit_code == 0


def test_the_lines_end_it_once_the_marks_are_taken_away(sore: Path) -> None:
    """Cautions that anybody ends by resolved, and those that are the vet's by the vet's own lines."""
    text = begun(sore).replace("by: }", "by: Wren Ashdown}")
    (sore / NEW).write_text(re.sub(r"(?m)^# (?=resolved:|  - \{caution)", "", text) + "  x\n")
    by_a_word = open_of(sore)
    lines, rest = text.partition("# vet:")[2].split("\ndate:")
    vets = re.sub("(?m)^# ", "", "# vet:" + lines).replace("by:", "by: Dr Sage")
    (sore / NEW).write_text(f"{vets}\ndate:{rest}  x\n")

    assert by_a_word == ["signs-together", "wound", "stance", "pulse"]
    assert open_of(sore) == ["drew-blood"]


def test_a_visit_without_a_sign_ends_what_was_seen_of_the_horse(sore: Path) -> None:
    """Written none or as an empty list; the rest stays open."""
    for none in ("none", "[]", "no"):
        (sore / NEW).write_text(f"date: 2026-11-25\nnote: x\nsigns: {none}\n")

        assert open_of(sore) == ["signs-together", "wound", "drew-blood", "pulse"]
    (sore / NEW).write_text("date: 2026-11-25\nnote: x\nsigns:\n")

    assert "stance" in open_of(sore)
