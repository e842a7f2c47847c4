"""The commands: one short file each, which parses, calls and prints. No logic lives here.

Open `main.py` first. Heavy libraries load only in the commands that need them.
"""

from recordgen.cli.main import main

__all__ = ["main"]
