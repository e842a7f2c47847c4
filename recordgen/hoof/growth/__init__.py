"""Tell how fast horn grows: cycles between trims, the rate with its uncertainty, a season, and what grows out."""
