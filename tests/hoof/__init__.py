"""Tests of the meaning of the records."""
