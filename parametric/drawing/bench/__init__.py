"""The bench sheets: lists, set-ups, glue-ups and finish, one subject a page."""

from __future__ import annotations

from parametric.drawing.bench.pages import draw_bench

__all__ = ["draw_bench"]
