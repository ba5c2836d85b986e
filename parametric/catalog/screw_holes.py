"""Holes drilled before wood screws: by the root of the thread and how dense the wood is."""

from __future__ import annotations

from parametric.figures import Figure

_HANDBOOK = (
    "Wood Handbook, FPL-GTR-190 (2010), chapter 8, wood screws: the root is about two thirds of "
    "the shank; lead holes of 70 % of the root in softwoods and 90 % in hardwoods; from memory"
)

ROOT = Figure(2 / 3, "root of a screw by its shank", origin="catalogue", unit="", source=_HANDBOOK)
LEAD_IN_LIGHT = Figure(
    0.7, "pilot by the root in light wood", origin="catalogue", unit="", source=_HANDBOOK
)
LEAD_IN_DENSE = Figure(
    0.9, "pilot by the root in dense wood", origin="catalogue", unit="", source=_HANDBOOK
)
DENSE_FROM = Figure(
    640.0,
    "density of dense wood, from",
    origin="catalogue",
    unit="kg/m3",
    source="National Design Specification for Wood Construction, 12.1.5: 90 % of the root where "
    "the specific gravity is over 0.6, oven dry; at 12 % moisture 0.6 x 1.12 / 1.05 = 0.64; from "
    "memory",
)
