"""Photographs: taken in without metadata, named by day and foot, read back."""
