"""The practice and its three stables, all invented.

Telephone numbers are from the ranges kept free for drama, 01632 960000 to 960999 and 07700 900000 to 900999.
From memory, not read: Ofcom, Telephone numbers for use in TV and radio drama programmes.
"""

from __future__ import annotations

from typing import Any

PRACTICE: dict[str, Any] = {
    "name": "Hazel Hoof Care",
    "trimmer": "Wren Ashdown",
    "phone": "07700 900142",
    "email": "wren@hazel.example.org",
    "country": "GB",
    "feet": "left and right",
    "usual_weeks": {"adult": 6, "donkey": 8, "foal": 4},
    "leeway_days": 7,
    "sooner": [{"finding": "separation", "from_mm": 8, "weeks": 5}],
    "working_days": ["mon", "tue", "wed", "thu", "fri"],
    "holidays": ["2026-12-24 to 2027-01-03"],
    "horses_a_day": 8,
    "methods": {"toe_length": "rule", "toe_angle": "protractor", "circumference": "tape"},
}

STABLES: dict[str, dict[str, Any]] = {
    "willowmere": {
        "name": "Willowmere",
        "contacts": [
            {
                "name": "Mara Tilling",
                "role": "manager",
                "phone": "01632 960118",
                "email": "mara@willowmere.example.org",
            },
            {"name": "Jonah Peake", "role": "owner of Bramble", "phone": "07700 900317"},
            {"name": "Ada Corrie", "role": "owner of Pippin", "phone": "07700 900356"},
        ],
        "vet": {"name": "Three Larches Equine Vets", "role": "Imogen Sayle", "phone": "01632 960771"},
        "note": "Feet are done on the concrete by the tack room. Please have them caught and dry by nine.",
        "private_note": "Gate code is the year on the barn, twice. Dog is friendly; the goose isn't.",
    },
    "fallow-end": {
        "name": "Fallow End",
        "contacts": [
            {"name": "Tobias & Ruth Venner", "role": "owners", "phone": "01632 960204"},
            {"name": "Nell Harrow", "role": "groom", "phone": "07700 900481", "email": "nell@fallow-end.example.org"},
        ],
        "vet": {"name": "Three Larches Equine Vets", "role": "Imogen Sayle", "phone": "01632 960771"},
        "note": "The lane floods after heavy rain; come by the top gate then.",
        "private_note": "Key to the top gate hangs behind the water butt. Invoice to Ruth, not Tobias.",
    },
    "tithe-barn": {
        "name": "Tithe Barn",
        "contacts": [
            {"name": "Cass Orme", "role": "manager", "phone": "07700 900625", "email": "yard@tithebarn.example.org"},
            {"name": "Leo Winterflood", "role": "owner of Rowan", "phone": "07700 900633"},
        ],
        "near": ["willowmere"],
        "vet": {"name": "Fold Gate Vets", "role": "Petra Lunn", "phone": "01632 960856"},
        "private_note": "No signal in the barn: ring before turning off the road. Light switch left of the door.",
    },
}
