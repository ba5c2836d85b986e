"""Details: what is too small to be read on an arrangement or a leaf, cut and drawn large."""

from parametric.drawing.details.sheets import Called, Details, draw_details

__all__ = ["Called", "Details", "draw_details"]
