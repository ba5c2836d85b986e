"""The words of the proposal that the client's page has not; the rest are the page's own."""

from __future__ import annotations

PROPOSAL_WORDS = {
    # the doors
    "for": "For {0}",
    "for at": "For {0}, {1}",
    "at": "For {0}",
    "pair": "A pair of sliding doors in {0}{1}, made to measure for your opening.",
    "painted": ", painted",
    "finished": " under {0}",
    "each": "Each is {0} wide, {1} high and {2} thick{3}.",
    "filled": ", with {0}",
    "lites": "{0} of {1} glass",
    "lite": "pane",
    "panels": "{0}",
    "panel": "raised panel",
    "and": "{0} and {1}",
    "on the wall": "They slide past one another in front of the wall and hide its opening when shut.",
    "in the opening": "They slide past one another inside the opening.",
    "open": "With both slid to one side, {0} is clear to walk through.",
    "maker": "Maker",
    "date": "Date",
    "drawn from the front": (
        "Drawn from the front, from the measured sizes. Room, light and furniture are imagined."
    ),
    "shown in": "Shown in {0}.",
    "plain wood": "plain wood",
    # the drawing
    "drawing": "The drawing",
    "sizes mm": "Sizes in millimetres, from the opening as it was measured.",
    "sizes in": "Sizes in inches, from the opening as it was measured.",
    "front": "From the front",
    "side": "Cut through",
    "shut": "Shut, seen from above",
    "opened": "Open, seen from above, and what is clear to walk through",
    "over all": "over all",
    "opening": "your opening, at its widest",
    "key": (
        "Dots and dashes: the tracks. Hatched: wall, floor and wood where they are cut through."
    ),
    "key dashed": "Dashed: your opening, behind the doors.",
    # what you get
    "get": "What you get",
    "included": "Included, as drawn",
    "not included": "Not included",
    "to agree": "Not stated here: agree it in writing",
    "door": "door",
    "doors": "{0}, each {1} × {2}, {3} thick, in {4}",
    "glass": "{0} of {1} glass, {2} thick",
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

SIGN = ("Signature", "Date")
"""What stands under the lines to sign on, after the name."""
OUTLINE = ("The doors", "The drawing", "What you get", "Yes")
"""What the pages are called."""
