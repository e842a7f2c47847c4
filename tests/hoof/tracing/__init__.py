"""Tests of `recordgen/hoof/tracing`."""
