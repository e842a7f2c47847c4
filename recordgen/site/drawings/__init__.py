"""What the pictures of a page are drawn from, taken out of the summaries."""
