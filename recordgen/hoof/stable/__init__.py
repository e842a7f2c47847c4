"""Statistics of the horses of one stable: shares of a finding, and patterns."""
