"""Tests of `recordgen/private/publishing`."""
