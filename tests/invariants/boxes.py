"""Parts and their cuts as boxes in the room, and whether wood stands in wood.

Cases are made of boards at right angles, and doors stand open at right angles: there boxes are
exact. Where two parts' boxes meet, what they share must have been cut out of one of them.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence

from parametric.model import (
    Assembly,
    Cut,
    Groove,
    Group,
    Part,
    Placement,
    Pocket,
    Shaped,
    Slot,
    State,
    Trim,
    Vector,
    displaced,
    face_point,
)

Box = tuple[Vector, Vector]
SAME = 1e-6


def around(points: Sequence[Vector]) -> Box:
    low = tuple(min(point[i] for point in points) for i in range(3))
    high = tuple(max(point[i] for point in points) for i in range(3))
    return low, high  # type: ignore[return-value]


def placed(box: Box, part: Part, stands: Placement) -> Box:
    """A box of a part's own frame, in the room."""
    corners = itertools.product(*zip(*box, strict=True))
    return around([stands.point(part.placement.point(corner)) for corner in corners])  # type: ignore[arg-type]


def wood(part: Part) -> Box:
    """What a part is once its ends are trimmed, in its own frame."""
    low = sum(float(c.length) for c in part.cuts if isinstance(c, Trim) and c.end == "low end")
    high = sum(float(c.length) for c in part.cuts if isinstance(c, Trim) and c.end == "high end")
    blank = part.blank
    return (low, 0.0, 0.0), (blank.length - high, blank.width, blank.thickness)


def taken(part: Part) -> Iterator[Box]:
    """What its grooves, slots and square recesses take, in its own frame: of round ends the box."""
    for cut in part.cuts:
        if box := cut_box(cut, part):
            yield box


def cut_box(cut: Cut, part: Part) -> Box | None:
    """What a groove or a square recess takes, in the part's own frame; None of any other cut."""
    match cut:
        case Groove():
            half = float(cut.width) / 2
            sides = ((float(cut.u0), float(cut.v) - half), (float(cut.u1), float(cut.v) + half))
        case Slot():
            half = float(cut.width) / 2
            sides = ((float(cut.u0), float(cut.v) - half), (float(cut.u1), float(cut.v) + half))
        case Pocket():
            along, across = float(cut.length) / 2, float(cut.width) / 2
            u, v = float(cut.u), float(cut.v)
            sides = ((u - along, v - across), (u + along, v + across))
        case Shaped():
            us, vs = [v.x for v in cut.outline], [v.y for v in cut.outline]
            on_it = all(
                v.x in (min(us), max(us)) and v.y in (min(vs), max(vs)) for v in cut.outline
            )
            if len(cut.outline) != 4 or not on_it:
                return None
            sides = ((min(us), min(vs)), (max(us), max(vs)))
        case _:
            return None
    from_, to = float(cut.surface), float(cut.depth)
    return around(
        [
            face_point(cut.face, part.blank, u, v, depth)
            for (u, v), depth in itertools.product(sides, (from_, to))
        ]
    )


def shared(one: Box, other: Box) -> Box | None:
    """What two boxes share; None where they only touch."""
    low = tuple(max(a, b) for a, b in zip(one[0], other[0], strict=True))
    high = tuple(min(a, b) for a, b in zip(one[1], other[1], strict=True))
    if any(b - a <= SAME for a, b in zip(low, high, strict=True)):
        return None
    return low, high  # type: ignore[return-value]


def covered(whole: Box, by: Sequence[Box]) -> bool:
    """Whether boxes cover one entirely: each cell between their faces lies in one of them."""
    cuts = [clipped for box in by if (clipped := shared(whole, box))]
    lines = [
        sorted({whole[0][i], whole[1][i], *(b[0][i] for b in cuts), *(b[1][i] for b in cuts)})
        for i in range(3)
    ]
    middles = [[(a + b) / 2 for a, b in itertools.pairwise(line) if b - a > SAME] for line in lines]
    return all(
        any(all(b[0][i] < cell[i] < b[1][i] for i in range(3)) for b in cuts)
        for cell in itertools.product(*middles)
    )


def one_box(one: Part, other: Part) -> bool:
    """Whether two parts are of one drawer's box."""
    place = one.name.rsplit(" / ", 1)[0]
    return "drawer" in place and place == other.name.rsplit(" / ", 1)[0]


def clashes(assembly: Assembly, state: State) -> Iterator[str]:
    """Pairs of parts that would stand in one another's wood in a state.

    Parts of one leaf or one drawer are held to one another elsewhere; here each is held to
    everything else, and the boards of a case to one another.
    """
    everything: list[tuple[Box, Part, Group, Placement]] = []
    for group in assembly.groups:
        stands = displaced(group, state)
        everything += [(placed(wood(p), p, stands), p, group, stands) for p in group.parts]
    everything.sort(key=lambda each: each[0][0][0])
    for index, (box, part, group, stands) in enumerate(everything):
        for other_box, other, beside, other_stands in everything[index + 1 :]:
            if other_box[0][0] >= box[1][0] - SAME:
                break
            if group is beside and (group.name.startswith("leaf") or one_box(part, other)):
                continue
            both = shared(box, other_box)
            if both is None:
                continue
            gone = [placed(b, part, stands) for b in taken(part)]
            gone += [placed(b, other, other_stands) for b in taken(other)]
            if not covered(both, gone):
                yield f"{part.name} in {other.name}: {both} when {state.name}"
