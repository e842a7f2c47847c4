"""A copy of the practice at another place, and two computers."""
