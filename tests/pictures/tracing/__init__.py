"""Tests of `recordgen/pictures/tracing`."""
