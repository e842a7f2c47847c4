"""Feet as drawings: from below with their findings, from the side, the wall rolled flat."""
