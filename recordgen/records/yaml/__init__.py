"""A file of YAML to a model, or to problems that point at the very line."""
