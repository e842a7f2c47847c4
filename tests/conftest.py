"""Helpers that tests share: the demo practice, its built sites, and a browser."""

from __future__ import annotations

import contextlib
import datetime as dt
import fcntl
import functools
import gc
import http.server
import importlib
import os
import shutil
import sys
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import settings

# Python begins many times over here; where no bytecode is kept, each of them compiles all that it reads anew.
sys.dont_write_bytecode = False
os.environ.pop("PYTHONDONTWRITEBYTECODE", None)

# Where no practice tells its language, the computer does.
os.environ["LC_ALL"] = "C.UTF-8"

# A machine may be busy; no test is about how long something takes.
settings.register_profile("patient", deadline=None)
settings.load_profile("patient")

ROOT = Path(__file__).parent.parent
RECORDS = ROOT / "records"
TODAY = dt.date(2026, 11, 25)
# Files that take a processor ten seconds or more, the dearest first.
DEAREST = (
    *("browser/test_access.py", "browser/test_field_readable.py", "site/kept/test_standing.py"),
    *("cli/test_publish.py", "browser/test_horse_page.py", "guide/test_guide.py", "browser/test_sheet_print.py"),
    *("browser/test_field_entry.py", "browser/test_trace_screen.py", "site/test_valid_html.py"),
    *("browser/test_sealed_opening.py", "browser/test_field_tracing.py", "site/test_build.py", "tapped/test_judged.py"),
    *("browser/test_field_keeping.py", "browser/test_boards.py", "browser/test_pages.py"),
    *("browser/test_sealed_reading.py", "browser/test_access_elsewhere.py"),
)


@pytest.hookimpl(tryfirst=True)
def pytest_collection(session: pytest.Session) -> None:
    """Read a share of the test files first: processes that all began with the same one would each compile them all."""
    worker = os.environ.get("PYTEST_XDIST_WORKER", "")
    if worker and session.config.args == session.config.getini("testpaths"):
        names = sorted(str(path.relative_to(ROOT).with_suffix("")) for path in (ROOT / "tests").rglob("test_*.py"))
        for name in names[int(worker[2:]) :: int(os.environ["PYTEST_XDIST_WORKER_COUNT"])]:
            # What cannot be read is told when its turn comes.
            with contextlib.suppress(Exception, pytest.skip.Exception):
                importlib.import_module(name.replace(os.sep, "."))


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Begin with the dearest files: one that began last would keep a single process busy while the others are done."""
    rank = {ROOT / "tests" / file: place for place, file in enumerate(DEAREST)}
    items.sort(key=lambda item: rank.get(item.path, len(rank)))


def pytest_collection_finish() -> None:
    """Leave what was read and collected out of the search for garbage, which would look through all of it each time."""
    gc.collect()
    gc.freeze()
    gc.set_threshold(20_000, 20, 20)


@pytest.fixture(scope="session")
def of_the_run(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder that all processes of one run of the tests share."""
    own = tmp_path_factory.getbasetemp()
    return own.parent if "PYTEST_XDIST_WORKER" in os.environ else own


@pytest.fixture(scope="session", autouse=True)
def _cache_apart(of_the_run: Path) -> None:
    """Results of tests are kept in a folder of the tests."""
    os.environ["RECORDGEN_CACHE"] = str(of_the_run / "cache")


@pytest.fixture(scope="session", autouse=True)
def _slow_figures_once() -> Iterator[None]:
    """Reckon a tracing and hash words once a process, also where no cache is wanted: nothing else goes into either."""
    from recordgen.private.crypto import key_ring, passphrases
    from recordgen.private.keystore import sealed_copy
    from recordgen.site.tracing import figure_cache
    from tests.support.reckoned import reckoned_once

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(figure_cache, "reckoned", reckoned_once)
        hashed = functools.cache(passphrases.pbkdf2)
        for module in (key_ring, sealed_copy):
            patch.setattr(module, "pbkdf2", hashed)
        yield


@pytest.fixture(scope="session")
def demo_sites(of_the_run: Path) -> Path:
    """The built sites of the demo practice, as of a fixed day; one process of the run builds them, the others wait."""
    out = of_the_run / "sites"
    with (of_the_run / "sites.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not out.exists():
            build_demo(out)
    return out


@pytest.fixture(scope="session")
def inch_sites(of_the_run: Path) -> Path:
    """The built sites of a practice that measures in inches; built once a run, as `demo_sites` are."""
    from tests.support.inches import build_inches

    folder = of_the_run / "inches"
    with (of_the_run / "inches.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not (folder / "sites").exists():
            shutil.rmtree(folder, ignore_errors=True)
            build_inches(folder)
    return folder / "sites"


def build_demo(out: Path) -> None:
    """Build the sites of the demo practice as of the fixed day. out: a folder that is not there yet."""
    from recordgen.cache.entries import user_cache
    from recordgen.records.load.everything import read_whole
    from recordgen.site.build import build_sites
    from recordgen.site.build_context import BuildContext

    context = BuildContext.of(read_whole(RECORDS, TODAY), TODAY, user_cache())
    building = out.with_name("sites-building")
    build_sites(context, [*(stable.slug for stable in context.stables), "practice"], building)
    building.rename(out)


def chromium() -> str | None:
    """The Chromium of this machine, or None: the one without windows first, which opens a page four times as fast."""
    names = ("chromium-headless-shell", "chromium", "chromium-browser", "google-chrome", "chrome")
    return os.environ.get("CHROMIUM") or next(filter(None, map(shutil.which, names)), None)


class _Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, *args: object) -> None:
        """Say nothing."""


@pytest.fixture(scope="session")
def served(demo_sites: Path) -> Iterator[str]:
    """The address on this machine at which the demo sites are served."""
    handler = functools.partial(_Quiet, directory=str(demo_sites))
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}"
    server.shutdown()


def pytest_xdist_auto_num_workers() -> int:
    """One process more than there are cores: tests with a browser or a command wait for those."""
    return (os.cpu_count() or 1) + 1


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Tell where to look at the end."""
    terminalreporter.write_line("To look at what was tested: .venv/bin/recordgen build, then open sites/*/index.html")
