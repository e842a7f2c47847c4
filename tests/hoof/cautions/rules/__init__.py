"""Tests of `recordgen/hoof/cautions/rules`."""
