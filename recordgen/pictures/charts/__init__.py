"""Charts through time: toe length, growth, events, the weeks ahead."""
