"""The scales that a part's sheet is tried at: large first, and the usual paper before a larger one."""

from __future__ import annotations

from parametric.drawing.papers import Scales
from parametric.model import Drilled
from parametric.trade.part_cuts import PartCuts

_METRIC: Scales = ((2.0, 5.0), (2.0, 5.0, 10.0, 20.0))
_INCH: Scales = ((2.0, 4.0), (2.0, 4.0, 8.0, 16.0))
_BOARD_METRIC: Scales = ((2.0, 5.0, 10.0), (2.0, 5.0, 10.0, 20.0))
_BOARD_INCH: Scales = ((2.0, 4.0, 8.0), (2.0, 4.0, 8.0, 16.0))
"""A board without holes is drawn smaller before it takes a larger sheet: most of it is plain."""


def scales_of(own: PartCuts) -> tuple[Scales, Scales]:
    """What a part is tried at in millimetres, and in inches."""
    bored = any(isinstance(cut, Drilled) for cut in own.part.cuts)
    board = own.part.material.look == "board" and not bored
    return (_BOARD_METRIC, _BOARD_INCH) if board else (_METRIC, _INCH)
