"""Spreadsheets of a practice, in and out: rows of cells become visits, and the records become tables.

Open `rows.py` first: it turns the rows of a sheet into visits on their way into the records, as a file of columns
(`columns.py`) tells what stands where. `grid.py` reads CSV and spreadsheets into cells, `headings.py` and `propose.py`
guess the file of columns, `targets.py` is what a column can be, `cells.py` what a cell says. `leaves.py` names the
values of a record in order, `layout.py` holds the columns against the sheet, `owners.py` finds the horse. The way out
is `tables.py`: all records as tables, whose columns `dictionary.py` explains.
"""
