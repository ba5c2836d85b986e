"""Where parts stand, in the kernel's terms."""

from __future__ import annotations

from OCP.gp import gp_Trsf
from OCP.TopLoc import TopLoc_Location
from OCP.TopoDS import TopoDS_Shape

from parametric.model import Placement


def within(outer: Placement, inner: Placement) -> Placement:
    """A placement given in a frame, as seen from where that frame is placed."""
    return Placement(
        origin=outer.point(inner.origin),
        x=outer.direction(inner.x),
        y=outer.direction(inner.y),
    )


def location(placement: Placement) -> TopLoc_Location:
    """The kernel's form of a placement."""
    o, x, y, z = placement.origin, placement.x, placement.y, placement.z
    turn = gp_Trsf()
    turn.SetValues(
        *(float(x[0]), float(y[0]), float(z[0]), float(o[0])),
        *(float(x[1]), float(y[1]), float(z[1]), float(o[1])),
        *(float(x[2]), float(y[2]), float(z[2]), float(o[2])),
    )
    return TopLoc_Location(turn)


def placed(shape: TopoDS_Shape, placement: Placement) -> TopoDS_Shape:
    """A shape moved to where it stands; the geometry is shared with the shape given."""
    return shape.Moved(location(placement))
