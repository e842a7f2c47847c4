"""Soles to measure: a smooth shape with known sizes, wall and bulge, picked as a hand would pick it, in mm, y up."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

import numpy as np

from recordgen.hoof.tracing.foot_frame import Floats, Points

# What each side is called when the sides are swapped.
SIDES = {"medial": "lateral", "lateral": "medial"}


@dataclass(frozen=True)
class Bulge:
    """Wall pushed out beyond the sound ring: at an angle from the toe, degrees, lateral positive; width in degrees."""

    at: float
    height: float
    width: float = 50.0

    def mm(self, angle: Floats) -> Floats:
        """Tell how far the wall is pushed out at angles, degrees: a smooth hill."""
        away = np.abs(angle - self.at) / self.width
        return np.where(away < 0.5, self.height * np.cos(np.pi * np.clip(away, 0, 0.5)) ** 2, 0.0)


@dataclass(frozen=True)
class Sole:
    """A sole. Lengths in mm.

    widest: the widest place from the toe, % of the length. roundness: 2 is an ellipse at the toe, less is pointed.
    wall: thickness at toe, quarter and heel. lopsided: by how much the lateral half is wider, and the medial narrower,
    as a share. turn: degrees by which the outline's own axis leans to the lateral side against the frog's.
    """

    length: float = 128.0
    width: float = 130.0
    widest: float = 56.0
    roundness: float = 2.1
    heels: float = 82.0
    wall: tuple[float, float, float] = (12.0, 8.5, 7.5)
    bulges: tuple[Bulge, ...] = field(default=())
    lopsided: float = 0.0
    turn: float = 0.0
    picks: int = 28

    def thickness(self, angle: Floats) -> Floats:
        """The wall's thickness at angles from the toe, degrees, with its bulges."""
        toe, quarter, heel = self.wall
        back = np.cos(np.radians(angle))
        sound = quarter + np.where(back > 0, (toe - quarter) * np.abs(back) ** 1.5, (heel - quarter) * back**2)
        return np.asarray(sound + sum(bulge.mm(angle) for bulge in self.bulges))

    def points(self) -> dict[str, Floats]:
        """The landmarks of a sole view, each (n, 2)."""
        inner = self._white_line(np.linspace(-1, 1, 721))
        outer = inner + self.thickness(_angles(inner))[:, None] * _normals(inner)
        bare = replace(self, bulges=())
        middle = inner + bare.thickness(_angles(inner))[:, None] * _normals(inner) * 0.5
        lines = {"wall": _spread(outer, self.picks), "white_line": _spread(inner, max(8, self.picks * 2 // 3))}
        leaning = {name: self._leaning(found) for name, found in lines.items()}
        ends = {"buttress_medial": middle[:1], "buttress_lateral": middle[-1:]}
        return leaning | {name: self._leaning(found) for name, found in ends.items()} | self._inside()

    def _white_line(self, along: Floats) -> Floats:
        """The inner edge of the wall from the medial heel (-1) by the toe (0) to the lateral one (1)."""
        toe, quarter, heel = self.wall
        half, front = self.width / 2 - quarter, self.length * self.widest / 100 - toe
        back, narrow = self.length - front - toe, self.heels / 2 - heel
        turn = np.clip(np.abs(along) * 2, 0, 1) * np.pi / 2
        x = half * np.sin(turn) ** (2 / self.roundness)
        y = back + front * np.cos(turn) ** (2 / self.roundness)
        behind = np.clip(np.abs(along) * 2 - 1, 0, 1)
        x = np.where(behind > 0, half - (half - narrow) * behind**2.3, x) * np.sign(along)
        y = np.where(behind > 0, back * (1 - behind), y)
        out = self.lopsided * (np.exp(-(((along - 0.6) / 0.25) ** 2)) + np.exp(-(((along + 0.25) / 0.2) ** 2)))
        return np.stack([x * (1 + out), y + out * (y - back)], axis=-1)

    def _inside(self) -> dict[str, Floats]:
        """Frog, bars and breakover, which stand straight."""
        apex, base, heel = 0.66 * self.length, 0.04 * self.length, self.heels / 2 - self.wall[2]
        corner = 0.32 * (apex - base)
        found = {"frog_apex": [[0, apex]], "breakover": [[0, self.length - 7]]}
        for side, sign in (("medial", -1), ("lateral", 1)):
            found[f"frog_{side}"] = [[sign * corner, base]]
            found[f"bar_{side}"] = [[sign * (heel - 3), 2], [sign * (corner * 0.75), 0.36 * self.length]]
        return {name: np.array(spots, dtype=float) for name, spots in found.items()}

    def _leaning(self, line: Floats) -> Floats:
        middle = np.array([0, self.length * (1 - self.widest / 100)])
        return np.asarray(turned(line - middle, -self.turn) + middle)


FORE = Sole()
HIND = Sole(length=130, width=120, widest=64, roundness=1.85, heels=76, wall=(9.5, 9.0, 8.0))


def turned(points: Floats, degrees: float) -> Floats:
    """Points turned about the origin, counterclockwise."""
    turn = np.radians(degrees)
    return np.asarray(points @ [[np.cos(turn), np.sin(turn)], [-np.sin(turn), np.cos(turn)]])


def moved(points: Points, degrees: float = 0, shift: tuple[float, float] = (0, 0), scale: float = 1) -> Points:
    """A picture of the same sole, turned, enlarged and shifted."""
    return {name: turned(found, degrees) * scale + shift for name, found in points.items()}


def other_foot(points: Points) -> Points:
    """The mirror image: the same sole on the horse's other side. The names stay, as medial stays medial."""
    return {name: found * [-1, 1] for name, found in points.items()}


def sides_swapped(points: Points) -> Points:
    """The same places, but what was medial is called lateral; the lines still run from medial to lateral."""
    found = {name: spots[..., ::-1, :] if name in ("wall", "white_line") else spots for name, spots in points.items()}
    return {_swapped(name): spots for name, spots in found.items()}


def reversed_order(points: Points) -> Points:
    """Both lines picked the other way round."""
    return {name: spots[..., ::-1, :] if name in ("wall", "white_line") else spots for name, spots in points.items()}


def jittered(points: Points, draws: int = 300, sd: float = 0.3, seed: int = 1) -> dict[str, Floats]:
    """Draws of the same sole, each pick with an error of its own on both axes, (draws, n, 2); sd in mm."""
    hand = np.random.default_rng(seed)
    return {name: found + hand.normal(0, sd, (draws, *found.shape)) for name, found in points.items()}


def ellipse(across: float, along: float, count: int = 360) -> Floats:
    """An ellipse about the origin with these half axes, from its heel end round the toe and back, (count, 2)."""
    turn = np.linspace(0, 2 * np.pi, count, endpoint=False)
    return np.stack([-across * np.sin(turn), -along * np.cos(turn)], axis=-1)


def with_frog(wall: Floats, **others: list[list[float]]) -> dict[str, Floats]:
    """A wall with a frog whose base lies about the origin, so that the wall stands in the frame of the foot."""
    frog = {"frog_apex": [[0, 30]], "frog_medial": [[-10, 0]], "frog_lateral": [[10, 0]]}
    return {"wall": wall} | {name: np.array(spots, dtype=float) for name, spots in (frog | others).items()}


def _swapped(name: str) -> str:
    start, _, end = name.rpartition("_")
    return f"{start}_{SIDES[end]}" if end in SIDES else name


def _angles(line: Floats) -> Floats:
    """The angle from the toe of each point of a fine line about the centroid of the area inside, degrees."""
    start, end = line, np.roll(line, -1, axis=0)
    cross = start[:, 0] * end[:, 1] - start[:, 1] * end[:, 0]
    middle = ((start + end) * cross[:, None]).sum(axis=0) / (3 * cross.sum())
    return np.asarray(np.degrees(np.arctan2(line[:, 0] - middle[0], line[:, 1] - middle[1])))


def _normals(line: Floats) -> Floats:
    """Outward, where the line runs from the medial heel round the toe, clockwise."""
    run = np.gradient(line, axis=0)
    run /= np.hypot(run[:, 0], run[:, 1])[:, None]
    return np.stack([-run[:, 1], run[:, 0]], axis=-1)


def _spread(line: Floats, count: int) -> Floats:
    """Picks at even distances along a fine line, its ends among them."""
    way = np.concatenate([[0], np.cumsum(np.hypot(*np.diff(line, axis=0).T))])
    at = np.linspace(0, way[-1], count)
    return np.stack([np.interp(at, way, line[:, axis]) for axis in (0, 1)], axis=-1)
