"""The page for the phone, on which a visit is written down beside the horse.

Open `page.py` first: it puts `vocabulary.py` (what a visit may hold), `words.py` (how that is said in the practice's
language), `horses.py` (what is known of each horse) and `sole_map.py` (where on a sole to tap) into one page that asks
no network. No record is changed here.
"""
