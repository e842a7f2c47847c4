"""Finds what a narrow window cuts off: 400 % zoom on a desk, and text spaced as a reader may set it."""

from __future__ import annotations

from playwright.sync_api import Page, ViewportSize

# A window of 1280 x 1024 px at 400 %. Source: WCAG 2.2, criterion 1.4.10.
NARROWEST: ViewportSize = {"width": 320, "height": 256}
# Source: WCAG 2.2, criterion 1.4.12, which names these four.
_SPACED = """* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; }
p { margin-bottom: 2em !important; }"""
# A sheet of styles that a page's policy does not forbid.
_SPACE = """text => {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(text);
  document.adoptedStyleSheets = [sheet];
}"""
# Whatever is wider than the window, but for a region that is scrolled by itself; and text that its box hides.
_CUT = """() => {
  const found = [], page = document.documentElement;
  if (page.scrollWidth > innerWidth) found.push(`${page.scrollWidth} px wide`);
  for (const one of document.querySelectorAll("body *")) {
    if (!one.textContent.trim() || one.closest("svg") || one.clientWidth < 3 || !one.checkVisibility()) continue;
    const style = getComputedStyle(one);
    const told = `${one.tagName}.${one.className} ${one.textContent.trim().slice(0, 30)}`;
    const cuts = (axis) => /hidden|clip/.test(style[`overflow${axis}`]);
    if (cuts("X") && one.scrollWidth > one.clientWidth + 1) found.push(`${told}: cut at its side`);
    if (cuts("Y") && one.scrollHeight > one.clientHeight + 1) found.push(`${told}: cut below`);
    const scrolls = /auto|scroll/.test(style.overflowX) && one.scrollWidth > one.clientWidth;
    if (scrolls && one.tabIndex < 0) found.push(`${told}: scrolls, and no key gets there`);
  }
  return found;
}"""


def cut_off(page: Page) -> list[str]:
    """Texts cut off as the page stands, and once more with its text spaced."""
    found: list[str] = page.evaluate(_CUT)
    page.evaluate(_SPACE, _SPACED)
    found += [f"spaced: {one}" for one in page.evaluate(_CUT)]
    page.evaluate(_SPACE, "")
    return found
