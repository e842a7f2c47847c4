"""Tests of the changes that a page tells."""
