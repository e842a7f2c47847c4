"""Tests of what the horses of all stables say together."""
