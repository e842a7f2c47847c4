"""Tests of `recordgen/hoof/stable`."""
