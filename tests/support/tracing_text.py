"""A visit with one tracing, as text that a person might type."""

from __future__ import annotations

import math

HEAD = "date: 2026-10-14\nfeet:\n  left_fore:\n    tracings:\n"


SCALE = "{from: [100, 1100], to: [500, 1100], length: 100}"


FIRST_LINE = 10  # of the landmarks in what `text` makes


def text(*landmarks: str, view: str = "sole", **values: float | str) -> str:
    """A visit with one tracing, each value and each landmark on a line of its own; values: those that differ."""
    usual = {"moment": "after", "of": "photograph", "image": "[1600, 1200]", "scale": SCALE}
    lines = [f"- view: {view}", *(f"  {key}: {value}" for key, value in (usual | values).items())]
    return HEAD + "".join(f"      {line}\n" for line in [*lines, *(f"  {mark}" for mark in landmarks)])


def arc(radius: int = 250, number: int = 16, centre: tuple[int, int] = (800, 640)) -> list[list[int]]:
    """Points of an outline, open at the bottom, which is where the heels are."""
    steps = (math.radians(-50 + 280 * step / (number - 1)) for step in range(number))
    return [[round(centre[0] + radius * math.cos(at)), round(centre[1] - radius * math.sin(at))] for at in steps]
