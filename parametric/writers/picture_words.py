"""Every word that goes with the client's pictures."""

from __future__ import annotations

PICTURE_WORDS = {
    "facing": "Facing the doors, shut, by day",
    "facing alone": "Facing the door, shut, by day",
    "half open": "{0}, one door half open, by day",
    "half open alone": "{0}, the door half open, by day",
    "half open all": "{0}, the doors half open, by day",
    "facing cases": "Facing the cabinets, shut, by day",
    "half open cases": "{0}, doors and drawers half open, by day",
    "evening cases": "By evening",
    "pull": "At the pull, light along the face, by day",
    "evening": "By evening, the lamp lit in the other room",
    "said of": "{0}, revision {1}, mark {2}",
    "said of bare": "{0}, mark {1}",
    "finish": "In {0}",
    "traced": "Light traced through the room from the measured model.",
    "quick": (
        "Quick pictures: light and shade are worked out roughly, from the measured model. Room "
        "and light are imagined."
    ),
    "imagined": "The doors are as measured; room, light and furniture are imagined.",
    "imagined cases": "The cabinets are as measured; room, light and furniture are imagined.",
    "imagined alone": "The door is as measured; room, light and furniture are imagined.",
}
"""`sample`, said under every picture of a finish, is the page's own."""

GET_EXTRA = (
    "pip install 'stilewright[render]'; on Debian or Ubuntu also: apt-get install libatomic1"
)
"""How to get what traces light, for whoever runs the tool."""
