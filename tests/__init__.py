"""Tests: the rooms of the package, the literature, browsers, the demo and its benchmarks."""
