"""The own pages of the demo: one of the practice for every site, and one for a single stable's. Both invented."""

from __future__ import annotations

BEFORE_WE_COME = """# Before we come

A calm horse on firm, dry ground is half of a good trim. Here is how you can help.

## On the day

- Bring the horse in an hour before, so that its feet can dry.
- Pick the feet out and brush off the mud. Please do not wash them, since wet feet tell us less.
- Have a level place ready, with a roof and good light.
- Somebody the horse knows holds it, and stands on the side where we work.
- Keep children and dogs away while we work.

## Tell us first

Has anything changed since the last visit? We like to hear of new feed, other ground, or a horse that goes short.

Is a horse lame, or is a foot hot? Then ring the vet first, and us after. [What to call a vet for](safety.md#call)
stands on a page of its own.

Does a horse cough, or has one in the yard ringworm? Please ring before we set out. We carry it from yard to yard.

## If the day does not suit

| you tell us | what we do |
|---|---|
| two days before | we find another day in the same week if we can |
| on the day | we come with the next round |

Feet grow on in the meantime, so please do not leave it for long.
"""

WHEN_THE_LANE_FLOODS = """# When the lane floods

After heavy rain water stands in the lane, and the front gate cannot be used.

1. Nell looks at the lane in the morning and rings us.
2. We come by the top gate, up the farm track.
3. The horses wait in the barn. The yard in front of it stays dry.

If the track is under water as well, we put the visit off. See [Before we come](before-we-come.md).
"""

PAGES = {
    "pages/before-we-come.md": BEFORE_WE_COME,
    "fallow-end/pages/when-the-lane-floods.md": WHEN_THE_LANE_FLOODS,
}
