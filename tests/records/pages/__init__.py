"""Tests of `recordgen/records/pages`."""
