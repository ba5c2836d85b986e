"""What the parts of a USDZ model are dressed in: the finish that is quoted, one colour each.

The surface is that of the standard preview material (UsdPreviewSurface): base colour,
metallic, roughness, opacity, index of refraction. It knows neither grain nor reeds, so
wood under varnish is the middle of its early and late wood.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from parametric.catalog.finishes import ClearGlass, ClearTimber, Metal, Paint, VeiledGlass
from parametric.catalog.room import ROOM, Surface
from parametric.model import Part
from parametric.solids.looks import look_of
from parametric.writers.client_page import Palette
from parametric.writers.scene_frame import linear

Colour = tuple[float, float, float]

GLASS_IOR = 1.52
"""Soda lime float glass (EN 572-1 has 1.50; 1.52 is the usual value of handbooks, from memory)."""
_LEAST_GLASS = 0.12
"""How much clear glass covers where a viewer draws no reflections, so that it is seen (by eye)."""
_VEIL = 0.5
"""How much of what stands behind is covered where glass blurs it altogether (by eye)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Finish:
    """One preview material; colour is linear, 0 to 1."""

    name: str
    colour: Colour
    metallic: float
    roughness: float
    opacity: float = 1.0
    ior: float = 1.5


def is_pull(part: Part) -> bool:
    """Pulls are bright, tracks and hangers are black."""
    named = f"{part.name} {part.mark} {part.noun}"
    return part.material.look == "metal" and re.search(r"\bpull\b", named) is not None


def finish_of(part: Part, palette: Palette) -> Finish:
    """What a part wears of what is shown first."""
    look = part.material.look
    match look:
        case "timber" | "board":
            return _wood(palette.wood_shown)
        case "glass":
            glass = palette.glass_shown
            return _plain(part) if glass is None else _glass(glass)
        case "metal" if is_pull(part):
            metal = palette.metal_shown
            return _plain(part) if metal is None else _metal(metal)
        case "metal":
            return _surface(part.material.name, ROOM.track)
        case "tape":
            return _surface(part.material.name, ROOM.tape)


def _wood(wood: Paint | ClearTimber) -> Finish:
    if isinstance(wood, Paint):
        return Finish(
            name=wood.name, colour=_linear(wood.colour), metallic=0.0, roughness=wood.rough
        )
    early, late = _linear(wood.early), _linear(wood.late)
    red, green, blue = ((a + b) / 2 for a, b in zip(early, late, strict=True))
    return Finish(name=wood.name, colour=(red, green, blue), metallic=0.0, roughness=wood.rough)


def _glass(glass: ClearGlass | VeiledGlass) -> Finish:
    blur = glass.blur if isinstance(glass, VeiledGlass) else 0.0
    covers = glass.body + (1 - glass.body) * blur * _VEIL
    return Finish(
        name=glass.name,
        colour=_linear(glass.colour),
        metallic=0.0,
        roughness=max(0.05, blur * _VEIL),
        opacity=max(_LEAST_GLASS, covers),
        ior=GLASS_IOR,
    )


def _metal(metal: Metal) -> Finish:
    return Finish(
        name=metal.name,
        colour=_linear(metal.colour),
        metallic=metal.metal,
        roughness=metal.rough,
    )


def _surface(name: str, surface: Surface) -> Finish:
    return Finish(
        name=name,
        colour=_linear(surface.colour),
        metallic=surface.metal,
        roughness=surface.rough,
    )


def _plain(part: Part) -> Finish:
    """As in the other models, where the job names no choice of its kind."""
    look = look_of(part.material)
    red, green, blue = (linear(c) for c in look.colour)
    return Finish(
        name=part.material.name,
        colour=(red, green, blue),
        metallic=look.metallic,
        roughness=look.roughness,
        opacity=look.opacity,
    )


def _linear(colour: str) -> Colour:
    """From `#rrggbb`."""
    red, green, blue = (linear(int(colour[i : i + 2], 16) / 255) for i in (1, 3, 5))
    return (red, green, blue)
