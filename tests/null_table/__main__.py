"""Run as `python -m tests.null_table`: writes the rows of recordgen/hoof/claims/null_table.py anew, in some seconds."""

from __future__ import annotations

import re
from pathlib import Path

from recordgen.hoof.claims import null_table
from tests.null_table.simulated import rows

MODULE = Path(null_table.__file__)


def rebuilt(text: str) -> str:
    """The text of the module with its rows simulated anew."""
    return re.sub(r'(?<=ROWS = """\n).*?(?=""")', "".join(f"{row}\n" for row in rows()), text, count=1, flags=re.DOTALL)


if __name__ == "__main__":
    MODULE.write_text(rebuilt(MODULE.read_text("utf-8")), "utf-8")
