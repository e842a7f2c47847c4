"""Tests of taking in what was written down elsewhere."""
