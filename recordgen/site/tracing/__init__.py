"""What a page tells of a horse's tracings, in figures, words and pictures."""
