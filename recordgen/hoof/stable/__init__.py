"""What the horses of one stable say together: shares of a finding, and patterns."""
