"""Tests of `recordgen/hoof/export`."""
