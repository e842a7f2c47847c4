"""Tests of `recordgen/site/tracing`."""
