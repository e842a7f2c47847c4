"""A photograph traced on the field page: taken for a foot, opened, and handed over with the visit."""

from __future__ import annotations

from tests.support.field import Hand
from tests.support.tracing_screen import PUT, Marks, Tapper, picture

_HANDED = "async () => (await buildFile(waitingDrafts())).content"


def photographed(hand: Hand, foot: str = "left_fore", view: str = "sole") -> str:
    """Give the page a photograph of a foot of one pony; the key of the button that opens it."""
    hand.page.evaluate("location.hash = ''")
    hand.tap("horse-willowmere/tansy")
    hand.tap(f"tile-{foot}")
    hand.tap(f"view-{view}")
    before = hand.page.locator(".pictures img").count()
    taken = {"name": "a.jpg", "mimeType": "image/jpeg", "buffer": picture(view)}
    hand.page.set_input_files("[data-key=camera]", taken)  # type: ignore[arg-type]
    hand.page.locator(".pictures img").nth(before).wait_for()
    return str(hand.page.locator("button.trace").last.get_attribute("data-key"))


def tracing(hand: Hand, key: str) -> Tapper:
    """Open the screen by its button, which counts as the first contact."""
    hand.tap(key)
    hand.page.wait_for_selector("#trace[data-ready]")
    return Tapper(hand.page, contacts=1, said=hand.said)


def traced(hand: Hand, key: str, marks: Marks) -> Tapper:
    """Let a photograph have been traced and left, and open it again."""
    tracing(hand, key)
    hand.page.evaluate(PUT, marks)
    hand.page.evaluate("history.back()")
    hand.page.wait_for_selector('body[data-screen="foot"]')
    return tracing(hand, key)


def kept(tapper: Tapper) -> None:
    """Put what was traced into the visit."""
    tapper.press("write")
    tapper.page.wait_for_selector('body[data-screen="foot"]')


def handed(hand: Hand) -> bytes:
    """The file that the page would hand over now."""
    return str(hand.page.evaluate(_HANDED)).encode()
