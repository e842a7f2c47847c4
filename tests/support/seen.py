"""Finds stops of the keyboard that nobody sees, and marks that stand out too little from their ground."""

from __future__ import annotations

from playwright.sync_api import Page

# Source: WCAG 2.2, criterion 1.4.11, for marks that tell something.
LEAST_CONTRAST = 3.0
# Backwards, so that the header has every chance to cover what comes up. Sources: WCAG 2.2, criteria 2.4.7 and 2.4.11;
# 2.4.13 for the 2 px of the ring.
_STOPS = """() => {
  const stops = "a[href], button, input, select, textarea, summary, [tabindex]:not([tabindex='-1'])";
  const inside = (at, most) => Math.min(Math.max(at, 0), most - 1);
  // A box for a file shows as its label, and a part of a drawing by its line.
  const shownAs = (one) => (one.type === "file" && one.closest("label")) || one.ownerSVGElement || one;
  const line = (one) => (one.ownerSVGElement ? getComputedStyle(one.firstElementChild).strokeWidth : "");
  const faults = (one) => {
    const shown = shownAs(one), box = shown.getBoundingClientRect(), style = getComputedStyle(shown), drawn = line(one);
    const at = [inside(box.left + box.width / 2, innerWidth), inside(box.top + box.height / 2, innerHeight)];
    const there = document.elementFromPoint(...at), mine = [shown, ...(one.labels || [])];
    const seen = shown.checkVisibility({ opacityProperty: true, visibilityProperty: true }) && box.width > 1;
    const free = mine.some((part) => part.contains(there) || there?.contains(part));
    const ring = style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2 || style.boxShadow !== "none";
    one.blur();
    return [
      seen || "is not seen",
      free || `is covered by ${there?.tagName}`,
      ring || line(one) !== drawn || "has no ring",
    ].filter((told) => told !== true);
  };
  return [...document.querySelectorAll(stops)].reverse().flatMap((one) => {
    one.focus();
    return document.activeElement === one ? faults(one).map((told) => `${one.outerHTML.slice(0, 120)} ${told}`) : [];
  });
}"""
# Small drawn things without words: what they are filled or framed with, against what lies under them.
_MARKS = """least => {
  const pixel = new OffscreenCanvas(1, 1).getContext("2d", { willReadFrequently: true });
  const colour = (text) => {
    pixel.clearRect(0, 0, 1, 1);
    pixel.fillStyle = text;
    pixel.fillRect(0, 0, 1, 1);
    return [...pixel.getImageData(0, 0, 1, 1).data];
  };
  const luminance = (rgb) => rgb.slice(0, 3).map((one) => one / 255)
    .map((one) => (one <= 0.04045 ? one / 12.92 : ((one + 0.055) / 1.055) ** 2.4))
    .reduce((sum, one, at) => sum + one * [0.2126, 0.7152, 0.0722][at], 0);
  const contrast = (one, other) => {
    const [low, high] = [luminance(one), luminance(other)].sort((a, b) => a - b);
    return (high + 0.05) / (low + 0.05);
  };
  const ground = (one) => {
    if (!one) return colour("Canvas");
    const filled = colour(getComputedStyle(one).backgroundColor);
    return filled[3] === 255 ? filled : ground(one.parentElement);
  };
  const painted = (style) => [
    style.backgroundColor,
    ...(style.backgroundImage.match(/rgba?\\([^)]*\\)/g) || []),
    ...["Top", "Right", "Bottom", "Left"].filter((side) => parseFloat(style[`border${side}Width`]))
      .map((side) => style[`border${side}Color`]),
    ...(style.outlineStyle === "none" ? [] : [style.outlineColor]),
  ].map(colour).filter((one) => one[3] > 127);
  return [...document.querySelectorAll("i, .rg-button, input[data-tick]")].filter((one) => one.checkVisibility())
    .map((one) => [one, getComputedStyle(one), ground(one.parentElement)])
    .map(([one, style, under]) => [one, style, Math.max(0, ...painted(style).map((own) => contrast(own, under)))])
    .filter(([, style, best]) => best < least && style.appearance === "none")
    .map(([one, , best]) => `${one.parentElement.className} > ${one.tagName}.${one.className}: ${best.toFixed(2)}`);
}"""


def unseen_stops(page: Page) -> list[str]:
    """Each stop of the keyboard that is hidden, covered, or has no ring about it, and what is wrong with it."""
    # What is gone to after a key shows its ring.
    page.keyboard.press("Tab")
    found: list[str] = page.evaluate(_STOPS)
    return found


def faint_marks(page: Page) -> list[str]:
    """Each mark, button and box of the pages whose form stands out from its ground by less than 3 to 1."""
    found: list[str] = page.evaluate(_MARKS, LEAST_CONTRAST)
    return found
