"""The cutting plan: every sheet and bar of stock to scale, its cuts numbered as they are made."""

from __future__ import annotations

from parametric.drawing.cutting.pages import draw_cutting_plan

__all__ = ["draw_cutting_plan"]
