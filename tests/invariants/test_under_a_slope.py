"""What must be true of every cabinet under a slope, tried on random ceilings and cabinets.

The solids are the kernel's own; how they look from the front and where they are cut is read off
them, and held against what the sheets draw.
"""

from __future__ import annotations

import math
import random
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

import pytest
from OCP.BRep import BRep_Tool
from OCP.BRepAlgoAPI import BRepAlgoAPI_Common
from OCP.BRepGProp import BRepGProp
from OCP.BRepPrimAPI import BRepPrimAPI_MakeBox
from OCP.gp import gp_Pnt
from OCP.GProp import GProp_GProps
from OCP.TopAbs import TopAbs_VERTEX
from OCP.TopExp import TopExp_Explorer
from OCP.TopoDS import TopoDS, TopoDS_Shape

from parametric.drawing.pieces import Piece, Plane, cut_through, pieces, silhouette
from parametric.job import Job, check
from parametric.model import Assembly, Part
from parametric.problems import stops
from parametric.resolve.casework import StandingCase
from parametric.solids.clash import clashes_in_all_states
from parametric.solids.placing import placed
from parametric.solids.solid_set import Solids, build_solids

pytestmark = pytest.mark.kernel

Flat = tuple[float, float]
SEEDS = range(8)
HAIR = 0.01
"""How thick a slice of a solid is taken for its section, mm."""


@dataclass(frozen=True)
class Roof:
    """A random ceiling over random cabinets, and the job that comes of it."""

    left: float
    right: float
    wide: float
    gap: float
    job: Job
    solids: Solids

    def ceiling(self, x: float) -> float:
        """Over a place from the left foot of the wall: straight between its two readings."""
        return self.left + (self.right - self.left) * x / self.wide

    @property
    def assembly(self) -> Assembly:
        assert self.job.assembly is not None
        return self.job.assembly

    @property
    def cases(self) -> tuple[StandingCase, ...]:
        assert self.job.resolved is not None
        assert self.job.resolved.casework is not None
        return self.job.resolved.casework.cases


DOORS = (
    "leaf: {timber: tulipwood, thickness: 20, stiles: 60, trim: 12, site trim: 0,",
    "  top to bottom: [top rail: 60, panel: rest, bottom rail: 60]}",
    "joint: {kind: stub tenon, length: 11}",
    "panel: {kind: board, board: plywood, thickness: 9, groove: 9 x 12, clearance: 1}",
    "hinge: {kind: cup, cup: 35, cup from edge: 5, depth: 12, from ends: 70, least gap: 1,",
    "  carries: 4.5 kg}",
)
"""Framed doors, which some bays have under a space that is left open."""


def written(seed: int) -> tuple[str, tuple[float, float, float, float]]:
    """A design with one or two cabinets side by side under a ceiling that slopes either way."""
    own = random.Random(seed)
    wide = own.randint(1200, 3600)
    ends = sorted(
        (own.randint(900, 1500), own.randint(1500, 2600)), reverse=bool(own.getrandbits(1))
    )
    left, right = ends
    gap, count = own.choice((4, 10, 25)), own.choice((1, 2))
    each = (wide - 40 * (count + 1)) // count
    thick, filled = own.choice((18, 19, 25)), bool(own.getrandbits(1))
    back = own.choice(("planted", "none"))
    lines = [
        "stilewright: 1",
        "job: Under a random roof",
        "units: mm",
        f"survey: {{widths: {{bottom: {wide}}}, left side: plumb, floor: level,",
        f"  rake: {{left: {left}, right: {right}}}}}",
        f"board: {{thickness: {thick}, sheet: 5000 x BROAD}}",
        "back: {held: planted}",
    ]
    shared = [own.choice((1, 2, 3)) for _ in range(count)]
    for number, bays in enumerate(shared):
        dado = own.choice((0, 6))
        row = ", ".join(f"bay b{number}{bay}: equal" for bay in range(bays))
        lines += [
            f"cabinet c{number}:",
            f"  from left: {40 + number * (each + 40)}",
            f"  width: {each}",
            f"  depth: {own.randint(220, 600)}",
            f"  {'top filler: at least' if filled else 'top gap:'} {gap}",
            f"  plinth: {own.choice((0, 60))}",
            f"  dado: {dado}",
            f"  corners: {own.choice(('dowel', 'screw')) if dado == 0 else 'dowel'}",
            "  top: follows rake",
            f"  left to right: [{row}]",
            *(["  back: none"] if back == "none" else []),
        ]
        fronts = own.choice(("inset", "overlay"))
        lines.insert(-1, f"  fronts: {fronts}")
        for bay in range(bays):
            shelves = f"shelves: {own.choice((0, 1, 2))}"
            door = (
                f"top to bottom: [open: rest, {{door: {own.randint(300, 500)}, hinge side: left}}]"
            )
            inside = shelves if own.getrandbits(1) else door
            lines.append(f"bay b{number}{bay}: {{{inside}}}")
    lines += DOORS
    # a back too broad for its sheet is made in pieces, on the middles of partitions
    broad = 1220 if all(each / bays < 1100 for bays in shared) else 3600
    return "\n".join(lines).replace("BROAD", str(broad)) + "\n", (left, right, wide, gap)


@pytest.fixture(scope="module", params=SEEDS)
def roof(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Roof:
    text, (left, right, wide, gap) = written(request.param)
    path: Path = tmp_path_factory.mktemp("roof") / "design.yaml"
    path.write_text(text, encoding="utf-8")
    job = check(path, user_house=False)
    assert not stops(job.problems), [problem.message for problem in stops(job.problems)]
    assert job.assembly is not None
    # each valid, closed, and of the volume that its cuts leave, or this raises
    solids = build_solids(job.assembly.parts, None)
    return Roof(left=left, right=right, wide=wide, gap=gap, job=job, solids=solids)


def _boards(roof: Roof) -> Iterator[Piece]:
    """What is made of wood, where it stands; its looks are told by its own straight sides."""
    for piece in pieces(roof.assembly, roof.assembly.states[0]):
        if piece.part.material.look == "board":
            yield piece


def _shape(roof: Roof, piece: Piece) -> TopoDS_Shape:
    return placed(roof.solids.of(piece.part), piece.stands)


def _corners(shape: TopoDS_Shape) -> list[tuple[float, float, float]]:
    """Each once, however many edges meet in it."""
    own: dict[tuple[float, ...], tuple[float, float, float]] = {}
    found = TopExp_Explorer(shape, TopAbs_VERTEX)
    while found.More():
        point = BRep_Tool.Pnt_s(TopoDS.Vertex_s(found.Current()))
        at = (point.X(), point.Y(), point.Z())
        own.setdefault(tuple(round(v, 5) for v in at), at)
        found.Next()
    return list(own.values())


def _hull(points: Sequence[Flat]) -> list[Flat]:
    """The convex outline round some points, anticlockwise. Source: Andrew's monotone chain."""
    own = sorted({(round(x, 6), round(y, 6)) for x, y in points})

    def half(row: Sequence[Flat]) -> list[Flat]:
        kept: list[Flat] = []
        for point in row:
            while len(kept) > 1 and _turn(kept[-2], kept[-1], point) <= 1e-6:
                kept.pop()
            kept.append(point)
        return kept[:-1]

    return half(own) + half(own[::-1])


def _turn(a: Flat, b: Flat, c: Flat) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _area(ring: Sequence[Flat]) -> float:
    return abs(
        sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(ring, [*ring[1:], ring[0]], strict=True)) / 2
    )


def test_nothing_is_in_anything_else(roof: Roof) -> None:
    assert clashes_in_all_states(roof.assembly, roof.solids) == ()


def test_tops_lie_in_one_plane_parallel_to_the_ceiling(roof: Roof) -> None:
    tops = [piece for piece in _boards(roof) if piece.part.noun == "top"]
    assert len(tops) == len(roof.cases)
    for piece in tops:
        apart = [roof.ceiling(x) - z for x, _, z in _corners(_shape(roof, piece))]
        # plumb from the ceiling: the gap to its outer face, and its own thickness past that
        slope = math.atan2(roof.right - roof.left, roof.wide)
        down = float(piece.part.blank.thickness) / math.cos(slope)
        assert len(apart) == 8
        assert sorted(apart) == pytest.approx([roof.gap] * 4 + [roof.gap + down] * 4, abs=1e-6)


def test_fillers_go_from_the_top_to_the_ceiling(roof: Roof) -> None:
    """Four corners in the ceiling, four in the top's outer face, over the ends of their case."""
    cases = {f"{case.name} / top filler": case for case in roof.cases}
    for piece in _boards(roof):
        if piece.part.noun != "top filler":
            continue
        case = cases.pop(piece.part.name)
        corners = _corners(_shape(roof, piece))
        apart = sorted(roof.ceiling(x) - z for x, _, z in corners)
        assert apart == pytest.approx([0.0] * 4 + [roof.gap] * 4, abs=1e-6)
        left = float(case.left)
        ends = {round(x, 6) for x, _, _ in corners}
        assert ends == {round(left, 6), round(left + float(case.case.box.width), 6)}
    assert len(cases) in (0, len(roof.cases))


def test_uprights_and_backs_end_at_the_slope(roof: Roof) -> None:
    """The highest corners of a side or a partition lie in the under face, of a back in the outer."""
    slope = math.atan2(roof.right - roof.left, roof.wide)
    for piece in _boards(roof):
        noun = piece.part.noun
        if not noun.endswith("side") and noun not in ("partition", "back"):
            continue
        shape = _shape(roof, piece)
        under = 0.0
        if noun != "back":
            (top,) = (
                float(case.case.box.thickness)
                for case in roof.cases
                if piece.part.name.startswith(f"{case.name} / ")
            )
            under = top / math.cos(slope)
        apart = [roof.ceiling(x) - z - roof.gap - under for x, _, z in _corners(shape)]
        assert min(apart) == pytest.approx(0.0, abs=1e-6)
        # two edges of the bevel, or of the sawn edge: its whole end lies in the slope
        assert sum(abs(off) < 1e-6 for off in apart) == 4, piece.part.name


def test_the_front_shows_what_the_solids_show(roof: Roof) -> None:
    """Outlines from the front: corner for corner the outline round the solid's own corners.

    A dado, which another board fills, is drawn as if it were not there: where there is one at
    its foot, an upright board is looked at above it.
    """
    for piece in _boards(roof):
        drawn = _hull(silhouette(piece))
        seen = _hull([(x, z) for x, _, z in _corners(_shape(roof, piece))])
        assert _area(drawn) == pytest.approx(_area(silhouette(piece)), rel=1e-7)
        if any(cut.name.startswith("dado") for cut in piece.part.cuts):
            above = min(z for _, z in seen) + 2 * float(piece.part.blank.thickness)
            drawn, seen = ([at for at in ring if at[1] > above] for ring in (drawn, seen))
        assert len(drawn) == len(seen), piece.part.name
        for point in seen:
            assert min(math.dist(point, own) for own in drawn) < 1e-5, piece.part.name


def _sliced(shape: TopoDS_Shape, plane: Plane, at: float) -> float:
    """How large a solid is where it is cut: the volume of a thin slice by its thickness, mm2."""
    far = 1e5
    low, high = at - HAIR / 2, at + HAIR / 2
    level = plane == "level"
    corner = gp_Pnt(-far, -far, low) if level else gp_Pnt(low, -far, -far)
    other = gp_Pnt(far, far, high) if level else gp_Pnt(high, far, far)
    box = BRepPrimAPI_MakeBox(corner, other).Shape()
    found = GProp_GProps()
    BRepGProp.VolumeProperties_s(BRepAlgoAPI_Common(shape, box).Shape(), found)
    return found.Mass() / HAIR


def test_sections_show_what_the_solids_are(roof: Roof) -> None:
    """Cut level and upright at random: the drawn section is as large as the solid is there."""
    own = random.Random(roof.wide)
    for case in roof.cases:
        ours = [p for p in _boards(roof) if p.group == case.name and not _bored(p.part)]
        foot, high = float(case.case.box.foot), float(case.case.box.highest)
        left, wide = float(case.left), float(case.case.box.width)
        cuts: list[tuple[Plane, float]] = [
            *(("level", foot + high * own.uniform(0.03, 0.99)) for _ in range(4)),
            *(("upright", left + wide * own.uniform(0.02, 0.98)) for _ in range(4)),
        ]
        for (plane, at), piece in ((cut, piece) for cut in cuts for piece in ours):
            shape, axis = _shape(roof, piece), 2 if plane == "level" else 0
            if any(abs(corner[axis] - at) < HAIR for corner in _corners(shape)):
                continue
            drawn = cut_through(piece, plane, at)
            area = 0.0 if drawn is None else _area(drawn.outline)
            there = _sliced(shape, plane, at)
            assert area == pytest.approx(there, rel=1e-3, abs=0.5), (piece.part.name, plane, at)


def _bored(part: Part) -> bool:
    """Whether round holes are in it, which a section shows only where it meets their middles."""
    return any(type(cut).__name__ == "Drilled" for cut in part.cuts)
