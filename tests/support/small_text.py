"""Finds text that is too small to read."""

from __future__ import annotations

SMALLEST_TEXT_PX = 10.9
# Every text with the size it has on the screen, scaled pictures included; what is folded has none.
SMALL_TEXT = """least => {
  const small = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) {
    const text = walker.currentNode.textContent.trim(), holder = walker.currentNode.parentElement;
    const box = holder.getBoundingClientRect();
    if (holder.closest("details:not([open]) > :not(summary)")) continue;
    if (!text || !box.width || !box.height || getComputedStyle(holder).visibility === "hidden") continue;
    let px = parseFloat(getComputedStyle(holder).fontSize);
    const svg = holder.closest("svg");
    if (svg && svg.viewBox.baseVal.width) px *= svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
    if (px < least) small.push(px.toFixed(1) + ": " + text.slice(0, 30));
  }
  return small;
}"""
