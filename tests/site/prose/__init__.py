"""Tests of `recordgen/site/prose`."""
