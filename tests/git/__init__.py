"""Tests of all that is asked of git."""
