"""Tests of `recordgen/hoof/growth`."""
