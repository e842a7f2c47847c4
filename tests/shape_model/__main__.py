"""Writes the table of usual outlines anew; give it the next version where it changes what was drawn."""

import re
from pathlib import Path

from recordgen.records.models.lines import shape_table
from tests.shape_model.made import table

FILE = Path(shape_table.__file__)
text = FILE.read_text("utf-8")
for name, rows in zip(("_WALL", "_RING"), table(), strict=True):
    lines = shape_table.text_of(rows)
    text = re.sub(rf'^{name} = """.*?"""', f'{name} = """\n{lines}\n"""', text, flags=re.DOTALL | re.MULTILINE)
FILE.write_text(text, "utf-8")
