"""Tests of `recordgen/records/yaml`."""
