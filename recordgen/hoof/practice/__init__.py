"""The state of all stables on a trimmer's day: the next round, cautions, aims, gaps and the work.

Open `next_round.py` first. Each file answers one question of the trimmer's front page, without words for it.
"""
