"""What the explaining drawings share: their width, their words in short lines and the lines that lead to a part."""

from __future__ import annotations

from recordgen.pictures.canvas import Anchor, Canvas, Pen
from recordgen.pictures.shapes import Point, dots, line

WIDTH, FONT_SIZE = 360.0, 13.0
LETTERS_A_LINE, LINE_HEIGHT = 13, 14.0

LEADER = Pen("quiet", 0.9)
LEADER_END = Pen("quiet", 4.4, round_ends=True)


def point_at(canvas: Canvas, start: Point, target: Point) -> None:
    """A thin line from a word to what it names, with a dot at its end."""
    canvas.draw(line([start, target]), LEADER)
    canvas.draw(dots([target]), LEADER_END)


def write_lines(canvas: Canvas, words: str, at: Point, side: Anchor = "start") -> None:
    """Words in one line, or in several short ones about the same height."""
    lines = wrapped(words, LETTERS_A_LINE)
    first = at[1] - (len(lines) - 1) * LINE_HEIGHT / 2
    for count, text in enumerate(lines):
        canvas.write(text, (at[0], first + count * LINE_HEIGHT), side, "ink")


def wrapped(words: str, most: int) -> list[str]:
    """The words in lines of at most so many letters, broken at spaces only."""
    lines: list[str] = []
    for word in words.split(" "):
        if lines and len(lines[-1]) + 1 + len(word) <= most:
            lines[-1] += " " + word
        else:
            lines.append(word)
    return lines
