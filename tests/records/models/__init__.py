"""Tests of `recordgen/records/models`."""
