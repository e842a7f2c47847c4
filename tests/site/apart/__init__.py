"""Stables built apart from each other."""
