"""Tests of `recordgen/hoof/cautions`."""
