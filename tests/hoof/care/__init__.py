"""Tests of `recordgen/hoof/care`."""
