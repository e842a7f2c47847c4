"""Tests of `recordgen/records/write`."""
