"""Charts through time: toe length, growth, events."""
