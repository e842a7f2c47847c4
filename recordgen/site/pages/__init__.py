"""The pages of a site, by kind, and the sites they make up. Nothing is computed here.

Open `sites.py` first: which pages stand in a stable's own site, and which in the trimmer's. Each other file renders one
kind of page, through the `PageRenderer` that all pages of a part of a site share.
"""
