"""What the client's page says of cabinets, their sizes and what is ticked; {0} and on are the job's numbers."""

from __future__ import annotations

CABINET_WORDS = {
    "cabinets 1": "Fitted cabinet",
    "cabinets n": "{0} fitted cabinets",
    "doors 1": "one door",
    "doors n": "{0} doors",
    "flaps 1": "one flap",
    "flaps n": "{0} flaps",
    "drawers 1": "one drawer",
    "drawers n": "{0} drawers",
    "lids 1": "one lid",
    "lids n": "{0} lids",
    "open": "open shelves",
    "door": "Door {0}",
    "flap": "Flap {0}",
    "drawer": "Drawer {0}",
    "front": "Fixed front {0}",
    "doors": "Doors {0}",
    "flaps": "Flaps {0}",
    "drawers": "Drawers {0}",
    "fronts": "Fixed fronts {0}",
    "inner drawer": "Drawer behind doors, {0}",
    "lid": "Lid, {0}",
    "and": " and ",
    # sizes
    "each": "Each cabinet",
    "wide high": "{0} wide, {1} high",
    "deep": "{0} deep.",
    "deep under slope": "{0} deep. Its top slopes: {1} high where it is lowest.",
    "deep each": "{0} deep. {1} of them.",
    "thick": "{0} thick.",
    "between walls": "Between your walls",
    "left": ", on the left",
    "middle": ", in the middle",
    "right": ", on the right",
    "tightest": "Where it is tightest, as it was measured.",
    "left wall": "Your left wall",
    "leans in": "leans in by {0}",
    "leans out": "{0} off plumb",
    "leans out why": (
        "It leans away from the cabinets. They stand plumb; what closes them to the wall is cut "
        "to it."
    ),
    "leans in why": "The cabinets stand plumb; what closes them to the wall is cut to it.",
    "floor": "Your floor",
    "floor rises": "rises {0}",
    "floor why": "The cabinets stand level all the same.",
    "swing": "Room to open",
    "swing value": "{0} into the room",
    "swing why": "So far they come towards you: keep that much floor clear before them.",
    "drawn": "Drawers draw out",
    "drawn value": "{0} into the room",
    "weight": "Weight of the heaviest front",
    "weight of": "Without the fittings.",
    # ticks
    "tick swing": (
        "I have seen that doors and drawers open towards me and come {0} into the room: nothing "
        "may stand there."
    ),
    "tick swing doors": (
        "I have seen that the doors open towards me and come {0} into the room: nothing may stand "
        "there."
    ),
    "tick tips": (
        "I know that the cabinets must be fixed to the wall as the maker says, and that one that "
        "is not can tip over, on a child above all."
    ),
    "tick flaps": (
        "I know that a flap comes down by itself when it is let go, on a hand or a head, and that "
        "nobody may sit or climb on it."
    ),
    "tick hinges": "I know that fingers can be caught at the hinges, and what that can do.",
    "and in walls": "; in the wall: ",
    "tick sample": "I will choose the colour from a real sample, not from a picture.",
}
