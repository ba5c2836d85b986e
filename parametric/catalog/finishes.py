"""What a client may look at: paints, clear timbers, glass and metals, as a screen shows them.

Names and colours are this tool's own, invented, and stand for no maker's range. A screen
shows no true colour: the real thing is chosen by a sample. Colours are sRGB; `rough` runs
from 0, a mirror, to 1, chalk (satin paint, 15 to 20 % sheen, is about 0.45: by eye, no
source).
"""

from __future__ import annotations

from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

Kind = Literal["paint", "timber", "glass", "metal"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Paint:
    """A paint by its name."""

    key: str
    name: str
    colour: str
    rough: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ClearTimber:
    """A timber under varnish or oil: early and late wood, and what its rings look like.

    `ring` is the usual width of a year, mm; `contrast`, `pore` and `fleck` run from 0 to 1.
    """

    key: str
    name: str
    early: str
    late: str
    ring: float
    contrast: float
    pore: float
    fleck: float
    rough: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ClearGlass:
    """Glass one sees through: its own colour, and how much of that it shows from 0 to 1."""

    key: str
    name: str
    colour: str
    body: float


@dataclass(frozen=True, slots=True, kw_only=True)
class VeiledGlass:
    """Glass that blurs (`blur` 0 to 1) or breaks up what stands behind it in upright reeds, mm."""

    key: str
    name: str
    colour: str
    body: float
    blur: float
    reed: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Metal:
    """What pulls are made of; `metal` is 1 for bare metal, less where it is blackened."""

    key: str
    name: str
    colour: str
    metal: float
    rough: float


Glass = ClearGlass | VeiledGlass

PAINTS: tuple[Paint, ...] = (
    Paint(key="chalk white", name="Chalk white", colour="#e9e9e2", rough=0.46),
    Paint(key="putty", name="Putty", colour="#c2bcae", rough=0.46),
    Paint(key="lichen", name="Lichen", colour="#98a48c", rough=0.45),
    Paint(key="slate blue", name="Slate blue", colour="#4f6373", rough=0.44),
    Paint(key="damson", name="Damson", colour="#57333d", rough=0.42),
    Paint(key="lamp black", name="Lamp black", colour="#24282a", rough=0.40),
)

# Ring widths and tones by eye, no source: what the yard sells as the common run.
CLEAR_TIMBERS: tuple[ClearTimber, ...] = (
    ClearTimber(
        key="ash",
        name="Ash",
        early="#d8bf98",
        late="#a98455",
        ring=4.2,
        contrast=0.75,
        pore=0.55,
        fleck=0.0,
        rough=0.48,
    ),
    ClearTimber(
        key="white oak",
        name="White oak",
        early="#bda079",
        late="#8c7049",
        ring=2.6,
        contrast=0.62,
        pore=0.60,
        fleck=0.35,
        rough=0.50,
    ),
    ClearTimber(
        key="cherry",
        name="Cherry",
        early="#ab744d",
        late="#865232",
        ring=3.4,
        contrast=0.42,
        pore=0.08,
        fleck=0.06,
        rough=0.44,
    ),
    ClearTimber(
        key="walnut",
        name="Walnut",
        early="#6f5442",
        late="#3e2b20",
        ring=3.8,
        contrast=0.62,
        pore=0.35,
        fleck=0.0,
        rough=0.46,
    ),
)

RAW = ClearTimber(
    key="raw",
    name="Raw",
    early="#cfc3a0",
    late="#a8986a",
    ring=3.6,
    contrast=0.40,
    pore=0.05,
    fleck=0.0,
    rough=0.70,
)
"""Wood under paint, where a section cuts through it."""

PLAIN_WOOD = ClearTimber(
    key="plain wood",
    name="Plain wood",
    early="#c3a57b",
    late="#987750",
    ring=3.4,
    contrast=0.35,
    pore=0.12,
    fleck=0.0,
    rough=0.52,
)
"""A timber that none of these is like: wood with its grain, of no colour that is its own."""

GLASSES: tuple[Glass, ...] = (
    ClearGlass(key="clear", name="Clear", colour="#8fb0a4", body=0.03),
    VeiledGlass(key="satin", name="Satin", colour="#e3ece9", body=0.34, blur=1.0, reed=0.0),
    VeiledGlass(key="reeded", name="Reeded", colour="#dfe9e6", body=0.10, blur=0.12, reed=12.5),
    ClearGlass(key="smoke", name="Smoke grey", colour="#23282b", body=0.58),
)

METALS: tuple[Metal, ...] = (
    Metal(key="brass", name="Aged brass", colour="#d2aa66", metal=1.0, rough=0.36),
    Metal(key="iron", name="Black iron", colour="#1f2122", metal=0.4, rough=0.48),
    Metal(key="nickel", name="Brushed nickel", colour="#cfd0cc", metal=1.0, rough=0.30),
)


_SHOWN_AS = MappingProxyType({"black walnut": "walnut"})
"""Timbers of the catalogue that are shown under a shorter name."""


def paint_called(words: str) -> Paint | None:
    """The paint that a design names in its own words, whatever the case."""
    return next((paint for paint in PAINTS if paint.key == " ".join(words.lower().split())), None)


def timber_called(words: str) -> ClearTimber | None:
    """The timber that a design names, as it looks under varnish or oil."""
    plain = " ".join(words.lower().split())
    key = _SHOWN_AS.get(plain, plain)
    return next((wood for wood in CLEAR_TIMBERS if wood.key == key), None)
