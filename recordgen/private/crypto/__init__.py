"""Keys, words and sealed blobs, from published standards alone."""
