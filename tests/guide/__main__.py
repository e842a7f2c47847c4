"""Writes the outputs of the guide's lines anew."""

import tempfile
from pathlib import Path

from tests.guide.outputs import COMMANDS_PAGE, with_outputs

with tempfile.TemporaryDirectory() as folder:
    COMMANDS_PAGE.write_text(with_outputs(COMMANDS_PAGE.read_text("utf-8"), Path(folder)), "utf-8")
