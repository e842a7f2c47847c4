"""Tests of `recordgen/private/sharing`."""
