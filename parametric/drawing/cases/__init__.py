"""Sheets of casework (group C): cabinets in their room, how they are scribed to it, case by case."""

from parametric.drawing.cases.sheets import draw_casework

__all__ = ["draw_casework"]
