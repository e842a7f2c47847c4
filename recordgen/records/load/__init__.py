"""A folder of records as one practice, with its tables."""
