"""The built sites in a real browser: what a reader meets."""
