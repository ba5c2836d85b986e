"""Set-ups: the piece lies once on the router's bed, one face up, and one file cuts it."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from parametric.catalog.layer_names import OURS, LayerNames
from parametric.cnc.operations import (
    Operation,
    Routed,
    has_square_corners,
    make_operations,
    routed,
)
from parametric.cnc.views import (
    Side,
    View,
    along_foot,
    along_left,
    leaf_side,
    leaf_view,
    part_view,
)
from parametric.model import (
    FACES,
    Assembly,
    Cut,
    Face,
    Group,
    Part,
    Shaped,
    Trim,
    face_depth,
    face_point,
    face_size,
    same_shape,
)
from parametric.outlines import Bounds, bounds_of
from parametric.trade.file_names import file_stem

_SAME = 1e-6
"""mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SetUp:
    """One file of the router: one face of one part type, or one side of one glued leaf.

    `length` lies along x and `width` along y of the file, `thickness` is the wood below
    the surface, mm. `x_from` and `y_from` are the shop's words for what lies along
    x = 0 and y = 0. `names` are the pieces that this file is run on. `mark` is "" and
    `face` None on a glued leaf, whose datum is the finished foot.
    """

    file: str
    mark: str
    noun: str
    names: tuple[str, ...]
    face: Face | None
    face_up: str
    length: float
    width: float
    thickness: float
    x_from: str
    y_from: str
    operations: tuple[Operation, ...]
    layers: LayerNames = OURS
    turned: tuple[str, ...] = ()
    """For each piece that lies in its leaf another way than the first: its own words."""

    @property
    def count(self) -> int:
        """How many times the file is run."""
        return len(self.names)


@dataclass(frozen=True, slots=True, kw_only=True)
class PartType:
    """One mark: the first part that carries it stands for all of them."""

    part: Part
    twins: tuple[Part, ...] = ()

    @property
    def names(self) -> tuple[str, ...]:
        """Every part that carries the mark."""
        return (self.part.name, *(twin.name for twin in self.twins))


def part_types(assembly: Assembly) -> tuple[PartType, ...]:
    """Every kind of part that is made, in the order of the assembly.

    Raises:
        ValueError: one mark stands for two shapes.
    """
    found: dict[str, PartType] = {}
    for group in assembly.groups:
        for part in group.parts:
            if part.supplied:
                continue
            known = found.get(part.mark)
            if known is None:
                found[part.mark] = PartType(part=part)
            elif not same_shape(known.part, part):
                raise ValueError(f"mark {part.mark} stands for {known.part.name} and {part.name}")
            else:
                found[part.mark] = dataclasses.replace(known, twins=(*known.twins, part))
    return tuple(found.values())


def set_ups(
    assembly: Assembly, cutters: Sequence[float] = (), layers: LayerNames = OURS
) -> tuple[SetUp, ...]:
    """Every file of the router: part by part and face by face, then leaf by leaf.

    A part's file holds what is routed before glue-up, a leaf's what is routed after it
    on the leaf's front or back. Whatever is in no file is in `bench_work`.

    Args:
        assembly: the job's parts where they stand.
        cutters: the diameters the shop owns, mm; asked where a cut names none.
        layers: how the shop names layers.

    Raises:
        ValueError: the parts contradict themselves, or ask for a cut that no cutter makes.
    """
    found = [s for kind in part_types(assembly) for s in _part_set_ups(kind, cutters)]
    found += [s for group in assembly.groups for s in _leaf_set_ups(group, cutters)]
    return _own_names([_on_layers(one, layers) for one in found])


def _on_layers(set_up: SetUp, layers: LayerNames) -> SetUp:
    """A machine is set by the layer: what shares one is cut with the smallest cutter of them."""
    named = [dataclasses.replace(op, layers=layers) for op in set_up.operations]
    cutters: dict[str, float] = {}
    for op in named:
        cutters[op.layer] = min(op.cutter, cutters.get(op.layer, op.cutter))
    return dataclasses.replace(
        set_up,
        layers=layers,
        operations=tuple(dataclasses.replace(op, cutter=cutters[op.layer]) for op in named),
    )


def file_cut(cut: Cut, part: Part) -> Routed | None:
    """The cut, when it is in a part's or a leaf's file; None when it is bench work.

    A shape with an inside corner that no round cutter reaches, as where a pointed arch's rebate
    comes to its point, is finished by hand and therefore made by hand, against a template. After glue-up a router reaches the leaf's front and back; its edges are bench work.
    """
    if part.supplied or cut.making.by != "router":
        return None
    outlined = routed(cut)
    if outlined is None:
        return None
    if isinstance(outlined, Shaped) and has_square_corners(outlined, part.blank, part.cuts):
        return None
    match cut.making.when:
        case "before glue-up":
            return outlined
        case "after glue-up":
            return outlined if leaf_side(outlined.face, part.placement) else None
        case "on site":
            return None


def _part_set_ups(kind: PartType, cutters: Sequence[float]) -> Iterator[SetUp]:
    part = kind.part
    early = [
        found
        for cut in part.cuts
        if (found := file_cut(cut, part)) and cut.making.when == "before glue-up"
    ]
    for face in FACES:
        here = [cut for cut in early if cut.face == face]
        if not here:
            continue
        view = part_view(face, part.blank)
        length, width = face_size(face, part.blank)
        word = face_word(part, face)
        yield SetUp(
            file=f"{file_stem(f'{part.mark} {part.noun} {word}')}.dxf",
            mark=part.mark,
            noun=part.noun,
            names=kind.names,
            face=face,
            face_up=word,
            length=float(length),
            width=float(width),
            thickness=float(face_depth(face, part.blank)),
            x_from=face_word(part, along_left(face)),
            y_from=face_word(part, along_foot(face)),
            operations=_in_order(op for cut in here for op in _placed(cut, part, view, cutters)),
            turned=tuple(_turned(kind, face)),
        )


def _turned(kind: PartType, face: Face) -> Iterator[str]:
    """Where a twin's faces go by other words: left and right stiles are one part, turned over."""
    first = kind.part
    sides = (
        ("the {} up", face),
        ("x from the {}", along_left(face)),
        ("y from the {}", along_foot(face)),
    )
    for twin in kind.twins:
        other = [
            said.format(face_word(twin, side))
            for said, side in sides
            if face_word(twin, side) != face_word(first, side)
        ]
        if other:
            yield f"{twin.name} lies turned: {', '.join(other)}"


def _placed(cut: Routed, part: Part, view: View, cutters: Sequence[float]) -> Iterator[Operation]:
    for flat in make_operations(cut, part.blank, part.cuts, part.name, cutters):
        yield dataclasses.replace(flat, outline=view.outline(flat.outline))


def _in_order(operations: Iterable[Operation]) -> tuple[Operation, ...]:
    """From left to right, then up, the shallow before the deep."""

    def place(op: Operation) -> tuple[float, float, float, str]:
        x, y, _, _ = bounds_of(op.outline)
        return (round(x, 3), round(y, 3), op.depth, op.name)

    return tuple(sorted(operations, key=place))


def _leaf_set_ups(group: Group, cutters: Sequence[float]) -> Iterator[SetUp]:
    late: dict[Side, list[tuple[Routed, Part]]] = {"front": [], "back": []}
    for part in group.parts:
        for cut in part.cuts:
            found = file_cut(cut, part)
            if found is None or cut.making.when != "after glue-up":
                continue
            side = leaf_side(found.face, part.placement)
            if side is not None:
                late[side].append((found, part))
    for side, here in late.items():
        if here:
            yield _leaf_set_up(group, side, here, cutters)


def _leaf_set_up(
    group: Group, side: Side, here: Sequence[tuple[Routed, Part]], cutters: Sequence[float]
) -> SetUp:
    left, foot, right, top = leaf_extents(group)
    surfaces = [_surface(cut, part) for cut, part in here]
    thicknesses = [float(face_depth(cut.face, part.blank)) for cut, part in here]
    if max(surfaces) - min(surfaces) > _SAME or max(thicknesses) - min(thicknesses) > _SAME:
        raise ValueError(f"{group.name}: what is routed on its {side} lies in several planes")
    operations = (
        operation
        for cut, part in here
        for operation in _placed(
            cut,
            part,
            leaf_view(side, cut.face, part.blank, part.placement, left, right, foot),
            cutters,
        )
    )
    return SetUp(
        file=f"{file_stem(f'{group.name} {side}')}.dxf",
        mark="",
        noun=group.name,
        names=(group.name,),
        face=None,
        face_up=side,
        length=right - left,
        width=top - foot,
        thickness=thicknesses[0],
        x_from=f"left edge as seen on the {side}",
        y_from="finished foot",
        operations=_in_order(operations),
    )


def _surface(cut: Routed, part: Part) -> float:
    """Where the face that a cut is measured from lies between the leaf's front and back, mm."""
    return part.placement.point(face_point(cut.face, part.blank, 0.0, 0.0, 0.0))[1]


def leaf_extents(group: Group) -> Bounds:
    """Left, foot, right and top of a finished leaf in its own frame, mm.

    Of its made wooden parts, once their ends are trimmed.
    """
    corners: list[tuple[float, float, float]] = []
    for part in group.parts:
        if part.supplied or part.material.look not in ("timber", "board"):
            continue
        low = sum(c.length for c in part.cuts if isinstance(c, Trim) and c.end == "low end")
        length, width, thickness = part.finished
        corners += [
            part.placement.point((x, y, z))
            for x in (low, low + length)
            for y in (0.0, width)
            for z in (0.0, thickness)
        ]
    xs, zs = [c[0] for c in corners], [c[2] for c in corners]
    return (min(xs), min(zs), max(xs), max(zs))


def face_word(part: Part, face: Face) -> str:
    """The shop's word for a face, when the part has it for one face only; else the plain one."""
    word = part.faces.get(face, face)
    alone = sum(part.faces.get(f, f) == word for f in FACES) == 1
    return word if alone else face


def _own_names(found: Sequence[SetUp]) -> tuple[SetUp, ...]:
    """Number the files that would share a name, also where upper and lower case are one."""
    used: set[str] = set()
    named = []
    for set_up in found:
        stem, number = set_up.file.removesuffix(".dxf"), 1
        name = set_up.file
        while name.lower() in used:
            number += 1
            name = f"{stem}-{number}.dxf"
        used.add(name.lower())
        named.append(dataclasses.replace(set_up, file=name))
    return tuple(named)
