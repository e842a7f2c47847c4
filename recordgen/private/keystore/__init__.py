"""The keys of each stable's site, kept on this computer alone."""
