"""True bars as thick as the frame: every pane between them stands in stops of its own.

A bar's end seen from the side, and a crossing seen from above

      _______________                 |  level bar: the front half     |
     |       face    |__              |__            __________________|
     |                __|  tenon         |__________|
     |_______________|                   | upright: the back half

The tenon is a third of the thickness, in its middle, and as wide as the bar. Bars cross in a
half-lap at half the thickness.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.model import Blank, Cut, Face, Making, Part, Placement, Shaped
from parametric.outlines import rectangle
from parametric.parts.lying import LEVEL, RIGHT, UP, UPRIGHT
from parametric.resolve.bar_places import Bar, FullBar
from parametric.resolve.leaf import Leaf
from parametric.resolve.lite import Lite
from parametric.resolve.rail import Rail

SAWN = Making(by="saw", tool="tenoning jig or hand saw, to a knife line")
CHOPPED = Making(by="bench", tool="mortise chisel, to the bar's own tenon")
_FACES: tuple[Face, Face] = ("low face", "high face")


def full_bar_parts(leaf: Leaf) -> Iterator[Part]:
    """Every bar of full thickness: uprights first, then level ones from the top."""
    for lite, section in _full(leaf):
        for bar in lite.bars:
            yield _bar(leaf, lite, section, bar)


def stile_mortises(leaf: Leaf) -> Iterator[Shaped]:
    """In a stile's inner edge, for the tenons of level bars."""
    for lite, section in _full(leaf):
        for bar in lite.bars:
            if not bar.upright:
                yield _mortise(
                    leaf,
                    section,
                    "high edge",
                    float(bar.low + leaf.trim),
                    float(bar.high + leaf.trim),
                )


def rail_mortises(leaf: Leaf, rail: Rail) -> Iterator[Shaped]:
    """In the edges of a rail that stands over or under a divided lite, for the uprights' tenons."""
    for lite, section in _full(leaf):
        edges: list[Face] = []
        if lite.foot == rail.top:
            edges.append("high edge")
        if lite.top == rail.foot:
            edges.append("low edge")
        for edge in edges:
            for bar in lite.bars:
                if bar.upright:
                    yield _mortise(
                        leaf,
                        section,
                        edge,
                        float(bar.low - leaf.left_stile),
                        float(bar.high - leaf.left_stile),
                    )


def _full(leaf: Leaf) -> Iterator[tuple[Lite, FullBar]]:
    for lite in leaf.lites:
        if isinstance(lite.section, FullBar):
            yield lite, lite.section


def _mortise(leaf: Leaf, section: FullBar, face: Face, u0: float, u1: float) -> Shaped:
    middle, half = float(leaf.thickness) / 2, float(section.tenon_thickness) / 2
    return Shaped(
        name="mortise for a bar",
        face=face,
        outline=rectangle(u0, middle - half, u1, middle + half),
        depth=section.tenon_length,
        making=CHOPPED,
    )


def _bar(leaf: Leaf, lite: Lite, section: FullBar, bar: Bar) -> Part:
    """From stile to stile or from rail to rail; a level bar's low face is the back."""
    reach, face = section.tenon_length, section.face
    length = bar.end - bar.start + 2 * reach
    start = bar.start - reach
    cheek = (leaf.thickness - section.tenon_thickness) / 2
    cuts: list[Cut] = [
        Shaped(
            name="cheek",
            face=side,
            outline=rectangle(float(u0), 0.0, float(u1), float(face)),
            depth=cheek,
            making=SAWN,
        )
        for side in _FACES
        for u0, u1 in ((0.0, reach), (length - reach, length))
    ]
    cuts += [
        Shaped(
            name="lap",
            face="low face",
            outline=rectangle(float(one.low - start), 0.0, float(one.high - start), float(face)),
            depth=leaf.thickness / 2,
            making=SAWN,
        )
        for one in lite.bars
        if one.upright != bar.upright
    ]
    return Part(
        name=bar.name,
        noun="upright glazing bar" if bar.upright else "level glazing bar",
        mark="B",
        material=leaf.material,
        blank=Blank(length=length, width=face, thickness=leaf.thickness),
        placement=Placement(origin=(float(bar.low), 0.0, float(start)), x=UP, y=RIGHT)
        if bar.upright
        else Placement(origin=(float(start), float(leaf.thickness), float(bar.low)), x=RIGHT, y=UP),
        cuts=tuple(cuts),
        faces=UPRIGHT if bar.upright else LEVEL,
    )
