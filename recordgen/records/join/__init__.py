"""Two states of one file of the records joined reading by reading, where both computers changed it.

Open `files.py` first: the text of a file out of three (before, here, there), or the questions that must be answered.
`values.py` compares the three value by value. Where both sides changed the same reading, somebody is asked; nothing of
either side is ever dropped unasked.
"""
