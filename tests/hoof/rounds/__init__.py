"""Tests of `recordgen/hoof/rounds`."""
