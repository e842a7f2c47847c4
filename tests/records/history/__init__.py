"""Tests of `recordgen/records/history`."""
