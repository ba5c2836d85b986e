"""How stiff a timber or a board of this design is: as written, else as the catalogue has it."""

from __future__ import annotations

from parametric.catalog.stiffness import BOARD_STIFFNESS, TIMBER_STIFFNESS, least_stiff_board
from parametric.design import Design
from parametric.design.settings import BoardSpec, TimberSpec
from parametric.figures import Figure, named
from parametric.names import join


def timber_stiffness(design: Design, name: str) -> Figure | None:
    """N/mm2; None of a timber that neither the design nor the catalogue knows so well."""
    written = design.block("timber", name)
    if isinstance(written, TimberSpec) and written.stiffness is not None:
        return named(join(name, "stiffness"), written.stiffness, "N/mm2")
    return TIMBER_STIFFNESS.get(name)


def board_stiffness(design: Design, name: str) -> Figure:
    """N/mm2; a block without a name speaks for every board that has none of its own.

    Of a board that nobody knows the least of those known is taken.
    """
    written = design.block("board", name) or design.block("board")
    if isinstance(written, BoardSpec) and written.stiffness is not None:
        return named(join(name or "board", "stiffness"), written.stiffness, "N/mm2")
    return BOARD_STIFFNESS.get(name) or least_stiff_board(name)
