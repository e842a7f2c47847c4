"""Contrast of text and size of targets on a page as a browser draws it, by the formulas of WCAG 2.2."""

from __future__ import annotations

from playwright.sync_api import Page

# Success criterion 1.4.6, Contrast (Enhanced): 7 to 1 for text, 4.5 to 1 for large text. We hold all text to the first.
LEAST_CONTRAST = 7.0
LEAST_TARGET_PX = 48

# Relative luminance and contrast ratio as WCAG 2.2 defines them. Colours with an alpha are laid over what is behind
# them, up to the page's own ground; of text over a picture or a gradient nothing is told.
_FAINT = """(least) => {
  const channels = (colour) => {
    const [r, g, b, a = 1] = colour.match(/[\\d.]+/g).map(Number);
    return [r, g, b, a];
  };
  const over = ([r, g, b, a], under) => [r, g, b].map((one, at) => one * a + under[at] * (1 - a));
  const ground = (node) => {
    const layers = [];
    for (let one = node; one; one = one.parentElement) {
      const style = getComputedStyle(one);
      const filled = one instanceof SVGElement ? null : channels(style.backgroundColor);
      if (filled && filled[3] > 0) layers.push(filled);
      if (filled && filled[3] === 1) break;
    }
    return layers.reverse().reduce((under, layer) => over(layer, under), channels(
      matchMedia('(prefers-color-scheme: dark)').matches ? 'rgb(18, 18, 18)' : 'rgb(255, 255, 255)'));
  };
  const isFull = (node) => {
    for (let one = node; one; one = one.parentElement) if (Number(getComputedStyle(one).opacity) < 1) return false;
    return true;
  };
  const luminance = (colour) => colour.slice(0, 3).map((one) => one / 255)
    .map((one) => (one <= 0.04045 ? one / 12.92 : ((one + 0.055) / 1.055) ** 2.4))
    .reduce((sum, one, at) => sum + one * [0.2126, 0.7152, 0.0722][at], 0);
  const contrast = (one, other) => {
    const [low, high] = [luminance(one), luminance(other)].sort((a, b) => a - b);
    return (high + 0.05) / (low + 0.05);
  };
  // A drawn text stands on the form that is drawn before it.
  const drawnUnder = (node) => {
    const form = node.parentElement.querySelector('path, rect, circle');
    return form ? channels(getComputedStyle(form).fill) : ground(node.ownerSVGElement.parentElement);
  };
  const found = [];
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (texts.nextNode()) {
    const node = texts.currentNode.parentElement;
    if (!texts.currentNode.data.trim() || !node.checkVisibility()) continue;
    if (node.matches('script, style, noscript, option') || getComputedStyle(node).clipPath !== 'none') continue;
    const style = getComputedStyle(node);
    const drawn = node instanceof SVGElement;
    const under = drawn ? drawnUnder(node) : ground(node);
    const colour = over(channels(drawn ? style.fill : style.color), under);
    const ratio = isFull(node) ? contrast(colour, under) : 0;
    if (ratio < least) found.push(`${texts.currentNode.data.trim().slice(0, 40)}: ${ratio.toFixed(2)}`);
  }
  return found;
}"""
_TARGETS = "button, input, select, textarea, summary, a[href], .camera, [role=button]"
_SMALL = """([targets, least]) => [...document.querySelectorAll(targets)]
  .filter((one) => one.type !== 'file' && one.checkVisibility())
  .map((one) => [one.getBoundingClientRect(), one.getAttribute('aria-label') || one.textContent])
  .filter(([box]) => box.width < least - 0.01 || box.height < least - 0.01)
  .map(([box, text]) => `${text.slice(0, 40)}: ${box.width.toFixed(0)} x ${box.height.toFixed(0)}`)"""


def faint_texts(page: Page, least: float = LEAST_CONTRAST) -> list[str]:
    """Texts whose contrast is below `least` to 1, each with its ratio; 0 for one that is made faint as a whole."""
    found: list[str] = page.evaluate(_FAINT, least)
    return found


def small_targets(page: Page, least: float = LEAST_TARGET_PX) -> list[str]:
    """Targets narrower or lower than `least` CSS pixels, each with its size."""
    found: list[str] = page.evaluate(_SMALL, [_TARGETS, least])
    return found


def width_of(page: Page) -> int:
    """The width of all that stands on the page, which nobody should have to slide sideways to see."""
    found: int = page.evaluate("document.documentElement.scrollWidth")
    return found
