"""Tests of `recordgen/hoof/measures`."""
