"""The table of usual outlines of a sole: `python -m tests.shape_model` makes it anew of simulated soles."""
