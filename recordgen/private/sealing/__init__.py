"""A built site to files that tell nothing without the words, and back."""
