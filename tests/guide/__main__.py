"""Writes the outputs of the guide's lines anew, and takes the pictures of the demo practice for it and the README."""

import tempfile
from pathlib import Path

from tests.conftest import build_demo
from tests.guide.outputs import COMMANDS_PAGE, with_outputs
from tests.guide.pictures import PICTURES, photograph

with tempfile.TemporaryDirectory() as folder:
    build_demo(Path(folder) / "sites")
    photograph(Path(folder) / "sites", PICTURES, Path(folder))
with tempfile.TemporaryDirectory() as folder:
    COMMANDS_PAGE.write_text(with_outputs(COMMANDS_PAGE.read_text("utf-8"), Path(folder)), "utf-8")
