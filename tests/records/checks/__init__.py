"""Tests of `recordgen/records/checks`."""
