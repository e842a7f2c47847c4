"""Writes the demo practice into `records/`."""

from __future__ import annotations

from pathlib import Path

from tests.demo.practice import write_demo

if __name__ == "__main__":
    write_demo(Path(__file__).parents[2] / "records")
