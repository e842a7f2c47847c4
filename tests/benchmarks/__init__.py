"""How fast it is, measured against the bare engine and the bare YAML loader in one run. No test depends on a time."""
