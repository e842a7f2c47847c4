"""Tests of `recordgen/pictures/feet`."""
