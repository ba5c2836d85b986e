"""Parts and resolved numbers to sheets: lines, hatches, texts and dimensions on named layers."""

from parametric.drawing.drawings import Drawings, draw, draw_fronts

__all__ = ["Drawings", "draw", "draw_fronts"]
