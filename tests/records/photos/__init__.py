"""Tests of `recordgen/records/photos`."""
