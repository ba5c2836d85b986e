"""Room, light, grain and places to stand as the client's page is told them: the tables of `catalog`."""

from __future__ import annotations

import dataclasses
from typing import Any

from parametric.catalog.grain import GRAIN
from parametric.catalog.room import (
    FACING,
    HALF_VIEW,
    HOURS,
    LAMP,
    LAMP_COLOUR,
    LAMP_HIGH,
    LAMP_SHADE,
    MIRRORED,
    PATTERN,
    POOL,
    PULL,
    READING_LAMP,
    READING_LAMP_COLOUR,
    READING_LAMP_RADIUS,
    ROOM,
    SOFA,
    STANDING_LAMP,
    STANDING_LAMP_COLOUR,
    TONE,
)
from parametric.writers.bookcase import Box, boards, books

_TENTH = 4
"""Places of a metre to which the boxes of a bookcase are told: a tenth of a millimetre."""


def room_facts() -> dict[str, Any]:
    """All of it, for the page's data."""
    return {
        "grain": dataclasses.asdict(GRAIN),
        "room": dataclasses.asdict(ROOM),
        "boards": _told(boards()),
        "books": [_told(own) for own in books()],
        "hours": {name: dataclasses.asdict(hour) for name, hour in HOURS.items()},
        "pattern": dataclasses.asdict(PATTERN),
        "pool": dataclasses.asdict(POOL),
        "mirrored": dataclasses.asdict(MIRRORED),
        "tone": dataclasses.asdict(TONE),
        "lamp": {"at": LAMP, "colour": LAMP_COLOUR, "shade": LAMP_SHADE, "high": LAMP_HIGH},
        "standing_lamp": {"at": STANDING_LAMP, "colour": STANDING_LAMP_COLOUR},
        "reading_lamp": {
            "at": READING_LAMP,
            "colour": READING_LAMP_COLOUR,
            "radius": READING_LAMP_RADIUS,
        },
        "half_view": HALF_VIEW,
        "stances": {
            name: dataclasses.asdict(stance)
            for name, stance in (("facing", FACING), ("sofa", SOFA), ("pull", PULL))
        },
    }


def _told(boxes: tuple[Box, ...]) -> list[list[float]]:
    return [[round(v, _TENTH) for v in box] for box in boxes]
