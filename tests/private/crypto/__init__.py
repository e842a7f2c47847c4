"""Tests of `recordgen/private/crypto`."""
