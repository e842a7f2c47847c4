"""Tests of `recordgen/hoof/tracing/errors`."""
