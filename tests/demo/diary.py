"""Sentences a trimmer scribbles: the weather of each month of the story, small remarks, what was done."""

from __future__ import annotations

# By year and month: how it was since last time.
WEATHER: dict[tuple[int, int], tuple[str, ...]] = {
    (2024, 12): ("Wet and mild, gateways deep.", "A soft, grey month.", "Rain most days."),
    (2025, 1): ("Frozen ruts for ten days, then a thaw.", "Hard frost and little moving about."),
    (2025, 2): ("Cold and wet, fields shut twice.", "Rain again, mud above the fetlocks."),
    (2025, 3): ("Drying at last.", "A dry, bright March.", "East wind, ground firming up."),
    (2025, 4): ("Very dry for April.", "Grass slow to come.", "Ground hard already."),
    (2025, 5): ("Dry, the track like a road.", "No rain to speak of.", "Dust."),
    (2025, 6): ("Hot spell, flies bad, a lot of stamping.", "Ground like brick.", "Hot and dry."),
    (2025, 7): ("Thunder rain once, hard ground otherwise.", "Still hot; out by night.", "Dry, edges chipping."),
    (2025, 8): ("Dry until the last week.", "Flies and hard ground.", "Short grass, long days out."),
    (2025, 9): ("Rain came back, grass with it.", "Softer ground, feet easier to work.", "Mild with showers."),
    (2025, 10): ("Rain for two weeks.", "A flush of autumn grass.", "Mild, everything growing."),
    (2025, 11): ("Very wet, fields poached.", "Gales and rain; in at night now.", "Mud everywhere."),
    (2025, 12): ("Wet, then a dry cold week.", "In at night, out by day.", "Dark and damp."),
    (2026, 1): ("Snow for a week, balling in the feet.", "Frozen, then slush.", "Cold; walked in hand only."),
    (2026, 2): ("Floods in the bottom field.", "Rain, rain.", "Wettest month so far."),
    (2026, 3): ("Windy and drying.", "Half the fields open again.", "Cold but dry."),
    (2026, 4): ("Grass early this year.", "Warm and showery, grass shooting.", "Lovely growing weather."),
    (2026, 5): ("Rich grass after rain.", "Warm and wet, more grass than they need.", "Good soft going."),
    (2026, 6): ("A fine June.", "Hay made, fields resting.", "Warm, ground firm, not hard."),
    (2026, 7): ("Two hot weeks.", "Ground hard, some chips at the edge.", "Dry; flies by the pond."),
    (2026, 8): ("Showers, ground easing.", "Warm nights, out all round the clock."),
    (2026, 9): ("Dewy mornings, dry days.", "A golden month, good going.", "First rain in weeks."),
    (2026, 10): ("Two weeks of rain.", "Rain every other day, tracks soft.", "Mild and wet."),
    (2026, 11): (
        "Wet, gateways gone again.",
        "In at night since the clocks changed.",
        "Rain, fields closed at the weekend.",
    ),
}

# For the owner to read, where there was nothing to tell.
REMARKS = {
    "any": (
        "Nothing to add.",
        "Stood like a rock today.",
        "Feet in good order.",
        "Good strong horn.",
        "Thank you for the dry, level place to work.",
        "Wear is as it should be.",
        "Chatty yard, calm horse.",
        "Walked off well afterwards.",
        "Same again next time.",
        "Sole nicely hollow, left alone.",
        "Bit fidgety behind; took it slowly.",
    ),
    "winter": (
        "Feet soft from the wet; easy to work, easy to overdo.",
        "Slow growth, as always in the cold.",
        "Please pick out when coming in, stones sit in the soft ground by the gate.",
        "Dry standing does more than any bottle.",
    ),
    "spring": (
        "Old sole coming away by itself, no need to pare it.",
        "Growth picking up.",
        "Watch the grass now; ring me if anything feels warm or the walk shortens.",
    ),
    "summer": (
        "Flies and stamping: edges rounded well.",
        "Hard ground does half my work.",
        "Horn dry and hard, my rasp is feeling it.",
    ),
    "autumn": (
        "Strong growth since summer.",
        "Time to look into the grooves daily again.",
        "Back to soft ground, frogs looking fuller.",
    ),
}

DONE_FORE = (
    "edge rounded",
    "walls levelled",
    "toe taken back",
    "heels taken down a little",
    "bars levelled",
    "frog tidied",
    "loose sole brushed off",
)
DONE_HIND = ("edge rounded", "toe shortened", "walls levelled", "frog tidied", "heels evened")

KEEPING = {
    "winter": (
        {"turnout": "out by day", "bedding": "straw on rubber"},
        {"ground": "deep mud at the gates", "turnout": "4 to 6 hours"},
        {"bedding": "dry shavings", "turnout": "out by day"},
    ),
    "spring": ({"ground": "drying grass", "turnout": "out by day"}, {"turnout": "day and night", "ground": "grass"}),
    "summer": (
        {"ground": "hard field", "turnout": "day and night"},
        {"ground": "gravel track", "turnout": "out by night"},
    ),
    "autumn": ({"ground": "soft grass"}, {"ground": "soft going"}),
}
