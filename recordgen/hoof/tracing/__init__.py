"""Figures of a foot traced on a picture, each with its error: from the side, from the front, of the sole."""
