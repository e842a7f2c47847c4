"""The names of feet, of the zones of the wall and of the places of the sole: one spelling inside, several typed."""

from __future__ import annotations

from typing import Literal, get_args

Foot = Literal["left_fore", "right_fore", "left_hind", "right_hind"]
FEET: tuple[Foot, ...] = get_args(Foot)

Zone = Literal[
    "medial heel",
    "medial quarter",
    "medial toe quarter",
    "toe",
    "lateral toe quarter",
    "lateral quarter",
    "lateral heel",
]
ZONES: tuple[Zone, ...] = get_args(Zone)

# Everywhere a finding can stand on a foot seen from below.
Place = Literal[
    Zone,
    "frog",
    "central groove",
    "medial groove",
    "lateral groove",
    "medial bar",
    "lateral bar",
    "sole",
    "coronet",
    "heel bulbs",
]
PLACES: tuple[Place, ...] = get_args(Place)

# What may be found at a place, as the findings of a visit name it.
FindingKind = Literal[
    "flare",
    "separation",
    "crack",
    "chip",
    "bruise",
    "infection",
    "tissue",
    "sensitive",
    "gives",
    "shape",
    "dip",
    "blood",
    "object",
    "wound",
    "abscess",
    "mark",
]

# From where a foot is photographed, and when: before or after the trim, or as found where nothing was trimmed.
View = Literal["side", "front", "sole", "heel", "whole"]
VIEWS: tuple[View, ...] = get_args(View)
Moment = Literal["found", "before", "after"]
MOMENTS: tuple[Moment, ...] = get_args(Moment)

# Names that `recordgen init` writes where none was told, to be filled in before anything is built.
PLACEHOLDERS = {"practice": "My practice", "trimmer": "Your name", "stable": "First stable"}

# What is trimmed.
Kind = Literal["horse", "pony", "donkey", "mule"]

# By age, and donkeys for themselves: what the usual interval and the usual growth go by.
CareClass = Literal["foal", "yearling", "adult", "aged", "donkey"]

# By age first, then by kind and build: what the size and the form of a foot go by.
SizeClass = Literal["foal", "yearling", "donkey", "pony", "heavy", "horse"]

FOOT_SPELLINGS: dict[str, Foot] = {
    **{foot: foot for foot in FEET},
    "near_fore": "left_fore",
    "off_fore": "right_fore",
    "near_hind": "left_hind",
    "off_hind": "right_hind",
    "lf": "left_fore",
    "rf": "right_fore",
    "lh": "left_hind",
    "rh": "right_hind",
    "nf": "left_fore",
    "of": "right_fore",
    "nh": "left_hind",
    "oh": "right_hind",
}


def foot_named(text: str) -> Foot | None:
    """The foot that a typed name means, or None: `near_fore`, `Left fore`, `LF` and `NF` are all left_fore."""
    return FOOT_SPELLINGS.get(text.strip().lower().replace(" ", "_").replace("-", "_"))


def typed_foot(foot: Foot, near_and_off: bool) -> str:
    """A foot as a practice types it: near_fore rather than left_fore where it names feet so."""
    return foot.replace("left", "near").replace("right", "off") if near_and_off else foot


def zone_named(text: str) -> Zone | None:
    """The zone of the wall that a typed name means, or None: `lateral_quarter` is `lateral quarter`."""
    spelled = " ".join(text.lower().replace("_", " ").replace("-", " ").split())
    return next((zone for zone in ZONES if zone == spelled), None)


def is_left(foot: Foot) -> bool:
    """Tell whether the foot is one of the two left ones."""
    return foot.startswith("left")


def is_fore(foot: Foot) -> bool:
    """Tell whether the foot is one of the two front ones."""
    return foot.endswith("fore")
