"""Run as `python -m recordgen`: the same as the command."""

from recordgen.cli import main

main(prog_name="recordgen")
