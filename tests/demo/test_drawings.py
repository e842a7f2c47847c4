"""The drawings among the demo's photographs: named by the tracings, plain, small, and where the tracings are."""

from __future__ import annotations

import io
from functools import cache
from pathlib import Path

import numpy as np
from PIL import Image

from recordgen.records.photos.jpeg import headers, picture_alone
from recordgen.records.photos.names import parse_photo_name
from tests.demo.drawings import PENCIL, drawing
from tests.demo.practice import demo_drawings
from tests.support.demo_tracings import RECORDS, feet

# Grey of 255 by which a pixel may differ, and the share of pixels that may differ more: another encoder or another
# drawing of letters does that; a line in another place does more.
GREY, SHARE = 50, 0.002


@cache
def made() -> dict[str, bytes]:
    """Every drawing made anew, by its path."""
    return {path: drawing(one) for path, one in demo_drawings().items()}


def grey(picture: bytes) -> np.ndarray[tuple[int, int], np.dtype[np.int16]]:
    """The pixels of a picture."""
    return np.asarray(Image.open(io.BytesIO(picture)).convert("L"), dtype=np.int16)


def apart(one: bytes, other: bytes) -> float:
    """The share of pixels in which two pictures of one size clearly differ."""
    return float((np.abs(grey(one) - grey(other)) > GREY).mean())


def test_the_script_draws_what_lies_in_the_records() -> None:
    """The same names, and the same pictures to the eye; the bytes are the encoder's own affair."""
    kept = {path.relative_to(RECORDS).as_posix(): path.read_bytes() for path in RECORDS.rglob("*.jpg")}

    assert kept.keys() == made().keys()
    assert {path: apart(picture, made()[path]) < SHARE for path, picture in kept.items()} == dict.fromkeys(kept, True)


def test_another_foot_is_another_picture() -> None:
    """The least change that the comparison above lets pass is less than the change that a trim makes."""
    before, after = (
        made()[f"willowmere/bramble/photos/2026-10-21-right-hind-sole-{moment}.jpg"] for moment in ("before", "after")
    )

    assert apart(before, after) > 10 * SHARE


def test_drawing_again_gives_the_same_bytes() -> None:
    """On one machine."""
    path, one = next(iter(demo_drawings().items()))

    assert drawing(one) == made()[path]


def test_drawings_are_few_small_and_plain() -> None:
    """At most 1000 px and 60 kB each, 1 MB together, nothing beside the picture."""
    sizes = [headers(io.BytesIO(picture)) for picture in made().values()]

    assert 12 <= len(sizes) <= 20
    assert max(max(size.width, size.height) for size in sizes) <= 1000
    assert (max(map(len, made().values())) < 60_000, sum(map(len, made().values())) < 1_000_000) == (True, True)
    assert all(picture_alone(picture) == picture for picture in made().values())


def test_every_drawing_is_named_by_a_tracing_of_what_its_name_says() -> None:
    """Day, foot, view and moment; its size is the tracing's."""
    told = {
        f"{slug}/{one.file}": ((day, foot, one.view, one.moment), tuple(one.image))
        for slug, day, foot, found in feet()
        for one in found.tracings
        if one.file
    }
    seen = {}
    for path, picture in made().items():
        subject, size = parse_photo_name(Path(path).name), headers(io.BytesIO(picture))
        assert subject is not None
        shown = subject[0]
        seen[f"{path.split('/')[1]}/{Path(path).name}"] = (
            (shown.day, shown.foot, shown.view, shown.moment),
            (size.width, size.height),
        )

    assert told == seen


def test_the_first_and_the_latest_day_and_the_trim_between_are_drawn() -> None:
    """Of the three horses that are followed: at least two days, and the latest before and after."""
    for slug in ("bramble", "dunlin", "pippin"):
        files = sorted(Path(path).name for path in made() if f"/{slug}/" in path)
        latest = [name for name in files if name.startswith(files[-1][:10])]

        assert len({name[:10] for name in files}) >= 2
        assert any(name.replace("before", "after") in latest for name in latest if "before" in name)


def test_the_tracings_lie_on_the_lines_that_were_drawn() -> None:
    """Within 7 px of a dark one, about four times the error of the hand: the wall of each foot from each side."""
    for slug, _, _, found in feet():
        for one in found.tracings:
            paths = [path for path in made() if one.file and path.endswith(f"/{slug}/photos/{one.file}")]
            for path in paths:
                dark = np.argwhere(grey(made()[path]) < PENCIL[0] + 80)[:, ::-1]
                for spot in one.wall or one.dorsal_wall or one.lateral_wall:
                    assert np.hypot(*(dark - spot).T).min() < 7, (path, spot)


def test_the_word_is_written_on_each_drawing() -> None:
    """In the corner above on the left there is pencil, and in the one on the right there is none."""
    for path, picture in made().items():
        left, right = grey(picture)[28:60, 56:180], grey(picture)[28:60, -180:-56]
        assert ((left < 140).sum() > 150, (right < 140).sum(), path) == (True, 0, path)
