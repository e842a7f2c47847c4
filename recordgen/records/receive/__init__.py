"""Taking records in that were written down elsewhere: on the field page today, in other forms later.

Open `take_in.py` first: it brings each visit through the same steps, whatever form it came in (`incoming.py`).
`whose.py` finds the horse and the day, `doubts.py` what no record can hold, `decide.py` and `compare.py` which file
it becomes beside what is there (`begun.py`: one that was only begun), `visits.py` its text, `seen.py` what came before,
`pictures.py` its photographs and what was traced on them.
`notes_file.py` and `notes_parts.py` read what the field page hands over. What cannot be known is a question
(`questions.py`), never a guess. Nothing that somebody typed is ever written over here.
"""
