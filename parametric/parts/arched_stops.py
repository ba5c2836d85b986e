"""The stops of a pane under a curve: one sawn to it, one at the foot, two upright."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.infill.glass import ArchedStop, Stops, stop_blank, stop_mitres
from parametric.model import Blank, Making, Part, Placement, Shaped
from parametric.names import join
from parametric.outlines import Outline, Vertex, backwards
from parametric.parts.lying import LEFT, RIGHT, UP
from parametric.parts.rebates import over, tidy
from parametric.resolve.leaf import Leaf

SAWN = Making(by="bench", tool="bandsaw to the line, then spokeshave; or router against a template")
_FLAT = 1e-6


def arched_stops(
    leaf: Leaf, place: str, face: str, held: Stops, arch: ArchedStop, back: float
) -> Iterator[Part]:
    """The four of one face.

    Args:
        leaf: for its wood.
        place: what they are named by.
        face: front or back.
        held: the stops.
        arch: the one under the curve.
        back: how deep in the leaf the back of this face's stops lies, mm.
    """
    front = back - float(held.depth)
    left, right = float(held.left), float(held.left + held.across)
    foot, wide = float(held.foot), float(arch.length)
    turned = arch.outer[0].y > arch.outer[-1].y + _FLAT
    low, _ = stop_mitres()
    for word, length, (x, y), across in (
        ("left", arch.left_up, (left, front), RIGHT),
        ("right", arch.right_up, (right, back), LEFT),
    ):
        yield Part(
            name=join(place, f"{face} {word} stop"),
            noun="stop upright",
            mark="L",
            material=leaf.material,
            blank=stop_blank(held, length),
            placement=Placement(origin=(x, y, foot), x=UP, y=across),
            cuts=(low,),
            faces={"low edge": "edge against the frame", "high edge": "sight edge"},
        )
    yield Part(
        name=join(place, f"{face} bottom stop"),
        noun="stop across",
        mark="L",
        material=leaf.material,
        blank=stop_blank(held, held.across),
        placement=Placement(origin=(left, back, foot), x=RIGHT, y=UP),
        cuts=stop_mitres(),
        faces={"low edge": "edge against the frame", "high edge": "sight edge"},
    )
    yield Part(
        name=join(place, f"{face} top stop"),
        noun="stop under the arch",
        mark="L",
        material=leaf.material,
        blank=Blank(length=arch.length, width=arch.height, thickness=held.depth),
        placement=Placement(origin=(right, front, float(arch.foot)), x=LEFT, y=UP)
        if turned
        else Placement(origin=(left, back, float(arch.foot)), x=RIGHT, y=UP),
        cuts=(
            *_outside(_turned(arch.outer, wide) if turned else arch.outer, arch, held),
            *_inside(_turned(arch.inner, wide) if turned else arch.inner, held),
        ),
        faces={"high edge": "edge against the frame", "low edge": "sight edge"},
    )


def _turned(chain: Outline, across: float) -> Outline:
    """A chain seen from behind: what is higher at its left is another one turned about."""
    return backwards(tuple(v._replace(x=across - v.x, bulge=-v.bulge) for v in chain))


def _outside(chain: Outline, arch: ArchedStop, held: Stops) -> Iterator[Shaped]:
    """The board over the curve, on either side of its crown."""
    high = float(arch.height)
    crowns = [i for i, vertex in enumerate(chain) if abs(vertex.y - high) < _FLAT]
    at = crowns[0] if crowns else len(chain) - 1
    for half in (chain[: at + 1], chain[at:]):
        if len(half) > 1:
            yield Shaped(
                name="edge to the arch",
                face="high face",
                outline=over((*half[:-1], half[-1]._replace(bulge=0.0)), high),
                depth=held.depth,
                making=SAWN,
            )


def _inside(chain: Outline, held: Stops) -> Iterator[Shaped]:
    """The board under the sight edge and under ends that stand higher than its low edge."""
    if chain[0].y < _FLAT:
        chain = chain[1:]
    if chain[-1].y < _FLAT:
        chain = chain[:-1]
    yield Shaped(
        name="sight edge",
        face="high face",
        outline=_down_to_the_edge(chain),
        depth=held.depth,
        making=SAWN,
    )


def _down_to_the_edge(chain: Outline) -> Outline:
    first, last = chain[0], chain[-1]
    return tidy(
        (
            Vertex(first.x, 0.0),
            Vertex(last.x, 0.0),
            *backwards((*chain[:-1], last._replace(bulge=0.0))),
        )
    )
