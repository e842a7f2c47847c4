"""What a camera that does not look square at a foot makes of an angle; a picture does not show that it was so."""

from __future__ import annotations

import math

# Of the table on the method page, degrees: true angles, and how far a camera may be from square.
TRUE_ANGLES = (40, 50, 60)
FROM_SQUARE = (5, 10, 20, 30)


def pictured_deg(true_deg: float, *, yaw_deg: float = 0.0, pitch_deg: float = 0.0) -> float:
    """The angle to the ground that a true one shows in a picture, degrees.

    yaw_deg: how far the camera stands to the front or back of square, turned about the plumb line. pitch_deg: how far
    it looks down, from above. Both as seen from so far that lines that are parallel stay so. The wall lies in a plane
    square to the ground line: yaw shortens the ground, pitch the height.
    Derived from: orthographic projection, atan(tan a / cos yaw) and atan(tan a * cos pitch).
    """
    rise, run = math.sin(math.radians(true_deg)), math.cos(math.radians(true_deg))
    return math.degrees(math.atan2(rise * math.cos(math.radians(pitch_deg)), run * math.cos(math.radians(yaw_deg))))


def camera_table() -> list[tuple[str, int, tuple[float, ...]]]:
    """What cameras make of TRUE_ANGLES: square, yaw or pitch; by how many degrees; the angles in the picture."""
    rows = [("square", 0, tuple(map(float, TRUE_ANGLES)))]
    rows += [("yaw", off, tuple(pictured_deg(true, yaw_deg=off) for true in TRUE_ANGLES)) for off in FROM_SQUARE]
    return rows + [
        ("pitch", off, tuple(pictured_deg(true, pitch_deg=off) for true in TRUE_ANGLES)) for off in FROM_SQUARE
    ]
