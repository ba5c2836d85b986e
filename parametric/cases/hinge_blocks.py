"""Blocks behind a face frame that the plates of cup hinges are screwed to.

from above
  case side |    |  stile      the frame stands in before the case's side: a block as thick as
            |    |_____        that, behind the stile, brings the plate level with its edge
            | block|  leaf
            |  o   |______
            |______|
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from parametric.cases.boring import IN_FACE, Bite, BoringSpec
from parametric.cases.plate_holes import PlateHoles
from parametric.figures import Figure, exceeds, named, smallest
from parametric.model import Drilled, Face
from parametric.names import join

BLOCK_LONG = Figure(
    100.0, "block behind a hinge, long", origin="catalogue", source="common practice, no source"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class HingeBlocks:
    """The blocks of one leaf, all alike, mm: their middles at `heights` from the case's foot.

    `in_board` is how deep the plates' screws go on into the board behind, None where they stop in
    the block.
    """

    name: str
    heights: tuple[Figure, ...]
    long: Figure
    wide: Figure
    thick: Figure
    in_block: Figure
    in_board: Figure | None
    left_out: tuple[Figure, ...] = ()
    """Hinges that the packing of drawers behind the door stands beside: no block goes there."""

    def bites(self, below: float) -> tuple[Bite, ...]:
        """What they cover of the board's face; a shelf so thick may not come to lie in one.

        Args:
            below: how far under a block nothing may lie on pins, mm.
        """
        half = float(self.long) / 2
        return tuple(
            Bite(
                name=f"{self.name}, a block",
                low=float(up) - half - below,
                high=float(up) + half,
                near=0.0,
                far=float(self.wide),
            )
            for up in self.heights
        )


def size_hinge_blocks(
    spec: BoringSpec,
    plates: PlateHoles,
    *,
    gap: Figure,
    board: Figure,
    depth: Figure,
    packed: Sequence[tuple[float, float]] = (),
) -> HingeBlocks:
    """The blocks behind one leaf's plates.

    Args:
        spec: how the workshop bores.
        plates: their screws.
        gap: from the board to the edge of the frame, mm.
        board: how thick the board is, mm.
        depth: from its front edge to what is behind, mm.
        packed: from where to where up the case the packing of drawers stands on it, mm.
    """
    name = plates.name.replace("hinge plates", "hinge blocks")

    def at(quantity: str, value: float) -> Figure:
        return named(join(name, quantity), value)

    thick = at("thickness", gap)
    over = plates.deep - thick
    in_board = smallest(over, board - spec.behind) if exceeds(over, 1.0) else None
    half = float(BLOCK_LONG) / 2
    beside = tuple(
        up
        for up in plates.heights
        if any(float(up) - half < high and low < float(up) + half for low, high in packed)
    )
    return HingeBlocks(
        name=name,
        heights=tuple(up for up in plates.heights if up not in beside),
        left_out=beside,
        long=at("length", BLOCK_LONG),
        wide=at("width", smallest(plates.line + spec.from_front, depth)),
        thick=thick,
        in_block=at("screw hole depth", smallest(plates.deep, thick)),
        in_board=None if in_board is None else at("screw hole in the board", in_board),
    )


def block_cut(plates: PlateHoles, blocks: HingeBlocks, face: Face) -> Drilled:
    """The two holes of one block, which lies with its length up the case."""
    return Drilled(
        name="plate holes",
        face=face,
        u=(blocks.long - plates.apart) / 2,
        v=plates.line,
        diameter=plates.across,
        depth=blocks.in_block,
        count=2,
        pitch=plates.apart,
        making=IN_FACE,
    )
