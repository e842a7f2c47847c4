"""The data and the words of the pictures of pages."""
