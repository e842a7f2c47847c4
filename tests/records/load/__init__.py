"""Tests of `recordgen/records/load`."""
