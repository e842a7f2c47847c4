"""recordgen stables, and the builds it is for."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from recordgen.cli import build
from tests.support.apart import STABLES, git, tangled_practice
from tests.support.commands import run_today


@pytest.fixture
def records(tmp_path: Path) -> Path:
    """A practice of three stables in git."""
    return tangled_practice(tmp_path / "records")


def listed(records: Path, *words: str | Path) -> dict[str, list[str]]:
    """The stables that are told as JSON, with the reasons."""
    told = run_today("stables", "--json", *words, records=records)
    assert told.exit_code == 0, told.output
    return {one["stable"]: one["why"] for one in json.loads(told.output)["stables"]}


def test_all_stables_are_listed_with_their_names(records: Path) -> None:
    """As a line each, and as JSON."""
    told = run_today("stables", records=records)

    assert [line.split(maxsplit=1) for line in told.output.splitlines()] == [
        ["hazel-bottom", "Yard 1"],
        ["old-mill", "Yard 2"],
        ["willowmere", "Yard 0"],
    ]
    assert listed(records) == {slug: [] for slug in sorted(STABLES)}


def test_those_that_changed_since_a_revision_are_told(records: Path) -> None:
    """By its own records, kept in git or not yet; all of them where something changed that all share."""
    assert listed(records, "--changed", "HEAD") == {}

    (records / "old-mill" / "horse-0" / "2026-11-20.yaml").write_text("date: 2026-11-20\n")
    assert listed(records, "--changed", "HEAD") == {"old-mill": ["records"]}

    git(records, "add", ".")
    git(records, "commit", "--quiet", "--message=seen")
    (records / "practice.yaml").write_text("name: Hazel Hoof Care\ntrimmer: Wren\n")
    assert listed(records, "--changed", "HEAD~1") == {
        "hazel-bottom": ["shared"],
        "old-mill": ["records", "shared"],
        "willowmere": ["shared"],
    }


def test_a_stable_whose_comparison_changed_is_told_too(records: Path, tmp_path: Path) -> None:
    """Infections at one place alter the sentence at the others, though their records are the same."""
    run_today("stables", "--counts", tmp_path / "before.json", records=records)
    git(records, "tag", "built")
    for horse in range(4):
        file = records / "old-mill" / f"horse-{horse}" / "2026-11-04.yaml"
        file.write_text(file.read_text().replace("infection: none", "infection: surface"))
    found = listed(records, "--changed", "built", "--before", tmp_path / "before.json")

    assert found == {"hazel-bottom": ["counts"], "old-mill": ["records"], "willowmere": ["counts"]}


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["--changed", "nowhere"], "Git knows no entry 'nowhere' here. Look with: git log."),
        (["--changed", "--all"], "Git knows no entry '--all' here"),
        (["--before", "practice.yaml"], "practice.yaml holds no counts"),
        (["--counts", "no/such/folder/counts.json"], "No such file or directory"),
    ],
)
def test_what_cannot_be_is_told(records: Path, monkeypatch: pytest.MonkeyPatch, words: list[str], says: str) -> None:
    """As a sentence, or as JSON with the same sentence."""
    monkeypatch.chdir(records)
    told = run_today("stables", *words, records=records)
    held = json.loads(run_today("stables", *words, "--json", records=records).output)

    assert told.exit_code == 1
    assert says in told.output
    assert set(held) == {"error", "way_out", "problems"}


def test_without_git_it_is_told(tmp_path: Path) -> None:
    """Nothing is known of a revision there."""
    (tmp_path / "records" / "willowmere").mkdir(parents=True)
    told = run_today("stables", "--changed", "HEAD", records=tmp_path / "records")

    assert (told.exit_code, "Traceback" in told.output) == (1, False)


def test_a_build_tells_its_sites_as_one_document(
    records: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Which sites, where, how many pages, and whether anything was done; what is wrong has the same form."""
    site: dict[str, Any] = {"site": "willowmere", "name": "Yard 0", "page": "x", "pages": 3, "stood": False}
    answer: dict[str, Any] = {"sites": (site,), "strangers": (), "warnings": ()}
    monkeypatch.setattr(build, "_build", lambda asked, stages: answer)
    told = json.loads(run_today("build", "--out", tmp_path / "sites", "--json", records=records).output)
    (records / "willowmere" / "stable.yaml").write_text("name: [\n")
    monkeypatch.undo()
    wrong = run_today("build", "--out", tmp_path / "sites", "--json", records=records)

    assert told == {"sites": [site], "strangers": [], "problems": [], "unchanged": False}
    assert json.loads(wrong.output)["problems"][0]["path"].endswith("willowmere/stable.yaml")
    assert wrong.exit_code == 1


def test_the_own_site_can_be_built_alone(records: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """It bears the name that no stable can have."""
    asked: list[list[str]] = []
    monkeypatch.setattr("recordgen.site.build.build_sites", lambda context, slugs, *_: asked.append(slugs) or [])
    (tmp_path / "sites").mkdir()
    run_today("build", "--stable", "practice", "--out", tmp_path / "sites", records=records)
    without = run_today("build", "--with", tmp_path / "counts.json", records=records)

    assert asked == [["practice"]]
    assert (without.exit_code, "--with goes with --stable NAME." in without.output) == (2, True)
