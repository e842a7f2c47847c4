"""Tell when each visit was first kept in git, and what was changed in it since."""
