"""Two states of one record joined."""
