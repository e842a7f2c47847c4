"""Feet tapped at a few places: shared cases for Python and JavaScript, and how well a few taps tell a known sole.

`python -m tests.tapped` writes the cases anew; `python -m tests.tapped.judged` prints bias and coverage.
"""
