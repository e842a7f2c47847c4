"""Files that are written for the trimmer: a visit to fill in, a new practice, commits, the schema."""
