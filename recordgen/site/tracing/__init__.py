"""A page's part on a horse's tracings, in figures, words and pictures."""
