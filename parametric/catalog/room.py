"""The room in which doors are pictured: its walls, its light by day and by lamplight, where one stands.

One description for the client's page, which shades it, and for pictures, whose light is
traced. All of it is scenery and by eye, no source; nothing of it is made or sold. The scene's
frame is that of the model's file: metres, X right from the middle of the doors, Y up from the
highest floor, Z towards the viewer from the wall's face. Angles rad. Colours are sRGB.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from parametric.catalog.finishes import ClearTimber

HourName = Literal["day", "evening"]
Triple = tuple[float, float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Surface:
    """What a thing of the room is made of: colour, and how it takes the light."""

    colour: str
    rough: float
    metal: float = 0.0
    mottle: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Hour:
    """One light: where the key light stands and how large it is, the sky, how the eye adapts.

    `key` is the way towards it, `disc` its half width as far away as `key` is long.
    `balance` is what the eye does with red, green and blue.
    """

    key: Triple
    disc: float
    key_colour: str
    key_power: float
    sky_colour: str
    sky_power: float
    exposure: float
    balance: Triple


@dataclass(frozen=True, slots=True, kw_only=True)
class Pattern:
    """The light that a window with bars throws, across and up from the middle of the doors.

    Each edge has its softness; `bars` are (from, to, share of the light that they take).
    """

    middle: float = 1.05
    across: tuple[float, float] = (-1.62, 0.98)
    across_soft: float = 0.40
    up: tuple[float, float] = (-1.70, 1.16)
    up_soft: float = 0.32
    upright_bar: Triple = (-0.40, -0.26, 0.26)
    level_bar: Triple = (-0.16, -0.03, 0.20)
    bar_soft: float = 0.12
    least: float = 0.24
    most: float = 1.08


@dataclass(frozen=True, slots=True, kw_only=True)
class Pool:
    """The pool of light that the lamp beside the viewer throws on the wall, and how it falls off."""

    middle: tuple[float, float] = (0.35, -0.10)
    fall: tuple[float, float] = (0.20, 0.16)
    least: float = 0.15
    most: float = 0.95


@dataclass(frozen=True, slots=True, kw_only=True)
class Tone:
    """How light becomes a picture: bright tones pressed together above `knee`, darker corners."""

    knee: float = 0.70
    pale: float = 0.15
    corners: float = 0.17


@dataclass(frozen=True, slots=True, kw_only=True)
class Stance:
    """A place to stand: how far round from facing the doors, and the height of the eye."""

    turn: float
    height: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Bookcase:
    """A plain bookcase at the far wall, so that there is something behind the glass."""

    wide: float = 4.5
    bays: int = 5
    shelves: int = 5
    pitch: float = 0.37
    deep: float = 0.3
    foot: float = 0.08
    board: float = 0.026
    upright: float = 0.028
    seed: int = 7


@dataclass(frozen=True, slots=True, kw_only=True)
class Casing:
    """The frame that hung doors are pictured in, mm: casings `back` from the reveal, lining, stop."""

    wide: float = 68.0
    thick: float = 18.0
    back: float = 6.0
    lining: float = 22.0
    stop: float = 12.0
    stop_wide: float = 34.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Carcass:
    """The case that fronts are pictured on, mm: how deep, its back, how far its plinth stands in."""

    deep: float = 340.0
    back: float = 8.0
    plinth_in: float = 45.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """Sizes and surfaces of the room, and the one behind the doors."""

    side: float = 4.2
    high: float = 3.3
    back: float = 3.2
    front: float = 7.0
    far_side: float = 2.7
    far_lower: float = 0.6
    buried: float = 0.25
    board: float = 0.165
    plaster: Surface = Surface(colour="#cfd3cd", rough=0.93, mottle=0.03)
    far: Surface = Surface(colour="#8d9a90", rough=0.95, mottle=0.03)
    pale: Surface = Surface(colour="#e4e6e2", rough=0.95)
    shelf: Surface = Surface(colour="#9a8264", rough=0.6)
    trim: Surface = Surface(colour="#dcdeda", rough=0.5)
    track: Surface = Surface(colour="#25292a", rough=0.5, metal=0.25)
    tape: Surface = Surface(colour="#3c403e", rough=0.9)
    carcass: Surface = Surface(colour="#cdbd9c", rough=0.6)
    spines: tuple[str, ...] = (
        "#664842",
        "#4c5a66",
        "#a89d88",
        "#5f6659",
        "#7a6d50",
        "#bdb7a8",
        "#4b4a4d",
    )
    spine_rough: float = 0.8
    bookcase: Bookcase = Bookcase()


CASING = Casing()
CARCASS = Carcass()
ROOM = Room()
PATTERN = Pattern()
POOL = Pool()
TONE = Tone()
GRAIN_OF_FLOOR = ClearTimber(
    key="floor",
    name="Floor",
    early="#b99a76",
    late="#8f7150",
    ring=3.0,
    contrast=0.45,
    pore=0.30,
    fleck=0.0,
    rough=0.46,
)
"""The floor's boards where they are grown and not painted."""

HOURS: dict[HourName, Hour] = {
    "day": Hour(
        key=(-3.0, 2.55, 3.9),
        disc=0.85,
        key_colour="#fff6ea",
        key_power=1.0,
        sky_colour="#e4ecf6",
        sky_power=0.42,
        exposure=1.0,
        balance=(1.0, 1.0, 1.0),
    ),
    # the eye gets used to lamplight, but not wholly
    "evening": Hour(
        key=(2.3, 2.5, 3.4),
        disc=0.34,
        key_colour="#ffe0bb",
        key_power=0.62,
        sky_colour="#ffe6cc",
        sky_power=0.12,
        exposure=1.42,
        balance=(0.94, 1.0, 1.22),
    ),
}

HALF_VIEW = math.pi / 12
"""Half of what the eye takes in, from the middle of a picture to its head."""

FACING = Stance(turn=0.0, height=1.45)
SOFA = Stance(turn=-0.6, height=1.15)
PULL = Stance(turn=-0.5, height=1.5)

LAMP: Triple = (0.75, 1.62, -1.9)
"""The middle of the shade of the far room's lamp."""
LAMP_COLOUR: Triple = (1.55, 1.18, 0.70)
"""Its light, in the room's own measure."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Mirrored:
    """What the room shows to whatever mirrors it: a box about the middle of the doors.

    Amounts of light, by day and by lamplight. Windows are (from, to) along the wall and up.
    """

    low: Triple = (-4.2, -0.01, 0.0)
    high: Triple = (4.2, 3.2, 6.6)
    walls: tuple[Triple, Triple] = ((0.50, 0.51, 0.495), (0.105, 0.088, 0.066))
    ceiling: tuple[Triple, Triple] = ((0.80, 0.81, 0.80), (0.22, 0.185, 0.14))
    floor: tuple[Triple, Triple] = ((0.235, 0.175, 0.115), (0.06, 0.042, 0.026))
    left_windows: tuple[tuple[float, float], tuple[float, float]] = ((1.1, 2.2), (3.6, 4.7))
    left_sill_head: tuple[float, float] = (0.55, 2.45)
    left_sky: tuple[Triple, Triple] = ((5.6, 5.9, 6.2), (0.05, 0.07, 0.13))
    behind_windows: tuple[float, float] = (0.85, 1.95)
    behind_sill_head: tuple[float, float] = (0.8, 2.35)
    behind_sky: tuple[Triple, Triple] = ((2.1, 2.2, 2.35), (0.05, 0.07, 0.13))


MIRRORED = Mirrored()
READING_LAMP: Triple = (2.3, 1.75, 3.6)
"""The middle of the shade of the lamp beside the viewer."""
READING_LAMP_COLOUR: Triple = (7.0, 5.0, 2.9)
READING_LAMP_RADIUS = 0.20
LAMP_SHADE = (0.12, 0.19)
"""Half as wide as its shade is at the head and at the foot."""
LAMP_HIGH = 0.26
STANDING_LAMP: Triple = (1.28, 1.50, 0.55)
"""The middle of the shade of the lamp that stands beside the doors, right of their edge: what
a client sees that lights the near room."""
STANDING_LAMP_COLOUR: Triple = (0.38, 0.28, 0.165)
