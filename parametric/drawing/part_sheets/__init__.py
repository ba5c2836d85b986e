"""Group P: the sheets of the parts that have a cut other than their outline."""

from parametric.drawing.part_sheets.sheets import draw_part_sheets

__all__ = ["draw_part_sheets"]
