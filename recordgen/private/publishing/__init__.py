"""A stable's site to where its readers open it."""
