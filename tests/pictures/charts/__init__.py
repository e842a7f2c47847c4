"""Tests of `recordgen/pictures/charts`."""
