"""Data for the pictures of a page, taken out of the summaries."""
