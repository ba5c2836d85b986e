"""What the bays of a case are seen through from the front: themselves, or a face frame's openings."""

from __future__ import annotations

from parametric.cases.case import Case, CaseBay
from parametric.figures import Figure


def opening_of(own: Case, bay: CaseBay) -> tuple[Figure, Figure]:
    """Left and right of what a bay is seen through, in the case's frame, mm."""
    thick, half = own.box.thickness, own.opening.partition / 2
    beside = own.of_role("partition")
    left, right = own.opening.left, own.opening.left + own.opening.width
    if bay.number > 1:
        left = beside[bay.number - 2].x + thick / 2 + half
    if bay.number <= len(beside):
        right = beside[bay.number - 1].x + thick / 2 - half
    return left, right
