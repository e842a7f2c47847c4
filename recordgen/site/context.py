"""The ways of a practice on this computer: with the folder that keeps what was drawn and reckoned before."""

from __future__ import annotations

import os
from pathlib import Path

from platformdirs import user_cache_path

from recordgen.hoof.context import Context
from recordgen.records.load.everything import Whole
from recordgen.site.tracing.figure_cache import FigureCache


def picture_folder() -> Path:
    """Where pictures and figures are kept between builds: a folder of this user's alone, outside every repository."""
    return Path(os.environ.get("RECORDGEN_PICTURES") or user_cache_path("recordgen") / "pictures")


def ways_of(whole: Whole, folder: Path | None = None) -> Context:
    """The ways of a practice that was read. folder: where figures of tracings are kept; else `picture_folder`."""
    return Context.of(whole.practice.file, whole.reference, whole.repeated, FigureCache(folder or picture_folder()))
