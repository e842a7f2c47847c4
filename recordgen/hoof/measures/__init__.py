"""Measures of a foot: how it is read, how well it repeats, and whether it changed."""
