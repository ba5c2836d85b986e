"""What a cabinet's other blocks say of it: its frame's timber, its fronts' thickness, its drawers' travel."""

from __future__ import annotations

from parametric.cases.back import BackSpec, back_front
from parametric.cases.cabinet import CabinetSpec
from parametric.cases.case import CaseBox
from parametric.cases.drawer import size_drawer
from parametric.cases.face_frame import FaceFrame
from parametric.cases.make_case import Outside, front_back
from parametric.catalog.timbers import TIMBERS, Timber
from parametric.design import Design
from parametric.design.leaf import LeafSpec
from parametric.figures import Figure
from parametric.names import join
from parametric.resolve.case_drawers import drawer_of, stuff_of
from parametric.resolve.panel_field import resolve_timber


def frame_timber(design: Design, spec: CabinetSpec) -> Timber:
    """The frame's own, else that of the fronts in it."""
    written = design.block("face frame", spec.face_frame)
    leaf = design.block("leaf", None if spec.leaf is None else str(spec.leaf))
    name = getattr(written, "timber", None) or getattr(leaf, "timber", None) or next(iter(TIMBERS))
    return resolve_timber(design, str(name))


def front_thickness(design: Design, spec: CabinetSpec) -> Figure | None:
    """Of its fronts, mm; None where no leaf says it."""
    leaf = design.block("leaf", None if spec.leaf is None else str(spec.leaf))
    return leaf.thickness if isinstance(leaf, LeafSpec) else None


def travel_of(
    design: Design,
    spec: CabinetSpec,
    outside: Outside,
    box: CaseBox,
    back: BackSpec | None,
    frame: FaceFrame | None,
) -> Figure | None:
    """How far the cabinet's drawers draw out, which is the same of all: by their depth."""
    if "drawer" not in spec.kinds():
        return None
    drawer = drawer_of(design, None if spec.drawer is None else str(spec.drawer))
    assert drawer is not None, "the reader has seen that it is there"
    stuff, bottom = stuff_of(design, drawer, str(spec.board))
    behind = box.depth if back is None else back_front(back, box.depth)
    one = size_drawer(
        drawer,
        name=join(box.name, "drawer"),
        clear_width=box.clear_width,
        clear_height=box.clear_height,
        clear_depth=behind - front_back(spec, outside, frame),
        stuff=stuff,
        bottom_stuff=bottom,
    )
    return one.draws_out
