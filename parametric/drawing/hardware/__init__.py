"""Where hardware goes on the leaves: the last of the door's sheets."""

from parametric.drawing.hardware.hinges import draw_hinges
from parametric.drawing.hardware.sheet import draw_hardware

__all__ = ["draw_hardware", "draw_hinges"]
