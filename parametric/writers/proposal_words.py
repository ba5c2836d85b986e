"""The words of the proposal that the client's page has not; the rest are the page's own."""

from __future__ import annotations

from collections.abc import Mapping

PROPOSAL_WORDS = {
    # the doors
    "for": "For {0}",
    "for at": "For {0}, {1}",
    "at": "For {0}",
    "slide 1": "A sliding door in {0}{1}, made to measure for your opening.",
    "slide 2": "A pair of sliding doors in {0}{1}, made to measure for your opening.",
    "slide n": "{2} sliding doors in {0}{1}, made to measure for your opening.",
    "swing 1": "A hinged door in {0}{1}, made to measure for your opening.",
    "swing 2": "A pair of hinged doors in {0}{1}, made to measure for your opening.",
    "swing n": "{2} hinged doors in {0}{1}, made to measure for your opening.",
    "fold 1": "A folding door in {0}{1}, made to measure for your opening.",
    "fold 2": "A pair of folding doors in {0}{1}, made to measure for your opening.",
    "fold n": "{2} folding doors in {0}{1}, made to measure for your opening.",
    "fronts 1": "A cabinet front in {0}{1}, made to measure for its case.",
    "fronts n": "{2} cabinet fronts in {0}{1}, made to measure for their case.",
    "halves": "A hinged door in two halves, in {0}{1}, made to measure for your opening.",
    "painted": ", painted",
    "finished": " under {0}",
    "each n": "Each is {0} wide, {1} high and {2} thick{3}.",
    "each 1": "It is {0} wide, {1} high and {2} thick{3}.",
    "differ": "The {0} is {1} wide and {2} high.",
    "differ thick": "They are {0} thick{1}.",
    "filled": ", with {0}",
    "lites": "{0} of {1} glass",
    "lite": "pane",
    "panels": "{0}",
    "raised panel": "raised panel",
    "flat panel": "flat panel",
    "and": "{0} and {1}",
    "head n": "Their shaped heads rise {0}.",
    "head 1": "Its shaped head rises {0}.",
    "head across": "A shaped head rises {0}: one line across the doors.",
    "on the wall n": (
        "They slide past one another in front of the wall and hide its opening when shut."
    ),
    "on the wall 1": "It slides in front of the wall and hides its opening when shut.",
    "on the wall apart": "They slide apart in front of the wall and hide its opening when shut.",
    "in the opening n": "They slide past one another inside the opening.",
    "in the opening 1": "It slides into the wall beside your opening.",
    "in the opening apart": "They slide apart into the wall on either side of your opening.",
    "swing towards n": "They open towards you{1} and come {0} into the room.",
    "swing away n": "They open away from you{1} and go {0} into the room beyond.",
    "swing towards 1": "It is hung on its {1}, opens towards you and comes {0} into the room.",
    "swing away 1": "It is hung on its {1}, opens away from you and goes {0} into the room beyond.",
    "first": ", the {0} first,",
    "open slide 1": "Slid open, {0} is clear to walk through.",
    "open slide 2": "With both slid to one side, {0} is clear to walk through.",
    "open slide apart": "With both slid apart, {0} is clear to walk through.",
    "open slide n": "With all slid to one side, {0} is clear to walk through.",
    "open 1": "Open, {0} is clear to walk through.",
    "open halves": "With both halves open, {0} is clear to walk through.",
    "open 2": "With both open, {0} is clear to walk through.",
    "open n": "With all open, {0} is clear to walk through.",
    "least gap": "{0}: {1}.",
    "maker": "Maker",
    "date": "Date",
    "drawn from the front": (
        "Drawn from the front, from the measured sizes. Room, light and furniture are imagined."
    ),
    "shown in": "Shown in {0}.",
    "plain wood": "plain wood",
    # the drawing
    "drawing": "The drawing",
    "of place": "{0}: {1}",
    "sizes mm": "Sizes in millimetres, from the opening as it was measured.",
    "sizes in": "Sizes in inches, from the opening as it was measured.",
    "front": "From the front",
    "side": "Cut through",
    "shut": "Shut, seen from above",
    "above": "Cut level, seen from above",
    "opened": "Open, seen from above, and what is clear to walk through",
    "over all": "over all",
    "plumb": "your opening, plumb and clear",
    "opening": "your opening, at its widest",
    "key tracks": "Dots and dashes: the tracks.",
    "key hinges": "Slanting lines meet where a door is hung.",
    "key arcs": "Arcs: what the doors sweep over.",
    "key": "Hatched: wall, floor and wood where they are cut through.",
    "key dashed": "Dashed: your opening, behind the doors.",
    # what you get
    "get": "What you get",
    "included": "Included, as drawn",
    "not included": "Not included",
    "to agree": "Not stated here: agree it in writing",
    "door": "door",
    "doors beside": "Doors",
    "doors": "{0}, each {1} × {2}, {3} thick, in {4}",
    "one door": "{0}, {1} × {2}, {3} thick, in {4}",
    "glass": "{0} of {1} glass, {2} thick",
    "glass true": "{0} of {1} glass, {2} thick ({3} true)",
    "glass unit": "{0}, insulated: {1} glass {2} and {4} thick, {3} between",
    "pulls": "{0}",
    "hardware": "{0} to hang them by",
    "paint": "Paint, {0}",
    "paint coats": "{0} of primer and {1} of paint",
    "coats": "{0} of {1}",
    "bare": "The wood is left bare.",
    "price": "Price, deposit, and when each is paid",
    "dates": "Dates of making and hanging",
    "hanging": "Who brings the doors, hangs them and clears up",
    "wall": "Work on wall, floor and skirting",
    "colour": "The colour of the paint",
    "kind of glass": "How clear the glass is to be",
    "kind of pull": "The metal of the pulls",
    # living with them
    "care": "Care",
    "seasons": "Seasons",
    "after": "The care sheet says more, and comes with the doors.",
    # yes
    "ticks": "Please tick what you have seen and know",
    "for the maker": "For the maker",
    "code": "The square says what stands here: {0}.",
    # the foot
    "page": "{0} of {1}",
    "unit mm": "sizes in millimetres",
    "unit in": "sizes in inches",
    "left out": (
        "Where … stands in a name, this paper has no type for its letters. "
        "The page that came with it shows them."
    ),
    "no name": "Job {0}",
}

ONE_PROPOSAL_WORDS = PROPOSAL_WORDS | {
    "key arcs": "Arcs: what the door sweeps over.",
    "key dashed": "Dashed: your opening, behind the door.",
    "hanging": "Who brings the door, hangs it and clears up",
    "after": "The care sheet says more, and comes with the door.",
}
"""The words of one door alone."""


CABINET_PROPOSAL_WORDS = PROPOSAL_WORDS | {
    "the cabinets": "The cabinets",
    "cabinets made": "{0}{1}, made to measure for your room.",
    "between": "{0}: {1}.",
    "cabinets deep 1": "It is {0} deep.",
    "cabinets deep n": "At the deepest they are {0} deep.",
    "drawn from the front": (
        "Drawn from the front, cabinets and walls from the measured sizes. Light and colours are "
        "imagined."
    ),
    "room does": "{0} {1}. {2}",
    "fronts of": "Fronts in {0}",
    "cabinets of 1": "Cabinet in {0}",
    "cabinets of n": "Cabinets in {0}",
    "closings": "{0}, cut to your room",
    "plinth": "plinth",
    "face frame": "face frame",
    "fillers": "fillers",
    "cornice": "cornice",
    "counter": "counter",
    "pair": "pair",
    "pairs of": "{0} of {1}s",
    "dates": "Dates of making and fitting",
    "hanging": "Who brings the cabinets, fits them and clears up",
    "wall": "Work on wall, floor and skirting, on pipes and cables",
    "after": "The care sheet says more, and comes with the cabinets.",
}
"""The words of cabinets."""


def proposal_words_of(leaves: int, *, cases: bool = False) -> Mapping[str, str]:
    """What the proposal says of so many doors, or of cabinets."""
    if cases:
        return CABINET_PROPOSAL_WORDS
    return ONE_PROPOSAL_WORDS if leaves == 1 else PROPOSAL_WORDS


SIGN = ("Signature", "Date")
"""What stands under the lines to sign on, after the name."""
OUTLINE = ("The doors", "The drawing", "What you get", "Yes")
"""What the pages are called."""
CABINETS_OUTLINE = (CABINET_PROPOSAL_WORDS["the cabinets"], *OUTLINE[1:])
ONE_OUTLINE = ("The door", *OUTLINE[1:])
