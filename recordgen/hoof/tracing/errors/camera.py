"""The error of an angle by a camera that does not look square at a foot; a picture does not show that it was so."""

from __future__ import annotations

import math

# Of the table on the method page, degrees: true angles, and how far a camera may be from square.
TRUE_ANGLES = (40, 50, 60)
FROM_SQUARE = (5, 10, 20, 30)


def yawed_deg(true_deg: float, yaw_deg: float) -> float:
    """The angle to the ground that a true one shows where the camera stands too far to the front or back, degrees.

    yaw_deg: how far it is turned about the plumb line from square to the foot. From so far away that parallel lines
    stay so, yaw shortens what lies along the ground. Derived from: orthographic projection, atan(tan a / cos yaw).
    """
    rise, run = math.sin(math.radians(true_deg)), math.cos(math.radians(true_deg))
    return math.degrees(math.atan2(rise, run * math.cos(math.radians(yaw_deg))))


def pitched_deg(true_deg: float, pitch_deg: float) -> float:
    """The angle to the ground that a true one shows where the camera looks down by so much, degrees.

    Pitch shortens the height. Derived from: orthographic projection, atan(tan a * cos pitch).
    """
    rise, run = math.sin(math.radians(true_deg)), math.cos(math.radians(true_deg))
    return math.degrees(math.atan2(rise * math.cos(math.radians(pitch_deg)), run))


def camera_table() -> list[tuple[str, int, tuple[float, ...]]]:
    """Pictures of TRUE_ANGLES by cameras: square, yaw or pitch; by how many degrees; the angles in the picture."""
    rows = [("square", 0, tuple(map(float, TRUE_ANGLES)))]
    rows += [("yaw", off, tuple(yawed_deg(true, off) for true in TRUE_ANGLES)) for off in FROM_SQUARE]
    return rows + [("pitch", off, tuple(pitched_deg(true, off) for true in TRUE_ANGLES)) for off in FROM_SQUARE]
