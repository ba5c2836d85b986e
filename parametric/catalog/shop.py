"""The habits of this workshop: its machines, its trust in a tape, and what it will not go below.

An argument to whatever needs it, never a global. Every figure knows whether the design,
the house file or the tool said so, and where the tool's own come from.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from parametric.catalog.layer_names import LayerNames
from parametric.figures import Figure
from parametric.units import INCH, INCH_STEP, Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class Maker:
    """Who makes it: printed in title blocks; empty prints as a line to fill."""

    name: str = ""
    address: str = ""
    phone: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Paper:
    """What the shop prints on, and to what step, mm."""

    bench_paper: Literal["A4", "letter"]
    drawing_paper: Literal["A3", "A2", "tabloid"]
    print_to: Figure
    print_glass_and_pockets_to: Figure

    def wood_step(self, unit: Unit) -> Fraction:
        """What sizes of wood are printed to, in that unit."""
        return _step(self.print_to, unit, Fraction(1, 2))

    def fine_step(self, unit: Unit) -> Fraction:
        """What machine pockets and glass are printed to, in that unit."""
        return _step(self.print_glass_and_pockets_to, unit, Fraction(1, 10))

    def site_step(self, unit: Unit) -> Fraction:
        """What places on a wall are printed to, in that unit: in inches as a tape is read.

        Source: common practice, no source.
        """
        step = self.fine_step(unit)
        return max(step, _TAPE) if unit == "inch" else step


_TAPE = Fraction(1, 16)
"""Inches."""


def _step(setting: Figure, unit: Unit, metric: Fraction) -> Fraction:
    """A step set in sixty-fourths serves inch drawings, any other serves metric ones."""
    sixty_fourths = float(setting) / float(INCH) * 64
    in_inches = abs(sixty_fourths - round(sixty_fourths)) < 1e-9 and round(sixty_fourths) > 0
    if unit == "inch":
        return Fraction(round(sixty_fourths), 64) if in_inches else INCH_STEP
    return metric if in_inches else Fraction(float(setting)).limit_denominator(1000)


@dataclass(frozen=True, slots=True, kw_only=True)
class Saw:
    """The table saw, mm. `most_height` is the blade's, upright, measured over the table."""

    blade: Figure
    most_height: Figure
    tilts: Literal["left", "right"]
    kerf: Figure
    dado_set: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Router:
    """Diameters of the cutters owned, mm, and what is done in corners they leave round.

    `inside_corners` keep: a corner stays what the design says; a cutter too large for it is
    refused, and ends that must be square are chopped. relieve: where it stays hidden the
    cutter runs on into the corner, so that a square one goes home without a chisel.
    """

    cutters: tuple[Figure, ...]
    inside_corners: Literal["keep", "relieve"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Clamps:
    """Clamps owned, the caul's width in mm, and the minutes a glue-up may take."""

    owned: Figure
    caul: Figure
    glue_minutes: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Blanks:
    """Rough over finished, mm; `waste` and `edge_band_spare` in %.

    `panel_planing` is what a glued panel loses of its boards' thickness when it is planed flat.
    `sheet_trim` comes off every edge of a full sheet before anything is sawn from it. What is
    left is kept when it is at least `keep_offcut`, wide and long.
    """

    length: Figure
    width: Figure
    panel: Figure
    panel_planing: Figure
    filler: Figure
    waste: Figure
    edge_band_spare: Figure
    sheet_trim: Figure
    keep_offcut: tuple[Figure, Figure]


@dataclass(frozen=True, slots=True, kw_only=True)
class Offcut:
    """One piece of a board or a timber that stands in the workshop, mm."""

    material: str
    width: Figure
    thickness: Figure
    length: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Accuracy:
    """How far each is trusted, plus or minus mm; `marked` together means from one stick."""

    reading: Figure
    marking: Figure
    slot: Figure
    clamping: Figure
    hanging: Figure
    marked: Literal["together", "singly"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Moisture:
    """Moisture of the timber at the bench, and over a year in the room, %."""

    made: Figure
    driest: Figure
    dampest: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """What this workshop will not go below.

    Lengths mm: `groove_wall` beside a groove; `engagement` of a panel at its driest;
    `tongue_spare` a tongue is longer than its deepest engagement; `pocket_wall` between
    back-to-back pockets; `behind_slot` from a slot's end to the far edge; `below_guide`
    between the guide groove and the slots after site trim; `passing` between leaves that
    pass; `uneven_gap` a floor gap may grow before it is mentioned; `screw_in_timber`.
    `reach_spare` is % of a saw's reach, `one_person` kg.
    """

    groove_wall: Figure
    engagement: Figure
    tongue_spare: Figure
    pocket_wall: Figure
    behind_slot: Figure
    below_guide: Figure
    passing: Figure
    uneven_gap: Figure
    reach_spare: Figure
    screw_in_timber: Figure
    one_person: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Coating:
    """How far a litre goes, m2, and what is bought over, %."""

    primer_covers: Figure
    top_coat_covers: Figure
    spare: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Shop:
    """Everything a workshop settles once."""

    maker: Maker
    paper: Paper
    saw: Saw
    router: Router
    layers: LayerNames
    clamps: Clamps
    blanks: Blanks
    offcuts: tuple[Offcut, ...]
    accuracy: Accuracy
    moisture: Moisture
    limits: Limits
    finish: Coating
