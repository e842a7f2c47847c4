"""The tracing screen: its photograph, its page, its server, and what it writes."""
