"""Helpers that tests share: small records, shapes, readers of pages and pictures, practices to publish from."""
