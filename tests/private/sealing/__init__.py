"""Tests of `recordgen/private/sealing`."""
