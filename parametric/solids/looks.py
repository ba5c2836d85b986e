"""What a material looks like in a STEP or GLB viewer. Pages that dress the parts go by name."""

from __future__ import annotations

from dataclasses import dataclass
from typing import assert_never

from parametric.model import Material


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """Colour in sRGB 0 to 1, how much it covers, and how it takes the light."""

    colour: tuple[float, float, float]
    opacity: float
    metallic: float
    roughness: float


def look_of(material: Material) -> Look:
    """The look of a material's family: pale unfinished wood, clear glass, aged metal, dark tape."""
    match material.look:
        case "timber":
            return Look(colour=(0.80, 0.69, 0.51), opacity=1.0, metallic=0.0, roughness=0.6)
        case "board":
            return Look(colour=(0.74, 0.66, 0.54), opacity=1.0, metallic=0.0, roughness=0.75)
        case "glass":
            return Look(colour=(0.62, 0.72, 0.67), opacity=0.25, metallic=0.0, roughness=0.05)
        case "metal":
            return Look(colour=(0.63, 0.49, 0.27), opacity=1.0, metallic=1.0, roughness=0.35)
        case "tape":
            return Look(colour=(0.16, 0.16, 0.17), opacity=1.0, metallic=0.0, roughness=0.9)
        case _:
            assert_never(material.look)
