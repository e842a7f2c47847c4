"""Building many sites: apart from each other, and whole or not at all."""

from __future__ import annotations

import multiprocessing
import os
import pickle
import shutil
import signal
import subprocess
import sys
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from recordgen import folders
from recordgen.cache.entries import Cache
from recordgen.files import list_files
from recordgen.folders import clear_workrooms
from recordgen.locks import hold_lock
from recordgen.problems import Trouble
from recordgen.records.load.everything import read_whole
from recordgen.sentences import worded
from recordgen.site import build
from recordgen.site.build import build_sites, find_strangers
from recordgen.site.build_context import BuildContext
from recordgen.site.pages.sites import PRACTICE, render_site
from recordgen.site.site_folders import MARK, mark_folder
from tests.conftest import RECORDS, ROOT, TODAY
from tests.support import practice_folders


@pytest.fixture(scope="module")
def context() -> BuildContext:
    """One stable of the demo practice, ready to build."""
    return BuildContext.of(read_whole(RECORDS, TODAY, "willowmere"), TODAY, None)


SLUGS = ["practice", "willowmere"]


def old_site(sites: Path, slug: str = "willowmere") -> Path:
    """The site of a stable as it was built before."""
    folder = sites / slug
    folder.mkdir()
    (folder / "index.html").write_text("the old site")
    mark_folder(folder, slug)
    return folder


def test_the_context_can_be_handed_to_another_process(context: BuildContext) -> None:
    """Where forking is not safe, builders get a copy that makes the same site; also once a site was made."""
    site = render_site(context, "willowmere")

    assert render_site(pickle.loads(pickle.dumps(context)), "willowmere") == site


def test_an_error_while_building_leaves_everything_as_it_was(
    context: BuildContext, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A builder that fails writes nothing into the folder of sites."""
    old = old_site(tmp_path)

    def fail(*_: object) -> None:
        raise Trouble(worded("the disk is full"))

    monkeypatch.setattr("recordgen.site.engine.write_site", fail)
    with pytest.raises(Trouble):
        build_sites(context, ["willowmere"], tmp_path)

    assert [path.name for path in tmp_path.iterdir()] == ["willowmere"]
    assert list_files(old) == [MARK, "index.html"]


def test_an_error_while_swapping_puts_the_old_site_back(
    context: BuildContext, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The old site is in its place again when the new one cannot take it."""
    old = old_site(tmp_path)
    monkeypatch.setattr(build, "_build_one", lambda slug, folder: build.Built(slug, slug, folder, 0))
    with pytest.raises(FileNotFoundError):
        build_sites(context, ["willowmere"], tmp_path)

    assert (old / "index.html").read_text() == "the old site"


def killed(step: int, out: Path) -> bool:
    """Whether a build of two sites was killed that was to be, before a step of putting them in place."""
    process = multiprocessing.get_context("fork").Process(target=_build_and_die, args=(step, out))
    process.start()
    process.join(60)
    assert process.exitcode in (0, -signal.SIGKILL)
    return process.exitcode != 0


def _build_and_die(step: int, out: Path) -> None:
    left = iter(range(step))

    def counted(done: Callable[..., Any]) -> Callable[..., Any]:
        def or_die(*words: Path) -> Any:
            return done(*words) if next(left, None) is not None else os.kill(os.getpid(), signal.SIGKILL)

        return or_die

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Path, "rename", counted(Path.rename))
        patch.setattr(folders, "exchange", counted(folders.exchange))
        patch.setattr(build, "_build_each", _of_one_page)
        build_sites(None, SLUGS, out)  # type: ignore[arg-type]


def _of_one_page(_: BuildContext, slugs: Sequence[str], beside: Path, __: int) -> Iterator[build.Built]:
    for slug in slugs:
        (beside / slug).mkdir()
        (beside / slug / "index.html").write_text("the new site")
        mark_folder(beside / slug, slug)
        yield build.Built(slug, slug, beside / slug, 1)


@pytest.mark.skipif(sys.platform != "linux", reason="kills by forking, exchanges folders as Linux does")
@pytest.mark.parametrize(("in_one_step", "steps"), [(True, 2), (False, 6)])
def test_killed_at_any_step_no_site_is_missing(
    tmp_path: Path, in_one_step: bool, steps: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    """By an exchange at no moment; without one, the next run puts back what was moved aside, and clears the rest."""
    if not in_one_step:
        monkeypatch.setattr(folders, "exchange", lambda *_: False)
    for slug in SLUGS:
        old_site(tmp_path, slug)
    taken = 0
    while killed(taken, tmp_path):
        assert not in_one_step or all((tmp_path / slug / "index.html").is_file() for slug in SLUGS)
        clear_workrooms(tmp_path)

        assert sorted(path.name for path in tmp_path.iterdir()) == SLUGS
        assert {(tmp_path / slug / "index.html").read_text() for slug in SLUGS} <= {"the old site", "the new site"}
        taken += 1

    assert taken == steps


# Builds in two processes, each of which says that it began and then waits to be ended.
ENDLESS = """
import os, pathlib, sys, time
from recordgen.site import build
def never_done(slug, folder):
    os.write(1, b"began\\n")
    time.sleep(30)
    print("lived on", flush=True)
    os._exit(0)
build._begin, build._warm, build._build_one = lambda run: None, lambda run: None, never_done
build.build_sites(None, ["willowmere", "practice"], pathlib.Path(sys.argv[1]), 2)
"""


@pytest.mark.skipif(sys.platform != "linux", reason="kills builders that were forked")
def test_builders_end_with_a_killed_build(tmp_path: Path) -> None:
    """They hold the folder no longer, and the next build clears what they left."""
    with subprocess.Popen([sys.executable, "-c", ENDLESS, str(tmp_path)], stdout=subprocess.PIPE) as begun:
        assert begun.stdout is not None
        assert [begun.stdout.readline() for _ in range(2)] == [b"began\n"] * 2
        begun.kill()
        # Comes to an end once nobody is left who could write to it.
        assert begun.stdout.read() == b""

    with hold_lock(tmp_path, worded("")):
        clear_workrooms(tmp_path)
    assert list(tmp_path.iterdir()) == []


def test_folders_of_others_are_not_taken_for_sites(tmp_path: Path) -> None:
    """Only a folder with our mark in it is named as left over."""
    (tmp_path / "holiday").mkdir()
    old = old_site(tmp_path)

    assert find_strangers(tmp_path, ["fallow-end"]) == [old]
    assert find_strangers(tmp_path, ["willowmere"]) == []


def test_a_picture_is_drawn_once_for_what_it_shows(
    context: BuildContext, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A second build draws nothing: every picture is kept."""
    first = render_site(replace(context, cache=Cache(tmp_path)), "willowmere")
    assert dict(first.files)
    monkeypatch.setattr(Cache, "put", lambda *_: pytest.fail("a picture was drawn again"))

    assert render_site(replace(context, cache=Cache(tmp_path)), "willowmere") == first


def test_the_bare_engine_shows_the_practice_too(tmp_path: Path) -> None:
    """`mkdocs build` with the configuration at the top of the repository makes the trimmer's own site."""
    shutil.copy(ROOT / "mkdocs.yml", tmp_path)
    (tmp_path / "site_templates").symlink_to(ROOT / "site_templates")
    practice_folders.build(tmp_path / "records")
    command = [sys.executable, "-m", "mkdocs", "build", "--quiet", "--site-dir", str(tmp_path / "site")]
    subprocess.run(command, cwd=tmp_path, check=True, capture_output=True)

    assert (tmp_path / "site" / "willowmere" / "bramble.html").is_file()


def test_a_horse_called_as_the_sheet_of_another_has_a_page_of_its_own(tmp_path: Path) -> None:
    """No two pages of a site have one address."""
    records = practice_folders.build(tmp_path, {"willowmere/bramble-sheet/horse.yaml": "name: Bramble Sheet\n"})
    for slug in ("willowmere", PRACTICE):
        uris = [page.uri for page in render_site(BuildContext.of(read_whole(records, TODAY), TODAY, None), slug).pages]

        assert sum("bramble" in uri for uri in uris) == 4
        assert len(uris) == len(set(uris))


BARE_VISITS = {
    "note": "note: Would not be caught.\n",
    "signs": "signs: none\n",
    "lame": "lameness: {scale: AAEP, grade: 0}\n",
    "planned": "next: {weeks: 6}\n",
    "foot": "feet: {LF: {note: Looked at.}}\n",
    "found": "feet: {LF: {frog: {infection: surface}}}\n",
    "vet": "vet: [{date: 2026-10-01, by: Dr Sage, kind: seen}]\n",
    "untrimmed": "trimmed: no\nnote: Sore.\n",
}


def test_a_horse_that_was_seen_and_not_measured_stops_no_site(tmp_path: Path) -> None:
    """Whatever little its only visit tells, its page, its sheet and the trimmer's own site are made."""
    files = {f"willowmere/{name}/horse.yaml": f"name: {name.title()}\n" for name in BARE_VISITS}
    files |= {f"willowmere/{name}/2026-10-14.yaml": f"date: 2026-10-14\n{text}" for name, text in BARE_VISITS.items()}
    whole = read_whole(practice_folders.build(tmp_path, files), TODAY)
    context = BuildContext.of(whole, TODAY, None)
    made = {page.uri for slug in SLUGS for page in render_site(context, slug).pages}

    assert [name for name in BARE_VISITS if not any(f"horses/{name}" in path for path in made)] == []
    assert [name for name in BARE_VISITS if not any(f"{name}_sheet" in path for path in made)] == []
