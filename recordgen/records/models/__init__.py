"""The models of the records: every file's fields, and the reference tables."""
