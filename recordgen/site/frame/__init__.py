"""The frame around each page: what it brings along.

`styles.py`: the rules that a page wants, written into it, since a file of their own would hold up the first paint.
`search_index.py`: what search reads. `home_screen.py`: a site among the apps of a phone.
"""
