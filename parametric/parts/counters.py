"""Counters on cabinets, and lids that open: bought to size or glued up, laid over the cases."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from parametric.figures import Figure, largest
from parametric.model import Cut, Group, Making, Material, Part, Placement, Pocket, Shaped, Turn
from parametric.names import join
from parametric.parts.corner_counters import counter_outline
from parametric.parts.planned import outside
from parametric.parts.room_boards import room_board, sheet_of
from parametric.resolve.casework import Casework, StandingCase, StandingRun
from parametric.resolve.room_lines import between, wall_line

COUNTER = Material(name="worktop", look="board", density=700.0)
"""A counter bought to size: density from memory, a laminated board's."""
CORNER = 20.0
"""Radius of a cut-out's corners, so that none of them starts a crack, mm. Common practice, no source."""
TO_THE_JOINT = Making(by="saw", tool="track saw or jigsaw to the line, then trimmed flush")
CUT_OUT = Making(by="router", tool="straight cutter against a template, through")
LID_OPENS = 90.0


def own_counter(standing: StandingCase) -> Iterator[Part]:
    """The counter of a cabinet in no run: over its case, or where it has a face frame over that,
    as far as the walls let it.
    """
    if standing.counter is None or standing.run:
        return
    case = standing.case
    left, right = float(standing.left), float(standing.left + case.box.width)
    if case.frame is not None:
        low, high = float(standing.top - standing.counter), float(standing.top)
        left = max(x for _, x in between(wall_line(standing.opening, "left"), low, high))
        right = min(x for _, x in between(wall_line(standing.opening, "right"), low, high))
    out = case.spec.overhang + case.front_out
    front = standing.front - float(out)
    yield room_board(
        join(case.name, "counter"),
        "counter",
        COUNTER,
        (right - left, case.box.depth + out, standing.counter),
        (left, front, float(case.box.foot + case.box.height)),
        "level",
        tuple(_cut_out(standing, left, front, standing.counter)),
        supplied=True,
    )


def run_counter(run: StandingRun, casework: Casework) -> Iterator[Part]:
    """The counter over a whole run and its fillers, with the cut-outs of its cabinets."""
    thick = run.spec.counter
    if thick is None:
        return
    cases = [casework.case(name) for name in run.cases]
    out = run.spec.overhang + largest(*(case.case.front_out for case in cases))
    low = float(run.head - thick)
    left, right = to_the_walls(run, low, float(run.head))
    front = run.front - float(out)
    whole = (left, front, right, run.front + float(run.depth))
    outline = counter_outline(run, casework, whole, float(out))
    at = min(x for x, _ in outline), min(y for _, y in outline)
    far = max(x for x, _ in outline), max(y for _, y in outline)
    size = (far[0] - at[0], run.depth + out if at[1] == front else far[1] - at[1])
    cuts: list[Cut] = []
    for case in cases:
        cuts += _cut_out(case, at[0], front, thick, at[1])
    shape = [(x - at[0], y - at[1]) for x, y in outline]
    for piece, _ in outside(shape, (size[0], float(size[1]))):
        cuts.append(
            Shaped(
                name="to the joint in the corner",
                face="high face",
                outline=piece,
                depth=thick,
                making=TO_THE_JOINT,
            )
        )
    yield room_board(
        join(run.name, "counter"),
        "counter",
        COUNTER,
        (*size, thick),
        (*at, low),
        "level",
        cuts,
        supplied=True,
    )


def to_the_walls(run: StandingRun, low: float, high: float) -> tuple[float, float]:
    """Left and right of what goes over the fillers, as far as the walls let it between two heights."""
    left, right = float(run.left), float(run.right)
    if run.edges.left is not None:
        left = max(x for _, x in between(wall_line(run.opening, "left"), low, high))
    if run.edges.right is not None:
        right = min(x for _, x in between(wall_line(run.opening, "right"), low, high))
    return left, right


def _cut_out(
    standing: StandingCase, left: float, front: float, thick: Figure, low: float | None = None
) -> Sequence[Cut]:
    """The cut-out over one cabinet, in the middle of its width and of the counter over it.

    `low` is where the counter's own low edge lies, where that comes before its front.
    """
    size, box = standing.case.spec.cut_out, standing.case.box
    if size is None:
        return ()
    back = standing.front + float(box.depth)
    return (
        Pocket(
            name=f"cut-out over {standing.name}",
            face="high face",
            u=float(standing.left + box.width / 2) - left,
            v=(back - front) / 2 + (0.0 if low is None else front - low),
            length=float(size[0]),
            width=float(size[1]),
            corner=CORNER,
            depth=float(thick),
            making=CUT_OUT,
        ),
    )


def lid_groups(casework: Casework) -> list[Group]:
    """A lid on each case that has one, hinged along its back edge."""
    found = []
    for standing in casework.cases:
        thick, box = standing.case.spec.lid, standing.case.box
        if thick is None:
            continue
        out = standing.case.spec.overhang + standing.case.front_out
        name = join(standing.name, "lid")
        part = room_board(
            join(name, "board"),
            "lid",
            sheet_of(standing.board.name, float(standing.board.density)),
            (box.width, box.depth + out, thick),
            (0.0, -float(out), float(box.height)),
            "level",
        )
        stands = standing.stands
        edge = stands.point((0.0, float(box.depth), float(box.height + thick)))
        found.append(
            Group(
                name=name,
                placement=Placement(origin=stands.origin, x=stands.x, y=stands.y),
                parts=(part,),
                motion=(
                    Turn(point=edge, axis=stands.direction((-1.0, 0.0, 0.0)), angle=LID_OPENS),
                ),
            )
        )
    return found
