"""Labels for the pieces of a job, on sheets to be cut up."""

from parametric.drawing.labels.sheets import draw_labels

__all__ = ["draw_labels"]
