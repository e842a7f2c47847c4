"""recordgen build."""

from __future__ import annotations

import hashlib
import re
import shutil
from pathlib import Path

import pytest

from recordgen.site.site_folders import mark_folder
from tests.support.commands import run_today, small_practice


def contents(folder: Path) -> dict[str, str]:
    """The files of a folder by name, each as a hash of its bytes."""
    files = (path for path in sorted(folder.rglob("*")) if path.is_file())
    return {str(path.relative_to(folder)): hashlib.sha256(path.read_bytes()).hexdigest() for path in files}


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path]:
    """A small practice and its sites."""
    folder = tmp_path_factory.mktemp("built")
    records = small_practice(folder)
    assert run_today("build", "--out", folder / "sites", records=records).exit_code == 0
    return records, folder / "sites"


def test_one_site_for_each_stable_and_one_for_the_trimmer(built: tuple[Path, Path]) -> None:
    """The folder of sites holds these and nothing else."""
    assert sorted(path.name for path in built[1].iterdir()) == ["practice", "willowmere"]


def test_the_same_records_make_the_same_bytes(built: tuple[Path, Path], tmp_path: Path) -> None:
    """Built again elsewhere, in one process, every file is the same."""
    run_today("build", "--out", tmp_path, "--processes", "1", records=built[0])

    assert contents(tmp_path) == contents(built[1])


def test_the_old_site_stays_when_something_is_wrong(built: tuple[Path, Path], tmp_path: Path) -> None:
    """An error is told, nothing is written, and the exit code is 1."""
    before = contents(built[1])
    records = small_practice(tmp_path)
    (records / "willowmere/stable.yaml").write_text("name: [\n")
    result = run_today("build", "--out", built[1], records=records)

    assert result.exit_code == 1
    assert "records/willowmere/stable.yaml:" in result.output
    assert "Nothing was written." in result.output
    assert contents(built[1]) == before


def test_a_template_of_the_practices_own_goes_before_ours(tmp_path: Path) -> None:
    """A file of the same name under the records' site_templates is used instead."""
    records = small_practice(tmp_path)
    own = records / "site_templates" / "pages" / "horse" / "about.html"
    own.parent.mkdir(parents=True)
    own.write_text("<section id='about'><h2>In our own words</h2></section>")
    run_today("build", "--stable", "willowmere", "--out", tmp_path / "sites", records=records)

    assert "In our own words" in (tmp_path / "sites/willowmere/horses/bramble.html").read_text()


def test_a_broken_template_is_told_without_a_traceback(tmp_path: Path) -> None:
    """The file, the line and the reason are named, and nothing is written."""
    records = small_practice(tmp_path)
    own = records / "site_templates" / "pages" / "horse.html"
    own.parent.mkdir(parents=True)
    own.write_text("<p>\n{{ nobody_knows_this }}\n</p>")
    result = run_today("build", "--out", tmp_path / "sites", records=records)

    assert result.exit_code == 1
    assert "horse.html, line 2" in result.output
    assert list((tmp_path / "sites").iterdir()) == []


def test_a_site_of_a_stable_that_is_gone_is_named(built: tuple[Path, Path]) -> None:
    """A left-over site is not deleted but told."""
    left = built[1] / "gone"
    left.mkdir()
    mark_folder(left, "gone")
    result = run_today("build", "--out", built[1], records=built[0])
    shutil.rmtree(left)

    assert "gone is no stable of these records" in result.output


def test_verbose_tells_each_stage_with_its_time(tmp_path: Path) -> None:
    """-v prints a line for each stage."""
    records = small_practice(tmp_path)
    result = run_today("build", "-v", "--stable", "willowmere", "--out", tmp_path / "sites", records=records)

    assert [line.split()[0] for line in result.stderr.splitlines()] == ["look", "load", "read", "compute", "build"]


def test_verbose_tells_what_was_used_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """First nothing but pictures that both sites share; after a word in one stable's file, pages and all pictures."""
    monkeypatch.setenv("RECORDGEN_CACHE", str(tmp_path / "cache"))
    records, counts = small_practice(tmp_path), []
    for note in ("", "private_note: The lane floods.\n"):
        with (records / "willowmere" / "bramble" / "horse.yaml").open("a") as file:
            file.write(note)
        result = run_today("build", "-v", "--processes", "1", "--out", tmp_path / "sites", records=records)
        last = result.stderr.splitlines()[-1]
        counts.append({kind: (int(again), int(of)) for again, of, kind in re.findall(r"(\d+) of (\d+) (\w+)", last)})
    first, then = counts

    assert (first["sites"], first["pages"][0], then["sites"]) == ((0, 2), 0, (0, 2))
    assert 0 < then["pages"][0] < then["pages"][1] == first["pages"][1]
    assert first["pictures"][0] < first["pictures"][1]
    assert 0 < then["pictures"][0] == then["pictures"][1] < first["pictures"][1]


def test_a_broken_theme_file_is_told_without_a_traceback(tmp_path: Path) -> None:
    """A theme file of the practice's own that cannot be read is named as the cause, and nothing is written."""
    records = small_practice(tmp_path)
    own = records / "site_templates" / "theme" / "main.html"
    own.parent.mkdir(parents=True)
    own.write_text("{% extends 'base.html' %}{% block content %}{% endblocks %}")
    result = run_today("build", "--out", tmp_path / "sites", records=records)

    assert result.exit_code == 1
    assert "site_templates/theme" in result.output
    assert list((tmp_path / "sites").iterdir()) == []


@pytest.mark.parametrize("part", ["pages/base.html", "theme/main.html"])
def test_a_template_that_reaches_out_of_its_sandbox_is_refused(tmp_path: Path, part: str) -> None:
    """The file is named, and no site is written."""
    records = small_practice(tmp_path)
    own = records / "site_templates" / part
    own.parent.mkdir(parents=True)
    own.write_text("{{ ''.__class__.__mro__ }}")
    result = run_today("build", "--stable", "willowmere", "--out", tmp_path / "sites", records=records)

    assert result.exit_code == 1
    assert "access to attribute '__class__' of 'str' object is unsafe" in result.output
    assert not (tmp_path / "sites" / "willowmere").exists()


@pytest.mark.parametrize("link", ["site_templates", "site_templates/theme", "site_templates/theme/assets/hay.css"])
def test_a_link_among_templates_that_leads_out_is_refused(tmp_path: Path, link: str) -> None:
    """The file at its end would be published: it is told by name, and nothing is written."""
    records = small_practice(tmp_path)
    outside = tmp_path / "outside"
    outside.mkdir()
    (records / link).parent.mkdir(parents=True, exist_ok=True)
    (records / link).symlink_to(outside, target_is_directory=True)
    result = run_today("build", "--out", tmp_path / "sites", records=records)

    assert result.exit_code == 1
    assert f"records/{link}:1:1: error: this link leads out of " in result.output
    assert not (tmp_path / "sites" / "willowmere").exists()
