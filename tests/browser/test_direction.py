"""Names from right to left and signs that turn the direction: what stands beside them keeps its order in Chromium."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page

from recordgen.cache.entries import user_cache
from recordgen.records.load.everything import read_whole
from recordgen.site.build import build_sites
from recordgen.site.build_context import BuildContext
from tests.support.practice_folders import TODAY, VISIT, build

FILES = {
    "practice.yaml": "name: פרסה בריאה\ntrimmer: דנה לוי\nphone: 07700 900142\n",
    "willowmere/stable.yaml": "name: اسطبل الواحة\nvet: {name: ד״ר כהן, phone: 01632 960771}\n",
    "willowmere/bramble/horse.yaml": "name: نجمة\nborn: 2015\n",
    "willowmere/bramble/2026-10-14.yaml": VISIT
    + 'note: "Calm \u202etoday"\nvet: [{kind: seen, date: 2026-10-13, by: ד״ר כהן, words: "Rest, 5 days"}]\n',
}
PAGES = ("index.html", "jobs.html", "horses/bramble.html", "horses/bramble_sheet.html")
# Words of the page's own, in the order in which they were written, that stand on a line from right to left: two that
# follow one another must not change their places. What is set apart is a thing of its own.
OUT_OF_ORDER = """() => {
  const found = [], walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT), range = new Range();
  let before = null, depth = 0;
  while (walker.nextNode()) {
    const node = walker.currentNode, holder = node.parentElement;
    const block = holder.closest("p, li, td, th, dd, h1, h2, a");
    if (holder.closest("script, svg, select") || !holder.checkVisibility() || !block) continue;
    for (const part of node.data.matchAll(/[\\u2066-\\u2068]|\\u2069|[A-Za-z0-9]+/g)) {
      if (!/\\w/.test(part[0])) { depth += part[0] === "\\u2069" ? -1 : 1; continue; }
      if (depth) continue;
      range.setStart(node, part.index);
      range.setEnd(node, part.index + part[0].length);
      const box = range.getBoundingClientRect();
      const now = { text: part[0], left: box.left, line: box.top + box.height / 2, block };
      if (before?.block === block && Math.abs(before.line - now.line) < 4 && before.left > now.left)
        found.push(`${before.text} ${now.text}`);
      before = now;
    }
  }
  return found;
}"""
NOT_SET_APART = """() => {
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) walker.currentNode.data = walker.currentNode.data.replace(/[\\u2066-\\u2069]/g, "");
}"""


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> str:
    """The site of a stable whose names are Hebrew and Arabic, and one note of which turns the direction."""
    folder = tmp_path_factory.mktemp("direction")
    context = BuildContext.of(read_whole(build(folder / "records", FILES), TODAY), TODAY, user_cache())
    build_sites(context, ["willowmere"], folder / "sites")
    return (folder / "sites" / "willowmere").as_uri()


@pytest.fixture(scope="module")
def page(browser: Browser) -> Iterator[Page]:
    """One window for all pages."""
    found = browser.new_page(viewport={"width": 1280, "height": 844})
    yield found
    found.close()


@pytest.mark.parametrize("name", PAGES)
def test_words_beside_a_name_keep_their_order(page: Page, site: str, name: str) -> None:
    """With every fold open; and they would not, were the names not set apart."""
    page.goto(f"{site}/{name}")
    page.evaluate("document.querySelectorAll('details').forEach(fold => { fold.open = true; })")
    kept = page.evaluate(OUT_OF_ORDER)
    page.evaluate(NOT_SET_APART)

    assert kept == []
    assert page.evaluate(OUT_OF_ORDER) != []


def test_the_title_of_a_window_sets_its_names_apart(page: Page, site: str) -> None:
    """There is no room for an element there."""
    page.goto(f"{site}/horses/bramble.html")

    assert page.title() == "\u2068نجمة\u2069 - \u2068اسطبل الواحة\u2069"
