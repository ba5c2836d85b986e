"""A piece with cuts, held to what is known of it by hand."""

from __future__ import annotations

import pytest

from parametric.model import Blank, Cut, Material, Part, Placement

Points = tuple[tuple[float, float, float], ...]
OAK = Material(name="white oak", look="timber", density=750)


def holds(
    cuts: tuple[Cut, ...],
    *,
    size: tuple[float, float, float],
    removed: float,
    gone: Points,
    left: Points,
) -> None:
    """The solid is one closed body within its blank, of the volume and with the points given.

    A cut that takes another's wood counts twice in the sum and not in the solid.
    """
    from OCP.Bnd import Bnd_Box
    from OCP.BRepBndLib import BRepBndLib
    from OCP.BRepClass3d import BRepClass3d_SolidClassifier
    from OCP.gp import gp_Pnt
    from OCP.TopAbs import TopAbs_IN, TopAbs_OUT

    from parametric.solids.shape import part_solid, volume

    part = Part(
        name="piece",
        noun="stile",
        mark="S1",
        material=OAK,
        blank=Blank(length=size[0], width=size[1], thickness=size[2]),
        placement=Placement(),
        cuts=cuts,
    )
    whole = size[0] * size[1] * size[2]
    assert whole - part.volume == pytest.approx(removed, rel=1e-9)
    solid = part_solid(part)
    assert whole - volume(solid) == pytest.approx(removed, rel=1e-6)
    box = Bnd_Box()
    BRepBndLib.AddOptimal_s(solid, box, False, False)
    low, high = box.CornerMin(), box.CornerMax()
    assert min(low.X(), low.Y(), low.Z()) >= -1e-6
    for reach, limit in zip((high.X(), high.Y(), high.Z()), size, strict=True):
        assert reach <= limit + 1e-6
    inside = BRepClass3d_SolidClassifier(solid)

    def state(point: tuple[float, float, float]) -> object:
        inside.Perform(gp_Pnt(*(float(at) for at in point)), 1e-7)
        return inside.State()

    assert [point for point in gone if state(point) != TopAbs_OUT] == []
    assert [point for point in left if state(point) != TopAbs_IN] == []
