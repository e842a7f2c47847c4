"""Writes the table of shared cases anew."""

import json

from tests.tapped.cases import TABLE, table

lines = [f"{json.dumps(name)}: {json.dumps(case)}" for name, case in table().items()]
TABLE.write_text("{\n" + ",\n".join(lines) + "\n}\n", "utf-8")
