"""Photographs of feet drawn by rule, lit from a side, dirty, blurred and noisy, and where an eye sees their edges.

The outlines come from `photographed_soles` and `photographed_feet`, tilted through a pinhole, so that what is true of
the foot is known. An eye follows the strongest edge near a line, looks along it where dirt hides it, and goes on
straight there. Brightness, dirt, blur and noise: Judgement, of photographs in the field. Grey alone, which is harder.
"""

from __future__ import annotations

import io
from collections.abc import Sequence

import numpy as np
from PIL import Image, ImageDraw
from scipy import ndimage

from recordgen.hoof.tracing.foot_frame import Floats, Points
from tests.support.photographed_soles import PX_PER_MM, SIZE, Photographed

# Drawn so many times smaller than the picture that is tapped, px of the drawing to a mm.
SMALLER = 2
PX = PX_PER_MM / SMALLER
# How far from a line an eye looks for its edge, how far along it takes all together, and how sure it is where the line
# must be from what it sees around, SD, mm.
LOOKS, TOGETHER, EXPECTS = 3.0, 2.0, 1.5
# An edge is clear from this share of the line's usual contrast on.
CLEAR = 0.35
# The lines of each view that an eye follows, and the lines that its parts are bounded by, in order round.
FOLLOWED = {
    "sole": ("wall", "white_line"),
    "side": ("dorsal_wall", "heel_wall"),
    "front": ("medial_wall", "lateral_wall"),
}


def as_eyes_see(seen: Photographed, view: str, lot: np.random.Generator) -> Photographed:
    """The same foot with its lines where they show in a rendered picture of it."""
    image = rendered(seen.px, view, lot)
    lines = {
        name: _followed(image, seen.px[name], seen.px["frog_apex"][0] if name == "white_line" else None)
        for name in FOLLOWED[view]
    }
    return Photographed(dict(seen.px) | lines, seen.true)


def rendered(px: Points, view: str, lot: np.random.Generator) -> Floats:
    """A grey photograph of a foot, (rows, columns), 0 to 1. px: landmarks with close lines in px, y down."""
    light = lot.uniform(0, 2 * np.pi)
    ground = 0.35 + lot.normal(0, 0.08)
    image = ground + 0.06 * _rough(lot, 2.0)
    foot = _inside(_outline(px, view))
    image = image * (1 - lot.uniform(0.2, 0.6) * _soft(_moved(foot, light, lot.uniform(2, 8)), 1.5))
    image = _over(image, foot, lot.uniform(0.45, 0.65) + 0.04 * _rough(lot, 1.0))
    if view == "sole":
        image = _with_sole(image, px, lot)
    image = image * (1 + lot.uniform(0.3, 1.0) * _lit(foot, light)) * (1 + 0.3 * _across(image.shape, light))
    dirt = _soft((_rough(lot, 4.0) > lot.uniform(0.9, 1.6)).astype(float), 0.5)
    image = _over(image, dirt, ground + lot.normal(0, 0.08) + 0.05 * _rough(lot, 1.0))
    image = ndimage.gaussian_filter(image, lot.uniform(0.6, 1.6)) + lot.normal(0, lot.uniform(0.01, 0.04), image.shape)
    return _as_jpeg(image, int(lot.integers(50, 90)))


def _outline(px: Points, view: str) -> Floats:
    """The part that stands out from the ground, as a closed outline."""
    if view == "sole":
        return px["wall"]
    first, last = (px[name] for name in FOLLOWED[view])
    return np.concatenate([first, last[::-1]])


def _with_sole(image: Floats, px: Points, lot: np.random.Generator) -> Floats:
    """The white line as a light band inside its outer edge, then sole and frog."""
    inside = _inside(px["white_line"])
    band = np.clip(inside - _soft(inside, 0.8) * 0.9, 0, 1) * 2
    image = _over(image, inside, lot.uniform(0.4, 0.75) + 0.05 * _rough(lot, 1.5))
    image = _over(image, np.clip(band, 0, 1), lot.uniform(0.75, 0.9))
    frog = np.concatenate([px[name] for name in ("frog_apex", "frog_medial", "frog_lateral")])
    return _over(image, _soft(_inside(frog), 0.5), lot.uniform(0.25, 0.4))


def _inside(outline: Floats) -> Floats:
    """1 inside an outline, 0 outside, and between where it runs through a pixel."""
    mask = Image.new("L", SIZE)
    ImageDraw.Draw(mask).polygon([tuple(map(float, spot)) for spot in outline], fill=255)
    return np.asarray(mask.reduce(SMALLER), dtype=float) / 255


def _over(below: Floats, share: Floats, bright: Floats | float) -> Floats:
    return np.asarray(below * (1 - share) + bright * share)


def _soft(mask: Floats, mm: float) -> Floats:
    return np.asarray(ndimage.gaussian_filter(mask, mm * PX))


def _rough(lot: np.random.Generator, mm: float) -> Floats:
    """Unevenness with patches of such a size, SD 1."""
    coarse = max(round(mm * PX / 2), 1)
    rows, columns = (side // SMALLER for side in reversed(SIZE))
    field = ndimage.gaussian_filter(lot.normal(size=(rows // coarse + 2, columns // coarse + 2)), 2)
    large = ndimage.zoom(field / field.std(), coarse, order=1)
    return np.asarray(large[:rows, :columns])


def _moved(mask: Floats, way: float, mm: float) -> Floats:
    return np.asarray(ndimage.shift(mask, (mm * PX * np.sin(way), mm * PX * np.cos(way)), order=0))


def _lit(foot: Floats, way: float) -> Floats:
    """The rounded rim of a foot: brighter towards the light, darker away from it."""
    down, right = np.gradient(_soft(foot, 0.8))
    return np.asarray(foot * PX * (down * np.sin(way) + right * np.cos(way)))


def _across(shape: Sequence[int], way: float) -> Floats:
    down, right = (np.linspace(-1, 1, count) for count in shape)
    return np.asarray(-(down[:, None] * np.sin(way) + right * np.cos(way)))


def _as_jpeg(image: Floats, quality: int) -> Floats:
    held = io.BytesIO()
    Image.fromarray((np.clip(image, 0, 1) * 255).astype(np.uint8)).save(held, "JPEG", quality=quality)
    return np.asarray(Image.open(held), dtype=float) / 255


def _followed(image: Floats, line: Floats, middle: Floats | None = None) -> Floats:
    """A line of a picture, (n, 2), px, moved across to where its edge shows.

    middle: towards which the picture gets brighter at the edge, (2,), px; None where it may get darker as well.
    """
    close = _close(line)
    run = np.gradient(close, axis=0)
    across = np.stack([-run[:, 1], run[:, 0]], axis=-1) / np.hypot(*run.T)[:, None]
    off = np.arange(-LOOKS, LOOKS + 0.01, 0.1)
    spots = (close[:, None] + off[:, None] * PX_PER_MM * across[:, None]) / SMALLER - 0.25
    seen = ndimage.map_coordinates(image, [spots[..., 1], spots[..., 0]], order=1, mode="nearest")
    inward = 1 if middle is not None and ((middle - close) * across).sum() > 0 else -1
    # A close line has a place each mm.
    seen = ndimage.gaussian_filter(ndimage.uniform_filter1d(seen, round(2 * TOGETHER + 1), axis=0), (0, 2))
    rise = np.gradient(seen, axis=1)
    contrast = (np.abs(rise) if middle is None else np.maximum(rise * inward, 0)) * np.exp(-0.5 * (off / EXPECTS) ** 2)
    best = contrast.max(axis=1)
    clear = best >= CLEAR * np.median(best)
    places = np.arange(len(close))
    moved = np.interp(places, places[clear], ndimage.median_filter(off[contrast.argmax(axis=1)][clear], 5))
    moved_at = np.interp(_way(line), _way(close), moved)
    ways = np.stack([np.interp(_way(line), _way(close), across[:, axis]) for axis in (0, 1)], axis=-1)
    return np.asarray(line + moved_at[:, None] * PX_PER_MM * ways)


def _close(line: Floats) -> Floats:
    """The same line with a place each mm."""
    way = _way(line)
    at = np.arange(0, way[-1], PX_PER_MM)
    return np.stack([np.interp(at, way, line[:, axis]) for axis in (0, 1)], axis=-1)


def _way(line: Floats) -> Floats:
    """Tell how far along a line its points lie, px."""
    return np.concatenate([[0], np.cumsum(np.hypot(*np.diff(line, axis=0).T))])
