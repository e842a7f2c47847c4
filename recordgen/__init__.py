"""recordgen: a private site per stable from the hoof records a trimmer keeps.

Data flow one way: `records` (what was written down) to `hoof` (what it means) to `pictures` (what it looks like) to
`site` (what is read). `cli` calls them; `problems` is the one shape of everything that is wrong. A room imports only
from rooms below it: cli, site, pictures, hoof, records, problems.
"""

__version__ = "0.1.0"
